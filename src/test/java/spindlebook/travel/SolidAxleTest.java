package spindlebook.travel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import spindlebook.advice.Ladder;
import spindlebook.advice.Rung;
import spindlebook.entry.HeightName;
import spindlebook.entry.Pairing;
import spindlebook.finding.Findings;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.fold.Doubts;
import spindlebook.fold.SeenHeight;
import spindlebook.fold.Standing;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Outcome;

/** Both ends of a solid axle from one round; invented numbers, every limit worked by hand. */
class SolidAxleTest {
  /** Level: 4 mm at 200, 24 at 400: the rule of 6 is met at 220. */
  private static AxleBench levelShortByTwenty() {
    return new AxleBench().level().gap("strap", 4).gap("ride", 14).gap("bump", 24);
  }

  private static double mm(Optional<Figure> figure) {
    return figure.orElseThrow().value();
  }

  private static Limit tube(EndFindings end, Pairing pairing) {
    return end.limits().stream()
        .filter(l -> l.kind() == Limit.Kind.WATCH_POINT && l.pairing() == pairing)
        .findFirst()
        .orElseThrow();
  }

  @Test
  void one_jack_setting_gives_each_end_its_own_position() {
    CarBook book =
        new AxleBench().height("h", "on-the-strap", "both-together", 200, 212).gap("h", 9).book();
    Card left = book.card("lr");
    Card right = book.card("rr");
    assertEquals(200, left.height("h").orElseThrow().positionMm().value(), 1e-9);
    assertEquals(212, right.height("h").orElseThrow().positionMm().value(), 1e-9);
    assertEquals(HeightName.ON_THE_STRAP, right.height("h").orElseThrow().name());
    assertEquals(1, left.readings().size());
    assertEquals(List.of(), right.readings(), "a gap is of the end whose round it is");
  }

  @Test
  void level_on_the_strap_read_again_after_the_other_end_s_strap_was_set_stands_for_the_first() {
    AxleBench bench = new AxleBench().strapByLength().level();
    AxleBench again = bench.height("again", "on-the-strap", "both-together", 200, 180);
    assertTrue(Doubts.of(again.book().card("rr"), "again").orElse("").contains("nothing was"));
    bench = new AxleBench().strapByLength().level();
    bench.line(
        "shorter",
        "adjustment",
        "{\"corner\":\"lr\",\"adjuster\":\"strap\",\"to\":\"450 mm\",\"from\":\"508 mm\"}");
    assertEquals(Standing.LIVE, bench.book().card("rr").height("strap").orElseThrow().stop());
    Card right = bench.height("again", "on-the-strap", "both-together", 260, 180).book().card("rr");
    assertEquals(Optional.empty(), Doubts.of(right, "again"));
    assertEquals(Standing.REPLACED, right.height("strap").orElseThrow().stop(), "by its lever");
  }

  @Test
  void crossed_nobody_said_at_which_place_the_other_end_is() {
    CarBook book = new AxleBench().height("h", "on-the-strap", "crossed", 190, 395).book();
    assertEquals(HeightName.ON_THE_STRAP, book.card("lr").height("h").orElseThrow().name());
    SeenHeight right = book.card("rr").height("h").orElseThrow();
    assertEquals(HeightName.IN_BETWEEN, right.name());
    assertEquals(395, right.positionMm().value(), 1e-9);
    assertTrue(right.crossed());
  }

  @Test
  void an_end_whose_spindle_was_not_read_is_not_known_and_the_other_is() {
    CarBook book =
        new AxleBench()
            .line(
                "h",
                "height",
                """
                {"round":"r1","name":"ride","spindle":"1300 mm","mark":"1000 mm",\
                "pairing":"both-together"}\
                """)
            .book();
    assertEquals(300, book.card("lr").height("h").orElseThrow().positionMm().value(), 1e-9);
    SeenHeight right = book.card("rr").height("h").orElseThrow();
    assertNull(right.positionMm());
    assertFalse(right.positionCounts());
  }

  @Test
  void each_end_takes_its_own_mark_as_at_an_earlier_height_of_the_axle() {
    CarBook book =
        new AxleBench()
            .line(
                "h1",
                "height",
                """
                {"round":"r1","name":"ride","spindle":"1300 mm","mark":"1000 mm",\
                "otherEnd":{"spindle":"1300 mm","mark":"990 mm"}}\
                """)
            .round("r2", "rr")
            .line(
                "h2",
                "height",
                """
                {"round":"r2","name":"full-bump","spindle":"1400 mm","markAsAt":"h1",\
                "otherEnd":{"spindle":"1405 mm"}}\
                """)
            .book();
    assertEquals(405, book.card("lr").height("h2").orElseThrow().positionMm().value(), 1e-9);
    assertEquals(410, book.card("rr").height("h2").orElseThrow().positionMm().value(), 1e-9);
  }

  @Test
  void the_worse_of_both_together_and_crossed_rules_and_says_which() {
    // Crossed: 2 mm at 200, 14 at 300, 26 at 400, 0.12 per mm: 6 is met at 233.33.
    TravelFindings left =
        levelShortByTwenty()
            .crossed(200, 400)
            .height("x-mid", "in-between", "crossed", 300, 300)
            .gap("x-strap", 2)
            .gap("x-mid", 14)
            .gap("x-bump", 26)
            .travel("lr");
    Limit rules = left.droop().rules().orElseThrow();
    assertEquals(Pairing.CROSSED, rules.pairing());
    assertEquals("crossed", rules.condition());
    assertEquals(200 + 4 / 0.12, rules.positionMm().value(), 1e-6);
    assertEquals(-4 / 0.12, mm(left.droop().marginMm()), 1e-6);
    assertEquals(220, tube(left.droop(), Pairing.BOTH_TOGETHER).positionMm().value(), 1e-6);
    Ladder ladder = Ladder.of(left, End.DROOP);
    assertEquals(
        List.of("crossed", "both together", "both together", "crossed"),
        ladder.rungs().stream().filter(Rung::acts).map(Rung::condition).toList());
  }

  @Test
  void a_strap_that_lets_the_wheel_further_crossed_is_counted_there_and_not_both_together() {
    // Level met at 190, inside S = 200 by 10. Crossed met at 185, past the crossed S = 170 by 15.
    TravelFindings left =
        new AxleBench()
            .level()
            .height("low", "strap-off", "both-together", 150, 150)
            .gap("low", 2)
            .gap("strap", 7)
            .gap("bump", 27)
            .crossed(170, 400)
            .height("x-mid", "in-between", "crossed", 280, 300)
            .gap("x-strap", 3)
            .gap("x-mid", 25)
            .gap("x-bump", 49)
            .travel("lr");
    Limit level = tube(left.droop(), Pairing.BOTH_TOGETHER);
    Limit crossed = tube(left.droop(), Pairing.CROSSED);
    assertEquals(10, level.roomMm().value(), 1e-6);
    assertEquals(Outcome.CLEAR, level.outcome());
    assertEquals(-15, crossed.roomMm().value(), 1e-6);
    assertEquals(Outcome.SHORT, crossed.outcome());
    assertEquals(crossed, left.droop().rules().orElseThrow());
    assertEquals(170, left.droop().stop().orElseThrow().positionMm().value(), 1e-9);
  }

  @Test
  void what_was_only_read_both_together_is_asked_for_crossed() {
    TravelFindings left = levelShortByTwenty().travel("lr");
    List<Need> crossed =
        left.droop().needs().stream()
            .filter(n -> n.toRead() != null && n.toRead().pairing() == Pairing.CROSSED)
            .toList();
    assertTrue(
        crossed.stream().anyMatch(n -> n.toRead().quantity() == null), "where the strap stops it");
    assertTrue(crossed.stream().anyMatch(n -> "tube".equals(n.toRead().point())));
    assertEquals(-20, mm(left.droop().marginMm()), 1e-6);
  }

  @Test
  void crossed_readings_that_are_never_tighter_change_no_finding_of_both_together() {
    Random random = new Random(20_251_125);
    int shorts = 0;
    for (int i = 0; i < 200; i++) {
      double atStrap = 2 + 8 * random.nextDouble();
      double atBump = atStrap + 1 + 30 * random.nextDouble();
      double looserBy = 30 * random.nextDouble();
      AxleBench level = new AxleBench().level().gap("strap", atStrap).gap("bump", atBump);
      TravelFindings alone = level.travel("lr");
      TravelFindings both =
          level
              .crossed(200, 400)
              .gap("x-strap", atStrap + looserBy)
              .gap("x-bump", atBump + looserBy)
              .travel("lr");
      String seed = "case " + i + " gap " + atStrap + " to " + atBump + " + " + looserBy;
      for (End end : End.values()) {
        EndFindings a = end == End.DROOP ? alone.droop() : alone.bump();
        EndFindings b = end == End.DROOP ? both.droop() : both.bump();
        assertEquals(a.rules(), b.rules(), seed);
        assertEquals(value(a.marginMm()), value(b.marginMm()), 1e-9, seed);
        assertEquals(value(a.neededStopMm()), value(b.neededStopMm()), 1e-9, seed);
        assertEquals(tube(a, Pairing.BOTH_TOGETHER), tube(b, Pairing.BOTH_TOGETHER), seed);
      }
      assertEquals(alone.rideMm().orElseThrow().value(), both.rideMm().orElseThrow().value(), 0);
      shorts += alone.droop().rules().isPresent() ? 1 : 0;
    }
    assertTrue(shorts > 50 && shorts < 150, "both kinds come up: " + shorts);
  }

  private static double value(Optional<Figure> figure) {
    return figure.map(Figure::value).orElse(Double.NaN);
  }

  @Test
  void a_wheel_hung_alone_takes_no_notice_of_another_end() {
    CornerBench bench = CornerBench.exact();
    bench.line(
        "h",
        "height",
        """
        {"round":"r1","name":"ride","spindle":"1300 mm","mark":"1000 mm","pairing":"crossed",\
        "otherEnd":{"spindle":"1250 mm"}}\
        """);
    SeenHeight height = bench.card().height("h").orElseThrow();
    assertFalse(height.crossed());
    assertEquals("ride height", height.words());
    assertEquals(300, mm(bench.travel().rideMm()), 1e-9);
  }

  @Test
  void left_against_right_a_level_rule_is_not_the_same_as_a_crossed_one() {
    Findings left = Findings.of(levelShortByTwenty().book().card("lr"), Optional.empty(), true);
    Limit level = tube(left.travel().droop(), Pairing.BOTH_TOGETHER);
    Limit crossed = tube(left.travel().droop(), Pairing.CROSSED);
    assertNotEquals(left.id(level), left.id(crossed));
    Findings right = Findings.of(levelShortByTwenty().book().card("rr"), Optional.empty(), true);
    assertEquals(left.id(level), right.id(tube(right.travel().droop(), Pairing.BOTH_TOGETHER)));
  }
}
