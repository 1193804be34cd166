package spindlebook.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import spindlebook.travel.AxleBench;
import spindlebook.travel.End;
import spindlebook.travel.TravelFindings;

/**
 * The ladder of a solid axle, whose motions both together and crossed have a stop each; invented
 * numbers, every win worked by hand. Gaps lie on straight lines, 0.05 mm a millimetre, rule 6 mm.
 */
class AxleLadderTest {
  /**
   * Level stop 200 and crossed stop 170, bump 400; gap lines that meet the rule where the arguments
   * say, on the left end.
   */
  private static AxleBench bench(double levelMetMm, double crossedMetMm) {
    AxleBench bench =
        new AxleBench()
            .roomy()
            .level()
            .height("low", "strap-off", "both-together", 100, 100)
            .shock("low", 100)
            .shock("bump", 400)
            .crossed(170, 410)
            .height("x-low", "strap-off", "crossed", 130, 395)
            .height("x-mid", "in-between", "crossed", 300, 300);
    read(bench, levelMetMm, new String[] {"low", "strap", "bump"}, new double[] {100, 200, 400});
    read(
        bench,
        crossedMetMm,
        new String[] {"x-low", "x-strap", "x-mid", "x-bump"},
        new double[] {130, 170, 300, 410});
    return bench;
  }

  private static void read(AxleBench bench, double metMm, String[] heights, double[] positionsMm) {
    for (int i = 0; i < heights.length; i++) {
      bench.gap(heights[i], 6 + 0.05 * (positionsMm[i] - metMm));
    }
  }

  private static Ladder droop(AxleBench bench) {
    return Ladder.of(bench.travel("lr"), End.DROOP);
  }

  private static List<String> acting(Ladder ladder) {
    return ladder.rungs().stream()
        .filter(Rung::acts)
        .map(r -> r.what() + " " + r.condition() + " " + Math.round(r.atMm().value()))
        .toList();
  }

  private static double mm(Win win) {
    return assertInstanceOf(Win.Travel.class, win, win.toString()).mm().value();
  }

  @Test
  void each_pairing_is_counted_from_its_own_stop_and_not_by_position() {
    // Crossed met at 190, 20 before its stop at 170; level met at 195, 5 beyond its stop at 200.
    // By position alone the crossed one would come last, after the level stop and the level tube.
    Ladder droop = droop(bench(195, 190));
    assertEquals(
        List.of(
            "GAP crossed 190",
            "STOP both together 200",
            "STOP crossed 170",
            "GAP both together 195"),
        acting(droop));
    List<Rung> rungs = droop.rungs();
    assertEquals(20, mm(rungs.get(0).wins()), 1e-6);
    assertEquals(1, ((Win.Travel) rungs.get(0).wins()).next());
    assertEquals(5, mm(rungs.get(1).wins()), 1e-6);
    assertEquals(3, ((Win.Travel) rungs.get(1).wins()).next());
    assertEquals(new Win.SameStop(1), rungs.get(2).wins());
    // The shock was read down to 100 only.
    Win.AsFarAsRead read = assertInstanceOf(Win.AsFarAsRead.class, rungs.get(3).wins());
    assertEquals(95, read.mm().value(), 1e-6);
  }

  @Test
  void what_comes_first_is_what_the_margin_is_told_of_and_its_cure_wins_up_to_the_next() {
    // Level met at 230, past its stop by 30; crossed met at 190, past its stop by 20.
    TravelFindings left = bench(230, 190).travel("lr");
    Ladder droop = Ladder.of(left, End.DROOP);
    assertEquals(
        List.of(
            "GAP both together 230",
            "GAP crossed 190",
            "STOP both together 200",
            "STOP crossed 170"),
        acting(droop));
    assertEquals(-30, left.droop().marginMm().orElseThrow().value(), 1e-6);
    assertEquals(left.droop().rules().orElseThrow(), droop.rungs().get(0).limit());
    // With the level tube cured the margin is the crossed one, 10 better; then 0.
    assertEquals(10, mm(droop.rungs().get(0).wins()), 1e-6);
    assertEquals(20, mm(droop.rungs().get(1).wins()), 1e-6);
    assertEquals(-20, bench(190, 190).travel("lr").droop().marginMm().orElseThrow().value(), 1e-6);
  }

  @Test
  void past_the_same_stop_by_as_much_in_both_pairings_neither_wins_alone() {
    // Level 230 past 200 and crossed 200 past 170: 30 each, though 30 apart on the tape.
    Ladder droop = droop(bench(230, 200));
    Win.Nothing nothing = assertInstanceOf(Win.Nothing.class, droop.rungs().get(0).wins());
    assertEquals(List.of(0, 1), nothing.together());
    assertEquals(0, nothing.apartMm().value(), 1e-6);
    assertEquals(30, mm(nothing.all()), 1e-6);
  }

  @Test
  void in_bump_what_acts_first_counts_from_the_stop_of_its_own_pairing_too() {
    // Level stop 400, crossed 410. Closing towards bump: level met at 395, past its stop by 5;
    // crossed met at 398, past its own by 12, though further up than the level one.
    AxleBench bench = new AxleBench().roomy().level().crossed(170, 410);
    bench.shock("strap", 200).shock("bump", 400);
    bench.height("x-mid", "in-between", "crossed", 300, 300);
    bench.gap("strap", 6 + 19.5).gap("ride", 6 + 9.5).gap("bump", 6 - 0.5);
    bench.gap("x-strap", 6 + 22.8).gap("x-mid", 6 + 9.8).gap("x-bump", 6 - 1.2);
    Ladder bump = Ladder.of(bench.travel("lr"), End.BUMP);
    assertEquals(
        List.of(
            "GAP crossed 398",
            "GAP both together 395",
            "STOP both together 400",
            "STOP crossed 410",
            "GROUND  1500"),
        acting(bump));
    assertEquals(7, mm(bump.rungs().get(0).wins()), 1e-6);
    assertEquals(5, mm(bump.rungs().get(1).wins()), 1e-6);
  }

  @Test
  void a_stop_that_was_not_read_crossed_withholds_every_win() {
    AxleBench bench = new AxleBench().level();
    bench.height("low", "strap-off", "both-together", 140, 140);
    bench.gap("low", 2).gap("strap", 5).gap("ride", 10).gap("bump", 15);
    Ladder droop = droop(bench);
    assertEquals(List.of("GAP both together 220", "STOP both together 200"), acting(droop));
    for (Rung rung : droop.rungs().subList(0, 2)) {
      Win.Withheld withheld = assertInstanceOf(Win.Withheld.class, rung.wins());
      assertTrue(
          withheld.needs().stream().anyMatch(n -> n.toRead().quantity() == null),
          "where the strap stops it crossed");
    }
  }

  @Test
  void wins_add_up_from_the_margin_to_the_stop_whatever_the_numbers() {
    Random random = new Random(20_251_127);
    int mixed = 0;
    for (int i = 0; i < 200; i++) {
      double level = 145 + 100 * random.nextDouble();
      double crossed = 135 + 80 * random.nextDouble();
      TravelFindings left = bench(level, crossed).travel("lr");
      Ladder droop = Ladder.of(left, End.DROOP);
      String seed = "case " + i + ": level " + level + ", crossed " + crossed;
      double marginMm = left.droop().marginMm().orElseThrow().value();
      double wonMm = 0;
      for (Rung rung : droop.rungs()) {
        if (rung.what() == Rung.What.STOP || !rung.acts()) {
          break;
        }
        wonMm += mm(rung.wins());
      }
      assertEquals(Math.max(0, -marginMm), wonMm, 1e-6, seed);
      List<Double> room =
          droop.rungs().stream()
              .filter(r -> r.limit() != null && r.acts())
              .map(r -> r.limit().roomMm().value())
              .toList();
      assertEquals(room.stream().sorted().toList(), room, seed);
      mixed += room.get(0) < 0 && crossed < level ? 1 : 0;
    }
    assertTrue(mixed > 20, "too few: " + mixed);
  }
}
