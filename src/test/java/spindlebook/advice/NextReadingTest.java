package spindlebook.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static spindlebook.travel.StandardCorner.bench;
import static spindlebook.travel.StandardCorner.limit;

import java.util.List;
import org.junit.jupiter.api.Test;
import spindlebook.advice.NextReading.Why;
import spindlebook.card.TravelWords;
import spindlebook.definition.Allowance;
import spindlebook.definition.Dimension;
import spindlebook.entry.HeightName;
import spindlebook.entry.Quantity;
import spindlebook.entry.Steering;
import spindlebook.fold.Card;
import spindlebook.travel.CornerBench;
import spindlebook.travel.CornerTravel;
import spindlebook.travel.End;
import spindlebook.travel.Limit;
import spindlebook.travel.StandardCorner;
import spindlebook.uncertainty.Outcome;
import spindlebook.uncertainty.Settles;

/** The rule of {@link NextReading} by hand, on the corner of {@link StandardCorner}. */
class NextReadingTest {
  private static List<NextReading> ranked(CornerBench bench) {
    Card card = bench.card();
    return NextReading.ranked(card, CornerTravel.of(card));
  }

  private static NextReading first(CornerBench bench) {
    return ranked(bench).get(0);
  }

  @Test
  void a_corner_that_is_all_there_and_clear_wants_nothing() {
    Card card = limit(bench(CornerBench.exact()), 203.2).card();
    assertEquals(List.of(), NextReading.ranked(card, CornerTravel.of(card)));
  }

  // --- missing

  @Test
  void a_stop_withholds_both_totals_and_a_margin_and_comes_before_a_gap_nobody_read() {
    CornerBench bench =
        limit(
                StandardCorner.chosen(CornerBench.exact())
                    .height("off", "strap-off", 150)
                    .height("ride", "ride", 400)
                    .height("bump", "full-bump", 500)
                    .height("beyond", "in-between", 600)
                    .length("shock-length", "off", 625)
                    .length("shock-length", "beyond", 400),
                203.2)
            .watch("shaft", "drive-shaft-frame", "{\"least\":\"10 mm\"}");
    List<NextReading> ranked = ranked(bench);
    assertEquals(Why.WITHHOLDS, ranked.get(0).why());
    assertEquals(HeightName.ON_THE_STRAP, ranked.get(0).need().toRead().name());
    assertEquals(null, ranked.get(0).need().toRead().quantity());
    // As set, as it could be, and droop's margin.
    assertEquals(3, ranked.get(0).withholds());
    NextReading shaft =
        ranked.stream()
            .filter(r -> r.need().toRead() != null && "shaft".equals(r.need().toRead().point()))
            .findFirst()
            .orElseThrow();
    assertTrue(ranked.indexOf(shaft) > 0 && shaft.withholds() < 3);
  }

  @Test
  void a_gap_comes_before_a_number_to_give_and_that_before_one_to_choose() {
    CornerBench bench =
        limit(
            CornerBench.exact()
                .watch("arm", "lower-arm-frame", "{\"least\":\"6 mm\"}")
                .watch("shaft", "drive-shaft-frame", "{\"least\":\"10 mm\"}")
                .stretch(0)
                .given("shock-open", 700)
                .given("shock-closed", 300)
                .held("shock-open-reserve", 12.7)
                .held("shock-closed-reserve", 12.7)
                .given("tyre-squashed-radius", 1000)
                .held("impact-reserve", 6.35)
                .height("off", "strap-off", 150)
                .height("strap", "on-the-strap", 254)
                .height("ride", "ride", 400)
                .height("bump", "full-bump", 500)
                .height("beyond", "in-between", 600)
                .length("shock-length", "off", 625)
                .length("shock-length", "beyond", 400),
            203.2);
    List<NextReading> withholding =
        ranked(bench).stream().filter(r -> r.why() == Why.WITHHOLDS).toList();
    List<String> kinds =
        withholding.stream()
            .filter(r -> r.withholds() == 1 || r.end() == End.BUMP)
            .map(
                r ->
                    r.need().toRead() != null
                        ? "read"
                        : r.need().dimension() != null ? "give" : "choose")
            .distinct()
            .toList();
    assertEquals(List.of("read", "give", "choose"), kinds);
    assertTrue(
        withholding.stream().anyMatch(r -> r.need().dimension() == Dimension.MARK_TO_LOWEST_FRAME));
    assertTrue(
        withholding.stream().anyMatch(r -> r.need().allowance() == Allowance.GROUND_CLEARANCE));
  }

  @Test
  void a_stop_that_went_stale_is_asked_for_once_and_says_why() {
    CornerBench bench =
        limit(bench(CornerBench.exact()), 203.2)
            .adjuster(StandardCorner.holes("1/4 in", "hole 3"))
            .adjust("strap", "hole 4");
    List<NextReading> ranked = ranked(bench);
    assertEquals(Why.WITHHOLDS, ranked.get(0).why());
    assertEquals(HeightName.ON_THE_STRAP, ranked.get(0).need().toRead().name());
    assertEquals(1, ranked.get(0).need().because().size());
    assertEquals(
        1,
        ranked.stream()
            .filter(r -> r.need().toRead() != null && r.need().toRead().quantity() == null)
            .count());
  }

  // --- undecided

  @Test
  void what_decides_the_limit_that_rules_comes_before_one_that_hardly_could() {
    // Arm: 6 mm at 226, shaft: 10 mm at 221; S − e = 228.6. Drills steps and all: both can't tell.
    CornerBench bench =
        bench(CornerBench.realTools().oneMark())
            .watch("shaft", "drive-shaft-frame", "{\"least\":\"10 mm\"}");
    for (double z : new double[] {180, 220, 260, 300}) {
      String key = "h" + Math.round(z);
      bench
          .height(key, "in-between", z)
          .gap("arm", key, 6 + 0.2 * (z - 226))
          .gap("shaft", key, 10 + 0.15 * (z - 221));
    }
    bench.gap("arm", "beyond", 80).gap("shaft", "beyond", 67);
    List<NextReading> undecided =
        ranked(bench).stream().filter(r -> r.why() == Why.UNDECIDED).toList();
    assertEquals(
        List.of("arm", "shaft"), undecided.stream().map(r -> r.limit().point().point()).toList());
    NextReading arm = undecided.get(0);
    assertEquals(End.DROOP, arm.end());
    // By its U either way, the shaft being no nearer than 5 mm off; the shaft: 7.6 − U below 2.6.
    assertEquals(arm.limit().roomMm().U(), arm.atStakeMm(), 1e-9);
    NextReading shaft = undecided.get(1);
    double shaftRoom = shaft.limit().roomMm().value() - shaft.limit().roomMm().U();
    assertEquals(arm.limit().roomMm().value() - shaftRoom, shaft.atStakeMm(), 1e-9);
  }

  @Test
  void it_says_which_reading_how_often_and_with_what() {
    // Placing alone: U = 2 · 0.5 / 0.2 = 5 mm of wheel and a room of 3.
    CornerBench bench = bench(CornerBench.realTools().oneMark());
    for (double z : new double[] {180, 220, 260, 300}) {
      String key = "h" + Math.round(z);
      bench.height(key, "in-between", z).gap("arm", key, 6 + 0.2 * (z - 224));
    }
    NextReading next = first(bench.gap("arm", "beyond", 81.2));
    assertEquals(Why.UNDECIDED, next.why());
    assertTrue(next.settles() instanceof Settles.RepeatsWithFinerTool, "" + next.settles());
    assertEquals(Quantity.WATCH_POINT, next.need().toRead().quantity());
    assertEquals("arm", next.need().toRead().point());
    assertEquals(HeightName.IN_BETWEEN, next.need().toRead().name());
    // Four heights are in between without a word to tell them apart: it says near which.
    assertEquals(220, next.nearMm(), 1e-9);
  }

  @Test
  void between_two_readings_that_tell_no_place_it_asks_for_a_height_there() {
    CornerBench bench =
        bench(CornerBench.exact())
            .height("low", "in-between", 200)
            .height("high", "in-between", 240)
            .looked("arm", "low", "touches")
            .looked("arm", "high", "well-clear")
            .gap("arm", "beyond", 40);
    NextReading next = first(bench);
    assertEquals(Why.UNDECIDED, next.why());
    // The wheel gets to 228.6.
    assertEquals(228.6, next.nearMm(), 1e-9);
    // Known to be kept to 240 and broken at 200: the margin could go up by 40.
    assertEquals(40, next.atStakeMm(), 1e-9);
  }

  @Test
  void too_close_to_call_in_mid_travel_is_asked_for_with_its_repeats() {
    CornerBench bench =
        bench(CornerBench.realTools().oneMark())
            .gap("arm", "off", 20)
            .gap("arm", "strap", 20)
            .gap("arm", "ride", 6.9)
            .gap("arm", "bump", 20)
            .gap("arm", "beyond", 30);
    NextReading next = first(bench);
    assertEquals(Why.UNDECIDED, next.why());
    assertEquals(null, next.end());
    assertEquals(HeightName.RIDE, next.need().toRead().name());
    assertEquals(new Settles.RepeatsWithFinerTool(2, 0.5), next.settles());
  }

  // --- what settles most for least work

  /** Arm met at 226; the strap read 5.08 longer than as new, and driven since. */
  private static CornerBench drivenSince() {
    CornerBench bench = bench(CornerBench.realTools().oneMark()).given("new-strap-length", 502.92);
    for (double z : new double[] {180, 220, 260, 300}) {
      String key = "h" + Math.round(z);
      bench.height(key, "in-between", z).gap("arm", key, 6 + 0.2 * (z - 226));
    }
    return bench
        .gap("arm", "beyond", 80.8)
        .line("drive", "use", "{\"car\":\"car\",\"unit\":\"hours\",\"amount\":2}");
  }

  @Test
  void the_strap_read_once_comes_before_a_gap_read_again_and_again() {
    // Held to be as new e is 25.1 at the wheel: room 254 − 25.1 − 226 = 2.9, less than its U. As
    // it was read 15.0 are to come: 13.0, which is more.
    CornerBench bench = drivenSince();
    Limit arm = StandardCorner.arm(bench.travel().droop());
    assertEquals(Outcome.CANT_TELL, arm.outcome());
    assertTrue(arm.roomMm().U() > 2.9 && arm.roomMm().U() < 13, "" + arm.roomMm().U());
    NextReading next = first(bench);
    assertEquals(Quantity.STRAP_LENGTH, next.need().toRead().quantity());
    assertEquals(List.of(arm), next.decides());
    String words = new TravelWords(bench.card(), bench.travel()).settles(arm);
    assertEquals(
        "Read strap, mount to mount at 'on the strap (full droop)': once should settle it.", words);
    bench.length("strap-length", "strap", 508);
    assertEquals(Outcome.CLEAR, StandardCorner.arm(bench.travel().droop()).outcome());
  }

  @Test
  void the_strap_typed_at_a_re_check_settles_it_as_well() {
    CornerBench bench =
        drivenSince()
            .line(
                "typed",
                "telltale",
                "{\"corner\":\"lf\",\"what\":\"strap-length\",\"length\":\"508 mm\"}");
    assertEquals(Outcome.CLEAR, StandardCorner.arm(bench.travel().droop()).outcome());
    assertEquals(List.of(), ranked(bench));
  }

  @Test
  void the_middle_of_a_bracket_that_costs_travel_is_asked_for_with_what_it_may_win() {
    // Touches at 240, well clear at 294, 2 1/8 in apart; the wheel gets to 228.6, past both.
    CornerBench bench =
        bench(CornerBench.exact())
            .height("low", "in-between", 240)
            .height("high", "in-between", 294)
            .looked("arm", "low", "touches")
            .looked("arm", "high", "well-clear")
            .gap("arm", "beyond", 40);
    assertEquals(228.6 - 294, bench.travel().droop().marginMm().orElseThrow().value(), 1e-9);
    NextReading next = first(bench);
    assertEquals(Why.COSTS_TRAVEL, next.why());
    assertEquals(267, next.nearMm(), 1e-9);
    assertEquals(54, next.atStakeMm(), 1e-9);
    assertEquals(HeightName.IN_BETWEEN, next.need().toRead().name());
    bench.height("middle", "in-between", 267).looked("arm", "middle", "well-clear");
    assertEquals(253.5, first(bench).nearMm(), 1e-9);
    assertEquals(27, first(bench).atStakeMm(), 1e-9);
    assertEquals(228.6 - 267, bench.travel().droop().marginMm().orElseThrow().value(), 1e-9);
  }

  @Test
  void a_bracket_wins_no_more_than_up_to_where_the_next_limit_acts() {
    // The shaft is met at 280, so of 54 between the arm's two heights 14 at most are won.
    CornerBench bench =
        bench(CornerBench.exact())
            .watch("shaft", "drive-shaft-frame", "{\"least\":\"10 mm\"}")
            .height("low", "in-between", 240)
            .height("high", "in-between", 294)
            .height("met", "in-between", 280)
            .looked("arm", "low", "touches")
            .looked("arm", "high", "well-clear")
            .gap("arm", "beyond", 40)
            .gap("shaft", "off", 2)
            .gap("shaft", "met", 10)
            .gap("shaft", "beyond", 60);
    NextReading next = first(bench);
    assertEquals(Why.COSTS_TRAVEL, next.why());
    assertEquals(14, next.atStakeMm(), 1e-9);
  }

  @Test
  void what_no_reading_will_settle_is_told_with_why() {
    // Open length 600 ± 10: met at 225.4, room 3.2, U 2 · 10/√3 / 0.5 = 23.1, all of it given.
    CornerBench bench = limit(bench(CornerBench.exact()).given("shock-open", 600, 10.0), 203.2);
    assertEquals(List.of(), ranked(bench));
    List<String> left = new TravelWords(bench.card(), bench.travel()).leftOpen();
    assertEquals(1, left.size(), left.toString());
    assertTrue(left.get(0).startsWith("Droop: shock's reserve at its open end:"), left.get(0));
    assertTrue(left.get(0).contains("Reading it again will not settle it"), left.get(0));
    Card clear = limit(bench(CornerBench.exact()), 203.2).card();
    assertEquals(List.of(), new TravelWords(clear, CornerTravel.of(clear)).leftOpen());
  }

  // --- ride and what no longer holds

  @Test
  void put_back_where_it_rules_comes_after_ride_and_before_what_rules_nowhere() {
    CornerBench bench =
        limit(bench(CornerBench.exact()), 203.2)
            .watch("shaft", "drive-shaft-frame", "{\"least\":\"10 mm\"}")
            .gap("shaft", "off", 60)
            .gap("shaft", "beyond", 60)
            .adjuster(
                "{\"adjuster\":\"preload\",\"kind\":\"spring-preload\",\"unit\":\"turns\","
                    + "\"moreShortens\":false,\"first\":\"2 turns\"}")
            .adjust("preload", "3 turns")
            .adjust("upper", "1 turns")
            .adjust("upper", "0 turns");
    List<NextReading> ranked = ranked(bench);
    assertEquals(Why.NO_SPLIT, ranked.get(0).why());
    List<NextReading> ruling =
        ranked.stream().filter(r -> r.why() == Why.UNSURE_WHERE_IT_RULES).toList();
    List<NextReading> rest = ranked.stream().filter(r -> r.why() == Why.UNSURE).toList();
    assertTrue(ruling.stream().anyMatch(r -> "arm".equals(r.need().toRead().point())), "" + ranked);
    assertTrue(rest.stream().allMatch(r -> !"arm".equals(r.need().toRead().point())));
    assertTrue(rest.stream().anyMatch(r -> "shaft".equals(r.need().toRead().point())));
    assertTrue(ranked.indexOf(rest.get(0)) > ranked.indexOf(ruling.get(0)));
    assertTrue(ruling.get(0).need().because().size() > 0);
    assertEquals(Steering.STRAIGHT, ruling.get(0).need().toRead().steering());
  }
}
