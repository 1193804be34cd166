package spindlebook.alignment;

import java.util.List;
import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Propagated;

/**
 * Where the kingpin meets the ground, seen from the tyre's contact centre.
 *
 * <pre>
 *   s = (sin t cos γ, cos t cos γ, −sin γ)    u = unit(z − (z·s) s)     contact  P = −R u
 *   G = A + (P_z − A_z)(−tan C, −tan K, 1)                              axis at the ground
 *   scrub = (P − G) · unit(s_x, s_y, 0)       trail = −(P − G) · forward square to that
 *   ∂scrub/∂R = −(cos γ tan K + sin γ)        ∂trail/∂R = cos γ tan C         (t = 0)
 * </pre>
 *
 * As on the left wheel, from its centre, mm: A a point of the axis, R loaded radius in the wheel's
 * plane, > 0; γ camber, t toe (steered: minus the heading on the left), C caster, K KPI as they
 * stand in the body at that lock, rad. Scrub + axis inboard of the contact centre, trail + ahead of
 * it. {@code scrubMm} and {@code trailMm} lie along the tyre's axes, {@code body…} along the car's;
 * straight ahead they differ by toe only, steered even in sign.
 *
 * <p>Assumes flat ground and a contact centre straight below the wheel's in its plane. Source: ISO
 * 8855's terms, from memory; derived in docs/methods-alignment.md.
 *
 * <p>Worked example: A 8 ahead, 110 inboard, 115 below, C 4°, K 6°, γ 0, R 380: scrub 82.147, trail
 * 26.531 mm; each mm more of radius: scrub −0.1051 mm.
 */
public record ScrubTrail(Figure scrubMm, Figure trailMm, Figure bodyScrubMm, Figure bodyTrailMm) {

  public static ScrubTrail of(
      AxisPlace place, SteeringAxis axis, Figure camberRad, Figure toeRad, Figure loadedRadiusMm) {
    List<Figure> inputs =
        List.of(
            place.aheadMm(),
            place.inboardMm(),
            place.belowMm(),
            axis.casterRad(),
            axis.kpiRad(),
            camberRad,
            toeRad,
            loadedRadiusMm);
    if (!(loadedRadiusMm.value() > 0)) {
      throw new IllegalArgumentException("a radius is more than 0, not " + loadedRadiusMm);
    }
    return new ScrubTrail(
        Propagated.of(inputs, v -> fromAxis(v).dotProduct(outboard(v[6]))),
        Propagated.of(inputs, v -> -fromAxis(v).dotProduct(forward(v[6]))),
        Propagated.of(inputs, v -> fromAxis(v).getY()),
        Propagated.of(inputs, v -> -fromAxis(v).getX()));
  }

  /** What one mm more of loaded radius does to scrub: − with KPI, and no more than this. */
  public static double scrubPerRadius(double camberRad, double kpiRad) {
    return -(Math.cos(camberRad) * Math.tan(kpiRad) + Math.sin(camberRad));
  }

  /** From where the axis meets the ground to the contact centre. */
  private static Vector3D fromAxis(double[] v) {
    double camber = v[5];
    Vector3D up = new Vector3D(Math.sin(camber), outboard(v[6]), Math.cos(camber), Vector3D.PLUS_K);
    Vector3D contact = up.scalarMultiply(-v[7]);
    Vector3D point = new Vector3D(v[0], -v[1], -v[2]);
    Vector3D ground = point.add(contact.getZ() - point.getZ(), SteeringAxis.upwards(v[3], v[4]));
    return contact.subtract(ground);
  }

  private static Vector3D outboard(double toeRad) {
    return new Vector3D(Math.sin(toeRad), Math.cos(toeRad), 0);
  }

  private static Vector3D forward(double toeRad) {
    return new Vector3D(Math.cos(toeRad), -Math.sin(toeRad), 0);
  }
}
