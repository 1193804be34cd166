package spindlebook.fold;

import java.lang.ref.WeakReference;
import java.util.AbstractList;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.ToLongFunction;
import java.util.stream.LongStream;
import spindlebook.definition.Adjuster;
import spindlebook.definition.AdjusterKind;
import spindlebook.definition.Place;
import spindlebook.definition.Setting;
import spindlebook.definition.SettingUnit;
import spindlebook.entry.Content;
import spindlebook.entry.HappeningKind;

/**
 * What every adjuster of the car was set to, over time, and what befell the car. Answers whether a
 * thing read with knowledge up to one entry still holds.
 */
final class Settings {
  private record Turn(long n, Setting to) {}

  private record Named(Place place, String adjuster) {}

  private static final class Line {
    final Place place;
    final Adjuster adjuster;
    final long from;
    final List<Turn> turns;
    final List<Change> changes;

    /** The last entry with which another part of the same kind was fitted. */
    private long otherPart;

    /** For each turn whether all later ones say its setting again; made once nothing is added. */
    private volatile boolean[] leftAsAt;

    Line(Place place, Adjuster adjuster, long from, List<Turn> turns, List<Change> changes) {
      this.place = place;
      this.adjuster = adjuster;
      this.from = from;
      this.turns = turns;
      this.changes = changes;
    }

    /** Whether all turns after one leave it as it stood there. */
    boolean leftAsAt(int turn) {
      if (leftAsAt == null) {
        boolean[] left = new boolean[turns.size()];
        for (int i = left.length - 1; i >= 0; i--) {
          left[i] =
              i == left.length - 1
                  || (left[i + 1] && turns.get(i).to().same(turns.get(i + 1).to()));
        }
        leftAsAt = left;
      }
      return leftAsAt[turn];
    }

    Setting now() {
      return turns.isEmpty() ? null : turns.get(turns.size() - 1).to();
    }

    /**
     * What it is worth now, for what was read with knowledge up to an entry, that it was changed.
     */
    Standing since(long after, Subject subject) {
      if (upTo(changes, Change::n, after) == changes.size()) {
        return Standing.LIVE;
      }
      if (otherPart > after) {
        return Standing.STALE;
      }
      boolean known = movesBy(subject, after).isPresent();
      if (known && subject instanceof Subject.GivenLength) {
        return Standing.LIVE;
      }
      int turn = upTo(turns, Turn::n, after) - 1;
      Setting then = asOf(after);
      if (then == null) {
        return known ? Standing.WORKED_OUT : Standing.STALE;
      }
      // Nothing was turned where all that was entered since says the number that stood already. A
      // part named in words may be another one of the same name, so words said again are a change.
      if (leftAsAt(turn)) {
        return then.amount() == null ? Standing.STALE : Standing.LIVE;
      }
      if (then.same(now())) {
        return Standing.PUT_BACK;
      }
      return known ? Standing.WORKED_OUT : Standing.STALE;
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
        return now().amount() == null ? OptionalDouble.empty() : OptionalDouble.of(0);
      }
      OptionalDouble moreMm = moreMm(after);
      return moreMm.isEmpty()
          ? moreMm
          : OptionalDouble.of(perMm.getAsDouble() * moreMm.getAsDouble());
    }

    /** By how much it is set to more than it was then; empty where no length tells. */
    private OptionalDouble moreMm(long after) {
      Setting then = asOf(after) == null ? adjuster.first() : asOf(after);
      Setting now = now();
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

    private Setting asOf(long n) {
      int turn = upTo(turns, Turn::n, n) - 1;
      return turn < 0 ? null : turns.get(turn).to();
    }
  }

  private record Befallen(Place place, HappeningKind what, Change change) {}

  /** Whether a thing holds, and the changes since that say otherwise. */
  record Verdict(Standing stands, List<Change> because) {}

  private final Map<Named, Line> lines = new LinkedHashMap<>();
  private final List<Befallen> happenings = new ArrayList<>();
  private final Map<Seen, WhatMoves> moving = new ConcurrentHashMap<>();
  private final Set<Place> solidAxles = EnumSet.noneOf(Place.class);

  /** One solid axle carries the wheel at this place, and the one at its mirror. */
  void onSolidAxle(Place place) {
    solidAxles.add(place);
  }

  /** Whether the car has one. */
  boolean solidAxle() {
    return !solidAxles.isEmpty();
  }

  private Where where(Place corner, Place changed) {
    return Where.seenFrom(corner, changed, solidAxles.contains(corner));
  }

  /** Adds an adjuster; a later version of the same keeps its history. */
  void add(Place place, Adjuster adjuster, long n) {
    Line old = lines.remove(new Named(place, adjuster.adjuster()));
    Line line =
        old == null
            ? new Line(place, adjuster, n, new ArrayList<>(), new ArrayList<>())
            : new Line(place, adjuster, old.from, old.turns, old.changes);
    line.otherPart = old == null ? 0 : old.otherPart;
    if (line.turns.isEmpty() && adjuster.first() != null) {
      line.turns.add(new Turn(line.from, adjuster.first()));
    }
    lines.put(new Named(place, adjuster.adjuster()), line);
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

  /** Another part of its kind, set as the last one was. */
  void fit(Place place, String adjuster, Change change) {
    Line line = find(place, adjuster);
    if (line != null) {
      line.otherPart = change.n();
      line.changes.add(change);
    }
  }

  void befall(Place place, HappeningKind what, Change change) {
    happenings.add(new Befallen(place, what, change));
  }

  /** What an adjuster is called; its short name when the book does not know it. */
  String name(Place place, String adjuster) {
    Line line = find(place, adjuster);
    return line == null ? adjuster : line.adjuster.name();
  }

  /** What an adjuster is; null when the book does not know it. */
  AdjusterKind kind(Place place, String adjuster) {
    Line line = find(place, adjuster);
    return line == null ? null : line.adjuster.kind();
  }

  Setting now(Place place, String adjuster) {
    Line line = find(place, adjuster);
    return line == null ? null : line.now();
  }

  Change lastChange(Place place, String adjuster) {
    Line line = find(place, adjuster);
    return line == null || line.changes.isEmpty()
        ? null
        : line.changes.get(line.changes.size() - 1);
  }

  List<Change> changes() {
    List<Change> all = new ArrayList<>();
    lines.values().forEach(l -> all.addAll(l.changes));
    happenings.forEach(h -> all.add(h.change()));
    return all.stream().sorted(Comparator.comparingLong(Change::n)).toList();
  }

  /** A thing as it is asked about from one corner. */
  private record Seen(Place corner, Subject subject) {}

  /** All that moves or wears one thing; what of it came since is the same for all read between. */
  private final class WhatMoves {
    private final Subject subject;
    final List<Line> lines = new ArrayList<>();
    final List<Befallen> happenings = new ArrayList<>();

    /** Positions at which something of it, or the first that is known of it, was entered. */
    private final long[] steps;

    /** Positions of the changes that moved or wore it. */
    private final long[] changed;

    private final Map<Integer, Verdict> verdicts = new ConcurrentHashMap<>();

    WhatMoves(Place corner, Subject subject) {
      this.subject = subject;
      LongStream.Builder changes = LongStream.builder();
      for (Line l : Settings.this.lines.values()) {
        Where where = where(corner, l.place);
        boolean moves = Moves.by(l.adjuster.kind(), where, subject);
        if (moves) {
          lines.add(l);
        }
        if (moves || Moves.wears(l.adjuster.kind(), where, subject)) {
          l.changes.forEach(c -> changes.add(c.n()));
        }
      }
      for (Befallen b : Settings.this.happenings) {
        Where where = b.place() == null ? Where.HERE : where(corner, b.place());
        boolean moves = Moves.by(b.what(), where, subject);
        if (moves) {
          happenings.add(b);
        }
        if (moves || Moves.wears(b.what(), where, subject)) {
          changes.add(b.change().n());
        }
      }
      changed = changes.build().sorted().distinct().toArray();
      steps =
          LongStream.concat(
                  Arrays.stream(changed),
                  lines.stream().flatMap(l -> l.turns.stream()).mapToLong(Turn::n))
              .sorted()
              .distinct()
              .toArray();
    }

    Verdict since(long after) {
      return verdicts.computeIfAbsent(upTo(steps, after), step -> judge(after));
    }

    private Verdict judge(long after) {
      Standing worst = Standing.LIVE;
      for (Line line : lines) {
        Standing stands = line.since(after, subject);
        worst = stands == Standing.STALE || worst == Standing.LIVE ? stands : worst;
      }
      if (upTo(happenings, b -> b.change().n(), after) < happenings.size()) {
        worst = Standing.STALE;
      }
      return new Verdict(
          worst, worst == Standing.LIVE ? List.of() : new Because(this, after, worst));
    }

    List<Change> because(long after, Standing worst) {
      List<Change> because = new ArrayList<>();
      for (Line line : standing(after, worst)) {
        because.addAll(
            line.changes.subList(upTo(line.changes, Change::n, after), line.changes.size()));
      }
      if (worst == Standing.STALE) {
        happenings.stream().map(Befallen::change).filter(c -> c.n() > after).forEach(because::add);
      }
      return because;
    }

    List<Line> standing(long after, Standing as) {
      return lines.stream().filter(line -> line.since(after, subject) == as).toList();
    }

    long last(long after) {
      int many = upTo(changed, after);
      return many == 0 ? 0 : changed[many - 1];
    }
  }

  /**
   * The changes since, told anew whenever nobody holds them: kept for each of many readings they
   * would grow with the square of the book.
   */
  static final class Because extends AbstractList<Change> {
    private final WhatMoves moves;
    private final long after;
    private final Standing worst;
    private volatile WeakReference<List<Change>> told = new WeakReference<>(null);

    Because(WhatMoves moves, long after, Standing worst) {
      this.moves = moves;
      this.after = after;
      this.worst = worst;
    }

    /** Of two that tell of the same settings the one that tells of more tells all of the other. */
    Object of() {
      return List.of(moves, worst, moves.standing(after, worst));
    }

    Because longer(Because other) {
      return after <= other.after ? this : other;
    }

    private List<Change> told() {
      List<Change> known = told.get();
      if (known == null) {
        known = moves.because(after, worst);
        told = new WeakReference<>(known);
      }
      return known;
    }

    @Override
    public Change get(int i) {
      return told().get(i);
    }

    @Override
    public Iterator<Change> iterator() {
      return Collections.unmodifiableList(told()).iterator();
    }

    @Override
    public int size() {
      return told().size();
    }
  }

  /**
   * What a thing read at {@code corner} with knowledge up to entry {@code after} is worth now:
   * stale when something that moves it stands differently or befell it, put back when it was
   * changed and changed back. To be asked once all was taken in.
   */
  Verdict judge(Place corner, long after, Subject subject) {
    return moving(corner, subject).since(after);
  }

  /** How many mm more a thing is for what was set since, where it is known of every change. */
  double movedMm(Place corner, long after, Subject subject) {
    return moving(corner, subject).lines.stream()
        .mapToDouble(l -> l.movesBy(subject, after).orElse(0))
        .sum();
  }

  /**
   * The last change, up to {@code after}, that moved or wore the subject: two readings of the same
   * named place are of one place only when nothing did between them.
   */
  long era(Place corner, long after, Subject subject) {
    return moving(corner, subject).last(after);
  }

  private WhatMoves moving(Place corner, Subject subject) {
    return moving.computeIfAbsent(
        new Seen(corner, subject), s -> new WhatMoves(s.corner(), s.subject()));
  }

  /** How many of what is in the book's order came up to an entry. */
  private static <T> int upTo(List<T> inOrder, ToLongFunction<T> n, long after) {
    int low = 0;
    int high = inOrder.size();
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (n.applyAsLong(inOrder.get(middle)) <= after) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }

  private static int upTo(long[] inOrder, long after) {
    int place = Arrays.binarySearch(inOrder, after);
    return place < 0 ? -place - 1 : place + 1;
  }

  private Line find(Place place, String adjuster) {
    return lines.get(new Named(place, adjuster));
  }
}
