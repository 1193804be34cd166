package spindlebook.alignment;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.apache.commons.math3.geometry.euclidean.threed.Rotation;
import org.apache.commons.math3.geometry.euclidean.threed.RotationConvention;
import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import spindlebook.definition.Place;
import spindlebook.entry.SweptBy;
import spindlebook.fold.ToolError;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;

/** Caster and KPI by sweep; knuckles turned by Commons Math's Rotation are the outside source. */
class CasterSweepTest {
  private static final ToolError GAUGE =
      new ToolError("gauge", 0, Math.toRadians(0.05), Math.toRadians(0.5));
  private static final Vector3D KINGPIN =
      new Vector3D(-Math.tan(rad(6)), -Math.tan(rad(9)), 1).normalize();

  @Test
  void a_left_wheel_of_two_degrees_reads_so() {
    Sweep sweep = sweep(exact(20), exact(-20), exact(1.0484), exact(0), exact(-0.3210));
    assertEquals(2.000, degrees(CasterSweep.withKpi(sweep, exact(6)).casterRad()), 5e-4);
    SteeringAxis alone = CasterSweep.fromCambers(sweep);
    assertEquals(2, degrees(alone.casterRad()), 5e-4);
    assertEquals(6, degrees(alone.kpiRad()), 5e-3);
    assertEquals(1.9616, degrees(CasterSweep.smallAngleRad(sweep)), 5e-4);
  }

  @Test
  void a_knuckle_of_two_and_six_degrees_leans_its_wheel_so() {
    SweptKnuckle knuckle = new SweptKnuckle(Math.tan(rad(2)), Math.tan(rad(6)), 0, 0, 0);
    assertEquals(1.0484, camber(knuckle, SweptBy.WHEEL_HEADING, 20), 5e-5);
    assertEquals(1.0390, camber(knuckle, SweptBy.KINGPIN_TURN, 20), 5e-5);
    assertEquals(-0.3210, camber(knuckle, SweptBy.WHEEL_HEADING, -20), 5e-5);
    assertEquals(-0.3214, camber(knuckle, SweptBy.KINGPIN_TURN, -20), 5e-5);
  }

  private static double camber(SweptKnuckle knuckle, SweptBy by, double lockDegrees) {
    return Math.toDegrees(Math.asin(knuckle.camberSine(by, rad(lockDegrees))));
  }

  @Test
  void a_heading_that_no_turn_reaches_is_refused() {
    // A kingpin lying almost flat cannot turn a wheel to any heading.
    SweptKnuckle flat = new SweptKnuckle(0, Math.tan(rad(89)), 0, 0, 0);
    assertTrue(Double.isNaN(flat.camberSine(SweptBy.WHEEL_HEADING, rad(80))));
  }

  @Test
  void a_gauge_along_the_wheel_gives_kpi_by_the_same_swing() {
    SteeringAxis axis = CasterSweep.withPitch(turned(25, -15), pitch(25, -15));
    assertEquals(6, degrees(axis.casterRad()), 1e-9);
    assertEquals(9, degrees(axis.kpiRad()), 1e-9);
  }

  @Test
  void the_right_wheel_reads_the_same_axis_with_its_locks_the_other_way() {
    Sweep l = turned(25, -15);
    PitchSwept p = pitch(25, -15);
    Sweep right =
        new Sweep(
            Place.RIGHT_FRONT,
            SweptBy.KINGPIN_TURN,
            l.rightLockRad().times(-1),
            l.leftLockRad().times(-1),
            l.camberRightRad(),
            l.camberStraightRad(),
            l.camberLeftRad(),
            l.toeStraightRad());
    PitchSwept mirrored = new PitchSwept(p.rightRad(), p.straightRad(), p.leftRad());
    SteeringAxis axis = CasterSweep.withPitch(right, mirrored);
    assertEquals(6, degrees(axis.casterRad()), 1e-9);
    assertEquals(9, degrees(axis.kpiRad()), 1e-9);
  }

  @Test
  void kpi_from_cambers_alone_is_worth_far_less_than_by_the_gauge_along_the_wheel() {
    SteeringAxis alone = CasterSweep.fromCambers(turned(20, -20));
    SteeringAxis along = CasterSweep.withPitch(turned(20, -20), pitch(20, -20));
    assertTrue(alone.kpiRad().U() > 10 * along.kpiRad().U());
    assertTrue(degrees(alone.kpiRad()) - 9 < 1e-9);
  }

  @Test
  void the_gauges_zero_hardly_enters_caster() {
    SteeringAxis axis = CasterSweep.withKpi(turned(20, -20), exact(9));
    double part = axis.casterRad().parts().getOrDefault(new Source("gauge", SourceKind.TOOL), 0.0);
    assertTrue(Math.abs(part) < 0.02 * GAUGE.classHalfWidth());
  }

  @Test
  void three_degrees_of_kpi_are_a_twentieth_of_a_degree_of_caster() {
    double right = degrees(CasterSweep.withKpi(turned(20, -20), exact(9)).casterRad());
    double wrong = degrees(CasterSweep.withKpi(turned(20, -20), exact(12)).casterRad());
    assertEquals(0.05, Math.abs(wrong - right), 0.01);
  }

  @Test
  void a_sweep_to_one_side_only_is_refused() {
    assertThrows(
        IllegalArgumentException.class,
        () -> sweep(exact(20), exact(10), exact(1), exact(0), exact(-1)));
  }

  @Test
  void cambers_that_no_axis_explains_are_refused() {
    Sweep nonsense = sweep(exact(5), exact(-5), exact(40), exact(0), exact(-40));
    assertThrows(IllegalArgumentException.class, () -> CasterSweep.withKpi(nonsense, exact(9)));
  }

  private static Sweep turned(double leftDegrees, double rightDegrees) {
    return sweep(
        exact(leftDegrees),
        exact(rightDegrees),
        GAUGE.read(camberRad(leftDegrees), "left", "left"),
        GAUGE.read(camberRad(0), "straight", "straight"),
        GAUGE.read(camberRad(rightDegrees), "right", "right"));
  }

  private static PitchSwept pitch(double leftDegrees, double rightDegrees) {
    return new PitchSwept(
        GAUGE.read(pitchRad(leftDegrees), "pl", "pl"),
        GAUGE.read(pitchRad(0), "ps", "ps"),
        GAUGE.read(pitchRad(rightDegrees), "pr", "pr"));
  }

  private static double camberRad(double degrees) {
    double camber = rad(-1);
    Vector3D axis = new Vector3D(0, Math.cos(camber), -Math.sin(camber));
    return -Math.asin(knuckle(degrees).applyTo(axis).getZ());
  }

  private static double pitchRad(double degrees) {
    return Math.asin(knuckle(degrees).applyTo(new Vector3D(1, 0, 0)).getZ());
  }

  private static Rotation knuckle(double degrees) {
    return new Rotation(KINGPIN, rad(degrees), RotationConvention.VECTOR_OPERATOR);
  }

  private static Sweep sweep(Figure left, Figure right, Figure cl, Figure c0, Figure cr) {
    SweptBy by = c0.parts().isEmpty() ? SweptBy.WHEEL_HEADING : SweptBy.KINGPIN_TURN;
    return new Sweep(Place.LEFT_FRONT, by, left, right, cl, c0, cr, Figure.exact(0));
  }

  private static Figure exact(double degrees) {
    return Figure.exact(rad(degrees));
  }

  private static double rad(double degrees) {
    return Math.toRadians(degrees);
  }

  private static double degrees(Figure rad) {
    return Math.toDegrees(rad.value());
  }
}
