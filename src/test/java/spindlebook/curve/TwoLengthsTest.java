package spindlebook.curve;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static spindlebook.travel.Readings.exact;
import static spindlebook.travel.Readings.read;

import java.util.List;
import org.junit.jupiter.api.Test;
import spindlebook.travel.TrueCurves;
import spindlebook.uncertainty.Figure;

/**
 * What two readings of a length do not know: how it bends. Lagrange's remainder, with the largest
 * bend that is assumed; the reference strap says whether that is enough.
 */
class TwoLengthsTest {
  private static final TrueCurves.Curve STRAP = TrueCurves.STRAP;

  private static List<Node> strapAt(double... positionsMm) {
    return java.util.Arrays.stream(positionsMm).mapToObj(x -> exact(x, STRAP.at(x))).toList();
  }

  @Test
  void a_change_from_two_exact_readings_is_doubted_by_the_bend_nobody_read() {
    // 0.5 per mm over 300 mm; 25 mm from the lower one: 25 · 275 / 2 · 0.5 / 1000 = 1.71875 mm.
    List<Node> line = List.of(exact(-260, 550), exact(40, 400));
    Figure change = PositionToSetting.lengthChange(line, -260, -235).changeMm();
    assertEquals(-12.5, change.value(), 1e-9);
    assertEquals(1.71875 / Math.sqrt(3), change.u(), 1e-9);
    // From end to end it was read.
    assertEquals(0, PositionToSetting.lengthChange(line, -260, 40).changeMm().u(), 1e-9);
    // Beyond: 20 · 320 / 2.
    assertEquals(
        20 * 320 / 2.0 * 0.5 / 1000 / Math.sqrt(3),
        PositionToSetting.lengthChange(line, -260, -280).changeMm().u(),
        1e-9);
  }

  @Test
  void the_ratio_of_two_readings_is_least_doubted_half_way_between_them() {
    List<Node> line = List.of(read(-260, 0, 548.8, 0.5), read(-200, 0, 519.5, 0.5));
    assertEquals(Math.sqrt(2) * 0.5 / 60, Ratio.at(line, -230).u(), 1e-9);
    double bend = 29.3 / 60 / 1000 * 30 / Math.sqrt(3);
    assertEquals(Math.hypot(Math.sqrt(2) * 0.5 / 60, bend), Ratio.at(line, -260).u(), 1e-9);
    assertEquals(0.0145, Ratio.at(line, -260).u(), 5e-5);
  }

  @Test
  void the_reference_strap_bends_no_more_than_is_assumed_where_a_strap_acts() {
    // Nearer to full bump it bends by up to 0.0013 of its slope; a strap does not act there.
    for (double x = -280; x <= 220; x += 10) {
      double bend =
          STRAP.value().polynomialSplineDerivative().polynomialSplineDerivative().value(x);
      assertTrue(Math.abs(bend) <= Math.abs(STRAP.slope(x)) / 1000, "at " + x + ": " + bend);
    }
  }

  @Test
  void two_readings_tell_its_change_within_their_doubt_wherever_they_were_taken() {
    for (double from = -280; from <= 0; from += 20) {
      for (double span = 60; span <= 280; span += 20) {
        List<Node> two = strapAt(from, from + span);
        for (double move = -20; move <= 60; move += 10) {
          double to = Math.max(-280, from + move);
          Figure told = PositionToSetting.lengthChange(two, from, to).changeMm();
          double truth = STRAP.at(to) - STRAP.at(from);
          assertEquals(truth, told.value(), told.U() + 1e-9, from + " to " + to + ", " + span);
        }
      }
    }
  }

  @Test
  void a_line_from_the_far_end_is_no_way_down_past_the_near_one() {
    // Slopes at the ends (3 · 0.3 − 0.6)/2 = 0.15 and (3 · 0.5 − 0.6)/2 = 0.45: 10 mm longer is
    // 66.67 mm further down. The line from the far end has that length 271.1 mm below it: 31.1 mm
    // past the near one.
    List<Node> bent = List.of(exact(-240, 560), exact(-160, 536), exact(-80, 488), exact(0, 448));
    assertEquals(
        -10 / 0.15, PositionToSetting.wheelChange(bent, -240, 10).changeMm().value(), 1e-9);
  }
}
