package spindlebook.alignment;

import java.util.List;
import java.util.Optional;
import spindlebook.uncertainty.Difference;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Propagated;
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;

/**
 * How much more shim levels the toe curve at ride, from one shim that was tried.
 *
 * <pre>  κ = (slope after − slope before) / h        more = −slope after / κ</pre>
 *
 * Slopes at ride, rad/mm (both in one unit); h how much the outer end went up by the tried shim,
 * mm, + up, not 0; more in mm, + up, from the shimmed state. Toe at ride set the same both times.
 *
 * <p>Both slopes were read by the same tools, whose own errors cancel in their difference. What a
 * scale's steps hide does not, nor does what lies between readings: toe was set and read anew.
 *
 * <p>Assumes that slope follows the shim in a straight line: within 1 % of 6 mm on a usual corner.
 * Empty when the change of slope is within its own U. Source: secant; derived in
 * docs/methods-alignment.md.
 *
 * <p>Worked example: before −0.000645, after 6 mm −0.004664 °/mm: κ −0.00067, more −6.963 mm
 * (exactly −6.966).
 */
public final class ShimTried {
  private ShimTried() {}

  public static Optional<Figure> moreMm(Figure slopeBefore, Figure slopeAfter, double upMm) {
    Difference change = Difference.of(slopeAfter, slopeBefore, ShimTried::oneError);
    if (upMm == 0 || !change.beyond()) {
      return Optional.empty();
    }
    return Optional.of(
        Propagated.of(List.of(slopeAfter, change.apart()), v -> -v[0] * upMm / v[1]));
  }

  private static boolean oneError(Source source) {
    return source.kind() != SourceKind.RESOLUTION && source.kind() != SourceKind.INTERPOLATION;
  }
}
