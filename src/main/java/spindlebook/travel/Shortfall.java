package spindlebook.travel;

import java.util.List;
import spindlebook.uncertainty.Figure;

/**
 * A stretch in mid-travel where a rule is broken, or kept by less than its own U, and kept on both
 * sides.
 *
 * @param from its end towards droop
 * @param to its end towards bump
 * @param worst the value read in it that is furthest past the rule, its U counted for it
 */
public record Shortfall(
    EndLimit.Crosses from, EndLimit.Crosses to, Figure worst, List<String> readings) {
  public Figure fromMm() {
    return from.positionMm();
  }

  public Figure toMm() {
    return to.positionMm();
  }

  /** Where it begins for a wheel that comes towards an end from within the travel. */
  EndLimit.Crosses near(End end) {
    return end == End.DROOP ? to : from;
  }

  /** Where the rule is kept again beyond it. */
  EndLimit.Crosses far(End end) {
    return end == End.DROOP ? from : to;
  }
}
