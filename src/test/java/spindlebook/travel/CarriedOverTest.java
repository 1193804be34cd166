package spindlebook.travel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import spindlebook.entry.Quantity;
import spindlebook.fold.Card;
import spindlebook.fold.SeenReading;
import spindlebook.fold.Standing;

/**
 * What a change moves by a known amount is carried over, counts, and is marked until it is read.
 */
class CarriedOverTest {
  /** Gap to the pad 100 − z: 60 at 40 and 30 at 70, touching at 100; crush 20. */
  private static CornerBench stopped(String unit, String first) {
    return CornerBench.realTools()
        .adjuster(
            "{\"adjuster\":\"spacer\",\"kind\":\"bump-stop-spacer\",\"unit\":\"%s\",\"moreShortens\":false,\"first\":\"%s\"}"
                .formatted(unit, first))
        .given("stop-crush", 20)
        .held("impact-reserve", 0)
        .height("low", "in-between", 40)
        .height("high", "in-between", 70)
        .height("touch", "stop-touch", 100)
        .length("stop-gap", "low", 60)
        .length("stop-gap", "high", 30);
  }

  private static List<SeenReading> gaps(Card card) {
    return card.readings().stream().filter(r -> r.of(Quantity.STOP_GAP)).toList();
  }

  @Test
  void a_quarter_inch_spacer_takes_a_quarter_inch_off_every_pad_gap_and_asks_for_none() {
    double u = gaps(stopped("length", "10 mm").card()).get(0).value().U();
    Card thicker = stopped("length", "10 mm").adjust("spacer", "16.35 mm").card();
    List<SeenReading> gaps = gaps(thicker);
    // By hand: 60 − 6.35 and 30 − 6.35, as unsure as they were read.
    assertEquals(53.65, gaps.get(0).value().value(), 1e-9);
    assertEquals(23.65, gaps.get(1).value().value(), 1e-9);
    assertEquals(u, gaps.get(0).value().U(), 1e-9);
    assertEquals(Standing.WORKED_OUT, gaps.get(0).stands());
    assertTrue(gaps.get(0).counts());
    // Only where the stop touches now is to be read.
    assertEquals(
        List.of("STOP_TOUCH null"),
        thicker.toReadAgain().stream().map(r -> r.name() + " " + r.quantity()).toList());
  }

  @Test
  void touch_read_again_finds_the_solid_stop_with_what_was_carried_over() {
    CornerBench thicker =
        stopped("length", "10 mm").adjust("spacer", "16.35 mm").height("t2", "stop-touch", 93.65);
    // By hand: the gap still closes by 1 per mm; 93.65 + 20.
    assertEquals(113.65, thicker.travel().bump().stop().orElseThrow().positionMm().value(), 0.5);
  }

  @Test
  void read_again_it_is_read_and_what_is_no_gap_any_more_is_stale() {
    Card again =
        stopped("length", "10 mm")
            .adjust("spacer", "16.35 mm")
            .height("low2", "in-between", 40)
            .length("stop-gap", "low2", 53)
            .card();
    assertEquals(
        List.of(Standing.REPLACED, Standing.WORKED_OUT, Standing.LIVE),
        gaps(again).stream().map(SeenReading::stands).toList());
    Card thick = stopped("length", "10 mm").adjust("spacer", "50 mm").card();
    assertEquals(
        List.of(Standing.WORKED_OUT, Standing.STALE),
        gaps(thick).stream().map(SeenReading::stands).toList());
  }

  @Test
  void by_how_much_words_moved_it_nobody_knows_and_the_old_thickness_is_put_back() {
    assertEquals(
        Standing.STALE,
        gaps(stopped("words", "thin").adjust("spacer", "thick").card()).get(0).stands());
    Card back =
        stopped("length", "10 mm").adjust("spacer", "16 mm").adjust("spacer", "10 mm").card();
    assertEquals(Standing.PUT_BACK, gaps(back).get(0).stands());
    assertEquals(60, gaps(back).get(0).value().value(), 1e-9);
  }
}
