package spindlebook.measured;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import spindlebook.entry.AlignedThing;
import spindlebook.fold.Card;
import spindlebook.fold.SeenAlignment;
import spindlebook.fold.SeenReading;
import spindlebook.fold.Standing;
import spindlebook.uncertainty.Figure;

/**
 * One thing of alignment as a corner's book knows it: the mean of the last measurement that counts
 * and its repeats, else what a round read at ride where that counts, else the last measurement that
 * no longer does.
 *
 * @param stands the worst of what it rests on
 * @param from what it rests on, the newest first
 * @param inRound the readings of rounds that it rests on, likewise
 */
public record Known(
    Figure value, Standing stands, List<SeenAlignment> from, List<SeenReading> inRound) {
  private static final List<Standing> WORST_FIRST =
      List.of(Standing.IN_DOUBT, Standing.STALE, Standing.PUT_BACK, Standing.LIVE);

  Known(Figure value, Standing stands, List<SeenAlignment> from) {
    this(value, stands, from, List.of());
  }

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
    return orInRound(of(at, AlignedThing.CAMBER, ReadAlignment::camberRad), ReadAtRide.camber(at));
  }

  static Optional<Known> toe(Card at) {
    return orInRound(of(at, AlignedThing.TOE, ReadAlignment::toeRad), ReadAtRide.toe(at));
  }

  private static Optional<Known> orInRound(Optional<Known> measured, Optional<ReadAtRide> read) {
    return measured
        .filter(Known::counts)
        .or(
            () ->
                read.filter(ReadAtRide::counts)
                    .map(r -> new Known(r.value(), r.stands(), List.of(), r.from())))
        .or(() -> measured);
  }

  boolean counts() {
    return stands.counts();
  }

  /** Its place in the book: that of its last repeat. */
  long newest() {
    return Stream.concat(from.stream().map(SeenAlignment::n), inRound.stream().map(SeenReading::n))
        .mapToLong(n -> n)
        .max()
        .orElse(0);
  }

  /** The same value, resting on another as well. */
  Known restingOn(Known other) {
    return new Known(
        value,
        worse(stands, other.stands),
        Stream.concat(from.stream(), other.from.stream()).distinct().toList(),
        Stream.concat(inRound.stream(), other.inRound.stream()).distinct().toList());
  }

  static Standing stands(List<SeenAlignment> from) {
    return worst(from.stream().map(SeenAlignment::stands));
  }

  /** Of several things that one figure rests on. */
  static Standing worst(Stream<Standing> all) {
    return all.reduce(Known::worse).orElseThrow();
  }

  private static Standing worse(Standing one, Standing other) {
    return WORST_FIRST.stream().filter(s -> s == one || s == other).findFirst().orElseThrow();
  }
}
