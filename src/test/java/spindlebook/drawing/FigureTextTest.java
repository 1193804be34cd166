package spindlebook.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gg.jte.generated.precompiled.StaticTemplates;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FigureTextTest {
  @ParameterizedTest
  @CsvSource({
    "11 1/8, '', 11, 1, 8",
    "+5 3/8, +, 5, 3, 8",
    "-7 11/16, −, 7, 11, 16",
    "−1/16, −, '', 1, 16",
    "1/4, '', '', 1, 4",
    "0, '', 0, '', ''",
    "−209.6, −, 209.6, '', ''",
    "well clear, '', well clear, '', ''"
  })
  void worded_figures_come_apart(
      String text, String sign, String whole, String numerator, String denominator) {
    assertEquals(
        new FigureText(sign, whole, numerator, denominator, "in", null), FigureText.of(text, "in"));
  }

  @Test
  void a_figure_reads_as_one_line_of_text() {
    FigureText figure = FigureText.of("11 1/8", "in").within("1/16");
    assertEquals("11 1/8 in ± 1/16", figure.words());
    String html = new StaticTemplates().webFigure(figure).render();
    assertTrue(html.contains("<span class=\"vh\">11 1/8 in ± 1/16</span>"), html);
    assertTrue(html.contains("aria-hidden=\"true\"><b class=\"fig-n\">11<span"), html);
  }

  @Test
  void degrees_stand_close_to_their_figure() {
    assertEquals("−1.5°", FigureText.of("-1.5", "°").words());
  }

  @Test
  void a_whole_and_its_fraction_never_run_together() {
    assertEquals("+11 1/8", FigureText.of("+11 1/8", "").plain());
  }
}
