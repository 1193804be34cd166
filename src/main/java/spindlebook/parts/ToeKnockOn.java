package spindlebook.parts;

import java.util.List;
import spindlebook.definition.RackSide;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Propagated;

/**
 * How much toe moves when camber and caster are set and the tie rod is left alone.
 *
 * <pre>
 *   Δt = r e Δγ / b + q ΔC ,   r = −1 rack behind, +1 ahead
 * </pre>
 *
 * Δt toe of this wheel, + in; Δγ, ΔC changes of camber and caster, rad, by the upper arm; e outer
 * tie-rod end above the lower joint, mm, + above; b steering arm, outer end fore and aft of the
 * kingpin, mm, > 0; q slope of the tie rod, outer end above inner per mm of length outboard.
 *
 * <p>Why: the knuckle leans about the lower joint, the outer end goes outboard by e Δγ and up or
 * down by b ΔC, and the rod holds it. Assumes small changes and a lower joint that stays; off by up
 * to {@value #WITHIN} of camber's and caster's changes together on {@link ArmOnRodEnds}' corners.
 * Source: derived in docs/methods-alignment.md.
 *
 * <p>Worked example: rack behind, e 55, b 158 mm, q −0.0610, + 0.2425° camber: −0.0844° (toe-out;
 * the exact solution says −0.0870°).
 */
public final class ToeKnockOn {
  /** How far it may be off, as a part of the changes of camber and caster that cause it. */
  public static final double WITHIN = 0.3;

  public static double withinRad(double camberChangeRad, double casterChangeRad) {
    return WITHIN * (Math.abs(camberChangeRad) + Math.abs(casterChangeRad));
  }

  private ToeKnockOn() {}

  public static Figure rad(
      Figure camberChangeRad,
      Figure casterChangeRad,
      Figure outerAboveJointMm,
      Figure steeringArmMm,
      Figure rodSlope,
      RackSide rack) {
    int sign = rack == RackSide.AHEAD_OF_AXLE ? 1 : -1;
    return Propagated.of(
        List.of(camberChangeRad, casterChangeRad, outerAboveJointMm, steeringArmMm, rodSlope),
        v -> sign * v[0] * v[2] / v[3] + v[1] * v[4]);
  }
}
