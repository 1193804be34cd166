package spindlebook.alignment;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import org.junit.jupiter.api.Test;
import spindlebook.definition.Place;
import spindlebook.entry.SweptBy;
import spindlebook.uncertainty.Figure;

/** alignment.json, caster_sweep: exact rotations, two ways of counting the lock. */
class CasterSweepReferenceTest {
  private static final double TOLERANCE_DEG = 1e-9;
  private static final JsonNode BLOCK = Reference.alignment().get("caster_sweep");
  private static final List<JsonNode> ROWS = Reference.rows(BLOCK.get("rows"));

  @Test
  void there_are_eleven_rows_to_hold_to_their_tolerance() {
    assertEquals(11, ROWS.size());
    assertEquals(TOLERANCE_DEG, BLOCK.get("tolerance").doubleValue());
  }

  @Test
  void a_knuckle_turned_either_way_shows_the_cambers_of_the_rows() {
    int checked = 0;
    for (JsonNode row : ROWS) {
      SweptKnuckle knuckle =
          new SweptKnuckle(
              Math.tan(Reference.rad(row, "caster")),
              Math.tan(Reference.rad(row, "kpi")),
              Reference.rad(row, "camber0"),
              Reference.rad(row, "toe0"),
              0);
      for (SweptBy by : SweptBy.values()) {
        for (String lock : List.of("left_lock", "right_lock")) {
          double angle = Reference.rad(row, "lock_deg") * (lock.startsWith("left") ? 1 : -1);
          double camber = Math.toDegrees(Math.asin(knuckle.camberSine(by, angle)));
          assertEquals(
              row.get(key(by)).get(lock).get("camber_deg").doubleValue(), camber, TOLERANCE_DEG);
          checked++;
        }
      }
    }
    assertEquals(44, checked);
  }

  @Test
  void the_exact_caster_comes_back_from_the_cambers_with_kpi_known() {
    for (JsonNode row : ROWS) {
      for (SweptBy by : SweptBy.values()) {
        SteeringAxis axis = CasterSweep.withKpi(sweep(row, by, by), Reference.exactRad(row, "kpi"));
        assertEquals(caster(row), degrees(axis.casterRad()), TOLERANCE_DEG);
      }
    }
  }

  @Test
  void caster_and_kpi_come_back_from_the_cambers_alone() {
    for (JsonNode row : ROWS) {
      for (SweptBy by : SweptBy.values()) {
        SteeringAxis axis = CasterSweep.fromCambers(sweep(row, by, by));
        assertEquals(caster(row), degrees(axis.casterRad()), TOLERANCE_DEG);
        assertEquals(row.get("kpi").doubleValue(), degrees(axis.kpiRad()), TOLERANCE_DEG);
      }
    }
  }

  @Test
  void a_heading_taken_for_a_turn_about_the_kingpin_is_seen_in_every_row() {
    for (JsonNode row : ROWS) {
      for (SweptBy read : SweptBy.values()) {
        SweptBy taken =
            read == SweptBy.WHEEL_HEADING ? SweptBy.KINGPIN_TURN : SweptBy.WHEEL_HEADING;
        double wrong =
            degrees(
                CasterSweep.withKpi(sweep(row, read, taken), Reference.exactRad(row, "kpi"))
                    .casterRad());
        double off = (wrong - caster(row)) * (read == SweptBy.WHEEL_HEADING ? 1 : -1);
        assertTrue(
            off > 0.005 * caster(row) && off < 0.03 * caster(row), "off by " + off + " degrees");
      }
    }
  }

  @Test
  void the_small_angle_formula_is_as_far_off_as_the_rows_say() {
    int checked = 0;
    for (JsonNode row : ROWS) {
      for (SweptBy by : SweptBy.values()) {
        double found = CasterSweep.smallAngleRad(sweep(row, by, by)).value();
        assertDegrees(row.get(key(by)).get("estimates_deg").get("small_angle"), found);
        double error = Math.toDegrees(found) - caster(row);
        assertEquals(
            row.get(key(by)).get("errors_deg").get("small_angle").doubleValue(),
            error,
            TOLERANCE_DEG);
        double most = by == SweptBy.KINGPIN_TURN ? 0.04 : 0.021;
        assertTrue(Math.abs(error) <= most * caster(row), "as far off as its docstring says");
        checked++;
      }
    }
    assertEquals(22, checked);
  }

  @Test
  void the_right_wheel_is_the_mirror_of_the_left() {
    JsonNode row = ROWS.get(10);
    Sweep left = sweep(row, SweptBy.WHEEL_HEADING, SweptBy.WHEEL_HEADING);
    Sweep right =
        new Sweep(
            Place.RIGHT_FRONT,
            SweptBy.WHEEL_HEADING,
            left.leftLockRad(),
            left.rightLockRad(),
            left.camberRightRad(),
            left.camberStraightRad(),
            left.camberLeftRad(),
            left.toeStraightRad());
    SteeringAxis axis = CasterSweep.withKpi(right, Reference.exactRad(row, "kpi"));
    assertEquals(5, degrees(axis.casterRad()), TOLERANCE_DEG);
  }

  static Sweep sweep(JsonNode row, SweptBy read, SweptBy taken) {
    JsonNode swept = row.get(key(read));
    return new Sweep(
        Place.LEFT_FRONT,
        taken,
        Reference.exactRad(row, "lock_deg"),
        Reference.exactRad(row, "lock_deg").times(-1),
        Reference.exactRad(swept.get("left_lock"), "camber_deg"),
        Reference.exactRad(row, "camber0"),
        Reference.exactRad(swept.get("right_lock"), "camber_deg"),
        Reference.exactRad(row, "toe0"));
  }

  private static String key(SweptBy by) {
    return by == SweptBy.KINGPIN_TURN ? "axis_rotation" : "wheel_heading";
  }

  private static double caster(JsonNode row) {
    return row.get("caster").doubleValue();
  }

  private static double degrees(Figure rad) {
    return Math.toDegrees(rad.value());
  }

  private static void assertDegrees(JsonNode wanted, double rad) {
    assertEquals(wanted.doubleValue(), Math.toDegrees(rad), TOLERANCE_DEG);
  }
}
