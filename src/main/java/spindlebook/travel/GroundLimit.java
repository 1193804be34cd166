package spindlebook.travel;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spindlebook.definition.Allowance;
import spindlebook.definition.Dimension;
import spindlebook.definition.Given;
import spindlebook.definition.HeldBack;
import spindlebook.fold.Card;
import spindlebook.fold.SeenGiven;
import spindlebook.uncertainty.Figure;

/**
 * How far the wheel may come up before the frame is too near the ground.
 *
 * <pre>
 *   frame above ground = R − z − d ≥ g     ⇒     z ≤ R − d − g
 * </pre>
 *
 * R the tyre's squashed radius, spindle to ground on a hard landing (mm); z wheel position, spindle
 * minus frame mark (mm, + towards bump); d frame mark down to the lowest frame point (mm, + down);
 * g what must be left (mm). Level ground and frame. Derived in docs/methods-corner.md.
 *
 * <p>Worked: R 330.2, d 254.0, g 50.8: z ≤ 25.4 mm.
 */
final class GroundLimit {
  private GroundLimit() {}

  static Figure positionMm(Figure squashedRadiusMm, Figure markToFrameMm, Figure clearanceMm) {
    return squashedRadiusMm.minus(markToFrameMm).minus(clearanceMm);
  }

  /** Where it was by lengths given of parts that were changed since; empty while they hold. */
  static Optional<Figure> before(Card card) {
    Optional<Given> squashed = thenOrNow(card, Dimension.TYRE_SQUASHED_RADIUS);
    Optional<Given> down = thenOrNow(card, Dimension.MARK_TO_LOWEST_FRAME);
    Optional<HeldBack> clearance = card.heldBack(Allowance.GROUND_CLEARANCE);
    return squashed.isEmpty() || down.isEmpty() || clearance.isEmpty()
        ? Optional.empty()
        : Optional.of(
            positionMm(
                GivenFigures.of(squashed.get()),
                GivenFigures.of(down.get()),
                GivenFigures.of(clearance.get())));
  }

  private static Optional<Given> thenOrNow(Card card, Dimension dimension) {
    return card.given(dimension).or(() -> card.givenBefore(dimension).map(SeenGiven::given));
  }

  /** The limit, or the needs for it put into {@code needs}. */
  static Optional<Figure> of(Card card, List<Need> needs) {
    List<Need> missing = new ArrayList<>();
    for (Dimension d : List.of(Dimension.TYRE_SQUASHED_RADIUS, Dimension.MARK_TO_LOWEST_FRAME)) {
      if (card.given(d).isEmpty()) {
        missing.add(Need.give(card, d));
      }
    }
    Optional<HeldBack> clearance = card.heldBack(Allowance.GROUND_CLEARANCE);
    if (clearance.isEmpty()) {
      missing.add(Need.choose(Allowance.GROUND_CLEARANCE));
    }
    needs.addAll(missing);
    return missing.isEmpty()
        ? Optional.of(
            positionMm(
                GivenFigures.of(card.given(Dimension.TYRE_SQUASHED_RADIUS).orElseThrow()),
                GivenFigures.of(card.given(Dimension.MARK_TO_LOWEST_FRAME).orElseThrow()),
                GivenFigures.of(clearance.get())))
        : Optional.empty();
  }
}
