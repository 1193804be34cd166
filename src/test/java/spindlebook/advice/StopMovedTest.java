package spindlebook.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static spindlebook.travel.StandardCorner.INCH;
import static spindlebook.travel.StandardCorner.bench;
import static spindlebook.travel.StandardCorner.holes;
import static spindlebook.travel.StandardCorner.limit;

import java.util.List;
import org.junit.jupiter.api.Test;
import spindlebook.definition.AdjusterKind;
import spindlebook.definition.Setting;
import spindlebook.definition.SettingUnit;
import spindlebook.entry.Pairing;
import spindlebook.fold.Card;
import spindlebook.fold.InForce;
import spindlebook.travel.AxleBench;
import spindlebook.travel.CornerBench;
import spindlebook.travel.CornerTravel;
import spindlebook.travel.End;
import spindlebook.travel.EndFindings;
import spindlebook.travel.StandardCorner;
import spindlebook.travel.TravelFindings;

/** A stop set otherwise, foretold; by hand on {@link StandardCorner}, 1 mm strap for 2 of wheel. */
class StopMovedTest {
  private static CornerBench shortBy() {
    return limit(bench(CornerBench.realTools().oneMark()), 11.05 * INCH);
  }

  private static List<StopMoved> to(CornerBench bench, Setting to) {
    Card card = bench.card();
    InForce strap = card.adjuster(AdjusterKind.LIMIT_STRAP).orElseThrow();
    return StopMoved.of(card, CornerTravel.of(card), strap.adjuster(), strap.setting(), to);
  }

  private static CornerBench inMillimetres() {
    return shortBy()
        .adjuster(
            "{\"adjuster\":\"strap\",\"kind\":\"limit-strap\",\"unit\":\"length\",\"moreShortens\":false,\"first\":\"508"
                + " mm\"}");
  }

  @Test
  void a_strap_ten_millimetres_shorter_stops_the_wheel_twenty_higher_and_the_margin_grows_so() {
    CornerBench bench = inMillimetres();
    EndFindings droop = bench.travel().droop();
    StopMoved moved = to(bench, new Setting("498 mm", SettingUnit.LENGTH, 498.0)).get(0);
    double stopMm = droop.stop().orElseThrow().positionMm().value();
    assertEquals(End.DROOP, moved.end());
    assertEquals(stopMm + 20, moved.positionMm().value(), 1e-6);
    // 20 of the strap itself, and 2.5 % of 10 mm that it will not stretch by, 0.5 at the wheel.
    assertEquals(
        droop.marginMm().orElseThrow().value() + 20.5,
        moved.marginMm().orElseThrow().value(),
        1e-6);
    assertTrue(moved.positionMm().U() > 0);
  }

  @Test
  void a_higher_hole_of_one_inch_is_one_inch_of_strap() {
    CornerBench bench = shortBy().adjuster(holes("1 in", "hole 3"));
    double stopMm = bench.travel().droop().stop().orElseThrow().positionMm().value();
    StopMoved moved = to(bench, new Setting("hole 4", SettingUnit.HOLES, 4.0)).get(0);
    assertEquals(stopMm + 2 * INCH, moved.positionMm().value(), 1e-6);
  }

  @Test
  void without_a_setting_known_today_nothing_is_foretold() {
    Card card = inMillimetres().card();
    InForce strap = card.adjuster(AdjusterKind.LIMIT_STRAP).orElseThrow();
    assertEquals(
        List.of(),
        StopMoved.of(
            card,
            CornerTravel.of(card),
            strap.adjuster(),
            null,
            new Setting("498 mm", SettingUnit.LENGTH, 498.0)));
  }

  /**
   * Level 1 of strap for 2 of wheel, crossed 1 for 4: ten shorter is 20 and 40. Level tube met at
   * 230, past the stop at 200 by 30; crossed at 190, past 170 by 20.
   */
  @Test
  void on_a_solid_axle_it_is_foretold_both_together_and_crossed_by_the_lengths_of_each() {
    AxleBench bench = new AxleBench().strapByLength().level().crossed(170, 410);
    bench.height("x-mid", "in-between", "crossed", 290, 300);
    bench.strapLength("strap", 500).strapLength("ride", 450);
    bench.strapLength("x-strap", 500).strapLength("x-mid", 470);
    bench.gap("strap", 6 - 1.5).gap("ride", 6 + 3.5).gap("bump", 6 + 8.5);
    bench.gap("x-strap", 6 - 1).gap("x-mid", 6 + 5).gap("x-bump", 6 + 11);
    Card card = bench.book().card("lr");
    InForce strap = card.adjuster(AdjusterKind.LIMIT_STRAP).orElseThrow();
    TravelFindings travel = CornerTravel.of(card);
    List<StopMoved> moved =
        StopMoved.of(
            card,
            travel,
            strap.adjuster(),
            strap.setting(),
            new Setting("498 mm", SettingUnit.LENGTH, 498.0));
    assertEquals(
        List.of(Pairing.BOTH_TOGETHER, Pairing.CROSSED),
        moved.stream().map(StopMoved::pairing).toList());
    assertEquals(220, moved.get(0).positionMm().value(), 1e-6);
    assertEquals(210, moved.get(1).positionMm().value(), 1e-6);
    assertEquals(-10, moved.get(0).marginMm().orElseThrow().value(), 1e-6);
    assertEquals(20, moved.get(1).marginMm().orElseThrow().value(), 1e-6);
    // 30 level needs 15 of strap, 20 crossed only 5: the larger change keeps both.
    assertEquals(15, travel.droop().cure().orElseThrow().wantedMm(), 1e-6);
  }

  @Test
  void a_strap_is_shortened_for_the_pairing_that_takes_the_larger_change_though_another_rules() {
    // Level 30 short needs 15 of strap; crossed 40 short, at 1 for 4 only 10.
    AxleBench bench = new AxleBench().strapByLength().level().crossed(170, 410);
    bench.height("x-mid", "in-between", "crossed", 290, 300);
    bench.strapLength("strap", 500).strapLength("ride", 450);
    bench.strapLength("x-strap", 500).strapLength("x-mid", 470);
    bench.gap("strap", 6 - 1.5).gap("ride", 6 + 3.5).gap("bump", 6 + 8.5);
    bench.gap("x-strap", 6 - 2).gap("x-mid", 6 + 4).gap("x-bump", 6 + 10);
    EndFindings droop = bench.travel("lr").droop();
    assertEquals(Pairing.CROSSED, droop.rules().orElseThrow().pairing());
    assertEquals(15, droop.cure().orElseThrow().wantedMm(), 1e-6);
  }
}
