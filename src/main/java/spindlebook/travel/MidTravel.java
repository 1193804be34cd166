package spindlebook.travel;

import spindlebook.definition.WatchPoint;
import spindlebook.entry.Pairing;
import spindlebook.entry.Steering;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.GuardBand;
import spindlebook.uncertainty.Outcome;
import spindlebook.uncertainty.Settles;

/**
 * A rule broken, or not surely kept, between two places where it is kept: no stop cures it.
 *
 * @param pairing how the ends of a solid axle stood; null for a wheel hung alone
 * @param outcome short when a value read there breaks the rule by more than its U, else can't tell
 * @param settles what would settle a can't-tell; null otherwise
 */
public record MidTravel(
    WatchPoint point,
    Steering steering,
    Pairing pairing,
    Shortfall shortfall,
    Outcome outcome,
    Settles settles) {

  static MidTravel of(RuleReadings of, Shortfall shortfall) {
    Figure inside = of.inside(shortfall.worst());
    boolean broken = GuardBand.atLeast(inside, 0) == Outcome.SHORT;
    return new MidTravel(
        of.point(),
        of.steering(),
        of.pairing(),
        shortfall,
        broken ? Outcome.SHORT : Outcome.CANT_TELL,
        broken ? null : Settles.how(inside, 0));
  }
}
