package spindlebook.advice;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.travel.CornerTravel;
import spindlebook.travel.EndFindings;
import spindlebook.travel.TravelFindings;

/**
 * All that is to see to before a drive, as far as the book knows: what is short, undecided,
 * missing, stale, in doubt, used up, opened, due or to do. It never says that a car is safe, only
 * whether anything of that is left.
 *
 * <p>Ordered by kind, as {@link ThingFirst.Why} stands; within what is short or undecided by the
 * least room, else left front first. Several readings of a corner that are missing, or stale, are
 * one thing: one round takes them. What is asked for as missing is not asked for again as stale.
 *
 * @param n the book's position it is of
 * @param corners left front first
 */
public record DriveCheck(long n, List<Checked> corners, List<ThingFirst> things) {

  /** One corner as it was found. */
  public record Checked(Card card, TravelFindings travel) {}

  public static DriveCheck of(CarBook book) {
    return of(book, List.of());
  }

  /**
   * @param more that others found, put in the order of the rest
   */
  public static DriveCheck of(CarBook book, List<ThingFirst> more) {
    List<Checked> corners =
        book.corners().stream()
            .map(book::card)
            .map(card -> new Checked(card, CornerTravel.of(card)))
            .toList();
    return new DriveCheck(book.n(), corners, new ThingsFirst(book, corners).inOrder(more));
  }

  /** Nothing is left to see to. */
  public boolean meetsRules() {
    return things.isEmpty();
  }

  /**
   * The corners, the worst first: by the first thing of each that its travel or its readings lead
   * to, in the order of {@link #things()}, so that a car's page and its drive check name the same
   * corner; then those with none of that, the least margin first; those never measured last.
   */
  public List<Checked> worstFirst() {
    return corners.stream()
        .sorted(
            Comparator.comparing((Checked c) -> c.card().heights().isEmpty())
                .thenComparing(c -> worst(c).map(things::indexOf).orElse(things.size()))
                .thenComparingDouble(DriveCheck::leastMarginMm)
                .thenComparing(c -> c.card().place()))
        .toList();
  }

  /**
   * The weightiest thing that a corner's travel or its readings lead to; empty when all is clear.
   */
  public Optional<ThingFirst> worst(Checked corner) {
    return things.stream()
        .filter(t -> corner.card().corner().equals(t.corner()) && t.ofReadings())
        .findFirst();
  }

  private static double leastMarginMm(Checked corner) {
    return Math.min(marginMm(corner.travel().droop()), marginMm(corner.travel().bump()));
  }

  private static double marginMm(EndFindings end) {
    return end.marginMm().map(m -> m.value()).orElse(Double.MAX_VALUE);
  }

  /** Empty for a key of none, and for the whole car's null. */
  public Optional<Checked> corner(String key) {
    return corners.stream().filter(c -> c.card().corner().equals(key)).findFirst();
  }

  /** How many of each kind a corner has; a corner of null is the whole car. */
  public Map<ThingFirst.Why, Integer> counts(String corner) {
    Map<ThingFirst.Why, Integer> counts = new LinkedHashMap<>();
    things.stream()
        .filter(t -> corner == null ? t.corner() == null : corner.equals(t.corner()))
        .forEach(t -> counts.merge(t.why(), t.count(), Integer::sum));
    return counts;
  }
}
