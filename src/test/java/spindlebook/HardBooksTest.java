package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import spindlebook.figures.Figures;

/** Little books that once came out wrong, and what they are by hand. */
class HardBooksTest {
  private static final Path BOOKS = Path.of("src/test/resources/reference/hard");

  @Test
  void a_strap_let_out_is_let_out_by_less_than_it_will_stretch_by_more() throws Exception {
    JsonNode droop = corner("longer-strap").get("droop");
    // By hand: 548.829 / 1.1 = 498.935, read between 490.253 at −140 and 500.011 at −160.
    assertEquals(-157.8, droop.at("/neededStopMm/value").asDouble(), 0.1);
  }

  @Test
  void the_squashed_radius_of_a_tyre_taken_off_rules_no_more() throws Exception {
    JsonNode bump = corner("old-radius").get("bump");
    // By hand: 400 − 250 − 0 = 150 was the 37 in tyre's; nobody measured the 33 in one.
    assertFalse(bump.get("limits").toString().contains("ground"), bump.toPrettyString());
    assertEquals("needs", bump.get("outcome").asText());
    assertEquals(
        "the new tyre's squashed radius, hard landing (tyre from 37 in tyre to 33 in tyre)",
        bump.at("/needs/0").asText());
  }

  @Test
  void the_open_length_of_a_shock_taken_off_rules_no_more() throws Exception {
    JsonNode corner = corner("old-shock");
    // By hand: 705 was the 14 in shock's; what the 12 in one reaches open nobody said.
    for (String end : List.of("droop", "bump")) {
      JsonNode at = corner.get(end);
      assertFalse(at.get("limits").toString().contains("shock"), at.toPrettyString());
      assertEquals("needs", at.get("outcome").asText());
      assertTrue(at.get("needs").toString().contains("the new shock fully"), at.toPrettyString());
    }
  }

  @Test
  void two_equal_gaps_at_the_rule_keep_it_from_the_first_of_them() throws Exception {
    JsonNode limit = corner("flat").at("/droop/limits/0");
    assertEquals("curve", limit.get("found").asText());
    assertEquals(-150, limit.at("/positionMm/value").asDouble(), 1e-9);
  }

  @Test
  void the_mean_of_readings_at_one_height_is_at_that_height() throws Exception {
    JsonNode corner = corner("six-repeats");
    // By hand: 1/2 and 9/16 four times each, all 8 5/8 in under the mark, are broken; so are the
    // touch and 3/4 below. 1 in, 1 in over the mark, is the first to keep the rule of 1 in.
    assertEquals(25.4, corner.at("/droop/limits/0/positionMm/value").asDouble(), 1e-9);
    assertEquals("curve", corner.at("/droop/limits/0/found").asText());
    assertEquals(25.4, corner.at("/bump/limits/0/positionMm/value").asDouble(), 1e-9);
  }

  @Test
  void what_nobody_looked_at_is_not_clear_because_it_is_doubtful() throws Exception {
    JsonNode droop = corner("nobody-looked").get("droop");
    JsonNode limit = droop.at("/limits/0");
    // By hand: the strap takes up 5 at a ratio of 0.5, the wheel drops 10 further, ± 16.3; the gap
    // closes by 0.5 per mm: 7.2 − 5 = 2.2 mm, 6.35 asked.
    assertEquals(10, droop.at("/heldBackMm/value").asDouble(), 1e-6);
    assertEquals(stretchU(10, 1.05 * 6.35), droop.at("/heldBackMm/U").asDouble(), 0.01);
    assertEquals("kept as far as read", limit.get("found").asText());
    assertEquals("cant-tell", limit.get("outcome").asText());
    // What to read: the gap where the wheel may get to, 10 + 16.3 below the strap at −200.
    String finding = droop.get("finding").asText();
    assertTrue(finding.contains("Read lower arm to frame at −226.5 mm"), finding);
  }

  @Test
  void a_strap_worn_nearly_to_its_share_has_its_doubt_in_what_is_to_come() throws Exception {
    // 50 − 49.5 = 0.5 at the strap, 1.0 at the wheel at a ratio of 0.5.
    JsonNode held = corner("worn-under").at("/droop/heldBackMm");
    assertEquals(1.0, held.get("value").asDouble(), 1e-6);
    assertEquals(stretchU(1, 1.1 * 1.6), held.get("U").asDouble(), 0.01);
  }

  @Test
  void a_strap_worn_past_its_share_is_no_less_doubtful() throws Exception {
    JsonNode held = corner("worn-over").at("/droop/heldBackMm");
    assertEquals(0, held.get("value").asDouble(), 1e-9);
    assertEquals(stretchU(0, 1.1 * 1.6), held.get("U").asDouble(), 0.01);
  }

  /**
   * By hand, at a ratio of 1/2 from lengths on the strap, 60 and 120 above it: steps, hand and
   * class of the tape are 0.458 each. At the strap itself u² = (share of the new length's doubt)² +
   * 3 · 0.458². To y = e + U below it the lengths' own steps and hand weigh 1 + 1.5 y/60, 2 y/60
   * and 0.5 y/60, those of the heights half of 1.5, 2 and 0.5 y/60; the class is in all lengths
   * alike.
   */
  private static double stretchU(double eMm, double ofNewMm) {
    double expanded = 0;
    for (int i = 0; i < 20; i++) {
      double y = (eMm + expanded) / 60;
      double others = 4 * y * y + 0.25 * y * y;
      double lengths = 2 * (Math.pow(1 + 1.5 * y, 2) + others) + 1;
      double heights = 2 * 0.25 * (2.25 * y * y + others);
      expanded =
          2 / 0.5 * Math.sqrt(ofNewMm * ofNewMm / 3 + (lengths + heights) * 1.5875 * 1.5875 / 12);
    }
    return expanded;
  }

  @ParameterizedTest
  @ValueSource(strings = {"leaning-stop-one", "leaning-stop-two"})
  void a_leaning_stop_is_solid_within_what_is_said_of_it(String book) throws Exception {
    JsonNode solid = corner(book).at("/bump/stopMm");
    // By hand, the stop leaning by 20° and crushed by 40: 99.0 mm beyond its touch at nothing.
    double U = solid.get("U").asDouble();
    assertEquals(99.0, solid.get("value").asDouble(), U);
    assertTrue(U < 9, "an interval that covers everything says nothing: " + U);
  }

  @Test
  void what_touches_on_the_strap_itself_is_past_its_rule() throws Exception {
    JsonNode limit = corner("touches-on-strap").at("/droop/limits/0");
    // By hand: strap and touch are one height, whose position cancels: 0 ± 0 past the touch.
    assertEquals("bracket", limit.get("found").asText());
    assertEquals("short", limit.get("outcome").asText());
  }

  /** What figures say of the one corner of a book. */
  private static JsonNode corner(String book) throws Exception {
    JsonNode all = new ObjectMapper().readTree(Figures.of(BOOKS.resolve(book + ".jsonl"), t -> {}));
    assertEquals(1, all.at("/cars/0/corners").size(), all.toPrettyString());
    JsonNode corner = all.at("/cars/0/corners/0");
    assertFalse(corner.toString().contains("could not be worked out"), corner.toPrettyString());
    return corner;
  }
}
