package spindlebook.parts;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;
import org.apache.commons.math3.geometry.euclidean.twod.Vector2D;
import org.junit.jupiter.api.Test;
import spindlebook.alignment.AgainstTarget;
import spindlebook.alignment.ReferenceCorner;
import spindlebook.definition.RackSide;
import spindlebook.parts.ArmOnRodEnds.Arm;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Outcome;
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;

/** Turns, threads, links, engagement. Pitches by hand: 25.4 over the threads per inch. */
class RodEndsTest {
  private static final RodThread HALF = RodThreads.named("1/2-20").orElseThrow();
  private static final RodThread FIVE_EIGHTHS = RodThreads.named("5/8-18").orElseThrow();

  @Test
  void threads_are_found_by_name_in_either_hand() {
    assertEquals(15.875, FIVE_EIGHTHS.diameterMm(), 1e-12);
    assertEquals(1.4111, FIVE_EIGHTHS.pitchMm(), 5e-5);
    assertEquals(Hand.LEFT, RodThreads.named("3/4-16 LH").orElseThrow().hand());
    assertEquals(Hand.LEFT, RodThreads.named("5/8-18 UNF LH").orElseThrow().hand());
    assertEquals(Hand.LEFT, RodThreads.named("5/8 - 18 left").orElseThrow().hand());
    assertEquals(FIVE_EIGHTHS, RodThreads.named("5/8-18UNF").orElseThrow());
    assertEquals(List.of("5/8-11", "5/8-18"), RodThreads.asThickAs("5/8"));
    assertEquals(List.of("M16x2", "M16x1.5"), RodThreads.asThickAs("m16x3 LH"));
    assertEquals(List.of(), RodThreads.asThickAs("17 fine"));
    assertEquals(
        new RodThread("M16x1.5", 16, 1.5, Hand.RIGHT), RodThreads.named("m16 × 1.5").orElseThrow());
    assertEquals(31.75, RodThreads.named("1 1/4-12").orElseThrow().diameterMm(), 1e-12);
    assertTrue(RodThreads.named("5/8-17").isEmpty());
    assertTrue(RodThreads.named("").isEmpty());
  }

  @Test
  void every_known_thread_has_a_name_of_its_own_and_a_sensible_pitch() {
    long names = RodThreads.ALL.stream().map(RodThread::name).distinct().count();
    assertEquals(RodThreads.ALL.size(), names);
    for (RodThread t : RodThreads.ALL) {
      double share = t.pitchMm() / t.diameterMm();
      assertTrue(share > 0.04 && share < 0.21, t.name());
    }
  }

  @Test
  void a_left_hand_end_comes_out_the_other_way() {
    assertEquals("anticlockwise", Hand.RIGHT.outward());
    assertEquals("clockwise", Hand.LEFT.outward());
  }

  @Test
  void a_link_turned_whole_moves_by_both_threads_or_not_at_all() {
    RodThread right = RodThreads.named("3/4-16").orElseThrow();
    assertEquals(3.175, new Link(right, right.with(Hand.LEFT)).lengthPerTurnMm(), 1e-12);
    assertFalse(new Link(right, right).setsTurnedWhole());
    assertEquals(right.pitchMm() - HALF.pitchMm(), new Link(right, HALF).lengthPerTurnMm(), 1e-12);
  }

  @Test
  void turns_give_camber_and_caster_as_in_the_worked_example() {
    ArmOnRodEnds arm = arm(Arm.UPPER, HALF, HALF);
    assertEquals(-0.4851, degrees(arm.camberChangeRad(new Turns(-2, -2))), 5e-5);
    assertEquals(-0.2670, degrees(arm.casterChangeRad(new Turns(-0.5, 0.5))), 5e-5);
    assertEquals(0, degrees(arm.casterChangeRad(new Turns(3, 3))), 1e-12);
    ArmOnRodEnds lower = arm(Arm.LOWER, HALF, HALF);
    assertEquals(0.4851, degrees(lower.camberChangeRad(new Turns(-2, -2))), 5e-5);
  }

  @Test
  void turns_for_a_wanted_change_give_that_change() {
    Random random = new Random(5);
    for (int i = 0; i < 200; i++) {
      ArmOnRodEnds arm = arm(i % 2 == 0 ? Arm.UPPER : Arm.LOWER, HALF, FIVE_EIGHTHS);
      double camber = Math.toRadians(4 * random.nextDouble() - 2);
      double caster = Math.toRadians(6 * random.nextDouble() - 3);
      Turns turns = turnsFor(arm, camber, caster);
      assertEquals(camber, arm.camberChangeRad(turns).value(), 1e-12);
      assertEquals(caster, arm.casterChangeRad(turns).value(), 1e-12);
      Turns half = turns.settable(0.5);
      assertTrue(Math.abs(half.front() - turns.front()) <= 0.25);
      assertEquals(0, half.rear() % 0.5, 0);
    }
    assertThrows(IllegalArgumentException.class, () -> new Turns(1, 1).settable(0));
  }

  /**
   * A welded arm in plan by hand, x ahead, y outboard from the tabs' line: its balls go out along
   * their threads, then the arm is laid so that they stand midway and in line with the tabs.
   */
  @Test
  void threads_that_run_together_move_the_joint_as_a_rigid_arm_in_plan_does() {
    double square = Math.PI / 2;
    Random random = new Random(14);
    for (int i = 0; i < 200; i++) {
      double lean = i == 0 ? square : Math.toRadians(40 + 50 * random.nextDouble());
      Turns turns = new Turns(random.nextDouble() - 0.5, random.nextDouble() - 0.5);
      double front = turns.front() * HALF.pitchMm();
      double rear = turns.rear() * HALF.pitchMm();
      Vector2D atFront = new Vector2D(175 + front * Math.cos(lean), -front * Math.sin(lean));
      Vector2D atRear = new Vector2D(-175 - rear * Math.cos(lean), -rear * Math.sin(lean));
      Vector2D along = atFront.subtract(atRear).normalize();
      Vector2D joint = new Vector2D(0, 385.29).subtract(atFront.add(atRear).scalarMultiply(0.5));
      double back = -joint.dotProduct(along);
      double out = joint.dotProduct(new Vector2D(-along.getY(), along.getX())) - 385.29;
      ArmOnRodEnds arm = arm(Arm.UPPER, HALF, HALF, Figure.exact(lean));
      assertEquals(back / 300, arm.casterChangeRad(turns).value(), 2e-5);
      assertEquals(out / 300, arm.camberChangeRad(turns).value(), 2e-5);
      assertEquals(out, arm.jointOutMm(turns).value(), 6e-3);
      Turns same =
          turnsFor(arm, arm.camberChangeRad(turns).value(), arm.casterChangeRad(turns).value());
      assertEquals(turns.front(), same.front(), 1e-9);
      assertEquals(turns.rear(), same.rear(), 1e-9);
    }
    ArmOnRodEnds leaning = arm(Arm.UPPER, HALF, HALF, Figure.exact(Math.toRadians(65.9)));
    assertEquals(-0.4428, degrees(leaning.camberChangeRad(new Turns(-2, -2))), 5e-5);
    assertEquals(-0.2933, degrees(leaning.casterChangeRad(new Turns(-0.5, 0.5))), 5e-5);
    assertThrows(IllegalArgumentException.class, () -> arm(Arm.UPPER, HALF, HALF, Figure.exact(0)));
  }

  @Test
  void turns_wanted_are_as_sure_as_the_arms_sizes() {
    Figure apart = Figure.of(300, new Source("tape", SourceKind.TOOL), 3);
    ArmOnRodEnds arm =
        new ArmOnRodEnds(
            Arm.UPPER,
            HALF,
            HALF,
            apart,
            Figure.exact(385.29),
            Figure.exact(350),
            ArmOnRodEnds.SQUARE);
    Figure front = arm.frontTurns(Math.toRadians(-0.4851), 0);
    assertEquals(-2, front.value(), 1e-3);
    assertEquals(0.02, front.u(), 1e-5);
    assertEquals(
        arm.frontTurns(0, 0.01).value(),
        -arm.rearTurns(0, 0.01).value(),
        1e-12,
        "caster turns one");
  }

  @Test
  void turned_in_twice_the_reference_corner_stands_so() {
    double outMm = -2 * HALF.pitchMm();
    ExactTurns found = ExactTurns.wheelHeld(ReferenceCorner.G1, outMm, outMm);
    assertEquals(-0.9787, Math.toDegrees(found.camberRad()), 5e-5);
    assertEquals(0.2744, Math.toDegrees(found.toeRad()), 5e-5);
    assertEquals(5.7176, Math.toDegrees(found.casterRad()), 5e-5);
  }

  @Test
  void one_end_out_and_one_in_swings_the_joints_circle_back() {
    Pivots level = level(350, 385);
    UpperArm arm = UpperArm.turned(level, 1.27, -1.27);
    assertEquals(384.990, arm.radiusMm(), 5e-4);
    assertEquals(-2.794, arm.centre().getX(), 5e-4);
    assertEquals(385, UpperArm.turned(level, 0, 0).radiusMm(), 1e-9);
  }

  /** An arm whose pivot line runs along x through 0, its joint midway. */
  private static Pivots level(double spreadMm, double acrossMm) {
    Vector3D none = Vector3D.ZERO;
    return new Pivots(
        none,
        none,
        none,
        new Vector3D(spreadMm / 2, 0, 0),
        new Vector3D(-spreadMm / 2, 0, 0),
        new Vector3D(0, acrossMm, 0),
        none,
        none,
        none,
        0,
        0);
  }

  @Test
  void turns_are_set_to_the_nearest_half() {
    assertEquals(new Turns(1.5, -0.5), new Turns(1.3, -0.4).settable(0.5));
  }

  @Test
  void square_threads_one_out_and_one_in_hardly_spread() {
    assertEquals(0.0092, ConvergingThreads.squareSpreadMm(new Turns(1, -1), HALF, HALF, 350), 5e-5);
  }

  @Test
  void the_doubt_of_the_arms_sizes_is_in_the_change() {
    Figure apart = Figure.of(300, new Source("tape", SourceKind.TOOL), 3);
    ArmOnRodEnds arm =
        new ArmOnRodEnds(
            Arm.UPPER,
            HALF,
            HALF,
            apart,
            Figure.exact(385.29),
            Figure.exact(350),
            ArmOnRodEnds.SQUARE);
    Figure camber = arm.camberChangeRad(new Turns(2, 2));
    assertEquals(0.01, camber.u() / camber.value(), 1e-5);
  }

  @Test
  void a_longer_upper_arm_takes_toe_out_with_the_rack_behind_and_in_with_it_ahead() {
    assertEquals(-0.0844, knockOn(RackSide.BEHIND_AXLE), 5e-5);
    ExactTurns exact = ExactTurns.wheelHeld(ReferenceCorner.G1, 1.27, 1.27);
    double toe = exact.toeRad() - ReferenceCorner.G1.toeRad();
    assertEquals(-0.0870, Math.toDegrees(toe), 5e-5);
    assertEquals(0.0844, knockOn(RackSide.AHEAD_OF_AXLE), 5e-5);
  }

  @Test
  void the_toe_that_comes_along_is_that_of_a_rigid_corner_with_the_rack_ahead() {
    Pivots g = ReferenceCorner.G1;
    Pivots ahead =
        new Pivots(
            g.lowerFront(),
            g.lowerRear(),
            g.lower(),
            g.upperFront(),
            g.upperRear(),
            g.upper(),
            g.tieInner().add(308, Vector3D.PLUS_I),
            g.tieOuter().add(316, Vector3D.PLUS_I),
            g.wheelCentre(),
            g.camberRad(),
            g.toeRad());
    ExactTurns exact = ExactTurns.wheelHeld(ahead, 1.27, 1.27);
    double toe = Math.toDegrees(exact.toeRad() - g.toeRad());
    assertEquals(toe, knockOn(RackSide.AHEAD_OF_AXLE), 0.1 * toe);
  }

  @Test
  void thread_left_in_the_arm_is_held_against_its_rule() {
    ThreadEngaged engaged =
        new ThreadEngaged(FIVE_EIGHTHS, Figure.exact(30), ThreadEngaged.USUAL_DIAMETERS);
    AgainstTarget after = engaged.after(2);
    assertEquals(27.18, after.figure().value(), 5e-3);
    assertEquals(23.81, engaged.ruleMm(), 5e-3);
    assertEquals(3.37, after.figure().value() - engaged.ruleMm(), 5e-3);
    assertEquals(4.4, engaged.turnsLeft(), 0.05);
    assertEquals(Outcome.CLEAR, after.decision());
    assertEquals(Outcome.SHORT, engaged.after(5).decision());
    assertEquals(6.1875 / FIVE_EIGHTHS.pitchMm(), engaged.turnsLeft(), 1e-9);
  }

  @Test
  void turns_the_same_way_spread_converging_threads_and_slack_takes_up_a_little() {
    double front = Math.acos(0.4076);
    double rear = Math.acos(0.4194);
    double apart = ConvergingThreads.spreadMm(new Turns(1, 1), HALF, HALF, front, rear);
    assertEquals(1.050, apart, 5e-4);
    double opposite = ConvergingThreads.spreadMm(new Turns(1, -1), HALF, HALF, front, rear);
    assertTrue(Math.abs(opposite) < 0.02);
  }

  private static Turns turnsFor(ArmOnRodEnds arm, double camber, double caster) {
    return new Turns(arm.frontTurns(camber, caster).value(), arm.rearTurns(camber, caster).value());
  }

  private static double knockOn(RackSide rack) {
    return degrees(
        ToeKnockOn.rad(
            Figure.exact(Math.toRadians(0.2425)),
            Figure.exact(0),
            Figure.exact(55),
            Figure.exact(158),
            Figure.exact(-0.0610),
            rack));
  }

  private static ArmOnRodEnds arm(Arm arm, RodThread front, RodThread rear) {
    return arm(arm, front, rear, ArmOnRodEnds.SQUARE);
  }

  private static ArmOnRodEnds arm(Arm arm, RodThread front, RodThread rear, Figure threadRad) {
    return new ArmOnRodEnds(
        arm, front, rear, Figure.exact(300), Figure.exact(385.29), Figure.exact(350), threadRad);
  }

  private static double degrees(Figure rad) {
    return Math.toDegrees(rad.value());
  }

  @Test
  void exact_turns_come_back_from_what_they_did() {
    RodThread thread = RodThreads.named("1/2-20").orElseThrow();
    ExactTurns had = ExactTurns.wheelHeld(ReferenceCorner.G1, 0, 0);
    for (double[] n : new double[][] {{-2, -2}, {1.5, -0.5}, {0, 3}, {0, 0}}) {
      ExactTurns did =
          ExactTurns.wheelHeld(
              ReferenceCorner.G1, n[0] * thread.pitchMm(), n[1] * thread.pitchMm());
      Turns back =
          ExactTurns.turnsFor(
              ReferenceCorner.G1,
              thread,
              thread,
              did.camberRad() - had.camberRad(),
              did.casterRad() - had.casterRad());
      assertEquals(n[0], back.front(), 1e-4);
      assertEquals(n[1], back.rear(), 1e-4);
    }
  }

  @Test
  void no_turns_lean_a_wheel_by_a_radian() {
    RodThread thread = RodThreads.named("1/2-20").orElseThrow();
    assertThrows(
        IllegalArgumentException.class,
        () -> ExactTurns.turnsFor(ReferenceCorner.G1, thread, thread, 1.0, 0));
  }
}
