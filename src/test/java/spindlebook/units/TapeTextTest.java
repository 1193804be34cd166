package spindlebook.units;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static spindlebook.units.LengthUnit.CM;
import static spindlebook.units.LengthUnit.INCH;
import static spindlebook.units.LengthUnit.MM;

import java.math.BigDecimal;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class TapeTextTest {
  static Stream<String> spellings() {
    return Readings.lines("tape-spellings.txt").stream();
  }

  @ParameterizedTest
  @MethodSource("spellings")
  void a_spelling_in_the_table_reads_to_its_value_and_is_kept_as_typed(String row) {
    String[] cells = row.split(" \\| ", -1);
    String text = Readings.unescaped(cells[0]);
    String[] expected = cells[2].split(" ", -1);
    LengthUnit unit = Readings.unit(expected[1]);
    double mm = new BigDecimal(expected[0]).multiply(unit.exactMm()).doubleValue() + 0.0;
    TypedLength read = Readings.length(text, Readings.unit(cells[1]));
    assertEquals(mm, read.mm());
    assertEquals(text, read.typed());
    assertEquals("tape-1", read.rule());
  }

  @Test
  void the_table_holds_at_least_120_spellings() {
    assertTrue(spellings().count() >= 120);
  }

  /** Worked example of TapeText's docstring. */
  @Test
  void eight_and_a_quarter_inches_are_209_55_mm() {
    assertEquals(new TypedLength("8 1/4", 209.55, INCH, "tape-1"), Readings.length("8 1/4", INCH));
  }

  /** International yard and pound agreement, 1959: 1 yard = 0.9144 m exactly. */
  @Test
  void thirty_six_inches_and_three_feet_are_exactly_a_yard() {
    assertEquals(914.4, Readings.length("36 in", MM).mm());
    assertEquals(914.4, Readings.length("3 ft", MM).mm());
    assertEquals(25.4, Readings.length("1", INCH).mm());
  }

  @Test
  void the_unit_is_what_the_text_counts_in_and_feet_count_as_inches() {
    assertEquals(INCH, Readings.length("1 ft", MM).unit());
    assertEquals(MM, Readings.length("210 mm", INCH).unit());
    assertEquals(CM, Readings.length("21", CM).unit());
  }

  @Test
  void plain_gives_a_length_only_where_there_is_one_meaning() {
    assertEquals(209.55, TapeText.plain("8 1/4", INCH).orElseThrow().mm());
    assertTrue(TapeText.plain("81/4", INCH).isEmpty());
    assertTrue(TapeText.plain("soon", INCH).isEmpty());
  }

  @Test
  void a_missing_space_before_a_fraction_is_asked_back() {
    assertEquals(List.of("8 1/4 in", "20 1/4 in"), Readings.choices("81/4", INCH));
    assertEquals(List.of("8 1/4 in", "20 1/4 in"), Readings.choices("81/4\"", MM));
    assertEquals(List.of("-8 1/4 in", "-20 1/4 in"), Readings.choices("-81/4", INCH));
    assertEquals(List.of("8 1/4 in", "20 1/4 in"), Readings.choices("81⁄4", INCH));
    assertEquals(
        List.of("1 11/16 in", "11 1/16 in", "6 15/16 in"), Readings.choices("111/16", INCH));
    assertEquals(List.of("8 in", "20 in"), Readings.choices("80/4", INCH));
    assertEquals(List.of("8 3/4 in", "10 3/4 in"), Readings.choices("86/8", INCH));
    assertEquals(
        List.of("123 45/64 in", "1234 5/64 in", "192 57/64 in"),
        Readings.choices("12345/64", INCH));
    assertEquals(List.of("8.5 mm", "40.5 mm"), Readings.choices("81/2 mm", INCH));
  }

  @Test
  void behind_feet_only_meanings_under_a_foot_are_left() {
    assertEquals(514.35, Readings.length("1' 81/4\"", INCH).mm());
    assertEquals(
        List.of("1' 1 11/16\"", "1' 11 1/16\"", "1' 6 15/16\""),
        Readings.choices("1' 111/16\"", INCH));
  }

  @Test
  void a_bare_fraction_behind_feet_may_be_of_a_foot_or_of_an_inch() {
    assertEquals(List.of("1' 6\"", "1' 1/2\""), Readings.choices("1' 1/2", INCH));
    assertEquals(12.5 * 25.4, Readings.length("1' 1/2\"", INCH).mm());
    assertEquals(12.5 * 25.4, Readings.length("1' 0 1/2", INCH).mm());
  }

  @Test
  void a_dash_after_a_space_may_join_or_take_away() {
    assertEquals(List.of("8 1/4 in", "7 3/4 in"), Readings.choices("8 -1/4", INCH));
    assertEquals(List.of("8 1/4 in", "7 3/4 in"), Readings.choices("8 – 1/4", INCH));
    assertEquals(List.of("8 1/4 in", "7 3/4 in"), Readings.choices("8\" -1/4\"", INCH));
  }

  @Test
  void a_comma_before_three_digits_is_asked_back_unless_one_meaning_is_longer_than_any_tape() {
    assertEquals(List.of("1.25 mm", "1250 mm"), Readings.choices("1,250", MM));
    assertEquals(List.of("1.25 in", "1250 in"), Readings.choices("1,250 in", MM));
    assertEquals(209.55, Readings.length("8,250", INCH).mm());
  }

  @Test
  void a_half_without_a_unit_in_a_metric_round_is_asked_back() {
    assertEquals(List.of("10.5 mm", "10 1/2 in"), Readings.choices("10 1/2", MM));
    assertEquals(List.of("0.5 cm", "1/2 in"), Readings.choices("½", CM));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "81/4",
        "-81/4",
        "111/16",
        "1' 111/16\"",
        "8 -1/4",
        "-8 -1/4",
        "1,250",
        "-1,250 cm",
        "10 1/2",
        "81/2",
        "81/4 ft",
        "12345/64"
      })
  void every_choice_reads_back_to_its_own_value_under_every_bare_unit(String text) {
    int askedBack = 0;
    for (LengthUnit asked : LengthUnit.values()) {
      if (TapeText.read(text, asked) instanceof TextRead.TwoMeanings<TypedLength> two) {
        askedBack++;
        assertTrue(two.choices().size() >= 2);
        for (TypedLength choice : two.choices()) {
          for (LengthUnit bare : LengthUnit.values()) {
            assertEquals(choice, Readings.length(choice.typed(), bare));
          }
        }
      }
    }
    assertTrue(askedBack > 0);
  }
}
