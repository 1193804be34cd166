package spindlebook.alignment;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import org.junit.jupiter.api.Test;
import spindlebook.uncertainty.Figure;

/** alignment.json, toe_units. */
class ToeReferenceTest {
  private static final double TOLERANCE = 1e-10;
  private static final JsonNode UNITS = Reference.alignment().get("toe_units");

  @Test
  void degrees_become_millimetres_and_inches_across_the_edge() {
    List<JsonNode> rows = Reference.rows(UNITS.get("deg_to_length"));
    assertEquals(7, rows.size());
    for (JsonNode row : rows) {
      double across = row.get("measuring_diameter_mm").doubleValue();
      Toe wheel = new Toe(Reference.exactRad(row, "toe_in_per_wheel_deg"));
      assertEquals(row.get("per_wheel_mm").doubleValue(), wheel.mm(across).value(), TOLERANCE);
      double totalMm = 2 * wheel.mm(across).value();
      assertEquals(row.get("total_toe_mm").doubleValue(), totalMm, TOLERANCE);
      assertEquals(row.get("total_toe_in").doubleValue(), totalMm / 25.4, TOLERANCE);
      assertEquals(
          row.get("total_toe_deg").doubleValue(),
          Math.toDegrees(Toe.totalRad(wheel, wheel).value()),
          TOLERANCE);
    }
  }

  @Test
  void a_tape_front_and_rear_becomes_degrees_and_is_not_taken_for_one_wheels() {
    List<JsonNode> rows = Reference.rows(UNITS.get("length_to_deg"));
    assertEquals(7, rows.size());
    for (JsonNode row : rows) {
      double totalMm = row.get("total_toe_mm").doubleValue();
      TotalToe total =
          TotalToe.byTape(
              Figure.exact(1500),
              Figure.exact(1500 + totalMm),
              Figure.exact(row.get("measuring_diameter_mm").doubleValue()));
      assertEquals(row.get("total_toe_in").doubleValue() * 25.4, totalMm, TOLERANCE);
      double perWheel = degrees(total.perWheelIfAlike().rad());
      assertEquals(row.get("toe_per_wheel_deg").doubleValue(), perWheel, TOLERANCE);
      assertEquals(row.get("total_toe_deg").doubleValue(), degrees(total.rad()), TOLERANCE);
      double naive = row.get("naive_factor2_error_deg").doubleValue();
      assertTrue(Math.abs(naive - perWheel) > 0.4 * Math.abs(naive));
    }
  }

  @Test
  void wheels_that_differ_add_up_by_their_sines() {
    List<JsonNode> rows = Reference.rows(UNITS.get("asymmetric"));
    assertEquals(1, rows.size());
    JsonNode row = rows.get(0);
    double across = row.get("D_mm").doubleValue();
    assertEquals(
        row.get("total_toe_mm").doubleValue(),
        new Toe(Reference.exactRad(row, "left")).mm(across).value()
            + new Toe(Reference.exactRad(row, "right")).mm(across).value(),
        TOLERANCE);
  }

  private static double degrees(Figure rad) {
    return Math.toDegrees(rad.value());
  }
}
