package spindlebook.parts;

import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.geometry.euclidean.threed.Rotation;
import org.apache.commons.math3.geometry.euclidean.threed.RotationConvention;
import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;

/**
 * Camber, caster, KPI and toe after turns of the upper arm's rod ends, from measured pivots; and
 * back, the turns for a wanted change ({@link #turnsFor}). Of the lower arm's with {@link
 * Pivots#armsSwapped}: the joints only change their names, and the kingpin is read upwards.
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
 * IllegalArgumentException. Source: derived in docs/methods-alignment.md; holds to 1e-8° against
 * the reference rows.
 *
 * <p>Worked example: the reference corner, 1/2-20, two turns in at both, wheel kept at its height:
 * camber −0.9787°, toe 0.2744°, caster 5.7176°.
 */
public record ExactTurns(
    Vector3D upper, double camberRad, double toeRad, double casterRad, double kpiRad) {
  private static final double STEP_MM = 1e-3;
  private static final double NEAR_ENOUGH_RAD = 1e-9;
  private static final int MOST_STEPS = 30;

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

  /**
   * The turns that change camber and caster by so much, the wheel's centre kept at its height:
   * exact parts of turns, found from the short formula's by Newton's method.
   *
   * <pre>
   *   J Δm = wanted − had,   m = n p of front and rear, mm;  J by differences of 0.001 mm
   * </pre>
   *
   * <p>IllegalArgumentException where no turns bring it about. Worked example: what two turns in at
   * both ends of the reference corner do takes −2 and −2 turns.
   */
  public static Turns turnsFor(
      Pivots p, RodThread front, RodThread rear, double camberChangeRad, double casterChangeRad) {
    ExactTurns now = wheelHeld(p, 0, 0);
    double camber = now.camberRad + camberChangeRad;
    double caster = now.casterRad + casterChangeRad;
    double[] out = {0, 0};
    for (int i = 0; i < MOST_STEPS; i++) {
      ExactTurns at = wheelHeld(p, out[0], out[1]);
      double camberLeft = camber - at.camberRad;
      double casterLeft = caster - at.casterRad;
      if (Math.abs(camberLeft) + Math.abs(casterLeft) < NEAR_ENOUGH_RAD) {
        return new Turns(out[0] / front.pitchMm(), out[1] / rear.pitchMm());
      }
      ExactTurns byFront = wheelHeld(p, out[0] + STEP_MM, out[1]);
      ExactTurns byRear = wheelHeld(p, out[0], out[1] + STEP_MM);
      double a = (byFront.camberRad - at.camberRad) / STEP_MM;
      double b = (byRear.camberRad - at.camberRad) / STEP_MM;
      double c = (byFront.casterRad - at.casterRad) / STEP_MM;
      double d = (byRear.casterRad - at.casterRad) / STEP_MM;
      double det = a * d - b * c;
      out[0] += (camberLeft * d - casterLeft * b) / det;
      out[1] += (a * casterLeft - c * camberLeft) / det;
    }
    throw new IllegalArgumentException("no turns change camber and caster by that much");
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
      Vector3D joints = upper.subtract(lower);
      Vector3D kingpin = joints.getZ() < 0 ? joints.negate() : joints;
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
