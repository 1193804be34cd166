package spindlebook.log;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/**
 * The car and the corner that every entry of a book belongs to, as the book grows.
 *
 * <p>An entry belongs where its parent belongs: the entry named by the first of its body's fields
 * height, round, corner, car, target. A car is its own car, a corner its own corner. An entry may
 * come before the one it hangs on. A correction whose new body names another parent moves the
 * corrected entry and all that hangs on it, and moves them back when it is taken back.
 *
 * <p>One thread adds; any may ask.
 */
final class Belonging {
  /** Corrections of corrections that are followed; nobody means more. */
  private static final int DEEPEST = 64;

  private static final List<String> PARENTS = List.of("height", "round", "corner", "car", "target");

  /** Where an entry belongs; either may be null. */
  record Where(String car, String corner) {
    static final Where UNKNOWN = new Where(null, null);

    private Where of(String key, String kind) {
      return switch (kind) {
        case "car" -> new Where(key, null);
        case "corner" -> new Where(car, key);
        default -> this;
      };
    }
  }

  private static final class Kept {
    final String kind;
    final String first;

    /** What a correction says; null of everything else. */
    final JsonNode correction;

    String parent;
    volatile Where where = Where.UNKNOWN;

    Kept(Entry entry) {
      kind = entry.kind();
      first = kind.equals("car") ? null : Belonging.parent(entry.body());
      parent = first;
      correction = kind.equals("correction") ? entry.body() : null;
    }
  }

  private final Map<String, Kept> entries = new ConcurrentHashMap<>();
  private final Map<String, List<String>> corrections = new HashMap<>();
  private final Set<String> waitedFor = new HashSet<>();

  /**
   * Takes in the next entry; of a key that was there before, nothing.
   *
   * @return the earlier entries that belong elsewhere since
   */
  Set<String> add(Entry entry) {
    String key = entry.key();
    Kept kept = new Kept(entry);
    if (entries.putIfAbsent(key, kept) != null) {
      return Set.of();
    }
    if (kept.parent != null && !entries.containsKey(kept.parent)) {
      waitedFor.add(kept.parent);
    }
    kept.where = where(kept.parent).of(key, kept.kind);
    Set<String> moved = new LinkedHashSet<>();
    if (waitedFor.remove(key)) {
      move(key, moved);
    }
    if (kept.correction != null) {
      corrections.computeIfAbsent(target(kept.correction), t -> new ArrayList<>()).add(key);
    }
    if (kept.correction != null || corrections.containsKey(key)) {
      follow(key, moved);
    }
    moved.remove(key);
    return moved;
  }

  /** Where an entry belongs now. */
  Where where(String key) {
    Kept kept = key == null ? null : entries.get(key);
    return kept == null ? Where.UNKNOWN : kept.where;
  }

  /** An entry's kind and where it belongs now; empty for a key that is not in the book. */
  Optional<Histories.Located> locate(String key) {
    return Optional.ofNullable(entries.get(key))
        .map(k -> new Histories.Located(key, k.kind, k.where.car(), k.where.corner()));
  }

  /** The key of the entry that a body hangs on, or null. */
  static String parent(JsonNode body) {
    return PARENTS.stream()
        .map(field -> body.path(field).textValue())
        .filter(named -> named != null && Draft.KEY.matcher(named).matches())
        .findFirst()
        .orElse(null);
  }

  private static String target(JsonNode correction) {
    return correction.path("target").asText();
  }

  /**
   * Puts what a correction is about where it stands now: where the newest correction of it says
   * that still stands itself, else where it was first.
   */
  private void follow(String correction, Set<String> moved) {
    String key = correction;
    Kept root = entries.get(key);
    for (int i = 0; i < DEEPEST && root != null && root.correction != null; i++) {
      key = target(root.correction);
      root = entries.get(key);
    }
    if (root == null || root.correction != null || root.kind.equals("car")) {
      return;
    }
    String parent = root.first;
    List<String> said = corrections.getOrDefault(key, List.of());
    Set<String> seen = new HashSet<>(Set.of(key));
    for (int i = said.size() - 1; i >= 0; i--) {
      JsonNode stands = standing(said.get(i), seen);
      String newer = stands == null ? null : parent(stands.path("body"));
      if (newer != null && target(stands).equals(key) && where(newer).car() != null) {
        parent = newer;
        break;
      }
    }
    if (!Objects.equals(parent, root.parent) && where(parent).car() != null) {
      root.parent = parent;
      move(key, moved);
    }
  }

  /** What a correction says now: itself corrected, or null when it was taken back. */
  private JsonNode standing(String key, Set<String> seen) {
    JsonNode first = entries.get(key).correction;
    if (!seen.add(key) || seen.size() > DEEPEST) {
      return first;
    }
    List<String> said = corrections.getOrDefault(key, List.of());
    for (int i = said.size() - 1; i >= 0; i--) {
      JsonNode stands = standing(said.get(i), seen);
      if (stands != null && target(stands).equals(key)) {
        return stands.path("body").isObject() ? stands.path("body") : null;
      }
    }
    return first;
  }

  /** Puts an entry, and what hangs on it, where its parent is. */
  private void move(String root, Set<String> moved) {
    Map<String, List<String>> below = new HashMap<>();
    entries.forEach(
        (key, kept) -> {
          if (kept.parent != null) {
            below.computeIfAbsent(kept.parent, p -> new ArrayList<>()).add(key);
          }
        });
    Set<String> seen = new HashSet<>();
    Deque<String> rest = new ArrayDeque<>(List.of(root));
    while (!rest.isEmpty()) {
      String key = rest.remove();
      Kept kept = entries.get(key);
      Where now = where(kept.parent).of(key, kept.kind);
      if (seen.add(key) && (key.equals(root) || !now.equals(kept.where))) {
        if (!now.equals(kept.where)) {
          kept.where = now;
          moved.add(key);
        }
        rest.addAll(below.getOrDefault(key, List.of()));
      }
    }
  }
}
