package spindlebook.units;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AngleTextTest {
  private static final String ADVICE =
      ": type an angle like 1.5, -0° 45', 0° 45' 30\" or 1 1/4 deg.";

  /** Expected seconds of arc are plain arithmetic; 1 turn = 360° = 1,296,000″. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      textBlock =
          """
          1.5            | 5400
          -1.5           | -5400
          −1.5           | -5400
          +1.5           | 5400
          1,5            | 5400
          1,250          | 4500
          .5             | 1800
          0              | 0
          -0             | 0
          1.5 deg        | 5400
          1.5deg.        | 5400
          1.5°           | 5400
          1.5 º          | 5400
          1.5 degrees    | 5400
          1 degree       | 3600
          １.５°          | 5400
          360            | 1296000
          1/4            | 900
          1/4 deg        | 900
          1/4°           | 900
          ¼°             | 900
          1 1/4          | 4500
          1-1/4          | 4500
          1 and 1/4 deg  | 4500
          1¼             | 4500
          1¼°            | 4500
          -1¼°           | -4500
          ¹⁄₄°           | 900
          5/4            | 4500
          0°45'          | 2700
          -0°45'         | -2700
          −0° 45′        | -2700
          0° 45' 30"     | 2730
          0°45′30″       | 2730
          0° 45’ 30”     | 2730
          0° 45' 30''    | 2730
          0° 45' 30      | 2730
          -0° 45' 30"    | -2730
          1° 30          | 5400
          1° 0'          | 3600
          1° 30"         | 3630
          1° 7.5'        | 4050
          1° 7½'         | 4050
          1° 0' 0.5"     | 3600.5
          1 deg 30 min   | 5400
          1 deg 30 min 15 sec | 5415
          1 degree 30 minutes 15 seconds | 5415
          45'            | 2700
          -45′           | -2700
          45' 30"        | 2730
          90 min         | 5400
          """)
  void a_spelling_reads_to_its_angle_and_is_kept_as_typed(String text, BigDecimal seconds) {
    TypedAngle read = Readings.angle(text);
    assertEquals(Math.PI * seconds.doubleValue() / 648_000, read.rad(), 1e-15);
    assertEquals(text, read.typed());
    assertEquals("angle-1", read.rule());
  }

  /** Worked example of AngleText's docstring: 1.5 × π / 180. */
  @Test
  void one_degree_thirty_minutes_is_0_0261799_rad() {
    assertEquals(0.0261799, Readings.angle("1° 30'").rad(), 5e-8);
  }

  @Test
  void minutes_and_decimals_of_the_same_angle_agree_to_the_last_bit() {
    for (int minutes = -21_600; minutes <= 21_600; minutes += 3) {
      int whole = Math.abs(minutes);
      String dms = (minutes < 0 ? "-" : "") + whole / 60 + "° " + whole % 60 + "'";
      String decimal = BigDecimal.valueOf(minutes).divide(BigDecimal.valueOf(60)).toPlainString();
      assertEquals(Readings.angle(decimal).rad(), Readings.angle(dms).rad(), dms);
    }
  }

  @Test
  void a_missing_space_or_a_spaced_dash_is_asked_back() {
    assertEquals(List.of("1.25°", "2.75°"), Readings.angleChoices("11/4"));
    assertEquals(List.of("-1.25°", "-2.75°"), Readings.angleChoices("-11/4 deg"));
    assertEquals(List.of("8.25°", "7.75°"), Readings.angleChoices("8 -1/4"));
    assertEquals(List.of("1° 8.25'", "1° 20.25'"), Readings.angleChoices("1° 81/4'"));
    assertEquals(List.of("-0° 0' 8.25\"", "-0° 0' 20.25\""), Readings.angleChoices("-0° 81/4\""));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      textBlock =
          """
          361          | is more than a full turn
          -360° 1'     | is more than a full turn
          1/3          | has a fraction other than halves, quarters, eighths, 16ths, 32nds or 64ths
          1/0          | divides by zero
          1 5/4        | has a whole number beside a fraction that is not less than one
          1° 60'       | has 60 or more minutes or seconds
          1° 0' 60"    | has 60 or more minutes or seconds
          90' 10"      | has 60 or more minutes or seconds
          1.5° 30'     | has a part that is not whole before a smaller one
          1° 1.5' 30"  | has a part that is not whole before a smaller one
          30"          | is in seconds alone, which could be meant for inches
          1/8"         | is in seconds alone, which could be meant for inches
          1 2          | is two numbers with nothing to join them
          1.5.5        | has dots or commas where no number has them
          1.5 mm       | cannot be read
          0.5 rad      | cannot be read
          3 %          | cannot be read
          1° -30'      | cannot be read
          --1          | cannot be read
          1°°          | cannot be read
          °            | cannot be read
          level        | cannot be read
          """)
  void a_refusal_is_one_sentence_that_says_what_is_accepted(String text, String problem) {
    String sentence = Readings.angleRefusal(text);
    assertEquals("“" + text + "” " + problem + ADVICE, sentence);
    assertTrue(Readings.isOneSentence(sentence), sentence);
  }

  @Test
  void nothing_typed_and_too_much_typed_are_told_as_such() {
    assertEquals("Nothing is typed yet" + ADVICE, Readings.angleRefusal(" \u200B"));
    assertTrue(Readings.angleRefusal("1".repeat(61)).contains("is too long for one angle"));
  }

  @ParameterizedTest
  @CsvSource({
    "1.25, 1, 1.3°",
    "-1.25, 1, -1.3°",
    "1.25, 2, 1.25°",
    "-0.001, 2, 0.00°",
    "0, 0, 0°",
    "1.005, 2, 1.01°",
    "359.96, 1, 360.0°"
  })
  void degrees_are_written_to_the_nearest_half_away_from_zero(
      double degrees, int decimals, String expected) {
    assertEquals(expected, AngleFormat.degrees(Math.toRadians(degrees), decimals));
  }

  @Test
  void every_hundredth_of_a_degree_to_ninety_reads_back_to_the_same_writing() {
    for (int n = -9000; n <= 9000; n++) {
      String written = AngleFormat.degrees(Math.toRadians(n / 100.0), 2);
      assertEquals(BigDecimal.valueOf(n, 2).toPlainString() + "°", written);
      assertEquals(written, AngleFormat.degrees(Readings.angle(written).rad(), 2));
    }
  }

  @Test
  void what_is_not_finite_is_never_written() {
    assertThrows(IllegalArgumentException.class, () -> AngleFormat.degrees(Double.NaN, 1));
  }
}
