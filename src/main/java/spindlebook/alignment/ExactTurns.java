package spindlebook.alignment;

import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.geometry.euclidean.threed.Rotation;
import org.apache.commons.math3.geometry.euclidean.threed.RotationConvention;
import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;

/**
 * Camber, caster, KPI and toe after turns of the upper arm's rod ends, from measured pivots.
 *
 * <pre>
 *   upper joint   on the circle of the turned arm, |U − L| as before
 *   outer end     at its distances from L, U and, along the tie rod, from the inner end
 *   wheel         rides rigidly on L, U and the outer end
 *   at ride       lower arm turned until the wheel's centre is as high as before
 * </pre>
 *
 * <p>Axes as {@link Pivots}. Assumes rigid parts, rod-end threads square to the pivot line of a
 * welded arm, tie rod and rack untouched. Turns that do not go together are an
 * IllegalArgumentException. Source: derived in docs/methods.md; holds to 1e-8° against the
 * reference rows.
 *
 * <p>Worked example: the reference corner, 1/2-20, two turns in at both, wheel kept at its height:
 * camber −0.9787°, toe 0.2744°, caster 5.7176°.
 */
public record ExactTurns(
    Vector3D upper, double camberRad, double toeRad, double casterRad, double kpiRad) {

  /** The lower arm stays where it is, as on a stand under the arm. */
  public static ExactTurns lowerArmHeld(Pivots p, double frontOutMm, double rearOutMm) {
    return new Pose(p, frontOutMm, rearOutMm, 0).figures();
  }

  /** The wheel's centre keeps its height, as on the ground. */
  public static ExactTurns wheelHeld(Pivots p, double frontOutMm, double rearOutMm) {
    double lowerRad =
        new BrentSolver(1e-15, 1e-15)
            .solve(
                200,
                phi -> new Pose(p, frontOutMm, rearOutMm, phi).riseMm(),
                -Math.toRadians(5),
                Math.toRadians(5));
    return new Pose(p, frontOutMm, rearOutMm, lowerRad).figures();
  }

  /** The corner put together with the lower arm turned by an angle. */
  private static final class Pose {
    private final Pivots p;
    private final Vector3D lower;
    private final Vector3D upper;
    private final Vector3D tieOuter;

    Pose(Pivots p, double frontOutMm, double rearOutMm, double lowerRad) {
      this.p = p;
      Vector3D pivotLine = p.lowerRear().subtract(p.lowerFront());
      Rotation swing = new Rotation(pivotLine, lowerRad, RotationConvention.VECTOR_OPERATOR);
      lower = p.lowerFront().add(swing.applyTo(p.lower().subtract(p.lowerFront())));
      upper =
          UpperArm.turned(p, frontOutMm, rearOutMm)
              .joint(lower, p.upper().distance(p.lower()), p.upper());
      tieOuter =
          ThreeDistances.meet(
              lower,
              p.tieOuter().distance(p.lower()),
              upper,
              p.tieOuter().distance(p.upper()),
              p.tieInner(),
              p.tieOuter().distance(p.tieInner()),
              p.tieOuter());
    }

    double riseMm() {
      Vector3D centre = lower.add(moved().applyTo(p.wheelCentre().subtract(p.lower())));
      return centre.getZ() - p.wheelCentre().getZ();
    }

    ExactTurns figures() {
      Vector3D axis =
          moved()
              .applyTo(
                  new Vector3D(
                      Math.sin(p.toeRad()) * Math.cos(p.camberRad()),
                      Math.cos(p.toeRad()) * Math.cos(p.camberRad()),
                      -Math.sin(p.camberRad())));
      Vector3D kingpin = upper.subtract(lower);
      return new ExactTurns(
          upper,
          -Math.asin(axis.getZ()),
          Math.atan2(axis.getX(), axis.getY()),
          Math.atan2(-kingpin.getX(), kingpin.getZ()),
          Math.atan2(-kingpin.getY(), kingpin.getZ()));
    }

    private Rotation moved() {
      return new Rotation(
          p.upper().subtract(p.lower()),
          p.tieOuter().subtract(p.lower()),
          upper.subtract(lower),
          tieOuter.subtract(lower));
    }
  }
}
