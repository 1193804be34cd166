package spindlebook.corner;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import spindlebook.uncertainty.Difference;

/**
 * The same thing read at the left and at the right corner of one end of the car: at the height of
 * the same name and at the same lock as each wheel sees it.
 *
 * @param label the owner's words for a height in between; empty for a named height
 * @param pairing how the ends of a solid axle stood; both together for wheels hung alone
 * @param point the watch point's key; null for other quantities
 * @param left the last reading there that counts, else the last of all; empty when there is none
 * @param difference left less right, mm or radians; empty unless both count and both are numbers
 */
public record ReadingPair(
    HeightName name,
    String label,
    Pairing pairing,
    Lock lock,
    Quantity quantity,
    String point,
    Optional<SeenReading> left,
    Optional<SeenReading> right,
    Optional<Difference> difference) {

  private record Thing(
      HeightName name, String label, Pairing pairing, Lock lock, Quantity quantity, String point) {
    static Thing of(Card card, SeenReading r) {
      String label = r.height().name().onePlace() ? null : r.height().height().label();
      return new Thing(
          r.height().name(),
          label == null ? "" : label.strip(),
          r.height().pairing(),
          Lock.of(card.place(), r.reading().steering()),
          r.reading().quantity(),
          r.reading().point());
    }

    /** Two heights in between without words for them need not be near each other. */
    boolean named() {
      return name.onePlace() || !label.isEmpty();
    }
  }

  /** By height from droop to bump, then straight, inner, outer; as they were read within that. */
  public static List<ReadingPair> of(Card left, Card right) {
    Set<Thing> things = new LinkedHashSet<>();
    for (Card card : List.of(left, right)) {
      for (SeenReading r : card.readings()) {
        Thing thing = Thing.of(card, r);
        if (thing.named() && r.stands() != Standing.REPLACED && !r.notWatched()) {
          things.add(thing);
        }
      }
    }
    List<ReadingPair> pairs = new ArrayList<>();
    for (Thing thing : things) {
      pairs.add(pair(thing, last(left, thing), last(right, thing)));
    }
    pairs.sort(
        Comparator.comparing(ReadingPair::name)
            .thenComparing(ReadingPair::pairing)
            .thenComparing(ReadingPair::label)
            .thenComparing(ReadingPair::lock));
    return List.copyOf(pairs);
  }

  private static Optional<SeenReading> last(Card card, Thing thing) {
    List<SeenReading> all =
        card.readings().stream()
            .filter(r -> r.stands() != Standing.REPLACED && Thing.of(card, r).equals(thing))
            .toList();
    Optional<SeenReading> counts =
        all.stream().filter(SeenReading::counts).reduce((earlier, later) -> later);
    return counts.or(() -> all.stream().reduce((earlier, later) -> later));
  }

  private static ReadingPair pair(
      Thing thing, Optional<SeenReading> left, Optional<SeenReading> right) {
    Optional<Difference> difference =
        left.filter(ReadingPair::comparable)
            .flatMap(
                l ->
                    right
                        .filter(ReadingPair::comparable)
                        .filter(r -> angle(l) == angle(r))
                        .map(r -> Difference.of(l.value(), r.value())));
    return new ReadingPair(
        thing.name(),
        thing.label(),
        thing.pairing(),
        thing.lock(),
        thing.quantity(),
        thing.point(),
        left,
        right,
        difference);
  }

  private static boolean comparable(SeenReading r) {
    return r.counts() && r.value() != null;
  }

  private static boolean angle(SeenReading r) {
    return r.reading().angle() != null;
  }

  /** Whether the two are of an angle. */
  public boolean angle() {
    return left.or(() -> right).map(ReadingPair::angle).orElse(false);
  }

  /** Whether both were read, whatever it is worth now. */
  public boolean both() {
    return left.isPresent() && right.isPresent();
  }

  /** What was read, in the trade's words. */
  public String words() {
    return left.or(() -> right).map(SeenReading::what).orElse(Objects.toString(point, ""));
  }
}
