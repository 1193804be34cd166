package spindlebook.travel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import spindlebook.entry.HeightName;
import spindlebook.entry.Pairing;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.fold.Doubts;
import spindlebook.fold.SeenHeight;
import spindlebook.fold.Standing;

/** What one sitting on a solid axle holds of each of its ends; invented numbers, by hand. */
class AxleBothEndsTest {
  /** Left on its strap while the right is on its stop, and the other way round. */
  private static AxleBench crossedWithNames(double downMm, double upMm) {
    return new AxleBench()
        .level()
        .line("x1", "height", crossed("on-the-strap", downMm, "full-bump", upMm))
        .line("x2", "height", crossed("full-bump", upMm, "on-the-strap", downMm));
  }

  private static String crossed(String name, double hereMm, String otherName, double otherMm) {
    return """
    {"round":"r1","name":"%s","spindle":"%s","mark":"1000 mm","pairing":"crossed",\
    "otherEnd":{"name":"%s","spindle":"%s","mark":"1000 mm"}}\
    """
        .formatted(name, AxleBench.mm(1000 + hereMm), otherName, AxleBench.mm(1000 + otherMm));
  }

  private static String gap(String height, double mm, boolean atOtherEnd) {
    return """
    {"height":"%s","steering":"straight","quantity":"watch-point","point":"tube",\
    "result":"number","length":"%s"%s}\
    """
        .formatted(height, AxleBench.mm(mm), atOtherEnd ? ",\"atOtherEnd\":true" : "");
  }

  private static AxleBench strapOf(AxleBench bench, String corner) {
    return bench.line(
        "turned-" + corner,
        "adjustment",
        """
        {"corner":"%s","adjuster":"strap","from":"the old one","to":"a longer one"}\
        """
            .formatted(corner));
  }

  @Test
  void one_crossed_height_says_where_both_ends_stop() {
    AxleBench bench = crossedWithNames(180, 410);
    for (String end : List.of("lr", "rr")) {
      TravelFindings travel = bench.travel(end);
      assertEquals(List.of(200.0, 180.0), stops(travel.droop()), end);
      assertEquals(List.of(400.0, 410.0), stops(travel.bump()), end);
    }
  }

  private static List<Double> stops(EndFindings end) {
    return end.reaches().stream().map(r -> r.stop().orElseThrow().positionMm().value()).toList();
  }

  @Test
  void travel_as_set_is_from_stop_to_stop_in_one_pairing_whichever_rules() {
    // Crossed rules droop: kept to its last reading, 1 mm inside the stop; 200 to 400 all the same.
    AxleBench bench = crossedWithNames(180, 410);
    bench.gap("strap", 30).gap("bump", 60).gap("x1", 2).gap("x2", 48);
    TravelFindings left = bench.travel("lr");
    assertEquals(Pairing.CROSSED, left.droop().rules().orElseThrow().pairing());
    assertEquals(200, left.asSet().mm().orElseThrow().value(), 1e-9);
  }

  @Test
  void gaps_of_both_ends_are_read_in_one_sitting() {
    AxleBench bench =
        new AxleBench()
            .level()
            .line("g-left", "reading", gap("strap", 9, false))
            .line("g-right", "reading", gap("strap", 11, true));
    CarBook book = bench.book();
    assertEquals(List.of("g-left"), keys(book.card("lr")));
    assertEquals(List.of("g-right"), keys(book.card("rr")));
    // The round moved to the right end: the ends are swapped, readings and heights.
    bench.line(
        "swap",
        "correction",
        """
        {"target":"r1","kind":"round","reason":"these were the right rear","body":{\
        "corner":"rr","springIn":false,"bumpStopIn":false,"wheelOn":false,"onTyres":false,\
        "steeringLinked":true,"tape":"tape","gapTool":"drills"}}\
        """);
    assertEquals(List.of("g-right"), keys(bench.book().card("lr")));
    assertEquals(List.of("g-left"), keys(bench.book().card("rr")));
  }

  private static List<String> keys(Card card) {
    return card.readings().stream().map(r -> r.key()).toList();
  }

  @Test
  void a_height_that_came_before_its_round_is_crossed_all_the_same() {
    AxleBench bench =
        new AxleBench()
            .line("h", "height", crossed("on-the-strap", 180, "full-bump", 410).replace("r1", "r9"))
            .round("r9", "lr");
    Card left = bench.book().card("lr");
    assertTrue(left.height("h").orElseThrow().crossed());
    SeenHeight right = bench.book().card("rr").height("h").orElseThrow();
    assertEquals(HeightName.FULL_BUMP, right.name());
    assertEquals(410, right.positionMm().value(), 1e-9);
  }

  @Test
  void a_strap_moves_its_own_end_and_what_stood_crossed_against_it() {
    Card left = strapOf(crossedWithNames(180, 410), "rr").book().card("lr");
    // Both together the left strap alone says where the left end hangs.
    assertEquals(Standing.LIVE, left.height("strap").orElseThrow().stop());
    // Left on its strap, right on its stop: the right strap was slack.
    assertEquals(Standing.LIVE, left.height("x1").orElseThrow().stop());
    // Left on its stop while the right one hung on the strap that was changed.
    assertEquals(Standing.STALE, left.height("x2").orElseThrow().stop());
    Card right = strapOf(crossedWithNames(180, 410), "rr").book().card("rr");
    assertEquals(Standing.STALE, right.height("strap").orElseThrow().stop());
    assertEquals(Standing.LIVE, right.height("x1").orElseThrow().stop());
    assertEquals(Standing.STALE, right.height("x2").orElseThrow().stop());
  }

  @Test
  void where_nobody_said_how_the_other_end_stood_any_of_its_stops_may_have_held_it() {
    AxleBench bench = new AxleBench().level().crossed(180, 410);
    Card left = strapOf(bench, "rr").book().card("lr");
    assertEquals(Standing.STALE, left.height("x-strap").orElseThrow().stop());
    assertEquals(Standing.STALE, left.height("x-bump").orElseThrow().stop());
  }

  @Test
  void crossed_and_level_are_not_doubted_against_each_other() {
    // An outboard wheel goes further up crossed than both together on a solid stop.
    AxleBench bench = crossedWithNames(180, 410);
    bench
        .line("touch", "height", crossed("stop-touch", 405, "on-the-strap", 180))
        .gap("strap", 40)
        .gap("bump", 60)
        .gap("x2", 8);
    Card left = bench.book().card("lr");
    assertEquals(Optional.empty(), Doubts.of(left, "touch"));
    String last = left.readings().get(left.readings().size() - 1).key();
    assertEquals(Optional.empty(), Doubts.of(left, last));
  }

  @Test
  void travel_as_it_could_be_is_what_both_pairings_leave() {
    // Rule 6. Level 0.2 per mm, 2 at 180: met at 200, where the strap is, margin 0. Crossed 0.1 per
    // mm, 4 at 150: met at 170, and the strap lets the wheel to 150, margin −20.
    AxleBench bench =
        new AxleBench()
            .level()
            .line("low", "height", level("strap-off", 180))
            .line("x1", "height", crossed("on-the-strap", 150, "full-bump", 400))
            .line("x2", "height", crossed("full-bump", 400, "on-the-strap", 150))
            .line("x3", "height", crossed("in-between", 250, "in-between", 350));
    bench.gap("low", 2).gap("strap", 6).gap("ride", 26).gap("bump", 46);
    bench.gap("x1", 4).gap("x3", 14).gap("x2", 29);
    TravelFindings left = bench.travel("lr");
    EndFindings droop = left.droop();
    assertEquals(Pairing.CROSSED, droop.rules().orElseThrow().pairing());
    assertEquals(170, droop.neededStopMm().orElseThrow().value(), 1e-6);
    assertEquals(200, droop.reaches().get(0).neededMm().orElseThrow().value(), 1e-6);
    assertEquals(170, droop.reaches().get(1).neededMm().orElseThrow().value(), 1e-6);
    assertEquals(-20, droop.marginMm().orElseThrow().value(), 1e-6);
    // Level the wheel may go to 200 only, whatever crossed leaves: bump has no limit but 400.
    double lowest =
        droop.reaches().stream()
            .mapToDouble(r -> r.neededMm().orElseThrow().value())
            .max()
            .orElse(0);
    assertEquals(200, lowest, 1e-6);
  }

  private static String level(String name, double mm) {
    return """
    {"round":"r1","name":"%s","spindle":"%s","mark":"1000 mm","pairing":"both-together",\
    "otherEnd":{"spindle":"%s","mark":"1000 mm"}}\
    """
        .formatted(name, AxleBench.mm(1000 + mm), AxleBench.mm(1000 + mm));
  }

  /** Gaps on a straight line, met at the rule of 6 where {@code metMm} says. */
  private static AxleBench curves(double levelMetMm, double crossedStopMm, double crossedMetMm) {
    AxleBench bench =
        new AxleBench()
            .level()
            .line("low", "height", level("strap-off", 140))
            .crossed(crossedStopMm, 410)
            .height("x-mid", "in-between", "crossed", 300, 300);
    for (Object[] read : new Object[][] {{"low", 140.0}, {"strap", 200.0}, {"bump", 400.0}}) {
      bench.gap((String) read[0], Math.max(0, 6 + 0.1 * ((double) read[1] - levelMetMm)));
    }
    for (Object[] read :
        new Object[][] {{"x-strap", crossedStopMm}, {"x-mid", 300.0}, {"x-bump", 410.0}}) {
      bench.gap((String) read[0], Math.max(0, 6 + 0.1 * ((double) read[1] - crossedMetMm)));
    }
    return bench;
  }

  @Test
  void a_crossed_stop_that_went_stale_leaves_no_margin_of_the_level_one_alone() {
    // Level 10 left at 200 less 190; crossed 30 short at 150 less 180. By the level stop alone the
    // crossed limit would lie 20 beyond.
    AxleBench bench = curves(190, 150, 180);
    assertEquals(-30, margin(bench.travel("lr"), End.DROOP).orElseThrow(), 1e-6);
    assertEquals(Optional.empty(), margin(strapOf(bench, "rr").travel("lr"), End.DROOP));
  }

  @Test
  void a_margin_is_never_better_for_what_went_stale_at_either_end() {
    Random random = new Random(20_251_126);
    int withheld = 0;
    for (int i = 0; i < 300; i++) {
      AxleBench bench =
          curves(
              150 + 60 * random.nextDouble(),
              130 + 80 * random.nextDouble(),
              140 + 80 * random.nextDouble());
      String changed = random.nextBoolean() ? "lr" : "rr";
      TravelFindings before = bench.travel("lr");
      TravelFindings after = strapOf(bench, changed).travel("lr");
      for (End end : End.values()) {
        Optional<Double> was = margin(before, end);
        Optional<Double> is = margin(after, end);
        String seed = "case " + i + " " + end + ", " + changed + ": " + was + " then " + is;
        assertTrue(is.isEmpty() || (was.isPresent() && is.get() <= was.get() + 1e-9), seed);
        withheld += was.isPresent() && is.isEmpty() ? 1 : 0;
      }
    }
    assertTrue(withheld > 100, "margins were withheld " + withheld + " times");
  }

  private static Optional<Double> margin(TravelFindings travel, End end) {
    return (end == End.DROOP ? travel.droop() : travel.bump()).marginMm().map(m -> m.value());
  }
}
