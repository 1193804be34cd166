package spindlebook.alignment;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.apache.commons.math3.geometry.euclidean.twod.Vector2D;
import org.junit.jupiter.api.Test;
import spindlebook.entry.LineSide;
import spindlebook.fold.ToolError;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;

/** Toe by line, tape, dial and spot. A plate turned in plan by hand is the outside source. */
class ToeReadingTest {
  private static final double SPACING_MM = 609.6;
  private static final double TOE_IN = Math.toRadians(0.4);

  @Test
  void a_string_outside_is_further_from_the_front_of_a_wheel_that_toes_in() {
    Toe toe = fromLine(101.6, 98.4, LineSide.OUTBOARD);
    assertEquals(0.3008, Math.toDegrees(toe.rad().value()), 5e-5);
  }

  @Test
  void a_left_and_a_right_wheel_turned_in_by_hand_read_toe_in_from_either_side() {
    for (int side : new int[] {1, -1}) {
      double front = side * plateEnd(side, 1).getY();
      double rear = side * plateEnd(side, -1).getY();
      assertTrue(front < rear, "the front edge is nearer to the middle of the car");
      assertToeIn(fromLine(front, rear, LineSide.INBOARD));
      assertToeIn(fromLine(1000 - front, 1000 - rear, LineSide.OUTBOARD));
    }
  }

  @Test
  void a_tape_across_both_wheels_turned_in_by_hand_reads_the_total_toe_in() {
    double front = plateEnd(1, 1).getY() - plateEnd(-1, 1).getY();
    double rear = plateEnd(1, -1).getY() - plateEnd(-1, -1).getY();
    TotalToe total =
        TotalToe.byTape(Figure.exact(front), Figure.exact(rear), Figure.exact(SPACING_MM));
    assertEquals(2 * TOE_IN, total.rad().value(), 1e-12);
    assertTrue(total.mm().value() > 0);
  }

  @Test
  void a_tape_tells_the_total_of_wheels_that_differ_but_not_which() {
    TotalToe total =
        TotalToe.byTape(Figure.exact(1577.0), Figure.exact(1583.35), Figure.exact(711.2));
    assertEquals(6.35, total.mm().value(), 1e-9);
    assertEquals(0.2558, Math.toDegrees(total.perWheelIfAlike().rad().value()), 5e-5);
    assertEquals(0.5116, Math.toDegrees(total.rad().value()), 5e-5);
    assertTrue(TotalToe.HIDES_SIDES.contains("total only"));
  }

  @Test
  void a_line_that_leans_inward_is_added() {
    Figure lean = Figure.exact(Math.toRadians(0.1));
    Toe toe =
        ToeReading.fromLine(
            Figure.exact(200), Figure.exact(200), Figure.exact(SPACING_MM), LineSide.INBOARD, lean);
    assertEquals(0.1, Math.toDegrees(toe.rad().value()), 1e-12);
  }

  @Test
  void a_line_to_both_hubs_tells_how_far_it_leans() {
    assertEquals(0.1228, leanDeg(LineSide.INBOARD, 120, 126, 0), 5e-5);
    assertEquals(-0.0819, leanDeg(LineSide.INBOARD, 120, 126, 10), 5e-5);
    double inside = leanDeg(LineSide.OUTBOARD, 126, 120, 0);
    assertEquals(0.1228, inside, 5e-5);
    Toe straight =
        ToeReading.fromLine(
            Figure.exact(126.65),
            Figure.exact(125.35),
            Figure.exact(SPACING_MM),
            LineSide.INBOARD,
            Figure.exact(Math.toRadians(inside)));
    // 6/2800 of 609.6 mm is 1.306 mm: as much as the rim's two edges differ.
    assertEquals(0, Math.toDegrees(straight.rad().value()), 1e-3);
  }

  @Test
  void a_wheel_turned_in_by_hand_reads_the_same_toe_from_a_string_outside_that_leans_either_way() {
    readsTheSameToe(LineSide.OUTBOARD, 1600, LineSide.INBOARD, 730);
  }

  @Test
  void and_from_a_string_inside_with_the_hubs_outboard_of_it() {
    readsTheSameToe(LineSide.INBOARD, 500, LineSide.OUTBOARD, 730);
  }

  @Test
  void and_from_a_string_inside_with_marks_on_the_frame_inboard_of_it() {
    readsTheSameToe(LineSide.INBOARD, 500, LineSide.INBOARD, 330);
  }

  /** Line and front place so far from the car's middle, at the axle; mm. */
  private static void readsTheSameToe(LineSide runs, double lineMm, LineSide lie, double placeMm) {
    for (int side : new int[] {1, -1}) {
      for (double leanDeg : new double[] {-0.5, 0, 0.7}) {
        double lean = Math.toRadians(leanDeg);
        // Its front end is nearer to the car's middle.
        Vector2D along = new Vector2D(Math.cos(lean), -side * Math.sin(lean));
        Vector2D on = new Vector2D(0, side * lineMm);
        double front = fromLine(plateEnd(side, 1), on, along);
        double rear = fromLine(plateEnd(side, -1), on, along);
        // Places 2800 mm apart, the one in front 30 mm further out.
        double frontPlace = fromLine(new Vector2D(0, side * placeMm), on, along);
        double rearPlace = fromLine(new Vector2D(-2800, side * (placeMm - 30)), on, along);
        // Square to the line the places shift by the lean: a cosine of it, no more.
        Figure found =
            LeaningLine.inwardRad(
                lie,
                Figure.exact(frontPlace),
                Figure.exact(rearPlace),
                Figure.exact(2800),
                Figure.exact(30 * Math.cos(lean)));
        assertEquals(lean, found.value(), 1e-12);
        Toe toe =
            ToeReading.fromLine(
                Figure.exact(front), Figure.exact(rear), Figure.exact(SPACING_MM), runs, found);
        assertToeIn(toe);
      }
    }
  }

  private static double leanDeg(LineSide lie, double front, double rear, double wider) {
    Figure lean =
        LeaningLine.inwardRad(
            lie, Figure.exact(front), Figure.exact(rear), Figure.exact(2800), Figure.exact(wider));
    return Math.toDegrees(lean.value());
  }

  /** Square to it. */
  private static double fromLine(Vector2D point, Vector2D on, Vector2D along) {
    Vector2D d = point.subtract(on);
    return Math.abs(d.getX() * along.getY() - d.getY() * along.getX());
  }

  @Test
  void dials_that_move_out_behind_and_in_ahead_mean_more_toe_in() {
    Figure change =
        ToeReading.dialChangeRad(Figure.exact(-1), Figure.exact(1), Figure.exact(SPACING_MM));
    assertEquals(Math.asin(2 / SPACING_MM), change.value(), 1e-15);
    assertEquals(0.1880, Math.toDegrees(change.value()), 5e-5);
  }

  @Test
  void a_spot_far_ahead_is_scaled_by_its_distance() {
    Toe toe = ToeReading.spot(Figure.exact(25), Figure.exact(5000));
    assertEquals(Math.toDegrees(Math.atan(0.005)), Math.toDegrees(toe.rad().value()), 1e-12);
    assertEquals(0.2865, Math.toDegrees(toe.rad().value()), 5e-5);
  }

  @Test
  void a_quarter_of_a_degree_is_three_millimetres_a_wheel() {
    Toe toe = new Toe(Figure.exact(Math.toRadians(0.25)));
    assertEquals(3.103, toe.mm(711.2).value(), 5e-4);
    assertEquals(6.206, 2 * toe.mm(711.2).value(), 5e-4);
    assertEquals(0.244, 2 * toe.mm(711.2).value() / 25.4, 5e-4);
    Toe back = Toe.acrossOneWheel(toe.mm(711.2), Figure.exact(711.2));
    assertEquals(0.25, Math.toDegrees(back.rad().value()), 1e-12);
  }

  @Test
  void the_tapes_own_error_cancels_between_front_and_rear() {
    ToolError tape = new ToolError("tape", 0, 25.4 / 32, 2);
    Toe toe =
        ToeReading.fromLine(
            tape.read(150, "f", "f"),
            tape.read(152, "r", "r"),
            Figure.exact(SPACING_MM),
            LineSide.INBOARD,
            Figure.exact(0));
    assertFalse(toe.rad().parts().containsKey(new Source("tape", SourceKind.TOOL)));
    assertEquals(Math.sqrt(2) * 0.4583 / SPACING_MM, toe.rad().u(), 1e-6);
  }

  @Test
  void a_difference_wider_than_the_spacing_is_no_toe() {
    assertThrows(IllegalArgumentException.class, () -> fromLine(0, 700, LineSide.INBOARD));
  }

  /** End of a plate in plan, x ahead, y left; side +1 left wheel; end +1 front. */
  private static Vector2D plateEnd(int side, int end) {
    double heading = -side * TOE_IN;
    return new Vector2D(0, side * 750)
        .add(
            new Vector2D(
                end * SPACING_MM / 2 * Math.cos(heading),
                end * SPACING_MM / 2 * Math.sin(heading)));
  }

  private static Toe fromLine(double front, double rear, LineSide side) {
    return ToeReading.fromLine(
        Figure.exact(front), Figure.exact(rear), Figure.exact(SPACING_MM), side, Figure.exact(0));
  }

  private static void assertToeIn(Toe toe) {
    assertEquals(TOE_IN, toe.rad().value(), 1e-12);
  }
}
