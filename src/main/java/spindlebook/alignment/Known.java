package spindlebook.alignment;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import spindlebook.corner.AlignedThing;
import spindlebook.corner.AlignmentWay;
import spindlebook.corner.Card;
import spindlebook.corner.SeenAlignment;
import spindlebook.corner.Standing;
import spindlebook.uncertainty.Figure;

/**
 * One thing of alignment as a corner's book knows it: the mean of the last measurement that counts
 * and its repeats, else the last one that no longer does.
 *
 * @param stands the worst of what it rests on
 * @param from what it rests on, the newest first
 */
record Known(Figure value, Standing stands, List<SeenAlignment> from) {
  private static final List<Standing> WORST_FIRST =
      List.of(Standing.IN_DOUBT, Standing.STALE, Standing.PUT_BACK, Standing.LIVE);

  static Optional<Known> of(Card at, AlignedThing thing, Function<ReadAlignment, Figure> reads) {
    List<SeenAlignment> from = at.aligned().of(thing);
    return from.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Known(
                Figure.mean(from.stream().map(ReadAlignment::new).map(reads).toList()),
                stands(from),
                from));
  }

  static Optional<Known> camber(Card at) {
    return of(at, AlignedThing.CAMBER, r -> r.camberRad((AlignmentWay.Gauge) r.way()));
  }

  static Optional<Known> toe(Card at) {
    return of(at, AlignedThing.TOE, ReadAlignment::toeRad);
  }

  boolean counts() {
    return stands.counts();
  }

  SeenAlignment last() {
    return from.get(0);
  }

  /** The same value, resting on another as well. */
  Known restingOn(Known other) {
    Set<SeenAlignment> all = new LinkedHashSet<>(from);
    all.addAll(other.from);
    return new Known(value, worse(stands, other.stands), List.copyOf(all));
  }

  static Standing stands(List<SeenAlignment> from) {
    return from.stream().map(SeenAlignment::stands).reduce(Known::worse).orElseThrow();
  }

  private static Standing worse(Standing one, Standing other) {
    return WORST_FIRST.stream().filter(s -> s == one || s == other).findFirst().orElseThrow();
  }
}
