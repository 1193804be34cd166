package spindlebook.travel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static spindlebook.travel.StandardCorner.INCH;
import static spindlebook.travel.StandardCorner.arm;
import static spindlebook.travel.StandardCorner.bench;
import static spindlebook.travel.StandardCorner.limit;

import java.util.List;
import org.junit.jupiter.api.Test;
import spindlebook.uncertainty.Outcome;
import spindlebook.uncertainty.Settles;

/** When a limit is clear, short or undecided, and what settles it; see {@link StandardCorner}. */
class JudgedTest {
  // --- kept at the last reading

  @Test
  void a_rule_kept_at_the_last_reading_short_of_where_the_wheel_gets_needs_a_reading_beyond() {
    // Kept on the strap at 254; the stretch lets the wheel to 228.6.
    EndFindings droop =
        bench(CornerBench.exact())
            .gap("arm", "strap", 20)
            .gap("arm", "beyond", 40)
            .travel()
            .droop();
    Limit arm = arm(droop);
    assertInstanceOf(EndLimit.KeptTo.class, arm.at());
    assertEquals(Outcome.NEEDS, arm.outcome());
    assertEquals(228.6, arm.needs().get(0).noHigherThanMm(), 1e-9);
    assertEquals("arm", arm.needs().get(0).toRead().point());
    assertEquals(Outcome.NEEDS, droop.outcome());
    assertTrue(droop.marginAtLeast());
    assertEquals(-25.4, droop.marginMm().orElseThrow().value(), 1e-9);
    // Nothing is known to be short: no strap is shortened for what nobody has looked at.
    assertTrue(droop.cure().isEmpty());
  }

  @Test
  void kept_at_the_stop_itself_with_nothing_to_come_is_clear() {
    EndFindings droop =
        bench(CornerBench.exact())
            .stretch(0)
            .gap("arm", "strap", 20)
            .gap("arm", "beyond", 40)
            .travel()
            .droop();
    assertEquals(Outcome.CLEAR, arm(droop).outcome());
    assertEquals(0, droop.marginMm().orElseThrow().value(), 1e-9);
    assertTrue(droop.marginAtLeast());
  }

  @Test
  void kept_at_the_stop_exactly_at_its_rule_is_clear_only_when_the_reading_is_not_doubted() {
    CornerBench sure = bench(CornerBench.exact()).stretch(0);
    assertEquals(
        Outcome.CLEAR,
        arm(sure.gap("arm", "strap", 6).gap("arm", "beyond", 40).travel().droop()).outcome());
    CornerBench tape = bench(CornerBench.realTools()).stretch(0);
    Limit arm = arm(tape.gap("arm", "strap", 6).gap("arm", "beyond", 40).travel().droop());
    assertEquals(Outcome.CANT_TELL, arm.outcome());
    assertNotNull(arm.settles());
    assertInstanceOf(Settles.RepeatingWillNot.class, arm.settles());
  }

  @Test
  void kept_by_less_than_its_doubt_says_how_often_to_read_it() {
    // 6.9 at least 6; U² = 4 (0.4583² + 0.4583²/n): n = 1 gives 1.30, without steps 0.92,
    // n = 2 and no steps 0.65, n = 2 and half the steps 0.79.
    CornerBench tape = bench(CornerBench.realTools()).stretch(0);
    Limit arm = arm(tape.gap("arm", "strap", 6.9).gap("arm", "beyond", 40).travel().droop());
    assertEquals(Outcome.CANT_TELL, arm.outcome());
    assertEquals(new Settles.RepeatsWithFinerTool(2, 0.5), arm.settles());
  }

  @Test
  void a_rule_kept_to_a_place_nearer_than_the_first_limit_bounds_the_margin() {
    // The arm meets its rule at 203.2, but the shaft was only looked at down to 240.
    EndFindings droop =
        limit(bench(CornerBench.exact()), 8 * INCH)
            .stretch(0)
            .watch("shaft", "drive-shaft-frame", "{\"least\":\"10 mm\"}")
            .height("mid", "in-between", 240)
            .gap("shaft", "mid", 30)
            .gap("shaft", "beyond", 60)
            .travel()
            .droop();
    assertEquals(254 - 240, droop.marginMm().orElseThrow().value(), 1e-9);
    assertTrue(droop.marginAtLeast());
    assertEquals("arm", droop.rules().orElseThrow().point().point());
    assertEquals(Outcome.CLEAR, droop.outcome());
  }

  // --- brackets

  private static Limit bracket(double keptMm, double brokenMm) {
    return arm(
        bench(CornerBench.exact())
            .height("kept", "in-between", keptMm)
            .height("broken", "in-between", brokenMm)
            .gap("arm", "kept", 10)
            .gap("arm", "broken", 2)
            .travel()
            .droop());
  }

  @Test
  void between_the_two_readings_of_a_bracket_nobody_has_looked() {
    // The wheel gets to 228.6.
    Limit arm = bracket(240, 200);
    assertEquals(Outcome.CANT_TELL, arm.outcome());
    assertEquals(228.6, arm.needs().get(0).noHigherThanMm(), 1e-9);
    EndLimit.Crosses crosses = (EndLimit.Crosses) arm.at();
    assertEquals(240, crosses.positionMm().value(), 1e-9);
    // The straight line from 10 at 240 to 2 at 200 is at 6 mm at 220.
    assertEquals(220, crosses.aboutMm(), 1e-9);
  }

  @Test
  void what_would_settle_a_bracket_is_no_term_that_the_total_lacks() {
    TravelFindings travel =
        bench(CornerBench.exact())
            .height("kept", "in-between", 240)
            .looked("arm", "off", "touches")
            .gap("arm", "kept", 10)
            .gap("arm", "beyond", 40)
            .travel();
    assertEquals(Outcome.CANT_TELL, travel.droop().outcome());
    // Planned from the kept reading, where the strap is 635 − 240/2 = 515: as set 515/1.025, by
    // hand
    // the wheel at 2 (635 − 502.439) = 265.122. U − r = 600 − 6.35, nobody looked further.
    double neededMm = 2 * (635 - 515 / 1.025);
    assertEquals(neededMm, travel.droop().neededStopMm().orElseThrow().value(), 1e-9);
    assertEquals(593.65 - neededMm, travel.asItCouldBe().mm().orElseThrow().value(), 1e-9);
  }

  @Test
  void past_the_broken_reading_of_a_bracket_is_short_and_short_of_the_kept_one_is_clear() {
    assertEquals(Outcome.SHORT, bracket(240, 229).outcome());
    // At the broken reading itself the rule is broken.
    assertEquals(Outcome.SHORT, bracket(240, 228.6).outcome());
    assertEquals(Outcome.CANT_TELL, bracket(240, 228.5).outcome());
    assertEquals(Outcome.CLEAR, bracket(228.6, 200).outcome());
    assertEquals(Outcome.CLEAR, bracket(220, 200).outcome());
  }

  @Test
  void a_bracket_whose_kept_reading_is_within_its_doubt_is_not_clear() {
    Limit arm =
        arm(
            bench(CornerBench.realTools())
                .height("kept", "in-between", 220)
                .gap("arm", "kept", 6)
                .gap("arm", "off", 1)
                .travel()
                .droop());
    assertEquals(EndLimit.How.BRACKET, ((EndLimit.Crosses) arm.at()).how());
    assertEquals(Outcome.CANT_TELL, arm.outcome());
    assertInstanceOf(Settles.RepeatingWillNot.class, arm.settles());
  }

  @Test
  void a_bracket_is_clear_only_as_far_as_its_reading_surely_keeps_the_rule() {
    // The wheel gets to 228.6; 6.5 at 220 keeps 6 by less than its U, the first to keep it for sure
    // is well clear at 300.
    CornerBench bench =
        bench(CornerBench.realTools())
            .height("kept", "in-between", 220)
            .height("sure", "in-between", 300)
            .gap("arm", "kept", 6.5)
            .looked("arm", "sure", "well-clear")
            .gap("arm", "off", 1);
    Limit unsure = arm(bench.travel().droop());
    assertEquals(300, ((EndLimit.Crosses) unsure.at()).surelyKeptMm(), 1e-9);
    assertEquals(Outcome.CANT_TELL, unsure.outcome());
    assertNotNull(unsure.settles());
  }

  @Test
  void a_touch_ends_the_kept_side_and_well_clear_begins_it() {
    EndFindings droop =
        bench(CornerBench.exact())
            .stretch(0)
            .looked("arm", "off", "touches")
            .looked("arm", "strap", "well-clear")
            .travel()
            .droop();
    assertEquals(254, droop.rules().orElseThrow().positionMm().value(), 1e-9);
    assertEquals(Outcome.CLEAR, arm(droop).outcome());
    assertEquals(0, droop.marginMm().orElseThrow().value(), 1e-9);
  }

  @Test
  void well_clear_was_said_of_the_rule_of_that_day() {
    CornerBench bench = bench(CornerBench.exact()).stretch(0).looked("arm", "strap", "well-clear");
    assertEquals(Outcome.CLEAR, arm(bench.travel().droop()).outcome());
    // A stricter rule: well beyond 6 mm does not say beyond 25.
    bench.watch("arm", "lower-arm-frame", "{\"least\":\"25 mm\"}");
    Limit stricter = arm(bench.travel().droop());
    assertInstanceOf(EndLimit.NotRead.class, stricter.at());
    assertEquals(Outcome.NEEDS, stricter.outcome());
    // A kinder one is kept all the more.
    bench.watch("arm", "lower-arm-frame", "{\"least\":\"3 mm\"}");
    assertEquals(Outcome.CLEAR, arm(bench.travel().droop()).outcome());
  }

  @Test
  void not_looked_asks_for_the_reading_and_at_part_lock_for_nothing() {
    CornerBench bench =
        bench(CornerBench.exact())
            .watch("rub", "tyre-frame", "{\"least\":\"10 mm\"}")
            .looked("rub", "strap", "not-looked")
            .read(
                "{\"height\":\"strap\",\"steering\":\"part-left\",\"quantity\":\"watch-point\",\"point\":\"rub\",\"result\":\"not-looked\"}");
    List<String> asked =
        bench.travel().droop().limits().stream()
            .filter(l -> l.point() != null && l.point().point().equals("rub"))
            .map(l -> l.steering() + " " + l.outcome())
            .sorted()
            .toList();
    assertEquals(List.of("FULL_LEFT NEEDS", "FULL_RIGHT NEEDS", "STRAIGHT NEEDS"), asked);
  }

  @Test
  void part_lock_that_was_read_is_a_limit_like_any_other() {
    EndFindings droop =
        limit(bench(CornerBench.exact()), 8 * INCH)
            .gap("arm", "off", "part-left", 1)
            .gap("arm", "strap", "part-left", 6)
            .gap("arm", "beyond", "part-left", 40)
            .travel()
            .droop();
    assertEquals(254, droop.rules().orElseThrow().positionMm().value(), 1e-9);
    assertEquals(-25.4, droop.marginMm().orElseThrow().value(), 1e-9);
  }
}
