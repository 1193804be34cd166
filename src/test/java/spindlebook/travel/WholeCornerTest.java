package spindlebook.travel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static spindlebook.travel.StandardCorner.INCH;
import static spindlebook.travel.StandardCorner.again;
import static spindlebook.travel.StandardCorner.arm;
import static spindlebook.travel.StandardCorner.bench;
import static spindlebook.travel.StandardCorner.limit;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import spindlebook.entry.Steering;
import spindlebook.fold.Card;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Outcome;

/** Several rules, steerings and tools on one corner; see {@link StandardCorner}. */
class WholeCornerTest {
  private static List<Limit> of(EndFindings end, String point) {
    return end.limits().stream()
        .filter(l -> l.point() != null && l.point().point().equals(point))
        .toList();
  }

  private static CornerBench angle(CornerBench bench, String height, String angle) {
    return bench.read(
        "{\"height\":\"%s\",\"steering\":\"straight\",\"quantity\":\"watch-point\",\"point\":\"cv\",\"result\":\"number\",\"angle\":\"%s\"}"
            .formatted(height, angle));
  }

  // --- steerings

  @Test
  void one_watch_point_limits_droop_at_one_lock_and_bump_at_the_other() {
    CornerBench bench =
        limit(bench(CornerBench.exact()), 160)
            .watch("rub", "tyre-frame", "{\"least\":\"10 mm\"}")
            .height("low", "in-between", 210)
            .height("high", "in-between", 520);
    for (String h : List.of("off", "beyond")) {
      bench.gap("rub", h, 40);
    }
    // Left lock meets 10 mm at 210 on the way down, right lock at 520 on the way up.
    bench.gap("rub", "off", "full-left", 1).gap("rub", "low", "full-left", 10);
    bench.gap("rub", "beyond", "full-left", 50);
    bench.gap("rub", "off", "full-right", 50).gap("rub", "high", "full-right", 10);
    TravelFindings travel = bench.gap("rub", "beyond", "full-right", 2).travel();
    Limit droop = travel.droop().rules().orElseThrow();
    assertEquals(Steering.FULL_LEFT, droop.steering());
    assertEquals(254 - 25.4 - 210, travel.droop().marginMm().orElseThrow().value(), 1e-9);
    Limit bump = travel.bump().rules().orElseThrow();
    assertEquals(Steering.FULL_RIGHT, bump.steering());
    assertEquals(520 - 6.35 - 500, travel.bump().marginMm().orElseThrow().value(), 1e-9);
    // U − r less L + e: (520 − 6.35) − (210 + 25.8537), e of a strap let out as far: (12.7 + 2.5 %
    // of
    // 22) / 1.025 / 0.5.
    assertEquals(
        513.65 - 210 - 25.85365853659, travel.asItCouldBe().mm().orElseThrow().value(), 1e-9);
    assertFalse(travel.asItCouldBe().atLeast());
  }

  @Test
  void short_at_one_lock_wins_over_unread_at_the_other_and_still_asks_for_it() {
    CornerBench bench =
        limit(bench(CornerBench.exact()), 160)
            .watch("rub", "tyre-frame", "{\"least\":\"10 mm\"}")
            .gap("rub", "off", "full-left", 1)
            .gap("rub", "strap", "full-left", 10)
            .gap("rub", "beyond", "full-left", 50);
    TravelFindings travel = bench.travel();
    EndFindings droop = travel.droop();
    assertEquals(Outcome.SHORT, droop.outcome());
    // The rule is met on the strap itself, the stretch lets the wheel 25.4 past it.
    assertEquals(-25.4, droop.marginMm().orElseThrow().value(), 1e-9);
    List<Steering> asked = droop.needs().stream().map(n -> n.toRead().steering()).sorted().toList();
    assertEquals(2, asked.size());
    assertTrue(asked.containsAll(List.of(Steering.STRAIGHT, Steering.FULL_RIGHT)), "" + asked);
    assertTrue(travel.asItCouldBe().mm().isEmpty());
    assertEquals(246, travel.asSet().mm().orElseThrow().value(), 1e-9);
    // One of the two read: the other is enough to withhold the total.
    bench.gap("rub", "off", 40).gap("rub", "beyond", 40);
    assertTrue(bench.travel().asItCouldBe().mm().isEmpty());
    bench.gap("rub", "off", "full-right", 40).gap("rub", "beyond", "full-right", 40);
    assertEquals(
        593.65 - 254 - 12.7 / 1.025 / 0.5,
        bench.travel().asItCouldBe().mm().orElseThrow().value(),
        1e-9);
  }

  // --- angle and plunge

  @Test
  void a_joint_at_most_at_an_angle_limits_the_droop() {
    // 28° at 150, 22° at 260, 4° at 600, at most 22°: met at 260, above 228.6.
    CornerBench bench =
        limit(bench(CornerBench.exact()), 160)
            .watch("cv", "cv-angle", "{\"mostAngle\":\"22°\"}")
            .height("steep", "in-between", 260);
    angle(angle(angle(bench, "off", "28°"), "steep", "22°"), "beyond", "4°");
    EndFindings droop = bench.travel().droop();
    assertEquals("cv", droop.rules().orElseThrow().point().point());
    assertEquals(260, droop.rules().orElseThrow().positionMm().value(), 1e-9);
    assertEquals(254 - 25.4 - 260, droop.marginMm().orElseThrow().value(), 1e-9);
    assertEquals(Outcome.SHORT, droop.outcome());
  }

  @Test
  void a_plunge_between_two_ends_limits_each_end_by_one_of_its_rules() {
    CornerBench bench =
        limit(bench(CornerBench.exact()), 160)
            .watch("plunge", "cv-plunge", "{\"least\":\"8 mm\",\"most\":\"30 mm\"}")
            .height("low", "in-between", 180)
            .height("high", "in-between", 530)
            .gap("plunge", "off", 5)
            .gap("plunge", "low", 8)
            .gap("plunge", "ride", 20)
            .gap("plunge", "high", 30)
            .gap("plunge", "beyond", 36);
    TravelFindings travel = bench.travel();
    assertEquals(180, travel.droop().rules().orElseThrow().positionMm().value(), 1e-9);
    assertEquals(530, travel.bump().rules().orElseThrow().positionMm().value(), 1e-9);
    assertEquals(228.6 - 180, travel.droop().marginMm().orElseThrow().value(), 1e-9);
    assertEquals(530 - 506.35, travel.bump().marginMm().orElseThrow().value(), 1e-9);
    // The other rule of each end is kept to the last reading there; at the locks nobody has looked.
    for (EndFindings end : List.of(travel.droop(), travel.bump())) {
      List<Limit> straight =
          of(end, "plunge").stream().filter(l -> l.steering() == Steering.STRAIGHT).toList();
      assertEquals(2, straight.size());
      assertEquals(1, straight.stream().filter(l -> l.at() instanceof EndLimit.KeptTo).count());
      assertTrue(straight.stream().allMatch(l -> l.outcome() == Outcome.CLEAR), "" + straight);
      assertEquals(Outcome.NEEDS, end.outcome());
    }
  }

  // --- decided by the doubt of the room

  @Test
  void a_limit_on_the_curve_within_its_doubt_of_where_the_wheel_gets_cannot_be_told() {
    // Slope 0.2 at the limit: a gap's U of 1.30 mm is 6.5 mm of wheel. Between two readings it is
    // the line's: 40 mm apart, 0.86 of that 6 mm from one, 0.78 at 11 mm, so 5.6 and 5.0.
    for (double limitMm : new double[] {226, 231}) {
      CornerBench bench = bench(CornerBench.realTools().oneMark());
      for (double z : new double[] {180, 220, 260, 300}) {
        String key = "h" + Math.round(z);
        bench.height(key, "in-between", z).gap("arm", key, 6 + 0.2 * (z - limitMm));
      }
      Limit arm = arm(bench.gap("arm", "beyond", 80).travel().droop());
      assertInstanceOf(EndLimit.Crosses.class, arm.at());
      assertEquals(228.6 - limitMm, arm.roomMm().value(), 0.5);
      assertTrue(arm.roomMm().U() > (limitMm == 226 ? 5.6 : 5.0), arm.roomMm().toString());
      assertEquals(Outcome.CANT_TELL, arm.outcome(), "limit at " + limitMm);
    }
  }

  // --- what cancels

  /**
   * Two lengths of a strap read with one tape of a class: its error is in the growth by m alone.
   */
  @Test
  void the_mark_that_all_heights_share_cancels_in_every_figure() {
    TravelFindings one = limit(bench(CornerBench.realTools().oneMark()), 8 * INCH).travel();
    // Two sources, its steps and its hand, are in every position.
    assertEquals(
        2,
        one.rideMm().orElseThrow().parts().keySet().stream()
            .filter(one.droop().stop().orElseThrow().positionMm().parts()::containsKey)
            .count());
    for (Optional<Figure> figure :
        List.of(
            one.droop().marginMm(),
            one.bump().marginMm(),
            one.asSet().mm(),
            one.asItCouldBe().mm(),
            one.asItCouldBe().droopMm(),
            one.asItCouldBe().bumpMm())) {
      double marks =
          figure.orElseThrow().parts().entrySet().stream()
              .filter(p -> one.rideMm().orElseThrow().parts().containsKey(p.getKey()))
              .filter(
                  p ->
                      one.droop().stop().orElseThrow().positionMm().parts().containsKey(p.getKey()))
              .mapToDouble(p -> Math.abs(p.getValue()))
              .sum();
      assertEquals(0, marks, 1e-6, figure.get().parts().toString());
    }
  }

  @Test
  void a_mark_read_wrong_everywhere_moves_no_margin_and_no_total_but_the_grounds() {
    Random random = new Random(20261127);
    for (int i = 0; i < 40; i++) {
      double limitMm = 170 + 100 * random.nextDouble();
      double offMm = Math.rint((60 * random.nextDouble() - 30) * 1000) / 1000;
      TravelFindings right = limit(bench(CornerBench.realTools().oneMark()), limitMm).travel();
      TravelFindings wrong =
          limit(bench(CornerBench.realTools().oneMark().marksReadOffBy(offMm)), limitMm).travel();
      assertEquals(
          right.rideMm().orElseThrow().value() - offMm, wrong.rideMm().orElseThrow().value(), 1e-6);
      for (End end : End.values()) {
        EndFindings a = end == End.DROOP ? right.droop() : right.bump();
        EndFindings b = end == End.DROOP ? wrong.droop() : wrong.bump();
        same(a.marginMm(), b.marginMm());
        same(a.heldBack().map(HeldAtWheel::mm), b.heldBack().map(HeldAtWheel::mm));
        assertEquals(a.outcome(), b.outcome());
        for (Limit limit : a.limits()) {
          Limit other =
              b.limits().stream().filter(l -> l.kind() == limit.kind()).findFirst().orElseThrow();
          // The ground knows the frame by the mark alone.
          double moved = limit.kind() == Limit.Kind.GROUND ? offMm : 0;
          assertEquals(limit.roomMm().value() + moved, other.roomMm().value(), 1e-6);
        }
      }
      same(right.asSet().mm(), wrong.asSet().mm());
      same(right.asSet().droopMm(), wrong.asSet().droopMm());
      same(right.asItCouldBe().mm(), wrong.asItCouldBe().mm());
      same(right.asItCouldBe().bumpMm(), wrong.asItCouldBe().bumpMm());
    }
  }

  private static void same(Optional<Figure> one, Optional<Figure> other) {
    assertEquals(one.orElseThrow().value(), other.orElseThrow().value(), 1e-6);
    assertEquals(one.orElseThrow().U(), other.orElseThrow().U(), 1e-6);
  }

  // --- stretch

  @Test
  void three_strap_lengths_carry_the_stretch_by_the_slope_of_the_curve_on_the_strap() {
    // 520 at 150, 508 at 254, 435 at 400: δ = −12/104 = −0.115385, −73/146 = −0.5.
    // d = 250 · 3 / ((2·146 + 104)/δ0 + (146 + 2·104)/δ1) = 750 / (−3432 − 708) = −0.181159.
    EndFindings droop =
        limit(bench(CornerBench.exact()).length("strap-length", "off", 520), 8 * INCH)
            .travel()
            .droop();
    double ratio = 750.0 / (396 / (12.0 / 104) + 354 / 0.5);
    assertEquals(0.181159, ratio, 1e-6);
    assertEquals(ratio, droop.heldBack().orElseThrow().ratio().value(), 1e-9);
    assertEquals(12.7 / ratio, droop.heldBack().orElseThrow().mm().value(), 1e-9);
  }

  @Test
  void the_new_length_follows_the_turns_since() {
    // As new 511.175 at 2 turns of 1/16 in; 4 turns: 2 · 1.5875 = 3.175 shorter: 508. e = 12.7.
    CornerBench bench =
        limit(bench(CornerBench.exact()).given("new-strap-length", 511.175), 8 * INCH)
            .adjuster(
                """
                {"adjuster":"strap","kind":"limit-strap","unit":"turns","step":"1/16 in","moreShortens":true,"first":"2 turns"}\
                """);
    assertEquals(
        12.7,
        again(bench.adjust("strap", "4 turns")).heldBack().orElseThrow().atStopMm().value(),
        1e-9);
  }

  /**
   * By hand: the strap lets the wheel go to 254 − 25.4 = 228.6. The arm meets its rule at 203.2,
   * 25.4 further; the upper arm is kept to its last reading at 215.9, 12.7 further.
   */
  @Test
  void a_limit_that_was_found_keeps_its_own_room_beside_one_that_was_read_less_far() {
    Card card =
        StandardCorner.limit(StandardCorner.bench(CornerBench.exact()), 203.2)
            .watch("upper", "upper-arm-frame", "{\"least\":\"6 mm\"}")
            .height("last", "in-between", 215.9)
            .gap("upper", "last", 20)
            .gap("upper", "beyond", 20)
            .card();
    TravelFindings travel = CornerTravel.of(card);
    assertTrue(travel.droop().marginAtLeast());
    String said = new spindlebook.card.TravelWords(card, travel).finding(travel.droop());
    assertTrue(
        said.endsWith(
            " is the nearest limit found, 1 in to spare; another was read no further than 1/2 in."),
        said);
  }
}
