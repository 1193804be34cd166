package spindlebook.fold;

import spindlebook.uncertainty.Figure;

/**
 * Where the wheel is against the frame, comparable from one stand and tyre to the next.
 *
 * <pre>
 *   Δ  = (s + o·sin γ) − m
 *   z  = (Δ − a·σ·sin φ) / (cos φ · cos θ)
 * </pre>
 *
 * s spindle read point above the floor, m frame mark above the floor (mm); o read point outboard of
 * the wheel centre (mm, ≥ 0); γ camber (rad, + top outward: the outer end of the axis then dips, so
 * the wheel centre lies higher than what was read); a frame mark inboard of the spindle (mm, ≥ 0);
 * σ = +1 on the left, −1 on the right; φ roll of the frame (rad, left side up +); θ rake (rad, nose
 * down +). z in mm, + towards bump; negative while the spindle is below the mark.
 *
 * <p>Axes: ISO 8855, x forward, y left, z up. The mark is taken to stand over the spindle as seen
 * from the side, so rake enters by its cosine only. Derived in docs/methods-corner.md. A tilt that
 * was not entered is taken as level within {@link #UNSAID_TILT_RAD}, which matters only through a.
 *
 * <p>Worked: s 381.0, m 520.7, o 152.4, γ −6°, level: Δ = 381.0 − 15.930 − 520.7 = −155.630 mm.
 */
public final class WheelPosition {
  /** Rectangular half-width of a tilt nobody entered: 1/4 degree. Common practice, no source. */
  static final double UNSAID_TILT_RAD = Math.toRadians(0.25);

  /** Rectangular half-width of a camber nobody read, where the read point needs one: 5 degrees. */
  static final double UNSAID_CAMBER_RAD = Math.toRadians(5);

  private WheelPosition() {}

  /**
   * @param spindleMm s with its sources
   * @param markMm m with its sources
   * @param outboardMm o
   * @param camberRad γ with its sources
   * @param inboardMm a
   * @param side σ
   * @param rollRad φ with its sources
   * @param rakeRad θ, taken as exact: it enters by its cosine
   */
  public static Figure mm(
      Figure spindleMm,
      Figure markMm,
      double outboardMm,
      Figure camberRad,
      double inboardMm,
      int side,
      Figure rollRad,
      double rakeRad) {
    double camber = camberRad.value();
    double roll = rollRad.value();
    double scale = 1 / (Math.cos(roll) * Math.cos(rakeRad));
    double delta = spindleMm.value() + outboardMm * Math.sin(camber) - markMm.value();
    double value = (delta - inboardMm * side * Math.sin(roll)) * scale;
    double byRoll = -inboardMm * side * Math.cos(roll) * scale + value * Math.tan(roll);
    return Figure.linear(
        value,
        java.util.List.of(spindleMm, markMm, camberRad, rollRad),
        new double[] {scale, -scale, outboardMm * Math.cos(camber) * scale, byRoll});
  }
}
