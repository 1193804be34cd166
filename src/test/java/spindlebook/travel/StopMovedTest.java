package spindlebook.travel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static spindlebook.travel.StandardCorner.INCH;
import static spindlebook.travel.StandardCorner.bench;
import static spindlebook.travel.StandardCorner.holes;
import static spindlebook.travel.StandardCorner.limit;

import java.util.List;
import org.junit.jupiter.api.Test;
import spindlebook.corner.AdjusterKind;
import spindlebook.corner.Card;
import spindlebook.corner.InForce;
import spindlebook.corner.Setting;
import spindlebook.corner.SettingUnit;

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
    assertEquals(
        droop.marginMm().orElseThrow().value() + 20, moved.marginMm().orElseThrow().value(), 1e-6);
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
}
