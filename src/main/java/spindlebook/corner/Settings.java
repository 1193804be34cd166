package spindlebook.corner;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * What every adjuster of the car was set to, over time, and what befell the car. Answers whether a
 * thing read with knowledge up to one entry still holds.
 */
final class Settings {
  private record Turn(long n, Setting to) {}

  private static final class Line {
    final Place place;
    final Adjuster adjuster;
    final long from;
    final List<Turn> turns = new ArrayList<>();
    final List<Change> changes = new ArrayList<>();

    Line(Place place, Adjuster adjuster, long from) {
      this.place = place;
      this.adjuster = adjuster;
      this.from = from;
    }

    /**
     * Whether all that was entered since says the number that stood already: nothing was turned. A
     * part named in words may be another one of the same name, so words said again are a change.
     */
    boolean onlySaidAgain(Setting then, long after) {
      return then != null
          && then.amount() != null
          && turns.stream().filter(t -> t.n() > after).allMatch(t -> then.same(t.to()));
    }

    /** Whether it stood differently in between: words merely said again name another part. */
    boolean leftIn(Setting then, long after) {
      return turns.stream().anyMatch(t -> t.n() > after && !then.same(t.to()));
    }

    /** How many mm more the subject is for having been set since; empty where nobody knows. */
    OptionalDouble movesBy(Subject subject, long after) {
      OptionalDouble perMm = Moves.perMm(adjuster.kind(), subject);
      if (perMm.isEmpty()) {
        return perMm;
      }
      boolean saysItself = perMm.getAsDouble() == 0 || adjuster.unit() == SettingUnit.LENGTH;
      if (subject instanceof Subject.GivenLength && saysItself) {
        // Where it stood before does not matter; but words may name another part.
        return asOf(Long.MAX_VALUE).amount() == null
            ? OptionalDouble.empty()
            : OptionalDouble.of(0);
      }
      OptionalDouble moreMm = moreMm(after);
      return moreMm.isEmpty()
          ? moreMm
          : OptionalDouble.of(perMm.getAsDouble() * moreMm.getAsDouble());
    }

    /** By how much it is set to more than it was then; empty where no length tells. */
    private OptionalDouble moreMm(long after) {
      Setting then = asOf(after) == null ? adjuster.first() : asOf(after);
      Setting now = asOf(Long.MAX_VALUE);
      boolean counted =
          then != null
              && then.amount() != null
              && then.unit() == now.unit()
              && now.unit() == adjuster.unit();
      if (!counted || (adjuster.unit() != SettingUnit.LENGTH && adjuster.step() == null)) {
        return OptionalDouble.empty();
      }
      double more = now.amount() - then.amount();
      return OptionalDouble.of(
          adjuster.unit() == SettingUnit.LENGTH
              ? more
              : more * adjuster.step().mm() * (adjuster.moreShortens() ? -1 : 1));
    }

    Setting asOf(long n) {
      Setting setting = null;
      for (Turn turn : turns) {
        if (turn.n() <= n) {
          setting = turn.to();
        }
      }
      return setting;
    }
  }

  private record Befallen(Place place, HappeningKind what, Change change) {}

  /** Whether a thing holds, and the changes since that say otherwise. */
  record Verdict(Standing stands, List<Change> because) {}

  private final List<Line> lines = new ArrayList<>();
  private final List<Befallen> happenings = new ArrayList<>();
  private final Set<Place> solidAxles = EnumSet.noneOf(Place.class);

  /** One solid axle carries the wheel at this place, and the one at its mirror. */
  void onSolidAxle(Place place) {
    solidAxles.add(place);
  }

  private Where where(Place corner, Place changed) {
    return Where.seenFrom(corner, changed, solidAxles.contains(corner));
  }

  /** Adds an adjuster; a later version of the same keeps its history. */
  void add(Place place, Adjuster adjuster, long n) {
    Line old = find(place, adjuster.adjuster());
    Line line = new Line(place, adjuster, old == null ? n : old.from);
    if (old != null) {
      line.turns.addAll(old.turns);
      line.changes.addAll(old.changes);
      lines.remove(old);
    }
    if (line.turns.isEmpty() && adjuster.first() != null) {
      line.turns.add(new Turn(line.from, adjuster.first()));
    }
    lines.add(line);
  }

  void adjust(Place place, Content.Adjustment adjustment, Change change) {
    Line line = find(place, adjustment.adjuster());
    if (line == null) {
      return;
    }
    if (line.turns.isEmpty() && adjustment.from() != null) {
      // Never set before: it stood at 'from' for as long as the book knows.
      line.turns.add(new Turn(0, adjustment.from()));
    }
    line.turns.add(new Turn(change.n(), adjustment.to()));
    line.changes.add(change);
  }

  void befall(Place place, HappeningKind what, Change change) {
    happenings.add(new Befallen(place, what, change));
  }

  /** What an adjuster is called; its short name when the book does not know it. */
  String name(Place place, String adjuster) {
    Line line = find(place, adjuster);
    return line == null ? adjuster : line.adjuster.name();
  }

  Setting now(Place place, String adjuster) {
    Line line = find(place, adjuster);
    return line == null ? null : line.asOf(Long.MAX_VALUE);
  }

  Change lastChange(Place place, String adjuster) {
    Line line = find(place, adjuster);
    return line == null || line.changes.isEmpty()
        ? null
        : line.changes.get(line.changes.size() - 1);
  }

  List<Change> changes() {
    List<Change> all = new ArrayList<>();
    lines.forEach(l -> all.addAll(l.changes));
    happenings.forEach(h -> all.add(h.change()));
    return all.stream().sorted(Comparator.comparingLong(Change::n)).toList();
  }

  /**
   * What a thing read at {@code corner} with knowledge up to entry {@code after} is worth now:
   * stale when something that moves it stands differently or befell it, put back when it was
   * changed and changed back.
   */
  Verdict judge(Place corner, long after, Subject subject) {
    List<Change> moved = new ArrayList<>();
    List<Change> putBack = new ArrayList<>();
    for (Line line : lines) {
      List<Change> since = line.changes.stream().filter(c -> c.n() > after).toList();
      if (since.isEmpty() || !Moves.by(line.adjuster.kind(), where(corner, line.place), subject)) {
        continue;
      }
      Setting then = line.asOf(after);
      if (line.onlySaidAgain(then, after)) {
        continue;
      }
      Setting now = line.asOf(Long.MAX_VALUE);
      boolean back = then != null && then.same(now) && line.leftIn(then, after);
      boolean known = line.movesBy(subject, after).isPresent();
      if (!known) {
        (back ? putBack : moved).addAll(since);
      }
    }
    for (Befallen b : happenings) {
      Where where = b.place() == null ? Where.HERE : where(corner, b.place());
      if (b.change().n() > after && Moves.by(b.what(), where, subject)) {
        moved.add(b.change());
      }
    }
    if (!moved.isEmpty()) {
      return new Verdict(Standing.STALE, List.copyOf(moved));
    }
    return putBack.isEmpty()
        ? new Verdict(Standing.LIVE, List.of())
        : new Verdict(Standing.PUT_BACK, List.copyOf(putBack));
  }

  /**
   * The last change, up to {@code after}, that moved or wore the subject: two readings of the same
   * named place are of one place only when nothing did between them.
   */
  long era(Place corner, long after, Subject subject) {
    long last = 0;
    for (Line line : lines) {
      if (Moves.by(line.adjuster.kind(), where(corner, line.place), subject)) {
        last = Math.max(last, lastUpTo(line.changes, after));
      }
    }
    for (Befallen b : happenings) {
      Where where = b.place() == null ? Where.HERE : where(corner, b.place());
      if (Moves.by(b.what(), where, subject) || Moves.wears(b.what(), where, subject)) {
        last = Math.max(last, lastUpTo(List.of(b.change()), after));
      }
    }
    return last;
  }

  private static long lastUpTo(List<Change> changes, long after) {
    return changes.stream().mapToLong(Change::n).filter(n -> n <= after).max().orElse(0);
  }

  private Line find(Place place, String adjuster) {
    return lines.stream()
        .filter(l -> l.place == place && Objects.equals(l.adjuster.adjuster(), adjuster))
        .findFirst()
        .orElse(null);
  }
}
