package spindlebook.travel;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Outcome;

/**
 * What one corner's card says about its travel. Positions are wheel positions in mm, + towards
 * bump, from the zero of spindle minus frame mark; a page shows them from ride where there is one.
 *
 * @param rideMm ride height, when it was read and still holds
 * @param asSet from stop to stop: S to B
 * @param asItCouldBe from limit to limit with what is held back: L + e to U − r
 * @param midTravel stretches where a rule is broken, or not surely kept, that the wheel gets to; a
 *     broken one that a stop keeps it out of is a limit of that end
 * @param rawMm highest less lowest wheel position of the heights that still hold, nothing held back
 */
public record TravelFindings(
    Optional<Figure> rideMm,
    List<String> rideReadings,
    EndFindings droop,
    EndFindings bump,
    Total asSet,
    Total asItCouldBe,
    List<MidTravel> midTravel,
    Optional<Figure> rawMm) {

  public EndFindings at(End end) {
    return end == End.DROOP ? droop : bump;
  }

  /** Whether a wheel position lies surely beyond where a stop, stretch and impact let it go. */
  public boolean outOfReach(double positionMm) {
    return Stream.of(droop, bump)
        .anyMatch(
            end ->
                end.reachMm()
                    .or(() -> end.stop().map(StopFound::positionMm))
                    .filter(r -> (positionMm - r.value()) * end.end().outward() > r.U())
                    .isPresent());
  }

  /** The worst of the two ends and of what lies between. */
  public Outcome outcome() {
    Outcome worst = droop.outcome().worse(bump.outcome());
    for (MidTravel mid : midTravel) {
      worst = worst.worse(mid.outcome());
    }
    return worst;
  }
}
