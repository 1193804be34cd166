package spindlebook.alignment;

import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;
import spindlebook.entry.SweptBy;

/**
 * A left knuckle that turns rigidly about its kingpin: what camber and a fore-and-aft line on the
 * wheel do.
 *
 * <pre>
 *   k = (−tan C, −tan K, 1) / |…|                     kingpin, upwards
 *   s = (sin t cos γ, cos t cos γ, −sin γ)            wheel axis, outboard
 *   f = cos p (cos t, −sin t, 0) + sin p u            a line on the wheel, u up in its plane
 *   v(θ) = v cos θ + (k × v) sin θ + k (k · v)(1 − cos θ)
 *   camber = −asin s_z,  pitch = asin f_z,  heading = −atan2(s_x, s_y)
 * </pre>
 *
 * C caster, K KPI, γ camber, t toe, p pitch of the line straight ahead (+ front up), θ turn about
 * the kingpin (+ left), rad. Heading ψ fixes θ by n · s(θ) = 0, n = (cos ψ, sin ψ, 0).
 *
 * <p>Assumes that the turn plates let the tyre move freely and that the knuckle neither rises nor
 * falls enough to swing the arms. A heading that no turn reaches comes back as not a number, and
 * the sweep is refused. Source: O. Rodrigues' rotation formula, from memory; derived in
 * docs/methods-alignment.md.
 *
 * <p>Worked example: C 2°, K 6°, upright, no toe: at a heading of 20° the camber is 1.0484°, turned
 * by 20° about the kingpin 1.0390°; to the right −0.3210° and −0.3214°.
 */
final class SweptKnuckle {
  private final Vector3D kingpin;
  private final Vector3D axis;
  private final Vector3D line;

  SweptKnuckle(double tanCaster, double tanKpi, double camberRad, double toeRad, double pitchRad) {
    kingpin = new Vector3D(-tanCaster, -tanKpi, 1).normalize();
    axis =
        new Vector3D(
            Math.sin(toeRad) * Math.cos(camberRad),
            Math.cos(toeRad) * Math.cos(camberRad),
            -Math.sin(camberRad));
    Vector3D ahead = new Vector3D(Math.cos(toeRad), -Math.sin(toeRad), 0);
    line =
        new Vector3D(
            Math.cos(pitchRad), ahead, Math.sin(pitchRad), Vector3D.crossProduct(ahead, axis));
  }

  double camberSine(SweptBy by, double lockRad) {
    return -turned(axis, turnRad(by, lockRad)).getZ();
  }

  double pitchSine(SweptBy by, double lockRad) {
    return turned(line, turnRad(by, lockRad)).getZ();
  }

  private double turnRad(SweptBy by, double lockRad) {
    if (by == SweptBy.KINGPIN_TURN) {
      return lockRad;
    }
    Vector3D n = new Vector3D(Math.cos(lockRad), Math.sin(lockRad), 0);
    double along = n.dotProduct(kingpin) * kingpin.dotProduct(axis);
    double byCosine = n.dotProduct(axis) - along;
    double bySine = n.dotProduct(Vector3D.crossProduct(kingpin, axis));
    double middle = Math.atan2(bySine, byCosine);
    double half = Math.acos(-along / Math.hypot(byCosine, bySine));
    double one = middle + half;
    double other = middle - half;
    return Math.abs(one - lockRad) <= Math.abs(other - lockRad) ? one : other;
  }

  private Vector3D turned(Vector3D v, double angleRad) {
    return new Vector3D(
        Math.cos(angleRad),
        v,
        Math.sin(angleRad),
        Vector3D.crossProduct(kingpin, v),
        kingpin.dotProduct(v) * (1 - Math.cos(angleRad)),
        kingpin);
  }
}
