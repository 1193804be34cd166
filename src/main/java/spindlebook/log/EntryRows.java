package spindlebook.log;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.mapper.RowMapper;

/**
 * The row every entry has in the index, and the car and corner it belongs to.
 *
 * <p>An entry belongs where its parent belongs: the entry named by the first of its body's fields
 * height, round, corner, car, target. A car is its own car, a corner its own corner. A correction
 * whose new body names another parent moves the corrected row and all rows below it, and moves them
 * back when it is taken back.
 */
final class EntryRows {
  /** Corrections of corrections that are followed; nobody means more. */
  private static final int DEEPEST = 64;

  private static final List<String> PARENTS = List.of("height", "round", "corner", "car", "target");

  /** Where an entry belongs; either may be null. */
  record Place(String car, String corner) {
    static final Place UNKNOWN = new Place(null, null);

    Place of(String key, String kind) {
      return switch (kind) {
        case "car" -> new Place(key, null);
        case "corner" -> new Place(car, key);
        default -> this;
      };
    }
  }

  private record Below(String key, String kind, String line) {}

  private static final RowMapper<Below> BELOW =
      (row, context) -> new Below(row.getString(1), row.getString(2), row.getString(3));

  private EntryRows() {}

  static void add(Handle handle, Entry entry) {
    String parent = "car".equals(entry.kind()) ? null : parent(entry.body());
    Place place = placeOf(handle, parent).of(entry.key(), entry.kind());
    insert(handle, entry, parent, place);
    takeInWaiting(handle, entry.key(), place);
    if ("correction".equals(entry.kind())) {
      follow(handle, entry);
    }
  }

  /** The key of the entry that this one hangs on, or null. */
  static String parent(JsonNode body) {
    return PARENTS.stream()
        .map(field -> key(body, field))
        .filter(Objects::nonNull)
        .findFirst()
        .orElse(null);
  }

  private static String key(JsonNode body, String field) {
    String named = body.path(field).textValue();
    return named != null && Draft.KEY.matcher(named).matches() ? named : null;
  }

  private static Place placeOf(Handle handle, String key) {
    if (key == null) {
      return Place.UNKNOWN;
    }
    return handle
        .createQuery("select car, corner from entry where key = :key")
        .bind("key", key)
        .map((row, context) -> new Place(row.getString(1), row.getString(2)))
        .findOne()
        .orElse(Place.UNKNOWN);
  }

  private static void insert(Handle handle, Entry entry, String parent, Place place) {
    handle
        .createUpdate(
            """
            insert into entry
              (n, key, kind, parent, target, car, corner, at, claimed, who, device, line)
            values
              (:n, :key, :kind, :parent, :target, :car, :corner, :at, :claimed, :who, :device, :line)
            """)
        .bind("n", entry.n())
        .bind("key", entry.key())
        .bind("kind", entry.kind())
        .bind("parent", parent)
        .bind("target", key(entry.body(), "target"))
        .bind("car", place.car())
        .bind("corner", place.corner())
        .bind("at", utc(entry.at()))
        .bind("claimed", utc(entry.claimed()))
        .bind("who", entry.who())
        .bind("device", entry.device() == null ? null : entry.device().id())
        .bind("line", line(entry))
        .execute();
  }

  /** Entries may come before what they hang on, from a phone that was refused one in between. */
  private static void takeInWaiting(Handle handle, String key, Place place) {
    List<Below> waiting = below(handle, key);
    if (waiting.isEmpty()) {
      return;
    }
    if (place.car() != null) {
      Set<String> seen = new HashSet<>(Set.of(key));
      waiting.forEach(row -> move(handle, row, place, seen));
    }
    waiting.stream()
        .filter(row -> "correction".equals(row.kind()))
        .forEach(row -> follow(handle, parse(row.line())));
  }

  /**
   * Puts what a correction is about where it stands now: where the newest correction of it says
   * that still stands itself, else where it was first.
   */
  private static void follow(Handle handle, Entry correction) {
    String target = correction.body().path("target").textValue();
    Optional<Below> row = target == null ? Optional.empty() : one(handle, target);
    for (int i = 0; i < DEEPEST && row.isPresent() && corrects(row.get()); i++) {
      target = parse(row.get().line()).body().path("target").textValue();
      row = target == null ? Optional.empty() : one(handle, target);
    }
    if (row.isEmpty() || corrects(row.get()) || "car".equals(row.get().kind())) {
      return;
    }
    Entry root = parse(row.get().line());
    Set<String> seen = new HashSet<>(Set.of(target));
    String parent = parent(root.body());
    for (Optional<Entry> c = correction(handle, target, Long.MAX_VALUE);
        c.isPresent();
        c = correction(handle, target, c.get().n())) {
      JsonNode said = standing(handle, c.get(), seen);
      String newer = said == null ? null : parent(said.path("body"));
      if (newer != null
          && target.equals(said.path("target").textValue())
          && placeOf(handle, newer).car() != null) {
        parent = newer;
        break;
      }
    }
    Place there = placeOf(handle, parent);
    if (there.car() != null) {
      handle
          .createUpdate("update entry set parent = :parent where key = :key")
          .bind("parent", parent)
          .bind("key", target)
          .execute();
      move(handle, row.get(), there, new HashSet<>());
    }
  }

  private static boolean corrects(Below row) {
    return "correction".equals(row.kind());
  }

  /** The newest correction of an entry before a position. */
  private static Optional<Entry> correction(Handle handle, String target, long before) {
    return handle
        .createQuery(
            """
            select line from entry
            where target = :target and n < :before and kind = 'correction'
            order by target desc, n desc
            fetch first 1 row only
            """)
        .bind("target", target)
        .bind("before", before)
        .mapTo(String.class)
        .map(EntryRows::parse)
        .findOne();
  }

  /**
   * What a correction says now: itself corrected, or null when it was taken back. The card's fold
   * says the same of one car; which car that is, is found here.
   */
  private static JsonNode standing(Handle handle, Entry correction, Set<String> seen) {
    if (!seen.add(correction.key()) || seen.size() > DEEPEST) {
      return correction.body();
    }
    String key = correction.key();
    for (Optional<Entry> c = correction(handle, key, Long.MAX_VALUE);
        c.isPresent();
        c = correction(handle, key, c.get().n())) {
      JsonNode said = standing(handle, c.get(), seen);
      if (said != null && key.equals(said.path("target").textValue())) {
        return said.path("body").isObject() ? said.path("body") : null;
      }
    }
    return correction.body();
  }

  private static void move(Handle handle, Below row, Place parents, Set<String> seen) {
    if (!seen.add(row.key()) || "car".equals(row.kind())) {
      return;
    }
    Place place = parents.of(row.key(), row.kind());
    handle
        .createUpdate("update entry set car = :car, corner = :corner where key = :key")
        .bind("car", place.car())
        .bind("corner", place.corner())
        .bind("key", row.key())
        .execute();
    below(handle, row.key()).forEach(child -> move(handle, child, place, seen));
  }

  private static List<Below> below(Handle handle, String key) {
    return handle
        .createQuery("select key, kind, line from entry where parent = :key order by parent, n")
        .bind("key", key)
        .map(BELOW)
        .list();
  }

  private static Optional<Below> one(Handle handle, String key) {
    return handle
        .createQuery("select key, kind, line from entry where key = :key")
        .bind("key", key)
        .map(BELOW)
        .findOne();
  }

  static Entry parse(String line) {
    try {
      return Line.read(line.getBytes(StandardCharsets.UTF_8));
    } catch (IOException wrong) {
      throw new UncheckedIOException("the index holds a line that cannot be read", wrong);
    }
  }

  private static String line(Entry entry) {
    try {
      return new String(Line.write(entry), StandardCharsets.UTF_8);
    } catch (IOException impossible) {
      throw new UncheckedIOException("an entry that was read cannot be written", impossible);
    }
  }

  private static OffsetDateTime utc(Instant time) {
    return time == null ? null : time.atOffset(ZoneOffset.UTC);
  }
}
