package spindlebook.parts;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import spindlebook.alignment.ReferenceCorner;
import spindlebook.definition.RackSide;
import spindlebook.parts.ArmOnRodEnds.Arm;
import spindlebook.uncertainty.Figure;

/**
 * How far the short rod-end formulas are off, against the exact solution of 300 invented corners:
 * each bound holds, and none is idle. Seven seeds, 15 to 21, make the 2,100 of the docs: {@code
 * -Dspindlebook.seed=…}.
 */
class ShortRodEndsTest {
  private static final long SEED = Long.getLong("spindlebook.seed", 15);
  private static final int CORNERS = 300;

  /** Rod ends out, front and rear, mm: up to 4 turns of 5/8-18, alike, opposite and one alone. */
  private static final List<double[]> OUT =
      List.of(
          new double[] {-5.6, -5.6},
          new double[] {5.6, 5.6},
          new double[] {-2, -2},
          new double[] {-5.6, 5.6},
          new double[] {5.6, -5.6},
          new double[] {2, -2},
          new double[] {5.6, 0},
          new double[] {0, 5.6},
          new double[] {-5.6, 0},
          new double[] {0, -5.6},
          new double[] {-2.8, -5.6});

  private static final RodThread MILLIMETRE = RodThreads.named("M8x1").orElseThrow();

  /** The largest part of its bound that an error comes to. */
  private static final class Worst {
    double camber;
    double caster;
    double toe;
    double camberOfItself;
    double casterOfItself;
  }

  @Test
  void the_short_formulas_hold_what_they_claim_on_three_hundred_corners() {
    Worst upper = worst(Arm.UPPER);
    assertBound(upper.camberOfItself / ArmOnRodEnds.CAMBER_WITHIN, "camber, upper arm");
    assertBound(upper.casterOfItself / ArmOnRodEnds.CASTER_WITHIN, "caster, upper arm");
    assertBound(upper.toe, "toe, of what the upper arm does");
    assertTrue(upper.camber <= 1 && upper.caster <= 1, upper.camber + ", " + upper.caster);
    Worst lower = worst(Arm.LOWER);
    assertBound(lower.camberOfItself / ArmOnRodEnds.CAMBER_WITHIN_LOWER, "camber, lower arm");
    assertTrue(lower.camber <= 1 && lower.caster <= 1, lower.camber + ", " + lower.caster);
  }

  private static void assertBound(double part, String what) {
    assertTrue(part <= 1 && part > 0.45, what + ": " + part + " of its bound");
  }

  private static Worst worst(Arm which) {
    Random random = new Random(SEED);
    Worst worst = new Worst();
    for (int i = 0; i < CORNERS; i++) {
      Pivots corner = corner(random);
      Pivots p = which == Arm.UPPER ? corner : corner.armsSwapped();
      ArmOnRodEnds arm = measured(which, p);
      ExactTurns now = ExactTurns.wheelHeld(p, 0, 0);
      for (double[] out : OUT) {
        ExactTurns then = ExactTurns.wheelHeld(p, out[0], out[1]);
        Turns turns = new Turns(out[0], out[1]);
        double camber = arm.camberChangeRad(turns).value();
        double caster = arm.casterChangeRad(turns).value();
        double camberOff = Math.abs(then.camberRad() - now.camberRad() - camber);
        double casterOff = Math.abs(then.casterRad() - now.casterRad() - caster);
        worst.camber = Math.max(worst.camber, camberOff / arm.camberWithinRad(camber, caster));
        worst.caster = Math.max(worst.caster, casterOff / arm.casterWithinRad(camber, caster));
        if (out[0] == out[1]) {
          worst.camberOfItself = Math.max(worst.camberOfItself, camberOff / Math.abs(camber));
        } else if (out[0] == -out[1]) {
          worst.casterOfItself = Math.max(worst.casterOfItself, casterOff / Math.abs(caster));
        }
        double toeOff = Math.abs(then.toeRad() - now.toeRad() - toe(corner, camber, caster));
        worst.toe = Math.max(worst.toe, toeOff / ToeKnockOn.withinRad(camber, caster));
      }
    }
    return worst;
  }

  private static double toe(Pivots p, double camberRad, double casterRad) {
    Vector3D rod = p.tieOuter().subtract(p.tieInner());
    return ToeKnockOn.rad(
            Figure.exact(camberRad),
            Figure.exact(casterRad),
            Figure.exact(p.tieOuter().getZ() - p.lower().getZ()),
            Figure.exact(Math.abs(p.tieOuter().getX() - p.lower().getX())),
            Figure.exact(rod.getZ() / rod.getY()),
            RackSide.BEHIND_AXLE)
        .value();
  }

  /** As a tape measures the arm that is turned: joint above joint, square to the pivot line. */
  private static ArmOnRodEnds measured(Arm which, Pivots p) {
    Vector3D line = p.upperFront().subtract(p.upperRear());
    Vector3D along = line.normalize();
    Vector3D toJoint = p.upper().subtract(p.upperRear());
    return new ArmOnRodEnds(
        which,
        MILLIMETRE,
        MILLIMETRE,
        Figure.exact(Math.abs(p.upper().getZ() - p.lower().getZ())),
        Figure.exact(toJoint.subtract(toJoint.dotProduct(along), along).getNorm()),
        Figure.exact(line.getNorm()),
        ArmOnRodEnds.SQUARE);
  }

  private static Pivots corner(Random random) {
    double h = in(random, 200, 350);
    Vector3D lower = new Vector3D(0, 800, 300);
    double back = h * Math.tan(Math.toRadians(in(random, 0, 8)));
    double inboard = h * Math.tan(Math.toRadians(in(random, 4, 14)));
    Vector3D upper = lower.add(new Vector3D(-back, -inboard, h));
    double armMm = in(random, 250, 450);
    Vector3D[] ofUpper = pivots(random, upper, armMm, in(random, 200, 400));
    Vector3D[] ofLower = pivots(random, lower, armMm + in(random, 0, 150), in(random, 250, 450));
    double x = -in(random, 100, 180);
    Vector3D outer = new Vector3D(x, 785, lower.getZ() + in(random, 30, 90));
    return new Pivots(
        ofLower[0],
        ofLower[1],
        lower,
        ofUpper[0],
        ofUpper[1],
        upper,
        new Vector3D(x - 2, 340, outer.getZ() + in(random, -20, 40)),
        outer,
        new Vector3D(0, 900, lower.getZ() + in(random, 80, 140)),
        Math.toRadians(in(random, -1.5, 0.5)),
        Math.toRadians(in(random, 0, 0.2)));
  }

  /** Front and rear pivot of an arm to this joint. */
  private static Vector3D[] pivots(Random random, Vector3D joint, double armMm, double spreadMm) {
    double lean = Math.toRadians(in(random, -10, 10));
    double yaw = Math.toRadians(in(random, -3, 3));
    double pitch = Math.toRadians(in(random, -3, 3));
    Vector3D line =
        new Vector3D(
            Math.cos(pitch) * Math.cos(yaw), Math.cos(pitch) * Math.sin(yaw), Math.sin(pitch));
    Vector3D inward = new Vector3D(0, -Math.cos(lean), Math.sin(lean));
    Vector3D square = inward.subtract(inward.dotProduct(line), line).normalize();
    Vector3D foot = joint.add(armMm, square);
    double off = in(random, -0.1, 0.1) * spreadMm;
    return new Vector3D[] {foot.add(spreadMm / 2 + off, line), foot.add(off - spreadMm / 2, line)};
  }

  private static double in(Random random, double from, double to) {
    return from + (to - from) * random.nextDouble();
  }

  /**
   * The reference corner upside down: its upper arm is the lower one, so the same turns lean wheel
   * and kingpin the other way and turn the wheel alike.
   */
  @Test
  void turns_of_a_lower_arm_are_those_of_an_upper_one_upside_down() {
    Pivots g = ReferenceCorner.G1;
    Pivots down =
        new Pivots(
            down(g.upperFront()),
            down(g.upperRear()),
            down(g.upper()),
            down(g.lowerFront()),
            down(g.lowerRear()),
            down(g.lower()),
            down(g.tieInner()),
            down(g.tieOuter()),
            down(g.wheelCentre()),
            -g.camberRad(),
            g.toeRad());
    for (double[] out : OUT) {
      ExactTurns up = ExactTurns.wheelHeld(g, out[0], out[1]);
      ExactTurns lower = ExactTurns.wheelHeld(down.armsSwapped(), out[0], out[1]);
      assertEquals(-up.camberRad(), lower.camberRad(), 1e-12);
      assertEquals(up.toeRad(), lower.toeRad(), 1e-12);
      assertEquals(-up.casterRad(), lower.casterRad(), 1e-12);
      assertEquals(-up.kpiRad(), lower.kpiRad(), 1e-12);
    }
  }

  private static Vector3D down(Vector3D v) {
    return new Vector3D(v.getX(), v.getY(), -v.getZ());
  }
}
