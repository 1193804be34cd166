package spindlebook.alignment;

import java.util.List;
import spindlebook.entry.LineSide;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Propagated;

/**
 * Toe of one wheel from two distances, from a dial, or from a light spot far away.
 *
 * <pre>
 *   line inboard of the wheel    sin t = (rear − front) / spacing
 *   line outboard of the wheel   sin t = (front − rear) / spacing
 *   line not parallel            t + δ
 *   dials on a plate, change     sin Δt = (rear outward − front outward) / spacing
 *   spot at a distance           tan t = inward / distance
 * </pre>
 *
 * t in rad, + front edge inward. front, rear: from the line out to the plate or rim, measured
 * square to the line, mm, > 0; spacing between the two places, mm, > 0. δ: the line's front end
 * leans towards the car's middle by δ, rad. Dials count the plate's movement outward as +; with one
 * dial the other end is pivoted and its movement is 0. The spot's shift is towards the car's middle
 * +, at a distance ahead of the wheel.
 *
 * <p>Assumes the line level with the hub. What both distances share (the tape, the line's place)
 * cancels. |difference| over the spacing is no angle: IllegalArgumentException. Source: plane
 * geometry; derived in docs/methods-alignment.md.
 *
 * <p>Worked example: string outside, 101.6 mm to the front and 98.4 mm to the rear edge, 609.6 mm
 * apart: +0.3008°, toe-in. Dials 1 mm in ahead and 1 mm out behind, 609.6 mm apart: 0.1880° more
 * toe-in. A spot 25 mm inward at 5000 mm: 0.2865°.
 */
public final class ToeReading {
  private ToeReading() {}

  /** As before, by a line that leans: {@link LeaningLine}. */
  public static Toe fromLine(
      Figure frontMm, Figure rearMm, Figure spacingMm, LineSide side, Figure leansInwardRad) {
    int sign = side == LineSide.INBOARD ? 1 : -1;
    return new Toe(
        Toe.asin(List.of(frontMm, rearMm, spacingMm), v -> sign * (v[1] - v[0]) / v[2])
            .plus(leansInwardRad));
  }

  /** What toe changed by since the dials stood at zero. */
  public static Figure dialChangeRad(
      Figure frontOutwardMm, Figure rearOutwardMm, Figure spacingMm) {
    return Toe.asin(List.of(frontOutwardMm, rearOutwardMm, spacingMm), v -> (v[1] - v[0]) / v[2]);
  }

  /** By a light fixed to the hub, square to the axle. */
  public static Toe spot(Figure inwardMm, Figure distanceMm) {
    return new Toe(Propagated.of(List.of(inwardMm, distanceMm), v -> Math.atan2(v[0], v[1])));
  }
}
