package spindlebook.parts;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;
import spindlebook.entry.Joint;
import spindlebook.linkage.Change;
import spindlebook.linkage.Change.Longer;
import spindlebook.linkage.Change.Rod;
import spindlebook.linkage.Joints;
import spindlebook.linkage.Reassembly;
import spindlebook.linkage.Vec;

/**
 * Camber, caster, KPI and toe after turns of the upper arm's rod ends, from measured pivots; and
 * back, the turns for a wanted change ({@link #turnsFor}). Of the lower arm's with {@link
 * Pivots#armsSwapped}: the joints only change their names, and the kingpin is read upwards.
 *
 * <p>The arm's legs as long as {@link UpperArm} has them then, all put together by {@link
 * Reassembly}, the lower arm turned until the wheel's centre is as high as before.
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
  private static final double ANY_TRACK_MM = 1000;
  private static final double FARTHEST_OUT_MM = 100;
  private static final double STEP_MM = 1e-3;
  private static final double NEAR_ENOUGH_RAD = 1e-9;
  private static final int MOST_STEPS = 30;

  /** The wheel's centre keeps its height, as on the ground. */
  public static ExactTurns wheelHeld(Pivots p, double frontOutMm, double rearOutMm) {
    UpperArm arm = UpperArm.turned(p, frontOutMm, rearOutMm);
    Joints today = joints(p);
    Joints turned =
        Reassembly.of(
            today,
            List.of(
                longer(today, Rod.UPPER_FRONT, arm.legMm(p.upperFront())),
                longer(today, Rod.UPPER_REAR, arm.legMm(p.upperRear()))));
    Vec kingpin = turned.get(Joint.U).minus(turned.get(Joint.L));
    double up = Math.signum(kingpin.z());
    Vec moved = turned.get(Joint.U).minus(today.get(Joint.U));
    return new ExactTurns(
        p.upper().add(new Vector3D(moved.x(), moved.y(), moved.z())),
        turned.camberRad(),
        turned.toeRad(),
        Math.atan2(-up * kingpin.x(), up * kingpin.z()),
        Math.atan2(-up * kingpin.y(), up * kingpin.z()));
  }

  private static Change longer(Joints today, Rod rod, double lengthMm) {
    return new Longer(rod, lengthMm - rod.lengthMm(today));
  }

  /** As the linkage has them: y from the car's middle, wherever that is. */
  private static Joints joints(Pivots p) {
    Vector3D origin = p.wheelCentre().subtract(new Vector3D(0, ANY_TRACK_MM, 0));
    Map<Joint, Vec> at = new EnumMap<>(Joint.class);
    put(at, Joint.LF, p.lowerFront(), origin);
    put(at, Joint.LR, p.lowerRear(), origin);
    put(at, Joint.L, p.lower(), origin);
    put(at, Joint.UF, p.upperFront(), origin);
    put(at, Joint.UR, p.upperRear(), origin);
    put(at, Joint.U, p.upper(), origin);
    put(at, Joint.TI, p.tieInner(), origin);
    put(at, Joint.TO, p.tieOuter(), origin);
    put(at, Joint.W, p.wheelCentre(), origin);
    return new Joints(true, at, p.toeRad(), p.camberRad(), ANY_TRACK_MM);
  }

  private static void put(Map<Joint, Vec> at, Joint joint, Vector3D p, Vector3D origin) {
    Vector3D from = p.subtract(origin);
    at.put(joint, new Vec(from.getX(), from.getY(), from.getZ()));
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
      if (Math.abs(out[0]) + Math.abs(out[1]) > FARTHEST_OUT_MM) {
        break;
      }
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
}
