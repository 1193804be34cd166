package spindlebook.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static spindlebook.advice.Ladders.at;
import static spindlebook.advice.Ladders.bracket;
import static spindlebook.advice.Ladders.brokenEverywhere;
import static spindlebook.advice.Ladders.gap;
import static spindlebook.advice.Ladders.keptTo;
import static spindlebook.advice.Ladders.ladder;
import static spindlebook.advice.Ladders.names;
import static spindlebook.advice.Ladders.notRead;
import static spindlebook.advice.Ladders.paired;
import static spindlebook.entry.Steering.FULL_LEFT;
import static spindlebook.entry.Steering.FULL_RIGHT;
import static spindlebook.entry.Steering.PART_LEFT;
import static spindlebook.entry.Steering.STRAIGHT;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import spindlebook.definition.Allowance;
import spindlebook.definition.Dimension;
import spindlebook.entry.HeightName;
import spindlebook.entry.Pairing;
import spindlebook.travel.CornerBench;
import spindlebook.travel.End;
import spindlebook.travel.Need;
import spindlebook.travel.Readings;
import spindlebook.travel.StandardCorner;
import spindlebook.travel.TravelFindings;
import spindlebook.uncertainty.Figure;

/** By hand, from design.md §4: wheel positions in mm, + towards bump; see {@link Ladder}. */
class LadderTest {
  private static final Figure STRAP = Figure.exact(230);

  private static double mm(Win win) {
    return assertInstanceOf(Win.Travel.class, win).mm().value();
  }

  // --- order and wins

  @Test
  void each_rung_wins_what_lies_before_the_next_and_the_stop_is_one_of_them() {
    Ladder droop =
        ladder(
            End.DROOP,
            STRAP,
            gap("arm", STRAIGHT, at(165)),
            gap("tie-rod", FULL_RIGHT, at(280)),
            Ladders.shock(at(200)));
    assertEquals(List.of("tie-rod", "stop", "shock", "arm"), names(droop));
    // 280 − 230, 230 − 200, 200 − 165.
    assertEquals(50, mm(droop.rungs().get(0).wins()));
    assertEquals(30, mm(droop.rungs().get(1).wins()));
    assertEquals(35, mm(droop.rungs().get(2).wins()));
    assertInstanceOf(Win.NothingBeyond.class, droop.rungs().get(3).wins());
    assertEquals(Set.of(Rung.CuredBy.STOP), droop.rungs().get(1).curedBy());
  }

  @Test
  void at_bump_it_runs_upwards() {
    Ladder bump =
        ladder(
            End.BUMP,
            Figure.exact(506),
            Ladders.ground(at(540)),
            gap("tyre", FULL_LEFT, at(520)),
            Ladders.angle("cv", at(500)));
    assertEquals(List.of("cv", "stop", "tyre", "ground"), names(bump));
    assertEquals(6, mm(bump.rungs().get(0).wins()));
    assertEquals(14, mm(bump.rungs().get(1).wins()));
    assertEquals(20, mm(bump.rungs().get(2).wins()));
    assertEquals(Rung.What.ANGLE, bump.rungs().get(0).what());
  }

  @Test
  void the_stop_that_acts_first_wins_the_margin() {
    Ladder droop =
        Ladder.of(
            StandardCorner.limit(StandardCorner.bench(CornerBench.exact()), 203.2).travel(),
            End.DROOP);
    assertEquals("stop", names(droop).get(0));
    // S − e − L = 254 − 25.4 − 203.2; the shock is kept to 150, beyond the arm.
    assertEquals(25.4, mm(droop.rungs().get(0).wins()), 1e-9);
    assertEquals("arm", names(droop).get(1));
  }

  @Test
  void a_win_has_the_doubt_of_both_places_and_what_they_share_cancels() {
    Figure mark = Figure.of(0, Readings.MARK, 2);
    Figure one = Readings.own("one", 280, 0.3).plus(mark);
    Figure other = Readings.own("other", 230, 0.4).plus(mark);
    Ladder droop = ladder(End.DROOP, other, gap("arm", STRAIGHT, at(one)));
    Win.Travel wins = assertInstanceOf(Win.Travel.class, droop.rungs().get(0).wins());
    assertEquals(50, wins.mm().value());
    assertEquals(1.0, wins.mm().U(), 1e-12);
  }

  // --- ties

  @Test
  void curing_one_of_two_at_the_same_place_wins_nothing_and_both_win_it_all() {
    // 1.4 mm apart, U = 2 · √(0.6² + 0.6²) = 1.70 mm.
    Ladder droop =
        ladder(
            End.DROOP,
            Figure.exact(150),
            gap("arm", STRAIGHT, at(Readings.own("a", 201.4, 0.6))),
            gap("shaft", STRAIGHT, at(Readings.own("b", 200, 0.6))));
    Win.Nothing nothing = assertInstanceOf(Win.Nothing.class, droop.rungs().get(0).wins());
    assertEquals(List.of(0, 1), nothing.together());
    assertEquals(1.4, nothing.apartMm().value(), 1e-9);
    assertEquals(51.4, mm(nothing.all()), 1e-9);
    // The arm being cured, the shaft alone wins the rest.
    assertEquals(50, mm(droop.rungs().get(1).wins()), 1e-9);
  }

  @Test
  void exactly_u_apart_is_the_same_place_and_a_shared_mark_makes_no_tie() {
    // U of the difference 1.70: 1.69 is a tie, 1.71 is none.
    for (double apart : new double[] {1.69, 1.71}) {
      Ladder bump =
          ladder(
              End.BUMP,
              Figure.exact(600),
              gap("arm", STRAIGHT, at(Readings.own("a", 500, 0.6))),
              gap("shaft", STRAIGHT, at(Readings.own("b", 500 + apart, 0.6))));
      assertEquals(apart < 1.7, bump.rungs().get(0).wins() instanceof Win.Nothing);
    }
    Figure mark = Figure.of(0, Readings.MARK, 5);
    Ladder bump =
        ladder(
            End.BUMP,
            Figure.exact(600),
            gap("arm", STRAIGHT, at(mark.plus(500))),
            gap("shaft", STRAIGHT, at(mark.plus(500.5))));
    assertEquals(0.5, mm(bump.rungs().get(0).wins()), 1e-9);
    assertInstanceOf(
        Win.Nothing.class,
        ladder(
                End.BUMP,
                Figure.exact(600),
                gap("arm", STRAIGHT, at(500)),
                gap("shaft", STRAIGHT, at(500)))
            .rungs()
            .get(0)
            .wins());
  }

  @Test
  void three_at_one_place_win_together() {
    Ladder droop =
        ladder(
            End.DROOP,
            Figure.exact(230),
            gap("arm", STRAIGHT, at(230)),
            gap("shaft", STRAIGHT, at(230)),
            gap("hose", FULL_LEFT, at(180)));
    Win.Nothing nothing = assertInstanceOf(Win.Nothing.class, droop.rungs().get(0).wins());
    assertEquals(3, nothing.together().size());
    assertEquals(50, mm(nothing.all()));
  }

  // --- missing and stale

  @Test
  void a_limit_nobody_read_could_act_anywhere_and_withholds_every_win() {
    Ladder droop =
        ladder(
            End.DROOP,
            STRAP,
            gap("arm", STRAIGHT, at(200)),
            gap("tie-rod", FULL_LEFT, notRead(), Ladders.toRead("tie-rod", FULL_LEFT)));
    assertEquals(List.of("stop", "arm", "tie-rod"), names(droop));
    Rung missing = droop.rungs().get(2);
    assertEquals(Rung.State.NEEDS, missing.state());
    assertEquals(FULL_LEFT, missing.needs().get(0).toRead().steering());
    Win.Withheld withheld = assertInstanceOf(Win.Withheld.class, droop.rungs().get(0).wins());
    assertEquals(missing.needs(), withheld.needs());
    // No further than the arm, whatever the tie rod does.
    assertEquals(30, withheld.mm().value());
    assertInstanceOf(Win.Withheld.class, droop.rungs().get(1).wins());
  }

  @Test
  void a_missing_number_is_a_rung_of_the_shock_the_ground_or_the_stop() {
    List<Need> needs =
        List.of(
            new Need(null, Dimension.SHOCK_CLOSED, null, List.of(), null),
            Need.choose(Allowance.GROUND_CLEARANCE),
            new Need(null, Dimension.STOP_CRUSH, null, List.of(), null));
    Ladder bump =
        Ladders.of(End.BUMP, null, List.of(gap("arm", STRAIGHT, at(500))), needs, List.of());
    assertEquals(List.of("arm", "stop", "shock", "ground"), names(bump));
    assertEquals(List.of(needs.get(2)), bump.rungs().get(1).needs());
    assertEquals(List.of(needs.get(0)), bump.rungs().get(2).needs());
    assertEquals(List.of(needs.get(1)), bump.rungs().get(3).needs());
    Win.Withheld withheld = assertInstanceOf(Win.Withheld.class, bump.rungs().get(0).wins());
    assertEquals(Set.copyOf(needs), Set.copyOf(withheld.needs()));
    assertEquals(null, withheld.mm());
  }

  @Test
  void a_stale_limit_says_since_when_and_withholds() {
    Ladder droop =
        Ladder.of(
            StandardCorner.limit(StandardCorner.bench(CornerBench.exact()), 203.2)
                .adjust("upper", "1 turns")
                .travel(),
            End.DROOP);
    Rung arm =
        droop.rungs().stream().filter(r -> r.what() == Rung.What.GAP).findFirst().orElseThrow();
    assertEquals(Rung.State.NEEDS, arm.state());
    assertTrue(arm.needs().get(0).because().size() > 0, arm.needs().toString());
  }

  @Test
  void a_rule_kept_at_its_last_reading_hides_only_what_lies_beyond() {
    Ladder droop =
        ladder(
            End.DROOP,
            STRAP,
            gap("arm", STRAIGHT, at(200)),
            gap("hose", FULL_LEFT, keptTo(190)),
            Ladders.shock(at(150)));
    assertEquals(List.of("stop", "arm", "hose", "shock"), names(droop));
    assertEquals(30, mm(droop.rungs().get(0).wins()));
    // The hose is looked at as far as 190: at least 10, then read it beyond.
    Win.AsFarAsRead far = assertInstanceOf(Win.AsFarAsRead.class, droop.rungs().get(1).wins());
    assertEquals(10, far.mm().value());
    assertEquals(190, far.needs().get(0).noHigherThanMm());
    assertEquals("hose", far.needs().get(0).toRead().point());
    // Where the stop lets the wheel go is not said: no height past it, and none at it.
    assertEquals(HeightName.IN_BETWEEN, far.needs().get(0).toRead().name());
    assertInstanceOf(Win.NotMet.class, droop.rungs().get(2).wins());
    // Beyond the shock nothing is known to act, but the hose was not looked at so far.
    assertInstanceOf(Win.Withheld.class, droop.rungs().get(3).wins());
  }

  // --- brackets

  @Test
  void a_bracket_wins_at_most_and_is_won_up_to_at_least() {
    Ladder droop =
        ladder(
            End.DROOP,
            Figure.exact(260),
            gap("arm", STRAIGHT, bracket(240, 200)),
            gap("shaft", STRAIGHT, at(220)));
    assertEquals(List.of("stop", "arm", "shaft"), names(droop));
    Win.Travel stop = assertInstanceOf(Win.Travel.class, droop.rungs().get(0).wins());
    assertEquals(20, stop.mm().value());
    assertTrue(stop.atLeast() && !stop.upTo());
    // Somewhere between 240 and 200 the arm acts, so even behind the shaft: up to 20.
    Win.Travel arm = assertInstanceOf(Win.Travel.class, droop.rungs().get(1).wins());
    assertEquals(20, arm.mm().value());
    assertTrue(arm.upTo() && !arm.atLeast());
    assertEquals(Rung.State.BRACKET, droop.rungs().get(1).state());
    assertEquals(200, droop.rungs().get(1).brokenMm().value());
  }

  // --- locks and mid-travel

  @Test
  void less_lock_cures_all_that_acts_at_it_at_once() {
    Ladder droop =
        ladder(
            End.DROOP,
            STRAP,
            gap("tie-rod", FULL_RIGHT, at(280)),
            gap("tyre", FULL_RIGHT, at(270)),
            gap("hose", FULL_LEFT, at(250)),
            gap("arm", STRAIGHT, at(200)));
    assertEquals(2, droop.locks().size());
    LockLimits left = droop.locks().get(0);
    LockLimits right = droop.locks().get(1);
    assertEquals(FULL_RIGHT, right.lock());
    assertEquals(List.of(0, 1), right.rungs());
    Win.Travel wins = assertInstanceOf(Win.Travel.class, right.wins());
    // 280 − 250: the hose at the other lock acts next.
    assertEquals(30, wins.mm().value());
    assertTrue(wins.upTo());
    assertEquals(new Win.ActsLater(0), left.wins());
    assertEquals(
        Set.of(Rung.CuredBy.PLACE, Rung.CuredBy.STEERING_STOP), droop.rungs().get(0).curedBy());
    assertEquals(Set.of(Rung.CuredBy.PLACE), droop.rungs().get(4).curedBy());
  }

  @Test
  void part_lock_is_cured_by_no_steering_stop() {
    Ladder droop = ladder(End.DROOP, STRAP, gap("tie-rod", PART_LEFT, at(280)));
    assertEquals(List.of(), droop.locks());
    assertEquals(Set.of(Rung.CuredBy.PLACE), droop.rungs().get(0).curedBy());
  }

  @Test
  void broken_at_every_height_of_a_lock_stands_first_and_with_that_lock() {
    Ladder droop =
        ladder(
            End.DROOP,
            STRAP,
            gap("tyre", FULL_LEFT, brokenEverywhere(), Ladders.toRead("tyre", FULL_LEFT)),
            gap("arm", STRAIGHT, at(200)));
    assertEquals(List.of("tyre", "stop", "arm"), names(droop));
    assertEquals(Rung.State.EVERYWHERE, droop.rungs().get(0).state());
    assertInstanceOf(Win.Withheld.class, droop.rungs().get(0).wins());
    assertEquals(List.of(0), droop.locks().get(0).rungs());
    // It being cured, the rest is as it is.
    assertEquals(30, mm(droop.rungs().get(1).wins()));
  }

  @Test
  void a_shortfall_in_mid_travel_is_no_rung_and_at_a_lock_stands_with_it() {
    CornerBench bench =
        StandardCorner.limit(StandardCorner.bench(CornerBench.exact()), 203.2)
            .watch("tyre", "tyre-frame", "{\"least\":\"25 mm\"}");
    for (String steering : List.of("straight", "full-left", "full-right")) {
      boolean left = steering.equals("full-left");
      bench
          .gap("tyre", "off", steering, 60)
          .gap("tyre", "ride", steering, left ? 10 : 50)
          .gap("tyre", "bump", steering, 40)
          .gap("tyre", "beyond", steering, 40);
    }
    for (End end : End.values()) {
      Ladder ladder = Ladder.of(bench.travel(), end);
      assertEquals(1, ladder.midTravel().size());
      assertTrue(
          ladder.rungs().stream().noneMatch(r -> r.acts() && "tyre".equals(Ladders.name(r))));
      LockLimits left = ladder.locks().get(0);
      assertEquals(FULL_LEFT, left.lock());
      assertEquals(List.of(), left.rungs());
      assertEquals(ladder.midTravel(), left.midTravel());
      assertInstanceOf(Win.NotMet.class, left.wins());
    }
  }

  // --- one watch point at both ends, and an axle

  @Test
  void one_watch_point_limits_both_ends_at_different_steering_and_each_end_has_its_own_cure() {
    CornerBench bench =
        StandardCorner.limit(StandardCorner.bench(CornerBench.exact()), 160)
            .watch("tie", "tie-rod-upper-arm", "{\"least\":\"6 mm\"}");
    // Full left: 0.1 per mm, 6 mm at 240. Full right: −0.1 per mm, 6 mm at 520. Straight: 20.
    for (String key : List.of("off", "strap", "ride", "bump", "beyond")) {
      double z = bench.card().height(key).orElseThrow().positionMm().value();
      bench
          .gap("tie", key, "full-left", 6 + 0.1 * (z - 240))
          .gap("tie", key, "full-right", 6 + 0.1 * (520 - z))
          .gap("tie", key, "straight", 20);
    }
    TravelFindings travel = bench.travel();
    Ladder droop = Ladder.of(travel, End.DROOP);
    Ladder bump = Ladder.of(travel, End.BUMP);
    assertEquals(List.of("tie", "stop", "arm"), names(droop).subList(0, 3));
    assertEquals(FULL_LEFT, droop.rungs().get(0).steering());
    // 240 to S − e = 228.6, then to the arm at 160.
    assertEquals(11.4, mm(droop.rungs().get(0).wins()), 1e-6);
    assertEquals(68.6, mm(droop.rungs().get(1).wins()), 1e-6);
    assertEquals(List.of(FULL_LEFT), droop.locks().stream().map(LockLimits::lock).toList());
    // B + r = 506.35 comes before 520; then the shock and the arm are kept to 600.
    assertEquals(List.of("stop", "tie"), names(bump).subList(0, 2));
    assertEquals(FULL_RIGHT, bump.rungs().get(1).steering());
    assertEquals(13.65, mm(bump.rungs().get(0).wins()), 1e-6);
    Win.AsFarAsRead beyond = assertInstanceOf(Win.AsFarAsRead.class, bump.rungs().get(1).wins());
    assertEquals(80, beyond.mm().value(), 1e-6);
    assertEquals(List.of(FULL_RIGHT), bump.locks().stream().map(LockLimits::lock).toList());
    assertEquals(new Win.ActsLater(0), bump.locks().get(0).wins());
  }

  @Test
  void what_only_a_crossed_axle_does_acts_in_its_turn_and_says_so() {
    // Both together the link clears its bracket to 540; crossed it meets its rule at 480.
    Ladder bump =
        Ladders.of(
            End.BUMP,
            Figure.exact(500),
            List.of(
                paired(gap("link", STRAIGHT, at(540)), Pairing.BOTH_TOGETHER),
                paired(gap("link", STRAIGHT, at(480)), Pairing.CROSSED),
                paired(Ladders.shock(at(560)), Pairing.BOTH_TOGETHER)),
            List.of(),
            List.of());
    assertEquals(
        List.of("crossed", "", "both together", "both together"),
        bump.rungs().stream().map(Rung::condition).toList());
    assertEquals(20, mm(bump.rungs().get(0).wins()));
    assertEquals(40, mm(bump.rungs().get(1).wins()));
    assertEquals(20, mm(bump.rungs().get(2).wins()));
  }
}
