package spindlebook.units;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static spindlebook.units.LengthUnit.INCH;
import static spindlebook.units.LengthUnit.MM;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TapeRefusalTest {
  private static final String ADVICE =
      ": type a length like 8 1/4 in, 8.25 in, 1' 8 1/4\", 210 mm or 21.0 cm.";

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          8 1/3      | in | has a fraction other than halves, quarters, eighths, 16ths, 32nds or 64ths
          ⅔          | in | has a fraction other than halves, quarters, eighths, 16ths, 32nds or 64ths
          8 2/5      | in | has a fraction other than halves, quarters, eighths, 16ths, 32nds or 64ths
          8⅕         | in | has a fraction other than halves, quarters, eighths, 16ths, 32nds or 64ths
          8 1/10     | in | has a fraction other than halves, quarters, eighths, 16ths, 32nds or 64ths
          8 1/128    | in | has a fraction other than halves, quarters, eighths, 16ths, 32nds or 64ths
          8/1        | in | has a fraction other than halves, quarters, eighths, 16ths, 32nds or 64ths
          8 1/4444444444444444 | in | has a fraction other than halves, quarters, eighths, 16ths, 32nds or 64ths
          8 1/0      | in | divides by zero
          1/000      | in | divides by zero
          8 5/4      | in | has a whole number beside a fraction that is not less than one
          8 4/4      | in | has a whole number beside a fraction that is not less than one
          8-5/4      | in | has a whole number beside a fraction that is not less than one
          8.5 1/4    | in | has a decimal number beside a fraction
          8 3        | in | is two numbers with nothing to join them
          8 1 4      | in | is two numbers with nothing to join them
          8.25 1     | in | is two numbers with nothing to join them
          8.2.5      | in | has dots or commas where no number has them
          1,2,3      | in | has dots or commas where no number has them
          1,23.5     | in | has dots or commas where no number has them
          1.2,3.4    | in | has dots or commas where no number has them
          99999999   | in | is longer than 100 m
          1,234,567  | in | is longer than 100 m
          100001 mm  | in | is longer than 100 m
          1' 12"     | in | has a foot or more in inches behind its feet
          1' 8 mm    | in | joins feet with mm
          1.5' 3"    | in | has a part that is not whole before a smaller one
          1/2 ft 3   | in | has a part that is not whole before a smaller one
          8 1/4 mm   | in | has a fraction of a mm other than a half
          ¼ cm       | in | has a fraction of a cm other than a half
          11/16      | mm | is a fraction without a unit where bare numbers are mm
          81/4       | mm | is a fraction without a unit where bare numbers are mm
          8 1/4      | cm | is a fraction without a unit where bare numbers are cm
          soon       | in | cannot be read
          8 and 3    | in | cannot be read
          8.         | in | cannot be read
          8²         | in | cannot be read
          8 m        | in | cannot be read
          8 mm mm    | in | cannot be read
          1e5        | in | cannot be read
          8-         | in | cannot be read
          --8        | in | cannot be read
          0 -1/4     | in | cannot be read
          8-9        | in | cannot be read
          1/8-3/16   | in | cannot be read
          8 1/       | in | cannot be read
          /4         | in | cannot be read
          8 1/4/2    | in | cannot be read
          8.1/4      | in | cannot be read
          1/4.5      | in | cannot be read
          8 ½ ½      | in | cannot be read
          ½ 8        | in | cannot be read
          8°         | in | cannot be read
          ″8         | in | cannot be read
          NaN        | in | cannot be read
          Infinity   | in | cannot be read
          0x1F       | in | cannot be read
          8;DROP     | in | cannot be read
          <b>8</b>   | in | cannot be read
          8 '''      | in | cannot be read
          &          | in | cannot be read
          -          | in | cannot be read
          """,
      quoteCharacter = '~')
  void a_refusal_quotes_what_was_typed_names_the_trouble_and_says_what_is_accepted(
      String text, String bare, String problem) {
    String sentence = Readings.refusal(text, Readings.unit(bare));
    assertEquals("“" + text + "” " + problem + ADVICE, sentence);
    assertTrue(Readings.isOneSentence(sentence), sentence);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", " ", "\u00A0\t\n", "\u200B", "\uFEFF \u200E"})
  void nothing_typed_is_told_as_such(String text) {
    assertEquals("Nothing is typed yet" + ADVICE, Readings.refusal(text, INCH));
  }

  @Test
  void a_text_over_sixty_characters_is_refused_and_shortened_in_the_sentence() {
    String digits = "1".repeat(61);
    assertEquals(
        "“" + "1".repeat(23) + "…” is too long for one length" + ADVICE,
        Readings.refusal(digits, MM));
    assertEquals(209.55, Readings.length("8 1/4" + " ".repeat(55), INCH).mm());
  }

  @Test
  void a_very_long_text_is_refused_without_being_read() {
    assertTrue(Readings.refusal("8 ".repeat(5_000_000), INCH).contains("too long"));
  }

  @Test
  void a_quote_stays_on_one_line_and_never_cuts_a_character_in_two() {
    assertEquals("“a b” cannot be read" + ADVICE, Readings.refusal("a\nb", INCH));
    assertEquals(
        "“" + "🔧".repeat(23) + "…” cannot be read" + ADVICE,
        Readings.refusal("🔧".repeat(30), INCH));
    assertEquals("“\uFFFD” cannot be read" + ADVICE, Readings.refusal("\uD83D", INCH));
    assertFalse(Readings.refusal("\u202Eabc", INCH).contains("\u202E"));
  }
}
