package spindlebook.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import spindlebook.drawing.Chart.At;
import spindlebook.drawing.Chart.Band;
import spindlebook.drawing.Chart.Look;
import spindlebook.drawing.Chart.Post;
import spindlebook.drawing.Chart.Series;
import spindlebook.drawing.Chart.Spot;
import spindlebook.units.LengthUnit;

class ChartDrawingTest {
  private static final Chart TWO =
      new Chart(
          "c",
          "gap",
          "two readings",
          ChartAxis.length("wheel position", LengthUnit.MM, "towards bump"),
          ChartAxis.length("gap", LengthUnit.MM, ""),
          List.of(
              new Series(
                  "straight",
                  "straight",
                  Look.SQUARE,
                  false,
                  List.of(new Spot(-100, 1, 0, 1), new Spot(100, 1, 20, 1)),
                  List.of(new At(-100, 0, "droop"), new At(100, 20, "bump"))),
              new Series(
                  "full left",
                  "L",
                  Look.LEFT_POINT,
                  true,
                  List.of(new Spot(0, 0, 10, 0)),
                  List.of())),
          List.of(new Band(Double.NEGATIVE_INFINITY, 5, "at least 5 mm")),
          List.of(),
          List.of(new Post("strap", -90), new Post("ride", -80), new Post("stop", 120)),
          "lines across: stops",
          null);

  @Test
  void a_line_ends_where_it_is_known_to_and_not_a_rounding_beyond() {
    Random random = new Random(20311);
    for (int i = 0; i < 2000; i++) {
      double from = (random.nextDouble() - 0.5) * 1300;
      double to = from + random.nextDouble() * 500;
      List<At> line = Chart.line(from, to, z -> new At(z, 0, ""));
      assertEquals(from, line.get(0).travel(), 0);
      assertEquals(to, line.get(line.size() - 1).travel(), 0);
    }
  }

  @Test
  void bump_is_up_and_more_is_right() {
    ChartDrawing drawn = ChartDrawing.of(TWO);
    String[] ends = drawn.series().get(0).line().split(" ");
    double[] droop = numbers(ends[0]);
    double[] bump = numbers(ends[1]);
    assertTrue(bump[0] > droop[0]);
    assertTrue(bump[1] < droop[1]);
    // The middle of both lies where the reading in the middle is drawn.
    double[] middle = {(droop[0] + bump[0]) / 2, (droop[1] + bump[1]) / 2};
    // An open triangle's point lies 1.2 × 7 units left of its place.
    double[] point = numbers(drawn.series().get(1).markers().substring(1).split("l")[0]);
    assertEquals(middle[0], point[0] + 8.4, 0.2);
    assertEquals(middle[1], point[1], 0.2);
  }

  @Test
  void a_broken_rule_is_a_band_from_the_left_to_its_limit() {
    ChartDrawing drawn = ChartDrawing.of(TWO);
    ChartDrawing.Box band = drawn.bands().get(0);
    ChartDrawing.Box plot = drawn.plot();
    assertTrue(band.x() >= plot.x() - 0.11 && band.y() >= plot.y() - 0.11);
    assertTrue(band.x() + band.width() <= plot.x() + plot.width() + 0.11);
    assertTrue(band.y() + band.height() <= plot.y() + plot.height() + 0.11);
    assertEquals(drawn.plot().x(), band.x(), 0.11);
    String[] ends = drawn.series().get(0).line().split(" ");
    double atNothing = numbers(ends[0])[0];
    double atTwenty = numbers(ends[1])[0];
    assertEquals(atNothing + (atTwenty - atNothing) * 5 / 20, band.x() + band.width(), 0.2);
  }

  @Test
  void lines_differ_by_more_than_colour() {
    ChartDrawing drawn = ChartDrawing.of(TWO);
    assertNotEquals(drawn.series().get(0).sample(), drawn.series().get(1).sample());
    assertTrue(drawn.series().get(1).mark().contains("look-hollow"));
    assertFalse(drawn.series().get(0).mark().contains("look-hollow"));
  }

  @Test
  void bars_shorter_than_their_mark_are_not_drawn_and_the_key_says_so() {
    // 1 of 20 mm across the page is a twentieth of its width; 1 of 250 mm up it is a hair.
    ChartDrawing drawn = ChartDrawing.of(TWO);
    assertEquals(2, drawn.series().get(0).bars().size());
    assertEquals(0, drawn.series().get(1).bars().size());
    assertTrue(drawn.barWords().startsWith("bars: how far a reading may be off"));
    assertTrue(drawn.barWords().endsWith("; none where that is less than a mark is wide"));
    ChartDrawing fine = ChartDrawing.of(one(0.01));
    assertFalse(fine.barShown());
    assertTrue(fine.barWords().startsWith("no bars: "), fine.barWords());
    assertEquals("", ChartDrawing.of(one(0)).barWords());
  }

  private static Chart one(double upPm) {
    Spot low = new Spot(0, 0, 0, upPm);
    Spot high = new Spot(100, 0, 20, upPm);
    return new Chart(
        "c",
        "gap",
        "two readings",
        TWO.travel(),
        TWO.value(),
        List.of(new Series("", "", Look.CROSS, false, List.of(low, high), List.of())),
        List.of(),
        List.of(),
        List.of(),
        "",
        null);
  }

  @Test
  void what_is_compared_shows_round_a_mark_at_the_same_place() {
    // So that two sides read alike are seen to be two.
    for (Look look : Look.values()) {
      assertNotEquals(ChartMark.path(look, true, 50, 50), ChartMark.path(look, false, 50, 50));
    }
    assertTrue(ChartMark.half(true) > ChartMark.half(false) + 2);
  }

  @Test
  void each_look_has_a_mark_of_its_own() {
    List<String> marks =
        java.util.Arrays.stream(Look.values())
            .map(look -> ChartMark.path(look, false, 50, 50))
            .distinct()
            .toList();
    assertEquals(Look.values().length, marks.size());
  }

  @Test
  void a_band_is_labelled_with_its_rule_on_the_side_that_is_kept() {
    ChartDrawing drawn = ChartDrawing.of(TWO);
    assertEquals(List.of("at least 5 mm"), drawn.rules());
    ChartDrawing.Box band = drawn.bands().get(0);
    assertTrue(word(drawn, "rule: at least 5 mm").x() >= band.x() + band.width());
  }

  @Test
  void lines_are_named_at_both_ends_and_no_two_words_run_into_each_other() {
    ChartDrawing drawn = ChartDrawing.of(TWO);
    List<ChartDrawing.Words> named =
        drawn.words().stream().filter(w -> w.text().equals("straight")).toList();
    assertEquals(2, named.size());
    assertTrue(named.get(0).y() < numbers(drawn.series().get(0).line().split(" ")[1])[1]);
    assertTrue(named.get(1).y() > numbers(drawn.series().get(0).line().split(" ")[0])[1]);
    List<ChartDrawing.Words> words = drawn.words();
    for (int a = 0; a < words.size(); a++) {
      for (int b = 0; b < a; b++) {
        assertFalse(box(words.get(a)).overlaps(box(words.get(b))), words.get(a) + " " + b);
      }
    }
  }

  private static ChartDrawing.Box box(ChartDrawing.Words word) {
    double wide = TextWidth.of(word.text(), 13, false);
    double x = word.mark().startsWith("at-end") ? word.x() - wide : word.x();
    x = word.mark().equals("mid") ? word.x() - wide / 2 : x;
    return new ChartDrawing.Box(x, word.y() - 10, wide, 12);
  }

  @Test
  void beside_its_tape_a_curve_stands_at_the_tapes_heights() {
    TapeFace face = new TapeFace("t", true, -50, 50, 1, 1, LengthScale.MM, List.of());
    ChartDrawing drawn =
        ChartDrawing.of(
            new Chart(
                "c",
                "gap",
                "two readings",
                TWO.travel(),
                TWO.value(),
                TWO.series(),
                List.of(),
                List.of(),
                TWO.posts(),
                "",
                face));
    double[] bump = numbers(drawn.series().get(0).line().split(" ")[1]);
    assertEquals(bump[1], drawn.plot().y() + drawn.tape().at(100), 0.2);
    assertEquals(drawn.plot().height(), drawn.tape().height(), 0.1);
    // What a finger is told of a place stands at its height.
    String droop = drawn.series().get(0).line().split(" ")[0].split(",")[1];
    assertEquals(droop + "|droop;" + bump[1] + "|bump", drawn.series().get(0).reads());
  }

  private static ChartDrawing.Words word(ChartDrawing drawn, String word) {
    return drawn.words().stream().filter(w -> w.text().equals(word)).findFirst().orElseThrow();
  }

  private static double[] numbers(String pair) {
    String[] two = pair.split(",");
    return new double[] {Double.parseDouble(two[0]), Double.parseDouble(two[1])};
  }
}
