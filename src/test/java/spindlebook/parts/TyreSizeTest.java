package spindlebook.parts;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import spindlebook.units.TextRead;

/** Size names. The rules of the names are from memory; the numbers by hand. */
class TyreSizeTest {

  @Test
  void flotation_and_metric_names_give_their_diameters() {
    assertSize("35x12.50R15", 889.0, 317.5, 381.0);
    assertSize("315/70R17", 872.8, 315, 431.8);
    assertSize(" lt 315/70 r17 ", 872.8, 315, 431.8);
    assertSize("37X12.5-17", 939.8, 317.5, 431.8);
    assertSize("35x12.50R15LT 113Q", 889.0, 317.5, 381.0);
    assertSize("P265/65ZR18", 457.2 + 2 * 265 * 0.65, 265, 457.2);
    assertSize("40×13.50R17", 1016, 342.9, 431.8);
    assertSize("35x12.50x15", 889.0, 317.5, 381.0);
    assertSize("LT285/75R16", 406.4 + 2 * 285 * 0.75, 285, 406.4);
  }

  @Test
  void what_is_no_size_is_refused_in_a_sentence() {
    for (String text :
        new String[] {
          "",
          "big",
          "35",
          "35x12.50",
          "15x12.50R35",
          "315/70",
          "35/12R15",
          "999/999R99",
          "99x12R15",
          "35x30R15"
        }) {
      TextRead.Refused<?> refused =
          assertInstanceOf(TextRead.Refused.class, TyreSize.read(text), text);
      assertTrue(refused.sentence().contains("35x12.50R15"), refused.sentence());
    }
  }

  @Test
  void any_text_is_read_or_refused() {
    Random random = new Random(11);
    String letters = "0123456789xX/.R- LT×é\n";
    int read = 0;
    for (int i = 0; i < 20_000; i++) {
      StringBuilder text = new StringBuilder();
      for (int k = random.nextInt(14); k > 0; k--) {
        text.append(letters.charAt(random.nextInt(letters.length())));
      }
      TextRead<TyreSize> reading = TyreSize.read(text.toString());
      if (reading instanceof TextRead.Value<TyreSize> size) {
        assertTrue(size.value().diameterMm() > size.value().rimMm());
        read++;
      }
    }
    assertTrue(read < 20_000);
  }

  private static void assertSize(String text, double diameter, double width, double rim) {
    TyreSize size = TyreSize.read(text).plain().orElseThrow();
    assertEquals(diameter, size.diameterMm(), 1e-9);
    assertEquals(width, size.widthMm(), 1e-9);
    assertEquals(rim, size.rimMm(), 1e-9);
    assertEquals(diameter / 2, size.freeRadiusMm(), 1e-9);
    assertEquals(text, size.text());
  }
}
