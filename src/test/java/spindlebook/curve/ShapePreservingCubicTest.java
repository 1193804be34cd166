package spindlebook.curve;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static spindlebook.uncertainty.TravelReference.numbers;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import spindlebook.uncertainty.TravelReference;

/** Source: reference/travel.json, scipy's PchipInterpolator; worked out by hand where so said. */
public class ShapePreservingCubicTest {
  static Stream<JsonNode> tables() {
    return TravelReference.each(TravelReference.travel().at("/gap_tables/tables"));
  }

  @ParameterizedTest
  @MethodSource("tables")
  void slopes_at_the_readings_are_those_of_the_reference(JsonNode table) {
    double[] heights = numbers(table.get("height_mm"));
    ShapePreservingCubic curve = curve(table);
    double[] slopes = numbers(table.at("/pchip_fritsch_butland/slopes"));
    for (int i = 0; i < heights.length; i++) {
      assertEquals(slopes[i], curve.slope(heights[i]), 1e-9);
    }
  }

  @ParameterizedTest
  @MethodSource("tables")
  void crossings_are_those_of_the_reference(JsonNode table) {
    double[] expected = numbers(table.at("/pchip_fritsch_butland/crossings"));
    List<Crossing> found = curve(table).crossings(table.get("required_gap_mm").doubleValue());
    assertEquals(expected.length, found.size(), found.toString());
    for (int i = 0; i < expected.length; i++) {
      assertEquals(expected[i], ((Crossing.At) found.get(i)).x(), 1e-9);
    }
  }

  @Test
  void the_worked_example_meets_its_rule_where_the_docstring_says() {
    ShapePreservingCubic curve = curve(new double[] {-120, -20, 60}, 4, 15, 31);
    assertEquals(-36.3989, only(curve, 12.7), 5e-5);
    assertEquals(0.143478, curve.slope(-20), 5e-7);
  }

  @Test
  void two_points_are_joined_by_a_straight_line() {
    ShapePreservingCubic line = curve(new double[] {-100, 100}, 10, 20);
    assertEquals(0.05, line.slope(-100), 1e-15);
    assertEquals(12.5, line.value(-50), 1e-12);
    assertEquals(-50, only(line, 12.5), 1e-10);
  }

  @Test
  void a_plateau_at_the_level_is_an_interval() {
    double[] x = {0, 10, 20, 30, 40};
    assertEquals(List.of(new Crossing.Plateau(10, 30)), curve(x, 5, 12, 12, 12, 20).crossings(12));
    assertEquals(
        List.of(new Crossing.Plateau(0, 10), new Crossing.Plateau(30, 40)),
        curve(x, 12, 12, 20, 12, 12).crossings(12));
  }

  @Test
  void a_touch_is_not_a_crossing() {
    double[] x = {0, 10, 20};
    assertEquals(List.of(new Crossing.Touch(10)), curve(x, 15, 12, 18).crossings(12));
    assertEquals(List.of(new Crossing.Touch(10)), curve(x, 5, 12, 8).crossings(12));
  }

  @Test
  void several_crossings_come_in_order_with_their_direction() {
    ShapePreservingCubic curve = curve(new double[] {0, 10, 20, 30}, 20, 5, 20, 5);
    List<Crossing> found = curve.crossings(12.5);
    assertEquals(3, found.size());
    assertEquals(List.of(false, true, false), found.stream().map(c -> rising(c)).toList());
    assertEquals(15, ((Crossing.At) found.get(1)).x(), 1e-9, "half way by symmetry");
  }

  @Test
  void a_level_outside_all_readings_is_not_crossed() {
    ShapePreservingCubic curve = curve(new double[] {0, 10, 20}, 5, 6, 9);
    assertEquals(List.of(), curve.crossings(4.999));
    assertEquals(List.of(), curve.crossings(9.001));
  }

  @Test
  void the_ends_of_the_curve_count() {
    ShapePreservingCubic curve = curve(new double[] {0, 10, 20}, 5, 6, 9);
    assertEquals(List.of(new Crossing.At(0, true)), curve.crossings(5));
    assertEquals(List.of(new Crossing.At(20, true)), curve.crossings(9));
  }

  @Test
  void nothing_is_extrapolated() {
    ShapePreservingCubic curve = curve(new double[] {0, 10, 20}, 5, 6, 9);
    assertThrows(IllegalArgumentException.class, () -> curve.value(Math.nextDown(0.0)));
    assertThrows(IllegalArgumentException.class, () -> curve.slope(20.001));
    assertThrows(IllegalArgumentException.class, () -> curve.value(Double.NaN));
  }

  @Test
  void points_that_make_no_curve_are_refused() {
    double[] two = {1, 2};
    assertThrows(IllegalArgumentException.class, () -> curve(new double[] {0}, 1));
    assertThrows(IllegalArgumentException.class, () -> curve(new double[] {0, 0}, two));
    assertThrows(IllegalArgumentException.class, () -> curve(new double[] {1, 0}, two));
    assertThrows(IllegalArgumentException.class, () -> curve(new double[] {0, 1, 2}, two));
    assertThrows(IllegalArgumentException.class, () -> curve(new double[] {0, 1}, 1, Double.NaN));
  }

  @Test
  void the_curve_never_leaves_the_range_of_its_neighbours_nor_turns_between_them() {
    Random random = new Random(11);
    for (int run = 0; run < 300; run++) {
      double[] x = positions(random, 2 + random.nextInt(7));
      double[] y = random.doubles(x.length, -50, 50).toArray();
      ShapePreservingCubic curve = curve(x, y);
      for (int i = 1; i < x.length; i++) {
        double before = y[i - 1];
        double direction = Math.signum(y[i] - y[i - 1]);
        for (int s = 1; s <= 40; s++) {
          double value = curve.value(Math.min(x[i], x[i - 1] + (x[i] - x[i - 1]) * s / 40));
          assertTrue(direction * (value - before) >= -1e-12, "turns between two readings");
          before = value;
        }
        assertEquals(y[i], before, 1e-9, "goes through its readings");
      }
    }
  }

  @Test
  void monotone_readings_have_one_crossing_and_it_lies_in_its_bracket() {
    Random random = new Random(12);
    for (int run = 0; run < 500; run++) {
      double[] x = positions(random, 3 + random.nextInt(6));
      double[] y = random.doubles(x.length, -50, 50).sorted().toArray();
      double level = y[0] + (y[y.length - 1] - y[0]) * random.nextDouble();
      ShapePreservingCubic curve = curve(x, y);
      List<Crossing> found = curve.crossings(level);
      assertEquals(1, found.size());
      double at = ((Crossing.At) found.get(0)).x();
      int bracket = -Arrays.binarySearch(y, level) - 2;
      assertTrue(at >= x[bracket] && at <= x[bracket + 1]);
      assertEquals(level, curve.value(at), 1e-10);
    }
  }

  public static double[] positions(Random random, int n) {
    double[] x = new double[n];
    x[0] = -250;
    for (int i = 1; i < n; i++) {
      x[i] = x[i - 1] + 15 + 80 * random.nextDouble();
    }
    return x;
  }

  private static boolean rising(Crossing crossing) {
    return ((Crossing.At) crossing).rising();
  }

  private static double only(ShapePreservingCubic curve, double level) {
    List<Crossing> found = curve.crossings(level);
    assertEquals(1, found.size());
    return ((Crossing.At) found.get(0)).x();
  }

  private static ShapePreservingCubic curve(JsonNode table) {
    return curve(numbers(table.get("height_mm")), numbers(table.get("gap_mm")));
  }

  private static ShapePreservingCubic curve(double[] x, double... y) {
    return new ShapePreservingCubic(x, y);
  }
}
