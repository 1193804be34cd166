package spindlebook.alignment;

import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.GuardBand;
import spindlebook.uncertainty.Outcome;
import spindlebook.uncertainty.Settles;

/**
 * A figure against the owner's target: kept, missed, or can't tell, and what would settle it.
 *
 * <p>Decided by {@link GuardBand}: both ends belong to the target, guard band U. Source: as {@link
 * GuardBand}.
 *
 * <p>Worked example: camber −0.50 ± 0.20° against −1° to 0°: clear; ± 0.60°: can't tell.
 *
 * @param lower in the figure's unit; −∞ where the target has no lower end
 * @param upper likewise
 * @param settles how the end nearer to the figure would be settled
 */
public record AgainstTarget(
    Figure figure, double lower, double upper, Outcome decision, Settles settles) {

  public static AgainstTarget between(Figure figure, double lower, double upper) {
    double y = figure.value();
    double nearer = Math.abs(y - lower) <= Math.abs(upper - y) ? lower : upper;
    return new AgainstTarget(
        figure, lower, upper, GuardBand.between(figure, lower, upper), Settles.how(figure, nearer));
  }

  /** The same of a figure that more readings could only make worse. */
  AgainstTarget atBest(Outcome outcome) {
    return new AgainstTarget(figure, lower, upper, decision.worse(outcome), settles);
  }

  public static AgainstTarget atMost(Figure figure, double upper) {
    return between(figure, Double.NEGATIVE_INFINITY, upper);
  }

  public static AgainstTarget atLeast(Figure figure, double lower) {
    return between(figure, lower, Double.POSITIVE_INFINITY);
  }
}
