package spindlebook.curve;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import spindlebook.entry.Lock;
import spindlebook.entry.Pairing;
import spindlebook.entry.Quantity;
import spindlebook.fold.Card;
import spindlebook.fold.SeenHeight;
import spindlebook.fold.SeenReading;
import spindlebook.fold.Standing;
import spindlebook.uncertainty.Difference;
import spindlebook.uncertainty.Figure;

/**
 * The same thing at the left and at the right corner of one end of the car, at the same wheel
 * position and at the same lock as each wheel sees it.
 *
 * <pre>
 *   d = y_left − y_right − s (x_left − x_right)          both read there: |x_left − x_right| ≤ U
 *   d = y − c(x) − s (X − x)                             one read at X = x ± U, the other's curve c
 * </pre>
 *
 * <p>x wheel positions in mm, each from its side's own frame mark, so the two marks are held to sit
 * alike on the frame; y in mm or rad; s the slope of the curves there, 0 while neither side has
 * one; d + where the left one is larger. Heights are matched by where the wheel stood, never by
 * name: two straps need not stop it at one place. A side read elsewhere only has nothing to hold
 * against the other: nothing is drawn beyond its readings. Derived from {@link MeasuredCurve};
 * worked by hand in ReadingPairTest.
 *
 * @param point the watch point's key; null for other quantities
 * @param positionMm where they are compared, + towards bump; null for what is not
 * @param difference left less right; empty for what is not compared
 */
public record ReadingPair(
    Pairing pairing,
    Lock lock,
    Quantity quantity,
    String point,
    Double positionMm,
    Side left,
    Side right,
    Optional<Difference> difference) {

  /**
   * One side of it.
   *
   * @param read the last reading there; empty where none is
   * @param value as read, the mean of repeats, or by the side's curve; empty for what is no number
   * @param elsewhere whether the side was read, but not there
   */
  public record Side(Optional<SeenReading> read, Optional<Figure> value, boolean elsewhere) {
    public boolean byCurve() {
      return read.isEmpty() && value.isPresent();
    }
  }

  private record Thing(
      Pairing pairing, Lock lock, Quantity quantity, String point, boolean angle) {}

  /** What one side has of a thing: as points along its travel, and what cannot be compared. */
  private record Had(List<SeenReading> all, List<Node> nodes, Optional<MeasuredCurve> curve) {
    static Had of(List<SeenReading> all) {
      List<Node> nodes =
          Node.merge(all.stream().filter(ReadingPair::comparable).map(Had::node).toList());
      return new Had(
          all, nodes, nodes.size() < 2 ? Optional.empty() : Optional.of(new MeasuredCurve(nodes)));
    }

    private static Node node(SeenReading r) {
      return new Node(r.height().positionMm(), r.value(), Bound.EXACT, List.of(r.key()));
    }

    Optional<Node> at(Node other) {
      return nodes.stream().filter(n -> n.samePlaceAs(other)).findFirst();
    }

    /** Its value at a place, by the curve, where that was read on both sides of it. */
    Optional<Figure> byCurve(double xMm) {
      return curve.filter(c -> c.fromMm() <= xMm && xMm <= c.toMm()).map(c -> c.at(xMm));
    }

    Optional<Double> slope(double xMm) {
      return curve.map(c -> c.cubic().slope(Math.max(c.fromMm(), Math.min(c.toMm(), xMm))));
    }

    Side side(Node node) {
      Optional<SeenReading> last =
          all.stream()
              .filter(r -> node.readings().contains(r.key()))
              .reduce((earlier, later) -> later);
      return new Side(last, Optional.of(node.value()), false);
    }

    Side curved(Figure value) {
      return new Side(Optional.empty(), Optional.of(value), true);
    }

    Side none() {
      return new Side(Optional.empty(), Optional.empty(), !nodes.isEmpty());
    }

    /** The last reading at a height of this one's name that cannot be compared. */
    Side named(SeenReading other) {
      return all.stream()
          .filter(r -> !comparable(r) && sameName(r, other))
          .reduce((earlier, later) -> later)
          .map(r -> new Side(Optional.of(r), Optional.ofNullable(r.value()), false))
          .orElse(none());
    }
  }

  /** From droop to bump, then straight, inner, outer; as they were read within that. */
  public static List<ReadingPair> of(Card left, Card right) {
    Map<Thing, List<SeenReading>> ofLeft = things(left);
    Map<Thing, List<SeenReading>> ofRight = things(right);
    Map<Thing, List<SeenReading>> all = new LinkedHashMap<>(ofLeft);
    ofRight.forEach(all::putIfAbsent);
    List<ReadingPair> pairs = new ArrayList<>();
    for (Thing thing : all.keySet()) {
      Had l = Had.of(ofLeft.getOrDefault(thing, List.of()));
      Had r = Had.of(ofRight.getOrDefault(thing, List.of()));
      pairs.addAll(compared(thing, l, r));
      pairs.addAll(notCompared(thing, l, r));
    }
    pairs.sort(
        Comparator.comparing(ReadingPair::pairing)
            .thenComparing(p -> p.positionMm == null ? Double.POSITIVE_INFINITY : p.positionMm)
            .thenComparing(ReadingPair::lock));
    return List.copyOf(pairs);
  }

  private static Map<Thing, List<SeenReading>> things(Card card) {
    Map<Thing, List<SeenReading>> things = new LinkedHashMap<>();
    for (SeenReading r : card.readings()) {
      if (r.stands() != Standing.REPLACED && !r.notWatched()) {
        Thing thing =
            new Thing(
                r.height().pairing(),
                Lock.of(card.place(), r.reading().steering()),
                r.reading().quantity(),
                r.reading().point(),
                r.reading().angle() != null);
        things.computeIfAbsent(thing, t -> new ArrayList<>()).add(r);
      }
    }
    return things;
  }

  private static List<ReadingPair> compared(Thing thing, Had l, Had r) {
    List<ReadingPair> pairs = new ArrayList<>();
    for (Node node : l.nodes()) {
      double x = node.positionMm().value();
      Optional<Node> there = r.at(node);
      Optional<Figure> curved = there.isPresent() ? Optional.empty() : r.byCurve(x);
      Side side =
          there
              .map(r::side)
              .or(() -> curved.map(r::curved))
              .orElseGet(() -> r.named(last(l, node)));
      Optional<Difference> difference =
          there
              .map(other -> both(node, other, slope(l, r, x)))
              .or(() -> curved.map(c -> Difference.of(level(node, r.slope(x)), c)));
      pairs.add(pair(thing, x, l.side(node), side, difference));
    }
    for (Node node : r.nodes()) {
      if (l.at(node).isEmpty()) {
        double x = node.positionMm().value();
        Optional<Figure> curved = l.byCurve(x);
        pairs.add(
            pair(
                thing,
                x,
                curved.map(l::curved).orElseGet(() -> l.named(last(r, node))),
                r.side(node),
                curved.map(c -> Difference.of(c, level(node, l.slope(x))))));
      }
    }
    return pairs;
  }

  private static SeenReading last(Had had, Node node) {
    return had.side(node).read().orElseThrow();
  }

  private static Difference both(Node l, Node r, double slope) {
    Figure apartMm = l.positionMm().minus(r.positionMm());
    return Difference.of(l.value(), r.value().plus(apartMm.times(slope)));
  }

  /** A reading as it would be at its place exactly: the doubt of the place falls on the value. */
  private static Figure level(Node node, Optional<Double> slope) {
    Figure off = node.positionMm().plus(-node.positionMm().value());
    return node.value().minus(off.times(slope.orElse(0.0)));
  }

  private static double slope(Had l, Had r, double xMm) {
    return Stream.of(l.slope(xMm), r.slope(xMm))
        .flatMap(Optional::stream)
        .mapToDouble(s -> s)
        .average()
        .orElse(0);
  }

  /**
   * What went stale, is in doubt, is a word, or has no wheel position: beside what has its name.
   */
  private static List<ReadingPair> notCompared(Thing thing, Had l, Had r) {
    List<ReadingPair> pairs = new ArrayList<>();
    for (SeenReading one : l.all()) {
      if (!comparable(one) && lastOfName(l, one) && noneNamed(r, one)) {
        pairs.add(pair(thing, null, l.named(one), r.named(one), Optional.empty()));
      }
    }
    for (SeenReading one : r.all()) {
      boolean stood = l.all().stream().anyMatch(o -> sameName(o, one));
      if (!comparable(one) && lastOfName(r, one) && !stood) {
        pairs.add(pair(thing, null, l.none(), r.named(one), Optional.empty()));
      }
    }
    return pairs;
  }

  private static boolean lastOfName(Had had, SeenReading one) {
    return had.named(one).read().filter(one::equals).isPresent();
  }

  /** Where the other side has a number at a height of that name, it stands beside that. */
  private static boolean noneNamed(Had had, SeenReading one) {
    return had.all().stream().noneMatch(o -> comparable(o) && sameName(o, one));
  }

  private static ReadingPair pair(
      Thing thing, Double positionMm, Side left, Side right, Optional<Difference> difference) {
    return new ReadingPair(
        thing.pairing(),
        thing.lock(),
        thing.quantity(),
        thing.point(),
        difference.isPresent() ? positionMm : null,
        left,
        right,
        difference);
  }

  private static boolean comparable(SeenReading r) {
    return r.counts() && r.value() != null;
  }

  /** Two heights in between without words for them need not be near each other. */
  private static boolean sameName(SeenReading one, SeenReading other) {
    SeenHeight height = one.height();
    String label = height.height().label();
    boolean named = height.name().onePlace() || (label != null && !label.isBlank());
    return named && height.words().equals(other.height().words());
  }

  /** A reading of either side, the left one's first. */
  public SeenReading either() {
    return left.read().or(right::read).orElseThrow();
  }

  /** Whether both were read at a height of one name, or one of them alone was. */
  public boolean oneName() {
    return left.read().isEmpty()
        ? !left.byCurve()
        : right.read().isEmpty()
            ? !right.byCurve()
            : sameName(left.read().get(), right.read().get());
  }

  /** What was read, in the trade's words. */
  public String words() {
    return either().what();
  }

  public boolean angle() {
    return either().reading().angle() != null;
  }
}
