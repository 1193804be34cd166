package spindlebook.units;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Whatever is typed, reading it ends in one of three ways and never in an exception. */
class AnyTextTest {
  private static final List<LengthUnit> BARE = List.of(LengthUnit.values());
  private static final String[] PIECES = {
    "0",
    "1",
    "2",
    "3",
    "4",
    "8",
    "16",
    "32",
    "64",
    "12",
    "81",
    "111",
    " ",
    " ",
    "  ",
    "/",
    "⁄",
    "-",
    "–",
    "−",
    ".",
    ",",
    "'",
    "\"",
    "''",
    "′",
    "″",
    "’",
    "”",
    "&",
    "+",
    " and ",
    "in",
    "inch",
    "ft",
    "foot",
    "mm",
    "cm",
    "½",
    "¼",
    "⅞",
    "⅓",
    "¹",
    "⁴",
    "₁",
    "₆",
    "⅟",
    "°",
    " deg",
    "min",
    "８",
    "／",
    "\u00A0",
    "\u200B",
    "\u202E",
    "\t",
    "\n",
    "\0",
    "a",
    "x",
    "é",
    "(",
    "%",
    "1,250",
    "8.25",
    "one",
    " hundred ",
    " eight ",
    " quarter",
    " half ",
    " a ",
    "-three ",
    "sixteenths",
    " point ",
    " twenty ",
    "th",
    "ths"
  };

  @Test
  void a_million_random_texts_are_read_asked_back_or_refused_in_one_sentence() {
    Random random = new Random(1959);
    int[] ways = new int[3];
    for (int i = 0; i < 1_000_000; i++) {
      String text = text(random);
      LengthUnit bare = BARE.get(random.nextInt(BARE.size()));
      ways[wayOfLength(text, TapeText.read(text, bare))]++;
      wayOfAngle(text, AngleText.read(text));
    }
    for (int way : ways) {
      assertTrue(way > 1000, "each way must be met often, or the test says little");
    }
  }

  private static String text(Random random) {
    StringBuilder text = new StringBuilder();
    int pieces = 1 + random.nextInt(random.nextInt(10) == 0 ? 40 : 7);
    for (int i = 0; i < pieces; i++) {
      switch (random.nextInt(40)) {
        case 0 -> text.appendCodePoint(random.nextInt(Character.MAX_CODE_POINT + 1));
        case 1 -> text.append((char) random.nextInt(0x10000));
        default -> text.append(PIECES[random.nextInt(PIECES.length)]);
      }
    }
    return text.toString();
  }

  private static int wayOfLength(String text, TextRead<TypedLength> reading) {
    if (reading instanceof TextRead.Value<TypedLength> plain) {
      assertTrue(Math.abs(plain.value().mm()) <= 100_000);
      assertEquals(text, plain.value().typed());
      return 0;
    }
    if (reading instanceof TextRead.TwoMeanings<TypedLength> asked) {
      assertTrue(asked.choices().size() >= 2);
      for (TypedLength choice : asked.choices()) {
        assertEquals(choice, Readings.length(choice.typed(), LengthUnit.MM), text);
      }
      return 1;
    }
    String sentence = ((TextRead.Refused<TypedLength>) reading).sentence();
    assertTrue(Readings.isOneSentence(sentence), sentence);
    return 2;
  }

  private static void wayOfAngle(String text, TextRead<TypedAngle> reading) {
    if (reading instanceof TextRead.Value<TypedAngle> plain) {
      assertTrue(Math.abs(plain.value().rad()) <= 2 * Math.PI);
      assertEquals(text, plain.value().typed());
    } else if (reading instanceof TextRead.TwoMeanings<TypedAngle> asked) {
      assertTrue(asked.choices().size() >= 2);
      for (TypedAngle choice : asked.choices()) {
        assertEquals(choice, Readings.angle(choice.typed()), text);
      }
    } else {
      String sentence = ((TextRead.Refused<TypedAngle>) reading).sentence();
      assertTrue(Readings.isOneSentence(sentence), sentence);
    }
  }
}
