package spindlebook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import spindlebook.units.LengthUnit;
import spindlebook.web.Chart.At;
import spindlebook.web.Chart.Band;
import spindlebook.web.Chart.Look;
import spindlebook.web.Chart.Post;
import spindlebook.web.Chart.Series;
import spindlebook.web.Chart.Spot;

class ChartDrawingTest {
  private static final Chart TWO =
      new Chart(
          "c",
          "gap",
          "two readings",
          ChartAxis.length("wheel position", LengthUnit.MM, true),
          ChartAxis.length("gap", LengthUnit.MM, false),
          List.of(
              new Series(
                  "straight",
                  Look.FIRST,
                  false,
                  List.of(new Spot(-100, 1, 0, 1), new Spot(100, 1, 20, 1)),
                  List.of(new At(-100, 0), new At(100, 20))),
              new Series(
                  "full left", Look.SECOND, true, List.of(new Spot(0, 0, 10, 0)), List.of())),
          List.of(new Band(Double.NEGATIVE_INFINITY, 5)),
          List.of(new Post("strap", -90), new Post("ride", -80), new Post("stop", 120)));

  @Test
  void bump_is_right_and_more_is_up() {
    ChartDrawing drawn = ChartDrawing.of(TWO);
    String[] ends = drawn.series().get(0).line().split(" ");
    double[] droop = numbers(ends[0]);
    double[] bump = numbers(ends[1]);
    assertTrue(bump[0] > droop[0]);
    assertTrue(bump[1] < droop[1]);
    // The middle of both lies where the reading in the middle is drawn.
    double[] middle = {(droop[0] + bump[0]) / 2, (droop[1] + bump[1]) / 2};
    double[] square = numbers(drawn.series().get(1).markers().substring(1).split("h")[0]);
    assertEquals(middle[0], square[0] + 3.8, 0.2);
    assertEquals(middle[1], square[1] + 3.8, 0.2);
  }

  @Test
  void a_broken_rule_is_a_band_from_the_bottom_to_its_limit() {
    ChartDrawing drawn = ChartDrawing.of(TWO);
    BladeDrawing.Box band = drawn.bands().get(0);
    assertTrue(band.within(drawn.plot()));
    assertEquals(drawn.plot().y() + drawn.plot().height(), band.y() + band.height(), 0.11);
    String[] ends = drawn.series().get(0).line().split(" ");
    double atNothing = numbers(ends[0])[1];
    double atTwenty = numbers(ends[1])[1];
    assertEquals(atNothing - (atNothing - atTwenty) * 5 / 20, band.y(), 0.2);
  }

  @Test
  void lines_differ_by_more_than_colour() {
    ChartDrawing drawn = ChartDrawing.of(TWO);
    assertNotEquals(drawn.series().get(0).sample(), drawn.series().get(1).sample());
    assertTrue(drawn.series().get(1).mark().contains("look-hollow"));
    assertFalse(drawn.series().get(0).mark().contains("look-hollow"));
  }

  @Test
  void a_reading_without_doubt_has_no_bars_and_one_with_has_two() {
    ChartDrawing drawn = ChartDrawing.of(TWO);
    assertEquals(4, drawn.series().get(0).bars().size());
    assertEquals(0, drawn.series().get(1).bars().size());
  }

  @Test
  void words_beside_near_posts_stand_in_rows() {
    ChartDrawing drawn = ChartDrawing.of(TWO);
    double strap = y(drawn, "strap");
    double ride = y(drawn, "ride");
    assertNotEquals(strap, ride);
    assertEquals(strap, y(drawn, "stop"));
  }

  private static double y(ChartDrawing drawn, String word) {
    return drawn.words().stream().filter(w -> w.text().equals(word)).findFirst().orElseThrow().y();
  }

  private static double[] numbers(String pair) {
    String[] two = pair.split(",");
    return new double[] {Double.parseDouble(two[0]), Double.parseDouble(two[1])};
  }
}
