package spindlebook.parts;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import org.junit.jupiter.api.Test;
import spindlebook.alignment.Reference;
import spindlebook.alignment.ReferenceCorner;
import spindlebook.parts.ArmOnRodEnds.Arm;
import spindlebook.uncertainty.Figure;

/** alignment.json, rod_end_turns and welded_arm_inline_threads_spread. */
class RodEndReferenceTest {
  private static final double TOLERANCE_DEG = 1e-8;
  private static final double LINEAR_TOLERANCE_DEG = 1e-10;
  private static final Pivots G1 = ReferenceCorner.G1;
  private static final JsonNode BLOCK = Reference.alignment();
  private static final List<JsonNode> TURNS =
      Reference.rows(BLOCK.get("rod_end_turns").get("rows"));

  @Test
  void there_are_twenty_three_rows_of_two_kinds() {
    assertEquals(23, TURNS.size());
    assertEquals(11, TURNS.stream().filter(RodEndReferenceTest::both).count());
    assertTrue(TURNS.stream().allMatch(r -> r.get("mode").asText().equals("welded_perp_shanks")));
    assertTrue(TURNS.stream().allMatch(r -> r.get("geo").asText().startsWith("G1_")));
  }

  @Test
  void turns_on_measured_pivots_are_exact_with_the_wheel_held() {
    for (JsonNode row : TURNS) {
      RodThread thread = thread(row);
      Turns turns = turns(row);
      ExactTurns found =
          ExactTurns.wheelHeld(
              G1, turns.front() * thread.pitchMm(), turns.rear() * thread.pitchMm());
      assertRow(row.get("hold_ride"), found);
    }
  }

  @Test
  void the_legs_come_out_as_long_as_the_rows_say() {
    for (JsonNode row : TURNS) {
      RodThread thread = thread(row);
      Turns turns = turns(row);
      UpperArm arm =
          UpperArm.turned(G1, turns.front() * thread.pitchMm(), turns.rear() * thread.pitchMm());
      assertEquals(row.get("lF_mm").doubleValue(), arm.legMm(G1.upperFront()), 1e-8);
      assertEquals(row.get("lR_mm").doubleValue(), arm.legMm(G1.upperRear()), 1e-8);
    }
  }

  @Test
  void small_angle_camber_and_caster_are_those_of_the_rows() {
    for (JsonNode row : TURNS) {
      ArmOnRodEnds arm = arm(thread(row));
      if (both(row)) {
        assertEquals(
            row.get("small_angle_d_camber_deg").doubleValue(),
            degrees(arm.camberChangeRad(turns(row))),
            LINEAR_TOLERANCE_DEG);
      } else {
        assertEquals(
            row.get("small_angle_d_caster_deg").doubleValue(),
            degrees(arm.casterChangeRad(turns(row))),
            LINEAR_TOLERANCE_DEG);
        assertEquals(
            row.get("spread_mismatch_mm").doubleValue(),
            ConvergingThreads.squareSpreadMm(turns(row), thread(row), thread(row), 350),
            1e-9);
      }
    }
  }

  @Test
  void the_small_angles_are_as_near_to_the_exact_as_the_docstring_says() {
    for (JsonNode row : TURNS) {
      ArmOnRodEnds arm = arm(thread(row));
      JsonNode exact = row.get("hold_ride");
      if (both(row)) {
        double wanted = exact.get("d_camber_deg").doubleValue();
        assertEquals(wanted, degrees(arm.camberChangeRad(turns(row))), 0.04 * Math.abs(wanted));
      } else {
        double wanted = exact.get("d_caster_deg").doubleValue();
        assertEquals(wanted, degrees(arm.casterChangeRad(turns(row))), 0.003 * Math.abs(wanted));
      }
    }
  }

  @Test
  void converging_threads_of_a_welded_arm_push_its_balls_apart() {
    List<JsonNode> rows = Reference.rows(BLOCK.get("welded_arm_inline_threads_spread").get("rows"));
    assertEquals(12, rows.size());
    for (JsonNode row : rows) {
      double apart =
          ConvergingThreads.spreadMm(
              new Turns(1, 1),
              thread(row),
              thread(row),
              Math.acos(row.get("cos_front").doubleValue()),
              Math.acos(row.get("cos_rear").doubleValue()));
      assertEquals(row.get("spread_change_per_turn_both_out_mm").doubleValue(), apart, 1e-9);
    }
  }

  @Test
  void the_toe_that_comes_along_has_the_sign_and_nearly_the_size_of_the_exact() {
    for (JsonNode row : TURNS) {
      JsonNode exact = row.get("hold_ride");
      double found =
          degrees(
              ToeKnockOn.rad(
                  Reference.exactRad(exact, "d_camber_deg"),
                  Reference.exactRad(exact, "d_caster_deg"),
                  Figure.exact(55),
                  Figure.exact(158),
                  Figure.exact((345 - 372) / (778 - 335.5)),
                  spindlebook.definition.RackSide.BEHIND_AXLE));
      double wanted = exact.get("d_toe_deg").doubleValue();
      assertEquals(wanted, found, 0.20 * Math.abs(wanted), row.toString());
    }
  }

  @Test
  void turns_that_do_not_go_together_are_refused() {
    assertThrows(IllegalArgumentException.class, () -> ExactTurns.wheelHeld(G1, 400, 400));
  }

  private static void assertRow(JsonNode wanted, ExactTurns found) {
    assertEquals(
        wanted.get("camber_deg").doubleValue(), Math.toDegrees(found.camberRad()), TOLERANCE_DEG);
    assertEquals(
        wanted.get("toe_in_deg").doubleValue(), Math.toDegrees(found.toeRad()), TOLERANCE_DEG);
    assertEquals(
        wanted.get("caster_deg").doubleValue(), Math.toDegrees(found.casterRad()), TOLERANCE_DEG);
    assertEquals(
        wanted.get("kpi_deg").doubleValue(), Math.toDegrees(found.kpiRad()), TOLERANCE_DEG);
    assertEquals(0, Reference.point(wanted.get("U")).distance(found.upper()), 1e-7);
    assertEquals(
        wanted.get("d_camber_deg").doubleValue(),
        Math.toDegrees(found.camberRad() - G1.camberRad()),
        TOLERANCE_DEG);
    assertEquals(
        wanted.get("d_toe_deg").doubleValue(),
        Math.toDegrees(found.toeRad() - G1.toeRad()),
        TOLERANCE_DEG);
  }

  private static boolean both(JsonNode row) {
    return row.get("kind").asText().equals("both_equal");
  }

  private static Turns turns(JsonNode row) {
    if (both(row)) {
      double turns = row.get("turns").doubleValue();
      return new Turns(turns, turns);
    }
    double out = row.get("turns_front_out").doubleValue();
    return new Turns(out, -out);
  }

  private static RodThread thread(JsonNode row) {
    RodThread thread = RodThreads.named(row.get("thread").asText()).orElseThrow();
    if (row.has("pitch_mm")) {
      assertEquals(row.get("pitch_mm").doubleValue(), thread.pitchMm(), 1e-12);
    }
    return thread;
  }

  private static ArmOnRodEnds arm(RodThread thread) {
    return new ArmOnRodEnds(
        Arm.UPPER,
        thread,
        thread,
        Figure.exact(300),
        Figure.exact(Math.hypot(385, 15)),
        Figure.exact(350),
        ArmOnRodEnds.SQUARE);
  }

  private static double degrees(Figure rad) {
    return Math.toDegrees(rad.value());
  }
}
