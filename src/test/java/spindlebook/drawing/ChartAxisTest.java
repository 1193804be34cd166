package spindlebook.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import spindlebook.units.LengthUnit;

/** Expected ticks by hand: the step is the smallest round one that leaves no more than seven. */
class ChartAxisTest {
  private static final ChartAxis INCHES = ChartAxis.length("gap", LengthUnit.INCH, "");
  private static final ChartAxis DEGREES = ChartAxis.degrees("toe", "front edge inward");

  private static List<String> labels(ChartAxis axis, double low, double high) {
    return axis.ticks(low, high, 7).stream().map(axis::label).toList();
  }

  @Test
  void inches_go_by_halves_and_quarters_below_one_and_by_one_two_five_above() {
    assertEquals(
        List.of("0", "1/4", "1/2", "3/4", "1", "1 1/4"), labels(INCHES, 0.05 * 25.4, 1.2 * 25.4));
    assertEquals(List.of("−10", "−5", "0", "5", "10"), labels(INCHES, -8.9 * 25.4, 6.1 * 25.4));
  }

  @Test
  void degrees_go_by_one_two_five_and_carry_their_sign() {
    assertEquals(
        List.of("−0.6", "−0.4", "−0.2", "0", "+0.2", "+0.4", "+0.6"),
        labels(DEGREES, Math.toRadians(-0.51), Math.toRadians(0.55)));
  }

  @Test
  void ticks_enclose_what_is_shown_and_are_few_and_even() {
    Random random = new Random(20311);
    for (int i = 0; i < 2000; i++) {
      double low = (random.nextDouble() - 0.5) * 400;
      double high = low + Math.pow(10, random.nextDouble() * 5 - 2);
      for (ChartAxis axis : List.of(INCHES, ChartAxis.length("z", LengthUnit.MM, "towards bump"))) {
        List<Double> ticks = axis.ticks(low, high, 7);
        assertTrue(ticks.size() >= 2 && ticks.size() <= 7, ticks::toString);
        assertTrue(ticks.get(0) <= low + 1e-6 && ticks.get(ticks.size() - 1) >= high - 1e-6);
        double step = ticks.get(1) - ticks.get(0);
        for (int t = 2; t < ticks.size(); t++) {
          assertEquals(step, ticks.get(t) - ticks.get(t - 1), 1e-6);
        }
      }
    }
  }

  @Test
  void an_axis_says_what_plus_means_and_signs_only_what_has_a_direction() {
    assertEquals("toe, degrees, + front edge inward", DEGREES.words());
    assertEquals("gap, in", INCHES.words());
    ChartAxis joint = ChartAxis.degrees("joint", "");
    assertEquals(List.of("0", "5", "10", "15", "20"), labels(joint, 0, Math.toRadians(19)));
  }

  @Test
  void one_reading_alone_still_has_two_ticks() {
    assertEquals(2, INCHES.ticks(25.4, 25.4, 7).size());
  }
}
