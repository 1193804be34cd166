package spindlebook.travel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static spindlebook.travel.StandardCorner.INCH;
import static spindlebook.travel.StandardCorner.bench;
import static spindlebook.travel.StandardCorner.chosen;
import static spindlebook.travel.StandardCorner.holes;
import static spindlebook.travel.StandardCorner.limit;
import static spindlebook.travel.StandardCorner.stops;

import java.util.List;
import org.junit.jupiter.api.Test;
import spindlebook.definition.Allowance;
import spindlebook.definition.Dimension;
import spindlebook.entry.HeightName;
import spindlebook.fold.CarBook;
import spindlebook.fold.RandomBook;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Outcome;

/** Whole corners by hand calculation, from design.md §4; see {@link StandardCorner}. */
class CornerTravelTest {
  // --- the design's worked example

  @Test
  void limit_at_8_strap_at_10_stretch_of_1_leaves_1_to_let_out() {
    TravelFindings travel = limit(bench(CornerBench.exact()), 8 * INCH).travel();
    EndFindings droop = travel.droop();
    assertEquals(10 * INCH, droop.stop().orElseThrow().positionMm().value(), 1e-9);
    assertEquals(12.7, droop.heldBack().orElseThrow().atStopMm().value(), 1e-9);
    assertEquals(0.5, droop.heldBack().orElseThrow().ratio().value(), 1e-9);
    assertEquals(1 * INCH, droop.heldBack().orElseThrow().mm().value(), 1e-9);
    // Margin S − e − L = +1.00. Let out to N the strap is 12.1951 longer and stretches by 13.0098:
    // (12.7 + 2.5 % of 25.4) / 1.025, at 1/2 26.0195 over L.
    double stretchedMm = (12.7 + 0.025 * 25.4) / 1.025 / 0.5;
    assertEquals(8 * INCH + stretchedMm, droop.neededStopMm().orElseThrow().value(), 1e-9);
    assertEquals(1 * INCH, droop.marginMm().orElseThrow().value(), 1e-9);
    assertFalse(droop.marginAtLeast());
    assertEquals(Outcome.CLEAR, droop.outcome());
    assertTrue(droop.cure().isEmpty());
  }

  @Test
  void a_strap_set_to_the_needed_stop_ends_at_the_limit_once_stretched() {
    String strap =
        "{\"adjuster\":\"strap\",\"kind\":\"limit-strap\",\"unit\":\"length\",\"moreShortens\":false,\"first\":\"508"
            + " mm\"}";
    CornerBench bench = limit(bench(CornerBench.exact()), 8 * INCH).adjuster(strap);
    double needed = bench.travel().droop().neededStopMm().orElseThrow().value();
    double longer = (254 - needed) / 2;
    EndFindings set =
        bench
            .adjust("strap", "%.9f mm".formatted(508 + longer))
            .height("strap2", "on-the-strap", needed)
            .length("strap-length", "strap2", 508 + longer)
            .travel()
            .droop();
    assertEquals(0, set.marginMm().orElseThrow().value(), 1e-3);
    assertEquals(needed, set.neededStopMm().orElseThrow().value(), 1e-3);
  }

  @Test
  void limit_at_11_is_2_short_and_the_strap_goes_up_one_hole() {
    TravelFindings travel =
        limit(bench(CornerBench.exact()), 11 * INCH).adjuster(holes("1 in", "hole 3")).travel();
    EndFindings droop = travel.droop();
    assertEquals(-2 * INCH, droop.marginMm().orElseThrow().value(), 1e-9);
    assertEquals(Outcome.SHORT, droop.outcome());
    assertEquals(Outcome.SHORT, travel.outcome());
    // 2.00 in at the wheel is 1.00 in of strap: one hole of 1 in, and a higher hole shortens.
    Cure cure = droop.cure().orElseThrow();
    assertEquals(1 * INCH, cure.wantedMm(), 1e-9);
    assertEquals(1 * INCH, cure.setMm(), 1e-9);
    assertEquals(1, cure.steps());
    assertEquals("hole 4", cure.to().inWords());
    assertEquals(2 * INCH, cure.atWheelMm(), 1e-9);
  }

  @Test
  void usable_travel_as_set_and_as_it_could_be_and_split_about_ride() {
    TravelFindings travel = limit(bench(CornerBench.exact()), 8 * INCH).travel();
    // S to B: 500 − 254, about ride at 400.
    assertEquals(246, travel.asSet().mm().orElseThrow().value(), 1e-9);
    assertEquals(146, travel.asSet().droopMm().orElseThrow().value(), 1e-9);
    assertEquals(100, travel.asSet().bumpMm().orElseThrow().value(), 1e-9);
    assertFalse(travel.asSet().atLeast());
    // L + e = 203.2 + 26.0195; at bump the arm and the shock are kept to 600, nobody looked
    // further: 593.65.
    assertEquals(593.65 - 229.21951219512, travel.asItCouldBe().mm().orElseThrow().value(), 1e-9);
    assertEquals(400 - 229.21951219512, travel.asItCouldBe().droopMm().orElseThrow().value(), 1e-9);
    assertEquals(193.65, travel.asItCouldBe().bumpMm().orElseThrow().value(), 1e-9);
    assertTrue(travel.asItCouldBe().atLeast());
    assertEquals(600 - 150, travel.rawMm().orElseThrow().value(), 1e-9);
    // U − r − B, to the last reading.
    assertEquals(93.65, travel.bump().marginMm().orElseThrow().value(), 1e-9);
    assertTrue(travel.bump().marginAtLeast());
    assertEquals(Outcome.CLEAR, travel.outcome());
  }

  @Test
  void two_limits_do_not_add_the_higher_one_rules_and_they_stand_in_the_order_they_act() {
    CornerBench bench =
        limit(bench(CornerBench.exact()), 8 * INCH)
            .watch("shaft", "drive-shaft-frame", "{\"least\":\"10 mm\"}")
            .height("lower", "in-between", 180)
            .gap("shaft", "off", 1)
            .gap("shaft", "lower", 10)
            .gap("shaft", "beyond", 60);
    EndFindings droop = bench.travel().droop();
    assertEquals(1 * INCH, droop.marginMm().orElseThrow().value(), 1e-9);
    assertEquals("arm", droop.rules().orElseThrow().point().point());
    assertEquals(
        List.of("arm", "shaft"),
        droop.limits().stream().filter(Limit::found).map(l -> l.point().point()).toList());
    // Curing the arm alone would win 203.2 − 180 mm before the shaft rules.
    assertEquals(180, droop.limits().get(1).positionMm().value(), 1e-9);
  }

  @Test
  void what_is_kept_further_than_the_limit_that_rules_is_not_asked_for_beyond_it() {
    TravelFindings travel =
        limit(bench(CornerBench.exact()), 250)
            .watch("shaft", "drive-shaft-frame", "{\"least\":\"10 mm\"}")
            .height("lower", "in-between", 240)
            .gap("shaft", "lower", 20)
            .gap("shaft", "beyond", 60)
            .travel();
    // The strap lets the wheel get to 254 − 25.4 = 228.6, past 240; the arm must end it at 250.
    assertEquals(Outcome.SHORT, travel.droop().outcome());
    assertEquals(List.of(), travel.droop().needs());
    // There the strap is shorter and stretches by less: (12.7 + 2.5 % of 2) / 1.025 / 0.5 =
    // 24.8780.
    assertEquals(593.65 - 274.87804878049, travel.asItCouldBe().mm().orElseThrow().value(), 1e-9);
  }

  // --- what is missing

  @Test
  void without_a_height_on_the_strap_there_is_no_stretch_at_the_wheel_and_no_total() {
    TravelFindings travel =
        limit(
                chosen(CornerBench.exact())
                    .height("off", "strap-off", 150)
                    .height("bump", "full-bump", 500)
                    .height("beyond", "in-between", 600)
                    .length("shock-length", "off", 625)
                    .length("shock-length", "bump", 450)
                    .length("shock-length", "beyond", 400),
                8 * INCH)
            .travel();
    for (Total total : List.of(travel.asSet(), travel.asItCouldBe())) {
      assertTrue(total.mm().isEmpty());
      assertTrue(
          total.needs().stream()
              .anyMatch(n -> n.toRead() != null && n.toRead().name() == HeightName.ON_THE_STRAP));
    }
  }

  @Test
  void a_strap_that_does_not_stretch_needs_no_stop_for_the_travel_as_it_could_be() {
    TravelFindings travel =
        limit(
                chosen(CornerBench.exact())
                    .stretch(0)
                    .height("off", "strap-off", 150)
                    .height("bump", "full-bump", 500)
                    .height("beyond", "in-between", 600)
                    .length("shock-length", "off", 625)
                    .length("shock-length", "beyond", 400),
                8 * INCH)
            .travel();
    assertTrue(travel.asSet().mm().isEmpty());
    // L + 0 to U − r.
    assertEquals(593.65 - 203.2, travel.asItCouldBe().mm().orElseThrow().value(), 1e-9);
    assertEquals(Outcome.NEEDS, travel.droop().outcome());
  }

  @Test
  void without_ride_there_is_a_total_and_no_split() {
    TravelFindings travel =
        limit(bench(CornerBench.exact()), 8 * INCH)
            .line(
                "x",
                "correction",
                "{\"target\":\"ride\",\"kind\":\"height\",\"body\":{\"round\":\"r1\",\"name\":\"in-between\",\"spindle\":\"1400"
                    + " mm\",\"mark\":\"1000 mm\"}}")
            .travel();
    assertTrue(travel.rideMm().isEmpty());
    assertEquals(246, travel.asSet().mm().orElseThrow().value(), 1e-9);
    assertTrue(travel.asSet().droopMm().isEmpty());
    assertTrue(travel.asSet().bumpMm().isEmpty());
  }

  @Test
  void an_empty_corner_needs_every_term_and_gives_no_number() {
    TravelFindings travel =
        CornerBench.exact().watch("arm", "lower-arm-frame", "{\"least\":\"6 mm\"}").travel();
    assertTrue(travel.asSet().mm().isEmpty());
    assertTrue(travel.asItCouldBe().mm().isEmpty());
    List<Need> needs = travel.asItCouldBe().needs();
    for (Dimension d :
        List.of(
            Dimension.SHOCK_OPEN,
            Dimension.SHOCK_CLOSED,
            Dimension.TYRE_SQUASHED_RADIUS,
            Dimension.MARK_TO_LOWEST_FRAME)) {
      assertTrue(needs.stream().anyMatch(n -> n.dimension() == d), "needs " + d);
    }
    for (Allowance a :
        List.of(
            Allowance.STRAP_STRETCH,
            Allowance.IMPACT_RESERVE,
            Allowance.SHOCK_OPEN_RESERVE,
            Allowance.SHOCK_CLOSED_RESERVE,
            Allowance.GROUND_CLEARANCE)) {
      assertTrue(needs.stream().anyMatch(n -> n.allowance() == a), "needs " + a);
    }
    assertEquals(Outcome.NEEDS, travel.outcome());
  }

  /** Over all plausible books: nothing is thrown, and a total is there or says what it needs. */
  @Test
  void a_total_without_a_number_always_says_what_it_needs() {
    int totals = 0;
    for (long seed = 1; seed <= 60; seed++) {
      CarBook book = CarBook.of(new RandomBook(seed).entries(160));
      for (String corner : book.corners()) {
        TravelFindings travel = CornerTravel.of(book.card(corner));
        for (Total total : List.of(travel.asSet(), travel.asItCouldBe())) {
          assertEquals(total.mm().isEmpty(), !total.needs().isEmpty(), "seed " + seed);
          totals += total.mm().isPresent() ? 1 : 0;
        }
      }
    }
    assertTrue(totals > 0, "no total in any of the books");
  }

  @Test
  void a_rule_broken_at_every_height_is_short_has_no_stop_that_keeps_it_and_asks_for_more() {
    TravelFindings travel =
        limit(bench(CornerBench.exact()), 8 * INCH)
            .watch("shaft", "drive-shaft-frame", "{\"least\":\"10 mm\"}")
            .gap("shaft", "strap", 3)
            .gap("shaft", "ride", 4)
            .travel();
    assertEquals(Outcome.SHORT, travel.droop().outcome());
    assertTrue(travel.droop().marginMm().isEmpty());
    assertTrue(travel.droop().cure().isEmpty());
    assertTrue(travel.asItCouldBe().mm().isEmpty());
    assertTrue(
        travel.asItCouldBe().needs().stream()
            .anyMatch(
                n ->
                    n.toRead() != null
                        && "shaft".equals(n.toRead().point())
                        && n.toRead().name() == HeightName.IN_BETWEEN));
    // What is set is set.
    assertEquals(246, travel.asSet().mm().orElseThrow().value(), 1e-9);
  }

  // --- mid-travel

  @Test
  void a_shortfall_in_mid_travel_is_short_and_no_stop_cures_it() {
    TravelFindings travel =
        bench(CornerBench.exact())
            .gap("arm", "off", 20)
            .gap("arm", "strap", 20)
            .gap("arm", "ride", 3)
            .gap("arm", "bump", 20)
            .gap("arm", "beyond", 30)
            .travel();
    assertEquals(1, travel.midTravel().size());
    assertEquals(3, travel.midTravel().get(0).shortfall().worst().value(), 1e-9);
    assertTrue(travel.midTravel().get(0).shortfall().fromMm().value() > 254);
    assertTrue(travel.midTravel().get(0).shortfall().toMm().value() < 500);
    assertEquals(Outcome.SHORT, travel.outcome());
    assertEquals(Outcome.CLEAR, travel.droop().outcome());
    assertTrue(travel.droop().cure().isEmpty());
    assertTrue(travel.bump().cure().isEmpty());
  }

  private static TravelFindings brokenBelowTheStrap(double lowerMm) {
    return bench(CornerBench.exact())
        .height("lower", "in-between", lowerMm)
        .gap("arm", "off", 20)
        .gap("arm", "lower", 3)
        .gap("arm", "strap", 20)
        .gap("arm", "beyond", 40)
        .travel();
  }

  @Test
  void a_broken_stretch_that_the_strap_keeps_the_wheel_out_of_is_a_limit_of_droop() {
    // The wheel gets to 228.6; the rule is broken about 180, on the line between the readings to
    // 193.
    TravelFindings out = brokenBelowTheStrap(180);
    assertTrue(out.midTravel().isEmpty());
    assertEquals(Outcome.CLEAR, out.outcome());
    assertEquals("arm", out.droop().rules().orElseThrow().point().point());
    double limitMm = out.droop().rules().orElseThrow().positionMm().value();
    assertTrue(limitMm > 180 && limitMm < 228.6, "limit at " + limitMm);
    assertEquals(228.6 - limitMm, out.droop().marginMm().orElseThrow().value(), 1e-9);
    assertFalse(out.droop().marginAtLeast());

    // It ends inside: it never gets to where the rule is kept again. A shorter strap cures that.
    TravelFindings in = brokenBelowTheStrap(228.6);
    assertTrue(in.midTravel().isEmpty());
    assertEquals(Outcome.SHORT, in.droop().outcome());
    double inMm = in.droop().rules().orElseThrow().positionMm().value();
    assertTrue(inMm > 228.6 && inMm < 254, "limit at " + inMm);
    assertEquals(228.6 - inMm, in.droop().marginMm().orElseThrow().value(), 1e-9);
  }

  // --- uncertainty

  private static final double SCALE = INCH / 16 / Math.sqrt(12);
  private static final double PLACED = INCH / 32 / Math.sqrt(3);

  @Test
  void a_mark_read_once_cancels_in_the_travel_as_set_and_two_marks_do_not() {
    double one = Math.sqrt(2 * (SCALE * SCALE + PLACED * PLACED));
    TravelFindings shared = stops(CornerBench.realTools().oneMark()).travel();
    assertEquals(one, shared.asSet().mm().orElseThrow().u(), 1e-9);
    assertEquals(one, shared.asSet().droopMm().orElseThrow().u(), 1e-9);
    TravelFindings apart = stops(CornerBench.realTools()).travel();
    assertEquals(one * Math.sqrt(2), apart.asSet().mm().orElseThrow().u(), 1e-9);
  }

  @Test
  void a_shared_mark_cancels_in_the_margin_and_two_marks_do_not() {
    double spindle = SCALE * SCALE + PLACED * PLACED;
    assertEquals(Math.sqrt(2 * spindle), marginU(CornerBench.realTools().oneMark()), 1e-9);
    assertEquals(Math.sqrt(4 * spindle), marginU(CornerBench.realTools()), 1e-9);
  }

  /** Between the strap and the kept reading of a bracket, nothing to come. */
  private static double marginU(CornerBench bench) {
    return bench(bench)
        .stretch(0)
        .height("kept", "in-between", 220)
        .gap("arm", "kept", 20)
        .gap("arm", "off", 1)
        .travel()
        .droop()
        .marginMm()
        .orElseThrow()
        .u();
  }

  // --- put back

  @Test
  void a_stop_that_rests_on_a_setting_put_back_says_so() {
    CornerBench bench =
        limit(bench(CornerBench.exact().adjuster(holes("1 in", "hole 3"))), 8 * INCH);
    assertFalse(bench.travel().droop().stop().orElseThrow().notConfirmed());
    bench.adjust("strap", "hole 4");
    EndFindings away = bench.travel().droop();
    assertTrue(away.stop().isEmpty());
    assertEquals(
        List.of("limit strap to hole 4"),
        away.needs().stream().flatMap(n -> n.because().stream()).distinct().toList());
    bench.adjust("strap", "hole 3");
    EndFindings back = bench.travel().droop();
    assertTrue(back.stop().orElseThrow().notConfirmed());
    assertEquals(254, back.stop().orElseThrow().positionMm().value(), 1e-9);
    bench.height("strap2", "on-the-strap", 255);
    EndFindings confirmed = bench.travel().droop();
    assertFalse(confirmed.stop().orElseThrow().notConfirmed());
    assertEquals(255, confirmed.stop().orElseThrow().positionMm().value(), 1e-9);
  }

  @Test
  void a_bump_margin_whose_stop_was_read_has_the_doubt_of_its_readings_and_no_more() {
    // Gaps closing by 0.1 per mm, read at 340, 400, 460 and, on the stop itself, 520; at least 12
    // at
    // 430. By hand, half way the curve weighs the four by −1/16, 9/16, 9/16, −1/16, their heights
    // too,
    // of which the stop's counts against: −17/16. Mark cancels. One reading is off by √2 · 0.458.
    CornerBench bench =
        CornerBench.shop("tape")
            .oneMark()
            .watch("p", "lower-arm-frame", "{\"least\":\"12 mm\"}")
            .held("impact-reserve", 0);
    double[] at = {340, 400, 460, 520};
    for (double z : at) {
      String key = "h" + Math.round(z);
      bench
          .height(key, z == 520 ? "full-bump" : "in-between", z)
          .gap("p", key, 12 - 0.1 * (z - 430));
    }
    Figure margin = bench.travel().bump().marginMm().orElseThrow();
    assertEquals(-90, margin.value(), 1e-6);
    double one = Math.sqrt(2) * 1.5875 / Math.sqrt(12);
    double gaps = (1 + 81 + 81 + 1) / 256.0 * Math.pow(one / 0.1, 2);
    double heights = (1 + 81 + 81 + 17 * 17) / 256.0 * one * one;
    assertEquals(2 * Math.sqrt(gaps + heights), margin.U(), 1e-4);
  }
}
