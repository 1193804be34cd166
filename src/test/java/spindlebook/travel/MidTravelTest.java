package spindlebook.travel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static spindlebook.travel.StandardCorner.bench;

import java.util.List;
import org.junit.jupiter.api.Test;
import spindlebook.uncertainty.Outcome;
import spindlebook.uncertainty.Settles;

/**
 * A rule between the two ends: broken, hardly kept, or cut by a stop; see {@link StandardCorner}.
 */
class MidTravelTest {
  private static TravelFindings atRide(CornerBench bench, double gapMm) {
    return bench(bench)
        .gap("arm", "off", 20)
        .gap("arm", "strap", 20)
        .gap("arm", "ride", gapMm)
        .gap("arm", "bump", 20)
        .gap("arm", "beyond", 30)
        .travel();
  }

  @Test
  void a_reading_in_mid_travel_within_its_doubt_of_the_rule_cannot_be_told() {
    // Tape 1/16 in, placed to 1/32 in: u² = 0.4583² + 0.4583², U = 1.30 mm. Rule 6.
    assertEquals(Outcome.CANT_TELL, atRide(CornerBench.realTools(), 6.9).outcome());
    assertEquals(Outcome.CANT_TELL, atRide(CornerBench.realTools(), 5.1).outcome());
    assertEquals(Outcome.CLEAR, atRide(CornerBench.realTools(), 7.4).outcome());
    assertEquals(Outcome.SHORT, atRide(CornerBench.realTools(), 4.6).outcome());
    // Without doubt exactly at the rule keeps it.
    assertEquals(Outcome.CLEAR, atRide(CornerBench.exact(), 6).outcome());
  }

  @Test
  void it_says_how_often_to_read_it_and_where() {
    // 0.9 from the rule: twice with no steps gives 0.65; see JudgedTest.
    TravelFindings travel = atRide(CornerBench.realTools(), 6.9);
    MidTravel mid = travel.midTravel().get(0);
    assertEquals(400, mid.shortfall().fromMm().value(), 1e-9);
    assertEquals(400, mid.shortfall().toMm().value(), 1e-9);
    assertEquals(new Settles.RepeatsWithFinerTool(2, 0.5), mid.settles());
    assertEquals(1, travel.midTravel().size());
    // Neither end has anything to do with it.
    assertEquals(Outcome.CLEAR, travel.droop().outcome());
    assertEquals(Outcome.CLEAR, travel.bump().outcome());
  }

  @Test
  void hardly_kept_where_the_stop_keeps_the_wheel_out_of_it_is_not_told() {
    // The wheel gets to 228.6 and to 506.35.
    CornerBench bench =
        bench(CornerBench.realTools().oneMark())
            .height("lower", "in-between", 190)
            .gap("arm", "off", 20)
            .gap("arm", "lower", 6.5)
            .gap("arm", "strap", 20)
            .gap("arm", "beyond", 40);
    assertEquals(List.of(), bench.travel().midTravel());
  }

  @Test
  void hardly_kept_beside_a_limit_is_that_limits_doubt_and_told_once() {
    CornerBench bench =
        bench(CornerBench.realTools().oneMark())
            .height("lower", "in-between", 240)
            .gap("arm", "off", 2)
            .gap("arm", "lower", 6.5)
            .gap("arm", "ride", 20)
            .gap("arm", "beyond", 40);
    TravelFindings travel = bench.travel();
    assertEquals(List.of(), travel.midTravel());
    assertEquals(Outcome.CANT_TELL, travel.droop().outcome());
  }

  /** Kept at 150, kept again at ride and up, broken at the positions given. */
  private static CornerBench brokenAt(double... positionsMm) {
    CornerBench bench = bench(CornerBench.exact()).gap("arm", "off", 20).gap("arm", "ride", 20);
    for (int i = 0; i < positionsMm.length; i++) {
      String key = "broken" + i;
      bench.height(key, "in-between", positionsMm[i]).gap("arm", key, 3);
    }
    return bench.gap("arm", "beyond", 40);
  }

  @Test
  void a_stretch_the_strap_never_lets_the_wheel_through_is_cured_by_the_strap() {
    // The wheel gets to 228.6, between the broken readings.
    TravelFindings travel =
        brokenAt(200, 260).adjuster(StandardCorner.holes("1/4 in", "hole 3")).travel();
    assertEquals(List.of(), travel.midTravel());
    assertEquals(Outcome.SHORT, travel.droop().outcome());
    double limitMm = travel.droop().rules().orElseThrow().positionMm().value();
    assertTrue(limitMm > 260 && limitMm < 400, "limit at " + limitMm);
    Cure cure = travel.droop().cure().orElseThrow();
    // S + what the cure takes away − e ≥ the limit.
    assertTrue(254 + cure.atWheelMm() - 25.4 >= limitMm, cure.toString());
  }

  @Test
  void a_stretch_the_wheel_goes_through_or_rides_in_is_cured_by_no_stop() {
    // Kept on the strap, broken at 300, kept at ride: it comes through on its way down.
    TravelFindings through = brokenAt(300).gap("arm", "strap", 20).travel();
    assertEquals(1, through.midTravel().size());
    assertEquals(Outcome.SHORT, through.outcome());
    assertEquals(Outcome.CLEAR, through.droop().outcome());
    // Broken at 200 and at ride: the wheel ends inside, but the car stands in it as well.
    TravelFindings rides =
        bench(CornerBench.exact())
            .height("low", "in-between", 200)
            .gap("arm", "off", 20)
            .gap("arm", "low", 3)
            .gap("arm", "ride", 3)
            .gap("arm", "bump", 20)
            .gap("arm", "beyond", 40)
            .travel();
    assertEquals(1, rides.midTravel().size());
    assertEquals(Outcome.SHORT, rides.outcome());
  }

  @Test
  void the_edge_of_a_stretch_between_two_readings_is_planned_like_any_bracket() {
    // Touches at 180, well clear above: the wheel gets to 228.6 and nobody has looked between.
    EndFindings droop =
        bench(CornerBench.exact())
            .height("low", "in-between", 180)
            .height("high", "in-between", 240)
            .gap("arm", "off", 20)
            .looked("arm", "low", "touches")
            .looked("arm", "high", "well-clear")
            .gap("arm", "beyond", 40)
            .travel()
            .droop();
    Limit arm = droop.limits().stream().filter(Limit::found).findFirst().orElseThrow();
    assertEquals(240, arm.positionMm().value(), 1e-9);
    assertEquals(Outcome.CANT_TELL, arm.outcome());
    assertEquals(228.6, arm.needs().get(0).noHigherThanMm(), 1e-9);
  }
}
