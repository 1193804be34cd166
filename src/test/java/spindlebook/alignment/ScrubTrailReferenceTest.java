package spindlebook.alignment;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import org.junit.jupiter.api.Test;
import spindlebook.uncertainty.Figure;

/** alignment.json, scrub_trail: one axis point, caster, KPI, camber and radius varied. */
class ScrubTrailReferenceTest {
  private static final double TOLERANCE_MM = 1e-8;
  private static final double RADIUS_MM = 405;
  private static final List<JsonNode> ROWS =
      Reference.rows(Reference.alignment().get("scrub_trail").get("rows"));

  @Test
  void all_eleven_rows_are_met() {
    assertEquals(11, ROWS.size());
    for (JsonNode row : ROWS) {
      ScrubTrail found = at(row, row.get("R").doubleValue());
      assertEquals(row.get("scrub_mm").doubleValue(), found.scrubMm().value(), TOLERANCE_MM);
      assertEquals(row.get("trail_mm").doubleValue(), found.trailMm().value(), TOLERANCE_MM);
    }
  }

  @Test
  void a_taller_tyre_changes_scrub_and_trail_by_the_formula_and_no_more() {
    for (JsonNode row : ROWS) {
      double moreMm = row.get("R").doubleValue() - RADIUS_MM;
      double camber = Reference.rad(row, "camber");
      double byScrub = ScrubTrail.scrubPerRadius(camber, Reference.rad(row, "kpi")) * moreMm;
      double byTrail =
          Math.cos(camber) * Math.tan(Reference.rad(row, "caster")) * moreMm; // as derived
      ScrubTrail here = at(row, row.get("R").doubleValue());
      ScrubTrail there = at(row, RADIUS_MM);
      assertEquals(row.get("d_scrub_from_R405").doubleValue(), byScrub, TOLERANCE_MM);
      assertEquals(row.get("d_scrub_formula").doubleValue(), byScrub, TOLERANCE_MM);
      assertEquals(row.get("d_trail_from_R405").doubleValue(), byTrail, TOLERANCE_MM);
      assertEquals(row.get("d_trail_formula").doubleValue(), byTrail, TOLERANCE_MM);
      assertEquals(here.scrubMm().minus(there.scrubMm()).value(), byScrub, TOLERANCE_MM);
      assertEquals(here.trailMm().minus(there.trailMm()).value(), byTrail, TOLERANCE_MM);
    }
  }

  private static ScrubTrail at(JsonNode row, double radiusMm) {
    return ScrubTrail.of(
        new AxisPlace(Figure.exact(8), Figure.exact(110), Figure.exact(115)),
        new SteeringAxis(Reference.exactRad(row, "caster"), Reference.exactRad(row, "kpi")),
        Reference.exactRad(row, "camber"),
        Figure.exact(0),
        Figure.exact(radiusMm));
  }
}
