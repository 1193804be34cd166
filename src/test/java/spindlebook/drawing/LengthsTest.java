package spindlebook.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;
import spindlebook.units.LengthUnit;

/** What is written of a figure may not say otherwise than its verdict. */
class LengthsTest {
  private static final double SIXTEENTH = 25.4 / 16;

  private static Figure figure(double value, double expanded) {
    return Figure.of(value, new Source("s", SourceKind.PLACING), expanded / 2);
  }

  private static String inches(double sixteenths, double within) {
    Lengths in = new Lengths(LengthUnit.INCH);
    return in.signedFigure(figure(sixteenths * SIXTEENTH, within * SIXTEENTH)).words();
  }

  @Test
  void a_plus_minus_is_rounded_up_but_never_past_its_own_figure() {
    assertEquals("+3/16 in ± 1/8", inches(3, 1.2));
    // 1.6 sixteenths ± 1.1 is beyond its U; in sixteenths it would be 1/8 ± 1/8, in 32nds 3/32 ±
    // 3/32.
    assertEquals("+3/32 in ± 5/64", inches(1.6, 1.1));
    assertEquals("−3/32 in ± 1/16", inches(-1.4, 0.9));
    Lengths mm = new Lengths(LengthUnit.MM);
    assertEquals("0.75 mm ± 0.50", mm.figure(figure(0.7, 0.45)).words());
  }

  @Test
  void what_is_within_its_plus_minus_is_shown_as_ever() {
    assertEquals("+1/16 in ± 1/8", inches(1, 1.1));
    assertEquals("0 in ± 1/16", inches(0, 0.3));
    assertEquals("1.0 mm", new Lengths(LengthUnit.MM).figure(Figure.exact(1)).words());
  }

  @Test
  void what_is_said_as_a_person_says_it_has_no_more_places_than_that() {
    assertEquals("12 1/4", new Lengths(LengthUnit.INCH).about(12.3 * 25.4, 4));
    assertEquals("315", new Lengths(LengthUnit.MM).about(312.6, 8));
    assertEquals("31.5", new Lengths(LengthUnit.CM).about(312.6, 8));
    assertEquals("0.00", new Lengths(LengthUnit.CM).signed(0.1));
  }
}
