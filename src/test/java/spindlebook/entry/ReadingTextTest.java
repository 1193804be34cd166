package spindlebook.entry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import spindlebook.units.LengthUnit;

/** What can be typed for one reading. The words are those of design.md §2; inch = 25.4 mm. */
class ReadingTextTest {

  @ParameterizedTest
  @CsvSource({
    "well clear,WELL_CLEAR",
    "Well  Clear,WELL_CLEAR",
    "touches,TOUCHES",
    "binds,BINDS",
    "not looked,NOT_LOOKED"
  })
  void the_words_of_a_gap_are_kept_apart(String text, GapResult result) {
    assertEquals(new ReadingText.Says(result, null, null, null, null), gap(text));
  }

  @Test
  void a_strap_does_not_touch_or_bind() {
    assertInstanceOf(
        ReadingText.Refused.class,
        ReadingText.read("touches", LengthUnit.INCH, Quantity.STRAP_LENGTH, null));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "1/8 goes, 3/16 does not",
        "1/8 drill goes, 3/16 does not",
        "1/8 drill goes, 3/16 drill does not go",
        "1/8 goes 3/16 does not",
        "1/8 goes but 3/16 doesn't go",
        "1/8 fits, 3/16 does not fit",
        "1/8 go, 3/16 no-go",
        "1/8\" goes; 3/16\" no go",
        "3.175 mm goes, 4.7625 mm does not"
      })
  void a_drill_that_goes_and_the_next_that_does_not(String text) {
    ReadingText.Says says = assertInstanceOf(ReadingText.Says.class, gap(text));
    assertEquals(GapResult.GO_NO_GO, says.result());
    assertEquals(3.175, says.go().mm(), 1e-9);
    assertEquals(4.7625, says.noGo().mm(), 1e-9);
  }

  @ParameterizedTest
  @ValueSource(strings = {"1/8 goes", "1/8 go", "1/8 drill fits"})
  void one_that_goes_may_stand_alone(String text) {
    ReadingText.Says says = assertInstanceOf(ReadingText.Says.class, gap(text));
    assertEquals(3.175, says.go().mm(), 1e-9);
    assertNull(says.noGo());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "3/16 does not",
        "3/16 does not go",
        "3/16 doesn't",
        "3/16 doesn’t go",
        "3/16 no go",
        "3/16 no-go",
        "3/16 drill does not fit"
      })
  void one_that_does_not_may_stand_alone(String text) {
    ReadingText.Says says = assertInstanceOf(ReadingText.Says.class, gap(text));
    assertEquals(4.7625, says.noGo().mm(), 1e-9);
    assertNull(says.go());
  }

  @ParameterizedTest
  @ValueSource(strings = {"-1/8 goes", "0 goes", "81/4 goes", "1/8 goes, -3/16 does not"})
  void what_is_no_drill_is_refused_as_one(String text) {
    ReadingText.Refused refused = assertInstanceOf(ReadingText.Refused.class, gap(text));
    assertTrue(refused.sentence().endsWith("is no drill size."), refused.sentence());
  }

  @ParameterizedTest
  @ValueSource(strings = {"3/16 goes, 1/8 does not", "1/8 goes, 1/8 does not"})
  void the_one_that_goes_is_the_thinner_one(String text) {
    ReadingText.Refused refused = assertInstanceOf(ReadingText.Refused.class, gap(text));
    assertTrue(refused.sentence().contains("must be thinner"), refused.sentence());
  }

  @Test
  void below_nothing_is_refused_where_nothing_can_be_below_it() {
    assertEquals(
        new ReadingText.Refused(
            "'-1/8' is below nothing; if the parts press on each other, tap 'binds'."),
        gap("-1/8"));
    assertEquals(
        new ReadingText.Refused("'-20' is below nothing; type the length without a sign."),
        ReadingText.read("-20", LengthUnit.INCH, Quantity.STRAP_LENGTH, null));
    ReadingText.Says toe =
        assertInstanceOf(
            ReadingText.Says.class, ReadingText.read("-1/8", LengthUnit.INCH, Quantity.TOE, null));
    assertEquals(-3.175, toe.length().mm(), 1e-9);
  }

  @Test
  void two_meanings_are_asked_back() {
    assertInstanceOf(ReadingText.Either.class, gap("81/4"));
  }

  @Test
  void camber_is_an_angle_and_toe_may_be_one() {
    for (Quantity quantity : List.of(Quantity.CAMBER, Quantity.TOE)) {
      ReadingText.Says says =
          assertInstanceOf(
              ReadingText.Says.class, ReadingText.read("-2°", LengthUnit.INCH, quantity, null));
      assertEquals(Math.toRadians(-2), says.angle().rad(), 1e-12);
      assertNull(says.length());
    }
  }

  /** Every text gets an answer, and a refusal is one sentence. */
  @Test
  void nothing_that_can_be_typed_breaks_it() {
    String[] bits = {
      "1/8",
      "3/16",
      "8 1/4",
      " ",
      "go",
      "goes",
      "does not",
      "no",
      "no-go",
      "drill",
      "fit",
      "'",
      "\"",
      "mm",
      "°",
      "deg",
      ",",
      ";",
      "-",
      "½",
      "touches",
      "1e9",
      "/0",
      "but ",
      "and ",
      "\u2028",
      "\u0000",
      "\uD83D",
      "doesn’t",
      "eight"
    };
    SplittableRandom random = new SplittableRandom(20261125);
    int says = 0;
    int drills = 0;
    for (int i = 0; i < 200_000; i++) {
      StringBuilder text = new StringBuilder();
      for (int k = random.nextInt(0, 12); k > 0; k--) {
        text.append(
            random.nextInt(8) == 0
                ? String.valueOf((char) random.nextInt(0, 65_536))
                : bits[random.nextInt(bits.length)]);
      }
      Quantity quantity = Quantity.values()[random.nextInt(Quantity.values().length)];
      ReadingText.Result result =
          ReadingText.read(text.toString(), LengthUnit.INCH, quantity, null);
      if (result instanceof ReadingText.Refused refused) {
        assertTrue(refused.sentence().endsWith("."), refused.sentence());
        assertFalse(refused.sentence().contains("Exception"), refused.sentence());
      } else if (result instanceof ReadingText.Says said) {
        says++;
        drills += said.result() == GapResult.GO_NO_GO ? 1 : 0;
      }
    }
    assertTrue(says > 1_000 && drills > 100, says + " read, " + drills + " of them drills");
  }

  /** Long nonsense is answered at all: a pattern that runs away would not come back. */
  @ParameterizedTest
  @EnumSource(Quantity.class)
  void long_nonsense_is_refused(Quantity quantity) {
    for (String bit : List.of("1 ", "no ", "goes ", "does no", "deg", "'", "1/")) {
      for (int length : new int[] {99, 100_000}) {
        assertInstanceOf(
            ReadingText.Refused.class,
            ReadingText.read(
                bit.repeat(length / bit.length()) + "x", LengthUnit.INCH, quantity, null),
            bit + " " + length);
      }
    }
  }

  private static ReadingText.Result gap(String text) {
    return ReadingText.read(text, LengthUnit.INCH, Quantity.WATCH_POINT, null);
  }
}
