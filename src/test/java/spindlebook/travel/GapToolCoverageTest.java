package spindlebook.travel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import spindlebook.definition.Starter;
import spindlebook.definition.Tool;
import spindlebook.definition.ToolUse;
import spindlebook.fold.SeenRound;
import spindlebook.uncertainty.Figure;
import spindlebook.units.LengthUnit;
import spindlebook.units.TypedLength;

/**
 * A gap is as sure as what it was read with: shanks below the thickest of the set, from there the
 * tape.
 *
 * <p>Invented corners of straight lines, seeded: every reading is off by its placing (even over ±
 * 1/32 in for the tape, ± 1/64 in for a shank) and rounded to its steps; the strap's stretch is
 * held back. Counted is how often the true solid stop, droop limit and margin lie within their U.
 * Longer: {@code -Dcorners=20000}.
 */
class GapToolCoverageTest {
  private static final double INCH = 25.4;
  private static final int CORNERS = Integer.getInteger("corners", 600);

  private final Random random = new Random(20261128);

  private double uniform(double from, double to) {
    return from + (to - from) * random.nextDouble();
  }

  private double read(double mm, double step, double halfWidth) {
    return Math.rint((mm + uniform(-halfWidth, halfWidth)) / step) * step;
  }

  private double taped(double mm) {
    return read(mm, INCH / 16, INCH / 32);
  }

  private double gap(double mm, boolean allTaped) {
    return allTaped || mm > INCH / 2 ? taped(mm) : read(mm, INCH / 64, INCH / 64);
  }

  private static boolean covers(Figure figure, double trueMm) {
    return Math.abs(figure.value() - trueMm) <= figure.U();
  }

  @ParameterizedTest
  @ValueSource(strings = {"drills", "tape"})
  void solid_stop_limit_and_margin_are_covered_whatever_the_gaps_were_read_with(String tool) {
    boolean allTaped = tool.equals("tape");
    int solid = 0;
    int limit = 0;
    int margin = 0;
    for (int i = 0; i < CORNERS; i++) {
      double strap = uniform(-110, -90);
      double droop = uniform(-140, -125);
      double closing = uniform(0.1, 0.25);
      double touch = uniform(90, 110);
      double ratio = uniform(0.4, 0.9);
      CornerBench bench =
          CornerBench.shop(tool)
              .watch("p", "lower-arm-frame", "{\"least\":\"12 mm\"}")
              .given("new-strap-length", 545)
              .stretch(10)
              .given("stop-crush", 40)
              .held("impact-reserve", 0)
              .oneMark();
      String[] heights = {"off", "strap", "low", "mid", "touch"};
      String[] names = {"strap-off", "on-the-strap", "in-between", "in-between", "stop-touch"};
      double[] at = {uniform(-170, -155), strap, uniform(-60, -40), uniform(10, 40), touch};
      for (int h = 0; h < at.length; h++) {
        bench.height(heights[h], names[h], taped(at[h]));
        bench.length("strap-length", heights[h], taped(500 - at[h] / 2));
        bench.gap("p", heights[h], gap(12 + closing * (at[h] - droop), allTaped));
        if (h == 2 || h == 3) {
          bench.length("stop-gap", heights[h], gap(ratio * (touch - at[h]), allTaped));
        }
      }
      TravelFindings travel = bench.travel();
      double growth = Math.max(0, 500 - strap / 2 - 545);
      double stretchMm = Math.max(0, 54.5 - growth) / 0.5;
      solid += covers(travel.bump().stop().orElseThrow().positionMm(), touch + 40 / ratio) ? 1 : 0;
      limit += covers(travel.droop().rules().orElseThrow().positionMm(), droop) ? 1 : 0;
      margin += covers(travel.droop().marginMm().orElseThrow(), strap - stretchMm - droop) ? 1 : 0;
    }
    String said =
        String.format(
            Locale.ROOT,
            "gaps with %s, %d corners: solid stop covered in %.1f %%, limit %.1f %%, margin %.1f"
                + " %%",
            tool,
            CORNERS,
            100.0 * solid / CORNERS,
            100.0 * limit / CORNERS,
            100.0 * margin / CORNERS);
    System.out.println(said);
    assertTrue(Math.min(solid, Math.min(limit, margin)) >= 0.95 * CORNERS, said);
  }

  /** Neither too little nor much more: what stop and limit share is in neither. */
  @ParameterizedTest
  @CsvSource({"drills, 230", "drills, 120", "tape, 230", "tape, 120"})
  void a_bump_margin_whose_stop_was_read_is_covered_and_hardly_wider_than_it_errs(
      String tool, double spanMm) {
    int held = 0;
    double squares = 0;
    double variance = 0;
    for (int i = 0; i < CORNERS; i++) {
      double limit = uniform(-20, 80);
      double closing = uniform(0.1, 0.16);
      double mark = uniform(900, 1100);
      CornerBench bench =
          CornerBench.shop(tool)
              .watch("p", "lower-arm-frame", "{\"least\":\"12 mm\"}")
              .held("impact-reserve", 0)
              .oneMark()
              .marksReadOffBy(taped(mark) - 1000);
      double[] at = {-0.7, uniform(-0.5, -0.35), uniform(-0.2, -0.07), uniform(0.07, 0.15), 0.3};
      int stop = 2 + random.nextInt(3);
      for (int h = 0; h < at.length; h++) {
        at[h] *= spanMm;
        String name = h == stop ? "full-bump" : "in-between";
        bench.height("h" + h, name, taped(mark + limit + at[h]) - 1000);
        bench.gap("p", "h" + h, gap(12 - closing * at[h], tool.equals("tape")));
      }
      Figure margin = bench.travel().bump().marginMm().orElseThrow();
      held += covers(margin, -at[stop]) ? 1 : 0;
      squares += Math.pow(margin.value() + at[stop], 2);
      variance += margin.u() * margin.u();
    }
    double wider = Math.sqrt(variance / squares);
    String said =
        String.format(
            Locale.ROOT,
            "gaps with %s over %.0f mm, %d corners, stop read: bump margin covered in %.1f %%, its"
                + " u %.2f of its error",
            tool,
            spanMm,
            CORNERS,
            100.0 * held / CORNERS,
            wider);
    System.out.println(said);
    assertTrue(held >= 0.95 * CORNERS && wider <= 1.15, said);
  }

  /** Half of these the tape reads as 1/2 in; a shank's U of 0.51 mm holds 54 of 100 of those. */
  @Test
  void a_gap_just_wider_than_the_thickest_shank_is_covered_however_it_came_out() {
    int held = 0;
    for (int i = 0; i < CORNERS; i++) {
      double mm = uniform(INCH / 2, INCH * 9 / 16);
      double read = taped(mm);
      held += Math.abs(read - mm) <= uOfGap("drills", read) ? 1 : 0;
    }
    assertTrue(held >= 0.95 * CORNERS, held + " of " + CORNERS);
  }

  @Test
  void shanks_read_below_the_thickest_of_their_set_and_the_tape_from_there() {
    // By hand, u² = step² / 12 + half width² / 3: shanks 1/64, 1/64: 0.2563 mm; tape 1/16, 1/32:
    // 0.6480 mm; U is twice that.
    assertEquals(0.5126, uOfGap("drills", INCH * 31 / 64), 1e-3);
    assertEquals(1.2962, uOfGap("drills", INCH / 2), 1e-3);
    assertEquals(1.2962, uOfGap("tape", 3), 1e-3);
  }

  @Test
  void a_set_to_an_inch_reads_to_an_inch() {
    TypedLength inch = new TypedLength("1 in", INCH, LengthUnit.INCH, "tape-1");
    TypedLength step = new TypedLength("1/64 in", INCH / 64, LengthUnit.INCH, "tape-1");
    Tool set = new Tool("set", "set", ToolUse.GAPS, step, null, null, step, null, inch);
    Tool tape = Starter.tape();
    SeenRound round = new SeenRound(null, null, tape, set, null);
    assertSame(set, round.toolOfGap(0.99 * INCH));
    assertSame(tape, round.toolOfGap(INCH));
    // Where the tape reads the gaps it reads them all.
    assertSame(tape, new SeenRound(null, null, set, tape, null).toolOfGap(900));
  }

  private static double uOfGap(String gapTool, double mm) {
    return CornerBench.shop(gapTool)
        .watch("p", "lower-arm-frame", "{\"least\":\"6.35 mm\"}")
        .height("h", "ride", 0)
        .gap("p", "h", mm)
        .card()
        .readings()
        .get(0)
        .value()
        .U();
  }
}
