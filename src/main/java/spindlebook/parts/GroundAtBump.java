package spindlebook.parts;

import java.util.List;
import java.util.Optional;
import spindlebook.curve.PositionToSetting;
import spindlebook.curve.PositionToSetting.Rounding;
import spindlebook.curve.PositionToSetting.Steps;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Propagated;

/**
 * How near the frame comes to the ground at full bump, and the bump-stop spacer that keeps it off.
 *
 * <pre>
 *   clearance g = R − z − d          lower by  w − g          spacer = ρ (w − g), + its U, rounded up
 * </pre>
 *
 * R squashed radius of the tyre fitted or planned, spindle to ground, mm; z wheel position at full
 * bump, spindle minus frame mark, mm, + towards bump; d frame mark down to the lowest frame point,
 * mm; w clearance wanted, mm; ρ how much the stop's gap closes per mm of wheel, > 0 (the travel's
 * ratio without its sign). Level ground and frame. A wheel that is lowered changes ρ a little: when
 * the spacer is thick, read the stop's gap at the new height.
 *
 * <p>Source: as the ground limit in docs/methods-corner.md. Worked example: R 330.2, z 50.8, d
 * 254.0: g = 25.4 mm; wanted 50.8, ρ 0.6, nothing in doubt: spacer 15.24, in steps of 3.175 mm:
 * 15.875 mm.
 */
public final class GroundAtBump {
  private GroundAtBump() {}

  public static Figure clearanceMm(
      Figure squashedRadiusMm, Figure fullBumpMm, Figure markToFrameMm) {
    return squashedRadiusMm.minus(fullBumpMm).minus(markToFrameMm);
  }

  /**
   * The spacer to add, in what can be set, so that the clearance is surely what is wanted; empty
   * when it surely is already.
   */
  public static Optional<Steps> spacer(
      Figure clearanceMm, double wantedMm, Figure stopPerWheel, double stepMm) {
    if (!(stopPerWheel.value() > 0)) {
      throw new IllegalArgumentException("a stop closes as the wheel rises: " + stopPerWheel);
    }
    Figure needed =
        Propagated.of(List.of(clearanceMm, stopPerWheel), v -> (wantedMm - v[0]) * v[1]);
    Steps steps = PositionToSetting.steps(needed.value() + needed.U(), stepMm, Rounding.UP);
    return steps.count() > 0 ? Optional.of(steps) : Optional.empty();
  }
}
