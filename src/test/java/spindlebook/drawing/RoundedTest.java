package spindlebook.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;

class RoundedTest {
  private static Figure figure(double value, double expanded) {
    return Figure.of(value, new Source("s", SourceKind.PLACING), expanded / 2);
  }

  @Test
  void a_figure_has_the_decimals_its_plus_minus_bears_and_that_is_rounded_up() {
    assertEquals("−0.466° ± 0.042", Rounded.signed(figure(-0.46604, 0.0412), 1, "°").words());
    assertEquals("+12.3 mm ± 2.1", Rounded.signed(figure(12.34, 2.01), 1, "mm").words());
    assertEquals("+1.00 in ± 0.20", Rounded.signed(figure(25.4, 5.08), 25.4, "in").words());
  }

  @Test
  void nothing_has_no_sign_and_what_has_no_direction_no_plus() {
    assertEquals("0.00° ± 0.10", Rounded.signed(figure(-0.001, 0.1), 1, "°").words());
    assertEquals("1.144° ± 0.041", Rounded.plain(figure(1.14375, 0.041), 1, "°").words());
    assertEquals("0.500°", Rounded.plain(Figure.exact(0.5), 1, "°").words());
  }
}
