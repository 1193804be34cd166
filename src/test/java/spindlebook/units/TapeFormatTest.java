package spindlebook.units;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TapeFormatTest {
  @ParameterizedTest
  @CsvSource({
    "209.55, 4, 8 1/4",
    "209.55, 64, 8 1/4",
    "209.55, 2, 8 1/2",
    "-209.55, 2, -8 1/2",
    "-4.7625, 16, -3/16",
    "0, 16, 0",
    "-0.0, 16, 0",
    "-0.1, 16, 0",
    "0.79375, 16, 1/16",
    "-0.79375, 16, -1/16",
    "0.79374, 16, 0",
    "25.39, 16, 1",
    "304.8, 16, 12"
  })
  void inches_go_to_the_nearest_line_half_a_step_away_from_zero(
      double mm, int denominator, String expected) {
    assertEquals(expected, TapeFormat.inches(mm, denominator));
  }

  @ParameterizedTest
  @CsvSource({
    "514.35, 1' 8 1/4\"",
    "-514.35, -1' 8 1/4\"",
    "304.8, 1' 0\"",
    "304.7, 1' 0\"",
    "311.15, 1' 1/4\"",
    "209.55, 8 1/4\"",
    "-4.7625, -3/16\"",
    "0, 0\""
  })
  void feet_stand_before_inches_from_a_foot_upwards(double mm, String expected) {
    assertEquals(expected, TapeFormat.feetInches(mm, 16));
  }

  @Test
  void a_length_carries_its_unit() {
    assertEquals("8 1/4 in", TapeFormat.length(209.55, LengthUnit.INCH, 16));
    assertEquals("209.6 mm", TapeFormat.length(209.55, LengthUnit.MM, 16));
    assertEquals("21.0 cm", TapeFormat.length(209.55, LengthUnit.CM, 16));
    assertEquals("-209.6 mm", TapeFormat.mm(-209.55, 1));
    assertEquals("210 mm", TapeFormat.mm(209.55, 0));
    assertEquals("0.0 mm", TapeFormat.mm(-0.04, 1));
  }

  @Test
  void a_fraction_comes_in_lowest_terms_with_its_parts_apart() {
    assertEquals(new TapeFormat.Fraction(false, 8, 1, 4), TapeFormat.Fraction.ofMm(209.55, 64));
    assertEquals(new TapeFormat.Fraction(true, 0, 3, 16), TapeFormat.Fraction.ofMm(-4.7625, 16));
    assertEquals(new TapeFormat.Fraction(false, 0, 0, 1), TapeFormat.Fraction.ofMm(-0.01, 16));
  }

  @Test
  void rounding_up_keeps_to_its_side_and_leaves_a_line_alone() {
    assertEquals(209.55, TapeFormat.roundUp(209.0, 4));
    assertEquals(209.55, TapeFormat.roundUp(209.55, 4));
    assertEquals(0.0, TapeFormat.roundUp(-3.175, 4));
  }

  /** Nearest and above, against plain arithmetic on seeded lengths. */
  @Test
  void any_length_is_within_half_a_step_of_its_writing_and_no_more_below_the_line_above() {
    Random random = new Random(64);
    for (int i = 0; i < 100_000; i++) {
      double mm = (random.nextDouble() - 0.5) * 5000;
      int denominator = 2 << random.nextInt(6);
      double stepMm = 25.4 / denominator;
      double written = Readings.length(TapeFormat.inches(mm, denominator), LengthUnit.INCH).mm();
      assertEquals(mm, written, stepMm / 2 + 1e-9);
      double up = TapeFormat.roundUp(mm, denominator);
      assertEquals(mm, up - stepMm / 2, stepMm / 2 + 1e-9);
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {-4, 0, 1, 3, 10, 12, 65, 128})
  void no_tape_has_such_a_denominator(int denominator) {
    assertThrows(IllegalArgumentException.class, () -> TapeFormat.inches(10, denominator));
  }

  @Test
  void what_is_not_finite_is_never_written() {
    for (double bad : List.of(Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY)) {
      assertThrows(IllegalArgumentException.class, () -> TapeFormat.inches(bad, 16));
      assertThrows(IllegalArgumentException.class, () -> TapeFormat.mm(bad, 1));
      assertThrows(IllegalArgumentException.class, () -> TapeFormat.roundUp(bad, 16));
    }
    assertThrows(IllegalArgumentException.class, () -> TapeFormat.inches(1e300, 16));
  }
}
