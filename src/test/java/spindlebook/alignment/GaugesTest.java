package spindlebook.alignment;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import spindlebook.definition.Tool;
import spindlebook.definition.ToolUse;
import spindlebook.fold.ToolError;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Outcome;
import spindlebook.uncertainty.Settles;
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;
import spindlebook.units.LengthUnit;
import spindlebook.units.Readings;
import spindlebook.units.TapeText;
import spindlebook.units.TypedLength;

/** Tools, the gauge turned round, targets. Expected numbers by hand. */
class GaugesTest {
  private static final double DEGREE = Math.toRadians(1);
  private static final ToolError GAUGE =
      new ToolError("gauge", 0.1 * DEGREE, 0.1 * DEGREE, 0.2 * DEGREE);

  @Test
  void a_gauge_brings_steps_placing_and_zero() {
    Figure read = GAUGE.read(-0.5 * DEGREE, "r1", "p");
    assertEquals(0.132, Math.toDegrees(read.u()), 5e-4);
    assertEquals(3, read.parts().size());
  }

  @Test
  void a_tape_to_a_sixteenth_is_doubtful_by_two_thirds_of_a_millimetre() {
    ToolError tape = new ToolError("tape", 25.4 / 16, 25.4 / 32, 0);
    assertEquals(0.648, tape.read(100, "r", "p").u(), 5e-4);
    assertEquals(0.4583, new ToolError("t", 0, 25.4 / 32, 0).read(100, "r", "p").u(), 5e-5);
  }

  @Test
  void the_books_own_tools_can_be_used() {
    TypedLength sixteenth = length("1/16");
    Tool tape = new Tool("t1", "tape", ToolUse.TAPE, sixteenth, null, null, length("1/32"), null);
    assertEquals(new ToolError("t1", 25.4 / 16, 25.4 / 32, 0), ToolError.ofLengths(tape));
    Tool finder =
        new Tool(
            "t2",
            "angle finder",
            ToolUse.ANGLES,
            null,
            Readings.angle("0.5"),
            null,
            null,
            Readings.angle("0.25"));
    assertEquals(
        new ToolError("t2", Math.toRadians(0.5), Math.toRadians(0.25), 0.01),
        ToolError.ofAngles(finder, 0.01));
  }

  @Test
  void a_gauge_turned_round_tells_camber_and_its_own_zero() {
    CamberGauge.TurnedRound found =
        CamberGauge.turnedRound(
            GAUGE.read(-0.30 * DEGREE, "r1", "p1"), GAUGE.read(0.70 * DEGREE, "r2", "p2"));
    assertEquals(-0.50, Math.toDegrees(found.camberRad().value()), 1e-12);
    assertEquals(0.20, Math.toDegrees(found.zeroErrorRad().value()), 1e-12);
    Source zero = new Source("gauge", SourceKind.TOOL);
    assertFalse(found.camberRad().parts().containsKey(zero), "the zero cancels in camber");
    assertTrue(found.zeroErrorRad().parts().containsKey(zero));
    assertEquals(0.0456, Math.toDegrees(found.camberRad().u()), 5e-4);
  }

  @Test
  void a_zero_once_found_is_taken_out_of_the_next_reading() {
    Figure camber = CamberGauge.camberRad(Figure.exact(0.9 * DEGREE), Figure.exact(0.2 * DEGREE));
    assertEquals(0.7, Math.toDegrees(camber.value()), 1e-12);
  }

  @Test
  void a_target_is_kept_missed_or_cannot_be_told() {
    assertEquals(Outcome.CLEAR, camber(-0.50, 0.20).decision());
    AgainstTarget unsure = camber(-0.50, 0.60);
    assertEquals(Outcome.CANT_TELL, unsure.decision());
    assertEquals(new Settles.Repeats(2), unsure.settles());
    assertEquals(Outcome.SHORT, camber(0.3, 0.2).decision());
    assertEquals(Outcome.SHORT, camber(-1.3, 0.2).decision());
    assertEquals(Outcome.CLEAR, AgainstTarget.atLeast(Figure.exact(3), 3).decision());
    assertEquals(Outcome.SHORT, AgainstTarget.atMost(Figure.exact(3.1), 3).decision());
  }

  private static AgainstTarget camber(double degrees, double expandedDegrees) {
    Source placing = new Source("r", SourceKind.PLACING);
    return AgainstTarget.between(Figure.of(degrees, placing, expandedDegrees / 2), -1, 0);
  }

  private static TypedLength length(String text) {
    return TapeText.plain(text, LengthUnit.INCH).orElseThrow();
  }
}
