package spindlebook.parts;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import spindlebook.alignment.AgainstTarget;
import spindlebook.alignment.AxisPlace;
import spindlebook.alignment.ScrubTrail;
import spindlebook.alignment.SteeringAxis;
import spindlebook.alignment.Track;
import spindlebook.curve.PositionToSetting.Steps;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Outcome;
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;

/** A wheel tried before it is bought, track, and the frame over the ground. Numbers by hand. */
class WheelOnPaperTest {
  private static final double INCH = 25.4;
  private static final Source SELLER = new Source("seller", SourceKind.ALLOWANCE);

  @Test
  void a_wider_and_taller_rim_at_one_backspacing_keeps_its_inner_lip() {
    WheelOnPaper paper =
        WheelOnPaper.tried(
            mounted(15, 8, 4.5, 0, tyre(425, 300)),
            mounted(17, 9, 4.5, 0, tyre(425, 300)),
            Map.of(WheelGap.BARREL, Figure.exact(5), WheelGap.INNER_LIP, Figure.exact(12)),
            0,
            Math.toRadians(9));
    assertMm(5 + INCH, paper, WheelGap.BARREL);
    assertMm(12, paper, WheelGap.INNER_LIP);
    assertEquals(0, mounted(15, 8, 4.5, 0, tyre(425, 300)).wheel().offsetMm(), 1e-9);
    assertEquals(-12.7, mounted(17, 9, 4.5, 0, tyre(425, 300)).wheel().offsetMm(), 1e-9);
    assertEquals(INCH, paper.change().trackMm(), 1e-9);
    assertEquals(12.7, paper.scrubMm().value(), 1e-9);
    assertFalse(paper.gapsMm().containsKey(WheelGap.TREAD), "what was not measured is not made up");
  }

  @Test
  void a_spacer_makes_room_inboard_and_takes_it_outboard() {
    Map<WheelGap, Figure> measured =
        Map.of(
            WheelGap.SPOKES, Figure.exact(3),
            WheelGap.INNER_LIP, Figure.exact(10),
            WheelGap.TYRE_INBOARD, Figure.exact(20),
            WheelGap.TYRE_OUTBOARD, Figure.exact(30));
    WheelOnPaper paper =
        WheelOnPaper.tried(
            mounted(15, 8, 4.5, 0, tyre(425, 300)),
            mounted(15, 8, 4.5, 25, tyre(425, 300)),
            measured,
            0,
            0);
    assertMm(28, paper, WheelGap.SPOKES);
    assertMm(35, paper, WheelGap.INNER_LIP);
    assertMm(45, paper, WheelGap.TYRE_INBOARD);
    assertMm(5, paper, WheelGap.TYRE_OUTBOARD);
    assertEquals(50, paper.change().trackMm(), 1e-9);
  }

  @Test
  void a_tyre_only_promised_brings_its_doubt_into_the_gaps_and_the_decision() {
    Tyre promised =
        new Tyre(
            Figure.of(460, SELLER, 5),
            Figure.of(440, SELLER, 5),
            Figure.exact(400),
            Figure.of(330, SELLER, 6));
    WheelOnPaper paper =
        WheelOnPaper.tried(
            mounted(15, 8, 4.5, 0, tyre(425, 300)),
            mounted(15, 8, 4.5, 0, promised),
            Map.of(WheelGap.TREAD, Figure.exact(65), WheelGap.TYRE_INBOARD, Figure.exact(40)),
            0,
            Math.toRadians(9));
    assertMm(30, paper, WheelGap.TREAD);
    assertMm(25, paper, WheelGap.TYRE_INBOARD);
    assertEquals(5, paper.gapsMm().get(WheelGap.TREAD).u(), 1e-9);
    AgainstTarget inch = AgainstTarget.atLeast(paper.gapsMm().get(WheelGap.TREAD), INCH);
    assertEquals(Outcome.CANT_TELL, inch.decision());
    assertEquals(-Math.tan(Math.toRadians(9)) * 35, paper.scrubMm().value(), 1e-9);
  }

  @Test
  void scrub_by_a_wheel_moved_out_on_a_cambered_hub_is_that_of_the_axis_itself() {
    double camber = Math.toRadians(-2);
    double kpi = Math.toRadians(10);
    Wheel now = new Wheel(15 * INCH, 8 * INCH, 0, 12.7);
    Wheel then = new Wheel(15 * INCH, 8 * INCH, -30, 12.7);
    double byFormula = WheelChange.of(now, then, 20, camber, kpi).scrubMm();
    double before = scrub(0, 400, camber, kpi);
    double after = scrub(30, 420, camber, kpi);
    assertEquals(after - before, byFormula, 1e-9);
  }

  @Test
  void track_is_said_four_ways_and_back() {
    Figure width = Figure.exact(317.5);
    Track track = Track.fromHubFaces(Figure.exact(1600), -12, 0, Figure.exact(400), width);
    assertEquals(1624, track.centresMm().value(), 1e-9);
    assertEquals(1941.5, track.outsideMm().value(), 1e-9);
    Track leaning =
        Track.fromHubFaces(Figure.exact(1600), -12, Math.toRadians(-1), Figure.exact(400), width);
    assertEquals(1623.996, leaning.centresMm().value(), 5e-4);
    assertEquals(1637.958, leaning.groundMm().value(), 5e-4, "top in, feet out");
    Track back =
        Track.fromOutside(leaning.outsideMm(), -12, Math.toRadians(-1), Figure.exact(400), width);
    assertEquals(1600, back.hubFacesMm().value(), 1e-9);
  }

  @Test
  void less_offset_on_a_leaning_hub_takes_the_wheel_out_and_up() {
    WheelChange change =
        WheelChange.of(
            new Wheel(381, 203.2, 0, 12.7),
            new Wheel(381, 203.2, -25, 12.7),
            0,
            Math.toRadians(-1),
            0);
    assertEquals(24.996, change.trackMm() / 2, 5e-4);
    assertEquals(0.436, change.centreHeightMm(), 5e-4);
  }

  @Test
  void a_wheel_is_what_its_backspacing_says() {
    Wheel wheel = new Wheel(15 * INCH, 8.5 * INCH, -12, Wheel.USUAL_LIP_MM);
    assertEquals(108.65, wheel.backspacingMm(), 1e-9);
    assertEquals(4.278, wheel.backspacingMm() / INCH, 5e-4);
    Wheel thickLip = Wheel.byBackspacing(381, 8.5 * INCH, 108.65, 15);
    assertEquals(-14.3, thickLip.offsetMm(), 1e-9);
    assertThrows(IllegalArgumentException.class, () -> new Wheel(381, -1, 0, 12.7));
  }

  @Test
  void the_frame_over_the_ground_at_full_bump_asks_for_a_spacer() {
    Figure clearance =
        GroundAtBump.clearanceMm(Figure.exact(330.2), Figure.exact(50.8), Figure.exact(254));
    assertEquals(25.4, clearance.value(), 1e-9);
    Steps spacer = GroundAtBump.spacer(clearance, 50.8, Figure.exact(0.6), 3.175).orElseThrow();
    assertEquals(15.875, spacer.changeMm(), 1e-9);
    Steps fine = GroundAtBump.spacer(clearance, 50.8, Figure.exact(0.6), 0.01).orElseThrow();
    assertEquals(15.24, fine.changeMm(), 1e-9);
    assertEquals(Optional.empty(), GroundAtBump.spacer(clearance, 25.4, Figure.exact(0.6), 1));
  }

  @Test
  void a_spacer_covers_the_doubt_of_the_clearance() {
    Figure doubtful = Figure.of(25.4, SELLER, 2);
    Steps spacer = GroundAtBump.spacer(doubtful, 25.4, Figure.exact(0.6), 0.1).orElseThrow();
    assertEquals(2.4, spacer.changeMm(), 1e-9);
    assertThrows(
        IllegalArgumentException.class,
        () -> GroundAtBump.spacer(doubtful, 25.4, Figure.exact(-0.6), 0.1));
  }

  /** Seen from the wheel's centre before it moved out along its axis; hub and kingpin stay. */
  private static double scrub(double outMm, double radiusMm, double camber, double kpi) {
    double centreY = outMm * Math.cos(camber);
    double centreZ = -outMm * Math.sin(camber);
    return ScrubTrail.of(
            new AxisPlace(
                Figure.exact(0), Figure.exact(110 + centreY), Figure.exact(115 + centreZ)),
            new SteeringAxis(Figure.exact(0.1), Figure.exact(kpi)),
            Figure.exact(camber),
            Figure.exact(0),
            Figure.exact(radiusMm))
        .scrubMm()
        .value();
  }

  private static MountedWheel mounted(
      double diameterIn, double widthIn, double backspacingIn, double spacerMm, Tyre tyre) {
    Wheel wheel =
        Wheel.byBackspacing(
            diameterIn * INCH, widthIn * INCH, backspacingIn * INCH, Wheel.USUAL_LIP_MM);
    return new MountedWheel(wheel, spacerMm, 10, tyre);
  }

  private static Tyre tyre(double freeMm, double widthMm) {
    return new Tyre(
        Figure.exact(freeMm),
        Figure.exact(freeMm - 20),
        Figure.exact(freeMm - 60),
        Figure.exact(widthMm));
  }

  private static void assertMm(double wanted, WheelOnPaper paper, WheelGap gap) {
    assertEquals(wanted, paper.gapsMm().get(gap).value(), 1e-9);
  }
}
