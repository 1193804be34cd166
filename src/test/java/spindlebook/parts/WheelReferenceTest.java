package spindlebook.parts;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import org.junit.jupiter.api.Test;
import spindlebook.alignment.Reference;
import spindlebook.alignment.Track;
import spindlebook.uncertainty.Figure;

/** alignment.json, track_from_wheel. */
class WheelReferenceTest {
  private static final double TOLERANCE = 1e-9;
  private static final double INCH = 25.4;
  private static final JsonNode BLOCK = Reference.alignment().get("track_from_wheel");

  @Test
  void offset_backspacing_lips_and_track_hang_together() {
    List<JsonNode> rows = Reference.rows(BLOCK.get("wheels"));
    assertEquals(3, rows.size());
    for (JsonNode row : rows) {
      double width = row.get("rim_width_in").doubleValue() * INCH;
      Wheel wheel = wheel(width, row.get("offset_ET_mm").doubleValue());
      Wheel sits = wheel.onSpacer(row.get("spacer_mm").doubleValue());
      assertMm(row, "effective_offset_mm", sits.offsetMm());
      assertMm(row, "backspacing_mm", wheel.backspacingMm());
      assertMm(row, "backspacing_in", wheel.backspacingMm() / INCH);
      assertMm(row, "effective_backspacing_in", sits.backspacingMm() / INCH);
      assertMm(row, "inner_lip_from_hub_face_mm", sits.backspacingMm());
      assertMm(row, "outer_lip_from_hub_face_mm", sits.frontSpacingMm());
      assertMm(
          row, "scrub_change_vs_ET0_mm", WheelChange.of(wheel(width, 0), sits, 0, 0, 0).scrubMm());
      Figure hubs = Figure.exact(row.get("hub_face_to_hub_face_mm").doubleValue());
      Track track =
          Track.fromHubFaces(hubs, sits.offsetMm(), 0, Figure.exact(400), Figure.exact(300));
      assertMm(row, "track_mm", track.centresMm().value());
      Wheel back =
          Wheel.byBackspacing(
              15 * INCH, width, row.get("backspacing_mm").doubleValue(), Wheel.USUAL_LIP_MM);
      assertMm(row, "offset_ET_mm", back.offsetMm());
    }
  }

  @Test
  void another_wheel_moves_track_lips_and_scrub() {
    List<JsonNode> rows = Reference.rows(BLOCK.get("changes"));
    assertEquals(4, rows.size());
    for (JsonNode row : rows) {
      Wheel from = byBackspacing(row.get("from_"));
      Wheel to = byBackspacing(row.get("to"));
      assertMm(row.get("from_"), "ET_mm", from.offsetMm());
      assertMm(row.get("to"), "ET_mm", to.offsetMm());
      WheelChange change = WheelChange.of(from, to, 0, 0, Math.toRadians(9));
      assertMm(row, "track_change_mm", change.trackMm());
      assertMm(row, "inner_lip_moves_inboard_mm", change.innerLipInboardMm());
      assertMm(row, "outer_lip_moves_outboard_mm", change.outerLipOutboardMm());
      assertMm(row, "scrub_change_mm", change.scrubMm());
    }
  }

  @Test
  void camber_tilts_the_way_the_wheel_goes_out() {
    List<JsonNode> rows = Reference.rows(BLOCK.get("with_camber"));
    assertEquals(3, rows.size());
    for (JsonNode row : rows) {
      Wheel to = wheel(200, row.get("offset_change_mm").doubleValue());
      WheelChange change =
          WheelChange.of(wheel(200, 0), to, 0, Reference.rad(row, "camber_deg"), 0);
      assertMm(row, "half_track_change_at_hub_mm", change.trackMm() / 2);
      assertMm(row, "hub_height_change_mm", change.centreHeightMm());
    }
  }

  private static Wheel wheel(double widthMm, double offsetMm) {
    return new Wheel(15 * INCH, widthMm, offsetMm, Wheel.USUAL_LIP_MM);
  }

  private static Wheel byBackspacing(JsonNode wheel) {
    return Wheel.byBackspacing(
        15 * INCH,
        wheel.get("width_in").doubleValue() * INCH,
        wheel.get("backspacing_in").doubleValue() * INCH,
        Wheel.USUAL_LIP_MM);
  }

  private static void assertMm(JsonNode row, String key, double found) {
    assertEquals(row.get(key).doubleValue(), found, TOLERANCE, key);
  }
}
