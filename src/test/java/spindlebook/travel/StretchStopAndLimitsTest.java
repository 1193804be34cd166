package spindlebook.travel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static spindlebook.travel.StandardCorner.INCH;
import static spindlebook.travel.StandardCorner.again;
import static spindlebook.travel.StandardCorner.bench;
import static spindlebook.travel.StandardCorner.chosen;
import static spindlebook.travel.StandardCorner.holes;
import static spindlebook.travel.StandardCorner.limit;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import spindlebook.curve.Bound;
import spindlebook.curve.Node;
import spindlebook.curve.PositionToSetting;
import spindlebook.definition.Dimension;
import spindlebook.entry.Quantity;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Outcome;
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;

/** The terms of the travel by hand calculation; see {@link StandardCorner}. */
class StretchStopAndLimitsTest {
  // --- stretch

  /**
   * 10 mm of strap at a ratio of 0.5 ± 0.4 ends 10 / (0.5 − 0.4) = 100 mm below at the furthest.
   */
  @Test
  void the_stretch_s_own_doubt_is_that_of_its_furthest_end_however_unsure_the_ratio_is() {
    Source ratio = new Source("ratio", SourceKind.INTERPOLATION);
    Figure ten = Figure.exact(10);
    for (double expanded : new double[] {0.01, 0.1, 0.25, 0.4}) {
      Figure wheel = StrapStretch.quotient(ten, Figure.of(0.5, ratio, expanded / Figure.K));
      assertEquals(20, wheel.value(), 1e-12);
      assertEquals(10 / (0.5 - expanded), wheel.value() + wheel.U(), 1e-3);
    }
    Figure none = StrapStretch.quotient(ten, Figure.of(0.5, ratio, 5));
    assertTrue(none.U() > 1e6 && none.U() < 1e9, "a ratio that may be nothing tells no end");
  }

  @Test
  void growth_that_was_taken_up_already_is_not_held_back_twice() {
    // As new 502.92, now 508: 5.08 of 2.5 % · 502.92 = 12.573 are taken up; 7.493 / 0.5 at the
    // wheel.
    EndFindings droop =
        limit(bench(CornerBench.exact()).given("new-strap-length", 502.92), 8 * INCH)
            .travel()
            .droop();
    assertEquals(7.493, droop.heldBack().orElseThrow().atStopMm().value(), 1e-9);
    assertEquals(14.986, droop.heldBack().orElseThrow().mm().value(), 1e-9);
    assertEquals(254 - 14.986 - 203.2, droop.marginMm().orElseThrow().value(), 1e-9);
  }

  @Test
  void a_strap_that_grew_past_its_share_holds_nothing_back_and_a_shorter_one_all_of_it() {
    assertEquals(0, stretchLeft(480), 1e-12);
    // A strap read shorter than as new has taken up nothing: 2.5 % of 520.
    assertEquals(13, stretchLeft(520), 1e-9);
  }

  private static double stretchLeft(double asNewMm) {
    return limit(bench(CornerBench.exact()).given("new-strap-length", asNewMm), 8 * INCH)
        .travel()
        .droop()
        .heldBack()
        .orElseThrow()
        .atStopMm()
        .value();
  }

  @Test
  void the_worked_example_of_the_stretch() {
    // ℓ 508, p 10 %, m 520.7: 50.8 − 12.7 = 38.1 at the strap; ratio 0.5: 76.2 at the wheel.
    EndFindings droop =
        chosen(CornerBench.exact())
            .stretch(10)
            .height("strap", "on-the-strap", -254)
            .height("ride", "ride", -154)
            .length("strap-length", "strap", 520.7)
            .length("strap-length", "ride", 470.7)
            .travel()
            .droop();
    assertEquals(38.1, droop.heldBack().orElseThrow().atStopMm().value(), 1e-9);
    assertEquals(76.2, droop.heldBack().orElseThrow().mm().value(), 1e-9);
  }

  @Test
  void the_strap_typed_at_a_re_check_counts_until_it_is_driven_or_set_again() {
    // ℓ 508, p 10 %, 520.7 on it when S was read: 38.1 to come; driven, it is held to be as new.
    CornerBench driven =
        chosen(CornerBench.exact())
            .stretch(10)
            .adjuster(holes("1/4 in", "hole 3"))
            .given("new-strap-length", 508)
            .height("strap", "on-the-strap", -254)
            .height("ride", "ride", -154)
            .length("strap-length", "strap", 520.7)
            .length("strap-length", "ride", 470.7)
            .line("drive", "use", "{\"car\":\"car\",\"unit\":\"hours\",\"amount\":2}");
    assertEquals(50.8, heldAtStrap(driven), 1e-9);
    assertEquals(1, driven.card().toReadAgain().size());
    // 530.86: 10.16 came since S was read, 50.8 − 22.86 are still to come. Typed to 1/16 in, but
    // what it is off by comes off the one as it goes to the other.
    retyped(driven, 530.86);
    assertEquals(38.1, heldAtStrap(driven), 1e-9);
    assertEquals(0, driven.travel().droop().heldBack().orElseThrow().atStopMm().U(), 1e-9);
    assertEquals(List.of(), driven.card().toReadAgain());
    // 570: all 50.8 came, and more; since S was read it grew by 49.3.
    retyped(driven, 570);
    assertEquals(49.3, heldAtStrap(driven), 1e-9);
    assertTrue(driven.travel().droop().heldBack().orElseThrow().atStopMm().U() > 1);
    // 515 is less than it was: nothing came since, 50.8 − 7 to come.
    retyped(driven, 515);
    assertEquals(43.8, heldAtStrap(driven), 1e-9);
    driven.line("drive2", "use", "{\"car\":\"car\",\"unit\":\"hours\",\"amount\":1}");
    assertEquals(50.8, heldAtStrap(driven), 1e-9);
    retyped(driven, 530.86);
    assertEquals(38.1, heldAtStrap(driven), 1e-9);
    driven.adjust("strap", "hole 4").height("again", "on-the-strap", -248);
    assertEquals((508 - 6.35) * 0.1, heldAtStrap(driven), 1e-9, "typed of another length");
  }

  private static void retyped(CornerBench bench, double lengthMm) {
    bench.line(
        "typed-" + bench.card().n(),
        "telltale",
        "{\"corner\":\"lf\",\"what\":\"strap-length\",\"length\":\"" + lengthMm + " mm\"}");
  }

  private static double heldAtStrap(CornerBench bench) {
    return bench.travel().droop().heldBack().orElseThrow().atStopMm().value();
  }

  @Test
  void the_new_length_follows_the_holes_since_and_a_strap_set_by_length_is_that_long() {
    // As new 533.4 at hole 2; at hole 3 it is 1 in shorter: 508. Growth 0, e = 12.7.
    CornerBench holes =
        limit(bench(CornerBench.exact()).given("new-strap-length", 533.4), 8 * INCH)
            .adjuster(holes("1 in", "hole 2"));
    assertEquals(
        12.7,
        again(holes.adjust("strap", "hole 3")).heldBack().orElseThrow().atStopMm().value(),
        1e-9);
    CornerBench length =
        limit(bench(CornerBench.exact()).given("new-strap-length", 533.4), 8 * INCH)
            .adjuster(
                """
                {"adjuster":"strap","kind":"limit-strap","unit":"length","moreShortens":false}\
                """);
    assertEquals(
        12.7,
        again(length.adjust("strap", "508 mm")).heldBack().orElseThrow().atStopMm().value(),
        1e-9);
  }

  @Test
  void strap_lengths_that_grow_towards_bump_are_asked_for_again() {
    EndFindings droop =
        chosen(CornerBench.exact())
            .height("strap", "on-the-strap", 254)
            .height("ride", "ride", 400)
            .length("strap-length", "strap", 400)
            .length("strap-length", "ride", 500)
            .travel()
            .droop();
    assertTrue(droop.heldBack().isEmpty());
    assertTrue(
        droop.needs().stream()
            .anyMatch(
                n ->
                    n.because()
                        .equals(
                            List.of("the strap lengths read do not get shorter towards bump"))));
  }

  // --- other limits

  @Test
  void the_shock_a_reserve_short_of_open_is_a_limit_of_droop() {
    // 700 − z/2 = 612.7 − 12.7 at z = 200; the arm at 180 acts later.
    EndFindings droop =
        limit(bench(CornerBench.exact()).given("shock-open", 612.7), 180).travel().droop();
    assertEquals(Limit.Kind.SHOCK, droop.rules().orElseThrow().kind());
    assertEquals(200, droop.rules().orElseThrow().positionMm().value(), 1e-6);
    assertEquals(254 - 25.4 - 200, droop.marginMm().orElseThrow().value(), 1e-6);
  }

  @Test
  void the_shock_a_reserve_short_of_closed_is_a_limit_of_bump() {
    // 700 − z/2 = 412.3 + 12.7 at z = 550.
    EndFindings bump =
        limit(bench(CornerBench.exact()).given("shock-closed", 412.3), 8 * INCH).travel().bump();
    assertEquals(Limit.Kind.SHOCK, bump.rules().orElseThrow().kind());
    assertEquals(550, bump.rules().orElseThrow().positionMm().value(), 1e-6);
    assertEquals(550 - 6.35 - 500, bump.marginMm().orElseThrow().value(), 1e-6);
  }

  @Test
  void the_ground_is_a_limit_of_bump_and_a_thicker_spacer_cures_it() {
    // R − d − g = 650 − 100 − 50 = 500 = B: short by r = 6.35. Stop gap 60 at 400, 0 at 450: ratio
    // 1.2, so 7.62 at the stop; spacers of 1/8 in: 9.525, which takes 7.9375 off the wheel.
    EndFindings bump =
        limit(bench(CornerBench.exact()).given("tyre-squashed-radius", 650), 8 * INCH)
            .height("touch", "stop-touch", 450)
            .length("stop-gap", "ride", 60)
            .adjuster(
                """
                {"adjuster":"spacer","kind":"bump-stop-spacer","unit":"length","moreShortens":false,"first":"1 in"}\
                """)
            .travel()
            .bump();
    assertEquals(Limit.Kind.GROUND, bump.rules().orElseThrow().kind());
    assertEquals(500, bump.rules().orElseThrow().positionMm().value(), 1e-9);
    assertEquals(-6.35, bump.marginMm().orElseThrow().value(), 1e-9);
    assertEquals(Outcome.SHORT, bump.outcome());
    Cure cure = bump.cure().orElseThrow();
    assertEquals(7.62, cure.wantedMm(), 1e-9);
    assertEquals(9.525, cure.setMm(), 1e-9);
    assertEquals(3, cure.steps());
    assertEquals("1 3/8 in", cure.to().inWords());
    assertEquals(7.9375, cure.atWheelMm(), 1e-9);
  }

  @Test
  void the_worked_example_of_the_ground() {
    assertEquals(
        25.4,
        GroundLimit.positionMm(Figure.exact(330.2), Figure.exact(254.0), Figure.exact(50.8))
            .value(),
        1e-9);
  }

  // --- the solid stop

  private static CornerBench withoutFullBump() {
    return limit(
        chosen(CornerBench.exact())
            .height("off", "strap-off", 150)
            .height("strap", "on-the-strap", 254)
            .height("ride", "ride", 400)
            .height("touch", "stop-touch", 450)
            .height("beyond", "in-between", 600)
            .length("strap-length", "strap", 508)
            .length("strap-length", "ride", 435)
            .length("shock-length", "off", 625)
            .length("shock-length", "strap", 573)
            .length("shock-length", "beyond", 400),
        8 * INCH);
  }

  @Test
  void touch_and_crush_over_the_ratio_say_where_the_stop_is_solid() {
    // 450 + 30 / 1.2
    StopFound stop =
        withoutFullBump()
            .length("stop-gap", "ride", 60)
            .given("stop-crush", 30, 2.0)
            .travel()
            .bump()
            .stop()
            .orElseThrow();
    assertEquals(475, stop.positionMm().value(), 1e-9);
    assertTrue(stop.computed());
    // The crush is doubted, 2/√3 over 1.2, and how two gaps bend: 1.2/1000 of the ratio at touch,
    // 25 from the middle of the two, over the 25 beyond it; past it 25²/2 more, a little further
    // for the ratio that falls with it: q² = 1 − 2 · 25/1000, 4/(1+q)².
    double slant = 4 / Math.pow(1 + Math.sqrt(1 - 2 * 25 / 1000.0), 2);
    double bend = 1.2 / 1000 * (25 * 25 + slant * 25 * 25 / 2) / Math.sqrt(3) / 1.2;
    assertEquals(Math.hypot(2 / Math.sqrt(3) / 1.2, bend), stop.positionMm().u(), 1e-9);
  }

  @Test
  void a_gap_that_opens_again_beyond_touch_tells_no_solid_stop() {
    // Nothing to crush: solid at touch, 450, where the gap read turns and its curve is level. Not
    // beyond 600, where it would close again after 30 at 550 and 20 at 600.
    EndFindings bump =
        withoutFullBump()
            .height("opens", "in-between", 550)
            .length("stop-gap", "ride", 60)
            .length("stop-gap", "opens", 30)
            .length("stop-gap", "beyond", 20)
            .given("stop-crush", 0)
            .travel()
            .bump();
    assertEquals(Optional.empty(), bump.stop());
    Need need =
        bump.needs().stream()
            .filter(n -> n.toRead() != null && n.toRead().quantity() == Quantity.STOP_GAP)
            .findFirst()
            .orElseThrow();
    assertEquals(List.of(), need.because());
  }

  @Test
  void a_steeper_ratio_brings_the_solid_stop_nearer() {
    // Gap 60 at 1.6 and nothing at T 101.6, so ratio 0.60; c 38.1: B = 101.6 + 38.1/0.6 = 165.1.
    // ∂B/∂c = 1/0.6; ∂B/∂g = −38.1/0.36/100 = −1.0583; ∂B/∂T = 1 + 38.1/60 = 1.635.
    // The bend, by hand: 0.0006 (50 · 63.5 + 1.0691 · 63.5²/2)/√3/0.6 = 3.077, where q² = 0.873.
    Source t = new Source("t", SourceKind.PLACING);
    Source c = new Source("c", SourceKind.ALLOWANCE);
    Source g = new Source("g", SourceKind.PLACING);
    Figure touch = Figure.of(101.6, t, 1);
    List<Node> gaps =
        List.of(
            new Node(Figure.exact(1.6), Figure.of(60, g, 1), Bound.EXACT, List.of("g")),
            new Node(touch, Figure.exact(0), Bound.EXACT, List.of("t")));
    Figure solid =
        touch.plus(
            PositionToSetting.wheelChange(gaps, 101.6, Figure.of(-38.1, c, 0.6))
                .orElseThrow()
                .changeMm());
    assertEquals(165.1, solid.value(), 1e-9);
    assertEquals(1.635, solid.parts().get(t), 1e-4);
    assertEquals(1, Math.abs(solid.parts().get(c)), 1e-9);
    assertEquals(-1.0583, solid.parts().get(g), 1e-4);
    double bend =
        solid.parts().entrySet().stream()
            .filter(p -> p.getKey().kind() == SourceKind.INTERPOLATION)
            .mapToDouble(p -> Math.abs(p.getValue()))
            .sum();
    assertEquals(3.077, bend, 1e-3);
  }

  @Test
  void a_full_bump_that_was_read_beats_one_worked_out() {
    StopFound stop =
        withoutFullBump()
            .length("stop-gap", "ride", 60)
            .given("stop-crush", 30)
            .height("bump", "full-bump", 490)
            .travel()
            .bump()
            .stop()
            .orElseThrow();
    assertEquals(490, stop.positionMm().value(), 1e-9);
    assertFalse(stop.computed());
    // As long as the two agree: with a real tape 1 mm is within what it can tell.
    StopFound agree = solidAt(476).bump().stop().orElseThrow();
    assertEquals(476, agree.positionMm().value(), 1e-9);
    assertEquals(null, agree.otherMm());
  }

  /** Worked out at 475, read with a real tape at {@code readMm}. */
  private static TravelFindings solidAt(double readMm) {
    return chosen(CornerBench.realTools())
        .height("strap", "on-the-strap", 254)
        .height("ride", "ride", 400)
        .height("touch", "stop-touch", 450)
        .height("bump", "full-bump", readMm)
        .length("stop-gap", "ride", 60)
        .given("stop-crush", 30)
        .travel();
  }

  @Test
  void two_stops_that_disagree_count_the_further_for_the_margin_and_the_nearer_for_the_travel() {
    for (double readMm : new double[] {460, 490}) {
      TravelFindings travel = solidAt(readMm);
      StopFound stop = travel.bump().stop().orElseThrow();
      assertEquals(Math.max(475, readMm), stop.positionMm().value(), 1e-9);
      assertEquals(Math.min(475, readMm), stop.otherMm().value(), 1e-9);
      assertEquals(readMm < 475, stop.computed());
      assertEquals(Math.min(475, readMm) - 254, travel.asSet().mm().orElseThrow().value(), 1e-9);
    }
  }

  @Test
  void a_full_bump_that_a_shock_made_stale_is_asked_for_until_touch_is_read_again() {
    CornerBench bench =
        withoutFullBump()
            .length("stop-gap", "ride", 60)
            .given("stop-crush", 30)
            .height("bump", "full-bump", 490)
            .adjuster(
                "{\"adjuster\":\"shock\",\"kind\":\"shock\",\"unit\":\"words\",\"moreShortens\":false,\"first\":\"old\"}")
            .adjust("shock", "new");
    assertTrue(bench.travel().bump().stop().isEmpty());
    StopFound stop = bench.height("touch2", "stop-touch", 450).travel().bump().stop().orElseThrow();
    assertEquals(475, stop.positionMm().value(), 1e-9);
  }

  @Test
  void without_crush_or_gap_it_says_what_it_needs_and_the_other_end_stands() {
    TravelFindings travel = withoutFullBump().travel();
    assertTrue(travel.bump().stop().isEmpty());
    assertEquals(Outcome.NEEDS, travel.bump().outcome());
    assertTrue(
        travel.asSet().needs().stream().anyMatch(n -> n.dimension() == Dimension.STOP_CRUSH));
    assertTrue(
        travel.asSet().needs().stream()
            .anyMatch(n -> n.toRead() != null && n.toRead().quantity() == Quantity.STOP_GAP));
    assertTrue(travel.asSet().mm().isEmpty());
    assertEquals(1 * INCH, travel.droop().marginMm().orElseThrow().value(), 1e-9);
    // L + e and U − r do not rest on B.
    assertEquals(593.65 - 229.21951219512, travel.asItCouldBe().mm().orElseThrow().value(), 1e-9);
  }
}
