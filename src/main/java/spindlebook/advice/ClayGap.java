package spindlebook.advice;

import java.util.Optional;
import spindlebook.definition.WatchPoint;
import spindlebook.entry.Content;
import spindlebook.entry.TelltaleKind;
import spindlebook.fold.Card;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.GuardBand;
import spindlebook.uncertainty.Outcome;

/**
 * Clay pressed in a gap on a drive, as thick as the gap was at its smallest, against the least its
 * watch point is to keep today. What it was measured with is not said, so it counts as typed.
 *
 * @param overMm more than the rule asks; negative when it came nearer
 */
public record ClayGap(WatchPoint point, double thickMm, double overMm, Outcome outcome) {

  /** Empty where it is no clay, was not measured, or no least gap is asked there. */
  public static Optional<ClayGap> of(Card card, Content.Telltale clay) {
    if (clay.what() != TelltaleKind.CLAY || clay.length() == null || clay.point() == null) {
      return Optional.empty();
    }
    double thickMm = clay.length().mm();
    return card.watchPoint(clay.point())
        .filter(point -> point.keep().least() != null)
        .map(
            point -> {
              double leastMm = point.keep().least().mm();
              Outcome outcome = GuardBand.atLeast(Figure.exact(thickMm), leastMm);
              return new ClayGap(point, thickMm, thickMm - leastMm, outcome);
            });
  }
}
