package spindlebook.alignment;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import spindlebook.alignment.ArmOnRodEnds.Arm;
import spindlebook.corner.RackSide;
import spindlebook.uncertainty.Decision;
import spindlebook.uncertainty.Figure;
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
    assertEquals(
        new RodThread("M16x1.5", 16, 1.5, Hand.RIGHT), RodThreads.named("m16 × 1.5").orElseThrow());
    assertEquals(31.75, RodThreads.named("1 1/4-12").orElseThrow().diameterMm(), 1e-12);
    assertTrue(RodThreads.named("5/8-17").isEmpty());
    assertTrue(RodThreads.named("").isEmpty());
  }

  @Test
  void every_known_thread_has_a_name_of_its_own_and_a_sensible_pitch() {
    long names = RodThreads.known().stream().map(RodThread::name).distinct().count();
    assertEquals(RodThreads.known().size(), names);
    for (RodThread t : RodThreads.known()) {
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
      Turns turns = arm.turnsFor(camber, caster);
      assertEquals(camber, arm.camberChangeRad(turns).value(), 1e-12);
      assertEquals(caster, arm.casterChangeRad(turns).value(), 1e-12);
      Turns half = turns.settable(0.5);
      assertTrue(Math.abs(half.front() - turns.front()) <= 0.25);
      assertEquals(0, half.rear() % 0.5, 0);
    }
    assertThrows(IllegalArgumentException.class, () -> new Turns(1, 1).settable(0));
  }

  @Test
  void the_doubt_of_the_arms_sizes_is_in_the_change() {
    Figure apart = Figure.of(300, new Source("tape", SourceKind.TOOL), 3);
    ArmOnRodEnds arm =
        new ArmOnRodEnds(Arm.UPPER, HALF, HALF, apart, Figure.exact(385.29), Figure.exact(350));
    Figure camber = arm.camberChangeRad(new Turns(2, 2));
    assertEquals(0.01, camber.u() / camber.value(), 1e-5);
  }

  @Test
  void a_longer_upper_arm_takes_toe_out_with_the_rack_behind_and_in_with_it_ahead() {
    assertEquals(-0.0844, knockOn(RackSide.BEHIND_AXLE), 5e-5);
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
    ExactTurns exact = ExactTurns.lowerArmHeld(ahead, 1.27, 1.27);
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
    assertEquals(Decision.CLEAR, after.decision());
    assertEquals(Decision.SHORT, engaged.after(5).decision());
    assertEquals(6.1875 / FIVE_EIGHTHS.pitchMm(), engaged.turnsLeft(), 1e-9);
  }

  @Test
  void turns_the_same_way_spread_converging_threads_and_slack_takes_up_a_little() {
    double front = Math.acos(0.4076);
    double rear = Math.acos(0.4194);
    double apart = ConvergingThreads.spreadMm(new Turns(1, 1), HALF, HALF, front, rear);
    assertEquals(1.050, apart, 5e-4);
    assertTrue(ConvergingThreads.binds(apart, 1.0));
    assertFalse(ConvergingThreads.binds(apart, 1.1));
    double opposite = ConvergingThreads.spreadMm(new Turns(1, -1), HALF, HALF, front, rear);
    assertTrue(Math.abs(opposite) < 0.02);
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
    return new ArmOnRodEnds(
        arm, front, rear, Figure.exact(300), Figure.exact(385.29), Figure.exact(350));
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
