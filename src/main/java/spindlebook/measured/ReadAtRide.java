package spindlebook.measured;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import spindlebook.alignment.ToeRead;
import spindlebook.entry.Content;
import spindlebook.entry.HeightName;
import spindlebook.entry.Quantity;
import spindlebook.entry.Steering;
import spindlebook.entry.Zeroing;
import spindlebook.fold.Card;
import spindlebook.fold.SeenReading;
import spindlebook.fold.Standing;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Rectangular;
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;

/**
 * Camber or toe of a wheel as a round read it, straight ahead at ride height.
 *
 * <p>With the spring out, on a jack or straight off one, it is the wheel's angle at that place of
 * its travel, which bump steer and the curves need; the car's alignment it is only where the car
 * stood on its tyres with the spring in and was rolled and bounced. Where it does, it may count as
 * such. No wheel position is asked for: ride is where the car stands, the frame mark read or not.
 *
 * <p>Camber carries what an angle finder's unknown zero may be off, ± 0.2° (as a gauge does), where
 * the round does not say that it was found.
 *
 * @param value rad, or mm of toe read as a length across nobody knows what
 * @param from the readings it is the mean of, one steering, one tool, one way of standing; the
 *     newest first
 * @param stands the worst of what it rests on
 * @param acrossBorrowed whether a length of toe among them is taken across what was given for the
 *     other wheel
 * @param not why it is no alignment at ride; empty when it is
 */
public record ReadAtRide(
    Figure value,
    Standing stands,
    List<SeenReading> from,
    boolean acrossBorrowed,
    List<NotAtRide> not) {
  static Optional<ReadAtRide> camber(Card card) {
    return of(card, Quantity.CAMBER);
  }

  static Optional<ReadAtRide> toe(Card card) {
    return of(card, Quantity.TOE);
  }

  /**
   * Of what was read there: the last that is alignment and counts, else the last that counts, else
   * the last.
   */
  private static Optional<ReadAtRide> of(Card card, Quantity quantity) {
    List<SeenReading> all =
        card.readings().stream()
            .filter(r -> r.of(quantity) && r.height().name() == HeightName.RIDE)
            .filter(r -> r.reading().steering() == Steering.STRAIGHT && !r.height().crossed())
            .filter(r -> r.value() != null && r.named() != Standing.REPLACED)
            .sorted(Comparator.comparingLong(SeenReading::n).reversed())
            .toList();
    List<SeenReading> counting = all.stream().filter(r -> r.named().counts()).toList();
    Optional<SeenReading> last =
        Stream.of(counting.stream().filter(r -> not(card, r).isEmpty()), counting.stream())
            .flatMap(s -> s)
            .findFirst();
    return last.isPresent()
        ? last.map(l -> mean(card, counting.stream().filter(r -> repeats(card, l, r)).toList()))
        : all.stream().findFirst().map(r -> mean(card, List.of(r)));
  }

  private static boolean repeats(Card card, SeenReading one, SeenReading other) {
    return not(card, one).equals(not(card, other))
        && tool(one).equals(tool(other))
        && zeroFound(one) == zeroFound(other);
  }

  private static String tool(SeenReading reading) {
    return reading.reading().angle() == null
        ? reading.height().round().tape().tool()
        : reading.height().round().angleTool().tool();
  }

  private static ReadAtRide mean(Card card, List<SeenReading> from) {
    return new ReadAtRide(
        Figure.mean(from.stream().map(r -> value(card, r)).toList()),
        Known.worst(from.stream().map(SeenReading::named)),
        from,
        ToeRead.borrowed(card)
            && from.stream().anyMatch(r -> r.of(Quantity.TOE) && r.reading().angle() == null),
        not(card, from.get(0)));
  }

  private static Figure value(Card card, SeenReading reading) {
    if (reading.of(Quantity.TOE)) {
      return rad(card, reading).orElse(reading.value());
    }
    return zeroFound(reading)
        ? reading.value()
        : reading
            .value()
            .withSource(
                new Source(tool(reading), SourceKind.TOOL),
                Rectangular.u(ReadAlignment.ZERO_UNSAID_RAD));
  }

  private static Optional<Figure> rad(Card card, SeenReading reading) {
    return reading.reading().angle() != null
        ? Optional.of(reading.value())
        : ToeRead.acrossMm(card).flatMap(across -> ToeRead.rad(reading, across));
  }

  /** Whether nothing is unknown of its tool's zero. */
  static boolean zeroFound(SeenReading reading) {
    return reading.of(Quantity.TOE)
        || reading.height().round().round().zeroed().contains(Zeroing.ANGLE_FINDER);
  }

  private static List<NotAtRide> not(Card card, SeenReading reading) {
    Content.Round round = reading.height().round().round();
    List<NotAtRide> not = new ArrayList<>();
    if (!round.onTyres()) {
      not.add(NotAtRide.ON_STANDS);
    }
    if (!round.springIn()) {
      not.add(NotAtRide.SPRING_OUT);
    }
    if (!round.wheelOn()) {
      not.add(NotAtRide.WHEEL_OFF);
    }
    if (not.isEmpty() && !round.zeroed().contains(Zeroing.SETTLED)) {
      not.add(NotAtRide.NOT_SETTLED);
    }
    if (reading.of(Quantity.TOE) && card.layout().steered() && !round.steeringLinked()) {
      not.add(NotAtRide.STEERING_FREE);
    }
    if (reading.of(Quantity.TOE) && rad(card, reading).isEmpty()) {
      not.add(ToeRead.acrossMm(card).isEmpty() ? NotAtRide.NO_ANGLE : NotAtRide.TOO_LONG);
    }
    return not;
  }

  /** Whether it is the alignment of the car as it stands now. */
  public boolean counts() {
    return not.isEmpty() && stands.counts();
  }

  /** Whether its value is an angle. */
  public boolean angle() {
    return !not.contains(NotAtRide.NO_ANGLE) && !not.contains(NotAtRide.TOO_LONG);
  }

  public SeenReading last() {
    return from.get(0);
  }
}
