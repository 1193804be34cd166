package spindlebook.units;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static spindlebook.units.LengthUnit.INCH;
import static spindlebook.units.LengthUnit.MM;

import java.math.BigDecimal;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SpokenTest {
  private static final String[] ONES = {
    "",
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
    "thirteen",
    "fourteen",
    "fifteen",
    "sixteen",
    "seventeen",
    "eighteen",
    "nineteen"
  };
  private static final String[] TENS = {
    "", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"
  };

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      textBlock =
          """
          eight                            | 8 in
          eight and a quarter              | 8.25 in
          Eight and a Quarter              | 8.25 in
          eight and one quarter            | 8.25 in
          eight a quarter                  | 8.25 in
          eight and half                   | 8.5 in
          eight and a half inches          | 8.5 in
          eight and three eighths          | 8.375 in
          eight and three-eighths          | 8.375 in
          eight three quarters             | 8.75 in
          eleven and three quarters        | 11.75 in
          eleven and eleven sixteenths     | 11.6875 in
          eleven sixteenths                | 0.6875 in
          eleven sixteenths of an inch     | 0.6875 in
          twenty and three thirty-seconds  | 20.09375 in
          three thirty seconds             | 0.09375 in
          seven sixty-fourths              | 0.109375 in
          eight and nine sixty fourths     | 8.140625 in
          a quarter                        | 0.25 in
          quarter inch                     | 0.25 in
          a quarter inch                   | 0.25 in
          a quarter of an inch             | 0.25 in
          a half                           | 0.5 in
          one half                         | 0.5 in
          half                             | 0.5 in
          half an inch                     | 0.5 in
          three fourths                    | 0.75 in
          three quarter inch               | 0.75 in
          three quarters of an inch        | 0.75 in
          five quarters                    | 1.25 in
          an inch                          | 1 in
          an inch and a half               | 1.5 in
          one inch and three quarters      | 1.75 in
          eight inches and a quarter       | 8.25 in
          twenty-one and a half            | 21.5 in
          twenty one and three eighths     | 21.375 in
          a hundred and a quarter          | 100.25 in
          eight point two five             | 8.25 in
          twenty one point zero five inches | 21.05 in
          point five                       | 0.5 in
          minus three sixteenths           | -0.1875 in
          negative eight and a quarter     | -8.25 in
          -eight                           | -8 in
          one foot                         | 12 in
          a foot                           | 12 in
          half a foot                      | 6 in
          one foot eight                   | 20 in
          one foot eight and a half        | 20.5 in
          one foot eight and a half inches | 20.5 in
          one foot, eight inches           | 20 in
          one foot and eight inches        | 20 in
          two feet eight inches and a quarter | 32.25 in
          a foot and a half inch           | 12.5 in
          a foot and half an inch          | 12.5 in
          two foot three                   | 27 in
          two hundred ten millimetres      | 210 mm
          two hundred and ten millimeters  | 210 mm
          two hundred ten mm               | 210 mm
          ten and a half millimetres       | 10.5 mm
          ten millimetres and a half       | 10.5 mm
          half a millimetre                | 0.5 mm
          twenty one point five centimetres | 215 mm
          a hundred millimetres            | 100 mm
          nine hundred ninety nine mm      | 999 mm
          zero                             | 0 in
          8 and a quarter                  | 8.25 in
          8 and three quarters             | 8.75 in
          8 and 3 quarters                 | 8.75 in
          8 and 3 16ths                    | 8.1875 in
          11 16ths                         | 0.6875 in
          3/8ths                           | 0.375 in
          8 3/8ths                         | 8.375 in
          3 32nds                          | 0.09375 in
          eight 1/4                        | 8.25 in
          eight and 1/4 inches             | 8.25 in
          eight and ¾                      | 8.75 in
          3/4 of an inch                   | 0.75 in
          one foot 8 1/2                   | 20.5 in
          """)
  void a_length_in_words_reads_to_its_value_and_is_kept_as_said(String text, String expected) {
    String[] cells = expected.split(" ", -1);
    LengthUnit unit = Readings.unit(cells[1]);
    TypedLength read = Readings.length(text, INCH);
    assertEquals(new BigDecimal(cells[0]).multiply(unit.exactMm()).doubleValue(), read.mm());
    assertEquals(text, read.typed());
    assertEquals("spoken-1", read.rule());
  }

  @Test
  void every_whole_number_to_999_is_read_with_and_without_and_or_hyphen() {
    for (int n = 1; n <= 999; n++) {
      assertEquals(n, Readings.length(words(n, " ", " "), MM).mm());
      assertEquals(n, Readings.length(words(n, " and ", "-"), MM).mm());
    }
  }

  @Test
  void words_that_can_be_cut_in_two_places_are_asked_back() {
    assertEquals(
        List.of("1 5/16 in", "20 1/16 in"), Readings.choices("twenty one sixteenths", INCH));
    assertEquals(List.of("5 3/4 in", "20 3/4 in"), Readings.choices("twenty three quarters", INCH));
    assertEquals(
        List.of("23/32 in", "20 3/32 in"), Readings.choices("twenty three thirty seconds", INCH));
    assertEquals(
        List.of("25 3/4 in", "100 3/4 in"),
        Readings.choices("one hundred and three quarters", INCH));
    assertEquals(List.of("4 in", "8 1/2 in"), Readings.choices("eight half", INCH));
    assertEquals(List.of("-8 1/4 in", "-20 1/4 in"), Readings.choices("minus 81/4", INCH));
    assertEquals(List.of("10.5 mm", "10 1/2 in"), Readings.choices("ten and a half", MM));
  }

  @Test
  void a_foot_and_a_half_is_asked_back() {
    assertEquals(List.of("1' 6\"", "1' 1/2\""), Readings.choices("a foot and a half", MM));
    assertEquals(List.of("1' 6\"", "1' 1/2\""), Readings.choices("1 foot and 1/2", MM));
    assertEquals(List.of("2' 3\"", "2' 1/4\""), Readings.choices("two feet and a quarter", MM));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "eight and",
        "and a quarter",
        "a",
        "an",
        "eight nine",
        "eight and three",
        "eight minus a quarter",
        "eight - a quarter",
        "about eight",
        "eight or nine",
        "eight and five quarters",
        "hundred hundred",
        "eleventy",
        "eight point",
        "eight point ten",
        "8.5 and a quarter",
        "eight quarters quarter",
        "twenty ten",
        "a thousand",
        "one second",
        "th",
        "of an inch",
        "two feet ten millimetres",
        "one foot twelve",
        "half a foot two",
        "1000 and a half",
        "eight and a third",
        "two fifths",
        "three tenths",
        "fifteen thousandths",
        "ten and a quarter mm",
        "quarter inch and a half",
        "eight & eight"
      })
  void words_that_are_no_length_are_refused_in_one_sentence(String text) {
    String sentence = Readings.refusal(text, INCH);
    assertTrue(sentence.startsWith("“" + text + "” "), sentence);
    assertTrue(Readings.isOneSentence(sentence), sentence);
  }

  @Test
  void thirds_in_words_are_refused_as_thirds_and_a_quarter_needs_inches() {
    assertTrue(Readings.refusal("eight and a third", INCH).contains("other than halves, quarters"));
    assertTrue(Readings.refusal("eight and a quarter", MM).contains("a fraction without a unit"));
  }

  @ParameterizedTest
  @CsvSource({
    "one and a half degrees, 1.5",
    "one and a half, 1.5",
    "a degree, 1",
    "half a degree, 0.5",
    "minus a quarter of a degree, -0.25",
    "minus two point five degrees, -2.5",
    "three quarters of a degree, 0.75",
    "twenty degrees, 20"
  })
  void an_angle_in_words_is_degrees(String text, double degrees) {
    assertEquals(new TypedAngle(text, Math.toRadians(degrees), "spoken-1"), Readings.angle(text));
  }

  @Test
  void an_angle_in_words_is_asked_back_or_refused_like_a_length() {
    assertEquals(List.of("5.75°", "20.75°"), Readings.angleChoices("twenty three quarters"));
    assertTrue(Readings.isOneSentence(Readings.angleRefusal("one degree thirty")));
    assertTrue(Readings.angleRefusal("eight inches").contains("cannot be read"));
  }

  private static String words(int n, String afterHundred, String afterTens) {
    int below = n % 100;
    String hundreds = n < 100 ? "" : ONES[n / 100] + " hundred";
    String small =
        below < 20
            ? ONES[below]
            : TENS[below / 10] + (below % 10 == 0 ? "" : afterTens + ONES[below % 10]);
    return hundreds + (n >= 100 && below > 0 ? afterHundred : "") + small;
  }
}
