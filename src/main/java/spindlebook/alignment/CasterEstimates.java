package spindlebook.alignment;

import java.util.OptionalDouble;

/**
 * What the shop's formulas make of a sweep, beside the exact caster.
 *
 * <pre>
 *   small angle  (γL − γR) / (ψL − ψR)            sine   (γL − γR) / (sin ψL − sin ψR)
 *   arcsine      asin((sin γL − sin γR) / (sin ψL − sin ψR))
 *   1.5          1.5 (γL − γR), for ± 20° only
 * </pre>
 *
 * γ camber, ψ lock (+ left, right lock negative), rad, of a left wheel; mirrored on the right. On
 * the reference rows the small angle is off by up to 4 % of caster with a turn about the kingpin
 * and 2.1 % with the heading, the 1.5 by up to 3.6 %. Source: common practice; formulas from
 * memory.
 *
 * <p>Worked example: heading ± 20°, camber 1.0484° and −0.3210°: 1.9616°, 2.0020°, 2.0023°,
 * 2.0541°; truth 2°.
 */
public record CasterEstimates(
    double smallAngleRad, double sineRad, double arcsineRad, OptionalDouble shopRad) {
  private static final double SHOP_LOCK_RAD = Math.toRadians(20);
  private static final double NEAR_RAD = Math.toRadians(0.5);

  public static CasterEstimates of(Sweep sweep) {
    Sweep s = sweep.asLeft();
    double left = s.leftLockRad().value();
    double right = s.rightLockRad().value();
    double cambers = s.camberLeftRad().value() - s.camberRightRad().value();
    double sines = Math.sin(s.camberLeftRad().value()) - Math.sin(s.camberRightRad().value());
    double locks = Math.sin(left) - Math.sin(right);
    boolean twenty =
        Math.abs(left - SHOP_LOCK_RAD) < NEAR_RAD && Math.abs(right + SHOP_LOCK_RAD) < NEAR_RAD;
    return new CasterEstimates(
        cambers / (left - right),
        cambers / locks,
        Math.asin(sines / locks),
        twenty ? OptionalDouble.of(1.5 * cambers) : OptionalDouble.empty());
  }
}
