package spindlebook.linkage;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import spindlebook.alignment.AxisPlace;
import spindlebook.alignment.ScrubTrail;
import spindlebook.alignment.SteeringAxis;
import spindlebook.entry.Joint;
import spindlebook.linkage.Found.StopsAssembling;
import spindlebook.uncertainty.Figure;

/** Seeded corners with inclined axes, to the very end of what assembles. */
class RandomLinkageTest {
  private static final int CORNERS = 400;
  private static final double SPREAD_MM = 80;

  private static void keepsItsLengths(Joints joints, Pose pose) {
    Vec[] now = {pose.l(), pose.upper(), pose.tie(), pose.hub()};
    Joint[] named = {Joint.L, Joint.U, Joint.TO, Joint.W};
    for (int i = 0; i < 4; i++) {
      for (int j = i + 1; j < 4; j++) {
        same(joints, named[i], named[j], now[i].distance(now[j]));
      }
    }
    same(joints, Joint.LF, Joint.L, joints.get(Joint.LF).distance(pose.l()));
    same(joints, Joint.LR, Joint.L, joints.get(Joint.LR).distance(pose.l()));
    same(joints, Joint.UF, Joint.U, joints.get(Joint.UF).distance(pose.upper()));
    same(joints, Joint.UR, Joint.U, joints.get(Joint.UR).distance(pose.upper()));
    same(joints, Joint.TI, Joint.TO, pose.inner().distance(pose.tie()));
    assertEquals(1, pose.spin().length(), 1e-11);
  }

  private static void same(Joints joints, Joint one, Joint other, double lengthMm) {
    double given = joints.get(one).distance(joints.get(other));
    assertEquals(given, lengthMm, 1e-9, one + " to " + other);
  }

  @Test
  void every_pose_keeps_every_length_and_stands_at_its_height() {
    Random random = new Random(20261128);
    for (int i = 0; i < CORNERS; i++) {
      Joints joints = RandomLinkage.near(random, SPREAD_MM);
      Linkage linkage = new Linkage(joints);
      for (int k = 0; k < 8; k++) {
        double height = 560 * random.nextDouble() - 280;
        double rack = 120 * random.nextDouble() - 60;
        if (linkage.at(height, rack) instanceof Pose pose) {
          keepsItsLengths(joints, pose);
          assertEquals(height, pose.heightMm(), 1e-9);
          assertEquals(rack, pose.inner().y() - joints.get(Joint.TI).y(), 1e-9);
        }
      }
    }
  }

  @Test
  void a_height_found_from_far_off_is_the_one_found_step_by_step() {
    Random random = new Random(7);
    for (int i = 0; i < CORNERS; i++) {
      Linkage linkage = new Linkage(RandomLinkage.near(random, SPREAD_MM));
      double rack = 100 * random.nextDouble() - 50;
      for (int way = -1; way <= 1; way += 2) {
        if (!(linkage.at(0, rack) instanceof Pose near)) {
          continue;
        }
        for (double height = 0; Math.abs(height) <= 600; height += way * 2) {
          Found next = linkage.at(height, near);
          Found alone = linkage.at(height, rack);
          assertEquals(next instanceof Pose, alone instanceof Pose, "at " + height);
          if (!(next instanceof Pose pose)) {
            break;
          }
          assertTrue(goesOn(linkage, near, pose, 12), "it jumped at " + height);
          assertEquals(0, pose.hub().distance(alone.pose().hub()), 1e-6);
          assertEquals(0, pose.tie().distance(alone.pose().tie()), 1e-6);
          near = pose;
        }
      }
    }
  }

  /** However far the joints move in a step of height, in small steps they move little. */
  private static boolean goesOn(Linkage linkage, Pose from, Pose to, int halvings) {
    double moved = Math.max(from.l().distance(to.l()), from.tie().distance(to.tie()));
    if (moved < 5 || halvings == 0) {
      return moved < 5;
    }
    Pose middle = linkage.at((from.heightMm() + to.heightMm()) / 2, from).pose();
    return goesOn(linkage, from, middle, halvings - 1) && goesOn(linkage, middle, to, halvings - 1);
  }

  @Test
  void it_reaches_its_end_and_nothing_beyond_it() {
    Random random = new Random(42);
    int ends = 0;
    int pastDeadCentre = 0;
    for (int i = 0; i < CORNERS; i++) {
      Joints joints = RandomLinkage.near(random, SPREAD_MM);
      Linkage linkage = new Linkage(joints);
      double rack = 140 * random.nextDouble() - 70;
      if (linkage.design(rack).isEmpty()) {
        continue;
      }
      Pose design = linkage.design(rack).orElseThrow();
      for (int way = -1; way <= 1; way += 2) {
        StopsAssembling end = assertInstanceOf(StopsAssembling.class, linkage.at(way * 5000, rack));
        assertEquals(way < 0, end.lower());
        for (double inside : new double[] {20, 1, 0.01}) {
          double height = end.heightMm() - way * inside;
          Pose pose = linkage.at(height, rack).pose();
          keepsItsLengths(joints, pose);
          assertEquals(height, pose.heightMm(), 1e-7);
          boolean crossed =
              pose.upperWay() != design.upperWay() || pose.tieWay() != design.tieWay();
          pastDeadCentre += crossed ? 1 : 0;
        }
        assertInstanceOf(
            StopsAssembling.class, linkage.at(end.heightMm() + way * 0.01, rack), "beyond");
        ends++;
      }
    }
    assertTrue(ends > CORNERS, "ends: " + ends);
    assertTrue(pastDeadCentre > 30, "beyond a dead centre: " + pastDeadCentre);
  }

  /** Another method and another's solver: nine equations by Marquardt's, from 5 mm away. */
  @Test
  void a_rack_that_the_rod_reaches_at_another_height_only_is_answered_there() {
    CornerText corner =
        CornerText.read(
            """
            LF,293.3554,412.1468,358.2542
            LR,-115.974,455.7865,281.3913
            L,-12.7849,761.3953,290.0228
            UF,142.8707,225.5674,531.9322
            UR,-232.5693,212.9268,630.6478
            U,-38.9064,647.3777,647.7438
            TI,-163.0297,305.5271,370.0253
            TO,-102.2388,731.7573,313.5072
            W,0,881.6227,456.0314
            toe_in_deg,-1.028
            camber_deg,1.069
            loaded_radius,488.166
            """);
    Linkage linkage = new Linkage(corner.joints());
    assertTrue(linkage.design(-65.2).isEmpty());
    for (double height : new double[] {100, 150, 190}) {
      Pose pose = linkage.at(height, -65.2).pose();
      assertEquals(height, pose.heightMm(), 1e-9);
      keepsItsLengths(corner.joints(), pose);
      // The same as by the nine equations, led there from rack 0 by steps of a millimetre.
      NineEquations other = new NineEquations(linkage);
      double[] at = NineEquations.start(linkage.at(height, 0).pose());
      for (double rack = 0; rack > -65.2; rack -= 1) {
        at = other.solved(at, height, rack);
      }
      at = other.solved(at, height, -65.2);
      assertArrayEquals(at, NineEquations.start(pose), 1e-6);
    }
    assertEquals(
        "At rack −65.2 mm it does not assemble here: the tie rod does not reach.",
        ((Found.StopsAssembling) linkage.at(0, -65.2)).words());
  }

  @Test
  void nine_equations_come_to_the_same_joints() {
    Random random = new Random(23);
    for (int i = 0; i < CORNERS; i++) {
      Linkage linkage = new Linkage(RandomLinkage.near(random, SPREAD_MM));
      NineEquations nine = new NineEquations(linkage);
      double height = 400 * random.nextDouble() - 200;
      double rack = 100 * random.nextDouble() - 50;
      boolean roomAround =
          linkage.at(height - 30, rack) instanceof Pose
              && linkage.at(height + 30, rack) instanceof Pose;
      if (roomAround) {
        double[] start = NineEquations.start(linkage.at(height - 5, rack).pose());
        assertArrayEquals(
            NineEquations.start(linkage.at(height, rack).pose()),
            nine.solved(start, height, rack),
            1e-7);
      }
    }
  }

  /** Differences of 4th order (Richardson) against the velocity equations. */
  @Test
  void rates_are_those_of_differences() {
    Random random = new Random(11);
    for (int i = 0; i < CORNERS; i++) {
      Linkage linkage = new Linkage(RandomLinkage.near(random, SPREAD_MM));
      double height = 400 * random.nextDouble() - 200;
      double rack = 100 * random.nextDouble() - 50;
      boolean roomAround =
          linkage.at(height - 60, rack) instanceof Pose
              && linkage.at(height + 60, rack) instanceof Pose;
      if (!roomAround) {
        continue;
      }
      Pose pose = linkage.at(height, rack).pose();
      rate(linkage, pose, Pose::camberRad, pose.camberPerMm());
      rate(linkage, pose, Pose::toeRad, pose.toePerMm());
      rate(linkage, pose, Pose::casterRad, pose.casterPerMm());
      rate(linkage, pose, Pose::kpiRad, pose.kpiPerMm());
      rate(linkage, pose, p -> p.halfTrackMm() / 1000, pose.halfTrackPerMm() / 1000);
      rate(linkage, pose, p -> -p.shockMm() / 1000, pose.shockRatio() / 1000);
      rate(linkage, pose, p -> -p.strapMm() / 1000, pose.strapRatio() / 1000);
    }
  }

  private static void rate(Linkage linkage, Pose pose, ToDoubleFunction<Pose> of, double exact) {
    double coarse = slope(linkage, pose, of, 0.5);
    double fine = slope(linkage, pose, of, 0.25);
    assertEquals((4 * fine - coarse) / 3, exact, 1e-9 + 1e-6 * Math.abs(exact));
  }

  private static double slope(
      Linkage linkage, Pose pose, ToDoubleFunction<Pose> of, double stepMm) {
    Pose up = linkage.at(pose.heightMm() + stepMm, pose).pose();
    Pose down = linkage.at(pose.heightMm() - stepMm, pose).pose();
    return (of.applyAsDouble(up) - of.applyAsDouble(down)) / (2 * stepMm);
  }

  /** The alignment's formula, from the kingpin's angles. */
  @Test
  void scrub_and_trail_are_those_of_the_alignment() {
    Random random = new Random(3);
    for (int i = 0; i < CORNERS; i++) {
      Linkage linkage = new Linkage(RandomLinkage.near(random, SPREAD_MM));
      if (!(linkage.at(100 * random.nextDouble(), 60 * random.nextDouble()) instanceof Pose pose)) {
        continue;
      }
      OnGround ground = OnGround.of(pose);
      int side = linkage.joints().side();
      Vec fromHub = pose.l().minus(pose.hub());
      ScrubTrail other =
          ScrubTrail.of(
              new AxisPlace(
                  Figure.exact(fromHub.x()),
                  Figure.exact(-side * fromHub.y()),
                  Figure.exact(-fromHub.z())),
              new SteeringAxis(Figure.exact(pose.casterRad()), Figure.exact(pose.kpiRad())),
              Figure.exact(pose.camberRad()),
              Figure.exact(pose.toeRad()),
              Figure.exact(linkage.joints().radiusMm()));
      assertEquals(other.scrubMm().value(), ground.scrubMm(), 1e-9);
      assertEquals(other.trailMm().value(), ground.trailMm(), 1e-9);
      assertEquals(other.bodyScrubMm().value(), ground.bodyScrubMm(), 1e-9);
      assertEquals(other.bodyTrailMm().value(), ground.bodyTrailMm(), 1e-9);
    }
  }
}
