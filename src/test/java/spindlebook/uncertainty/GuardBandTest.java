package spindlebook.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Source: reference/travel.json, after ISO 14253-1 (guard band U), from memory. */
class GuardBandTest {
  private static final Map<String, Outcome> WORDS =
      Map.of("pass", Outcome.CLEAR, "fail", Outcome.SHORT, "undecided", Outcome.CANT_TELL);

  static Stream<JsonNode> decisions() {
    return TravelReference.each(TravelReference.travel().at("/decision/cases"));
  }

  @ParameterizedTest
  @MethodSource("decisions")
  void a_decision_is_the_reference_one(JsonNode row) {
    double y = row.get("y").doubleValue();
    double expanded = row.get("U").doubleValue();
    JsonNode lower = row.get("lower");
    JsonNode upper = row.get("upper");
    Outcome decision;
    if (upper.isNull()) {
      decision = GuardBand.atLeast(y, expanded, lower.doubleValue());
    } else if (lower.isNull()) {
      decision = GuardBand.atMost(y, expanded, upper.doubleValue());
    } else {
      decision = GuardBand.between(y, expanded, lower.doubleValue(), upper.doubleValue());
    }
    assertEquals(WORDS.get(row.get("decision").asText()), decision, row.toString());
  }

  @Test
  void the_ends_of_the_band_are_closed_as_the_worked_example_says() {
    assertEquals(Outcome.CLEAR, GuardBand.atLeast(11.5, 1.5, 10));
    assertEquals(Outcome.CANT_TELL, GuardBand.atLeast(11.4375, 1.5, 10));
    assertEquals(Outcome.CANT_TELL, GuardBand.atLeast(8.5, 1.5, 10));
    assertEquals(Outcome.SHORT, GuardBand.atLeast(8.4375, 1.5, 10));
    assertEquals(Outcome.CLEAR, GuardBand.atMost(8.5, 1.5, 10));
    assertEquals(Outcome.CANT_TELL, GuardBand.atMost(11.5, 1.5, 10));
    assertEquals(Outcome.SHORT, GuardBand.atMost(11.5625, 1.5, 10));
  }

  @Test
  void without_doubt_the_limit_itself_is_clear() {
    assertEquals(Outcome.CLEAR, GuardBand.between(Figure.exact(4), 4, 6));
    assertEquals(Outcome.CLEAR, GuardBand.between(Figure.exact(6), 4, 6));
    assertEquals(Outcome.SHORT, GuardBand.atMost(Figure.exact(Math.nextUp(6.0)), 6));
  }

  @Test
  void a_figure_is_judged_with_k_2() {
    Figure y = Figure.of(11.5, new Source("tape", SourceKind.TOOL), 0.75);
    assertEquals(Outcome.CLEAR, GuardBand.atLeast(y, 10));
    assertEquals(Outcome.CANT_TELL, GuardBand.atLeast(y, 10.0625));
    assertEquals(Outcome.SHORT, GuardBand.atLeast(y, 13.0625));
  }

  @Test
  void limits_the_wrong_way_round_are_refused() {
    assertThrows(IllegalArgumentException.class, () -> GuardBand.between(1, 0.1, 6, 4));
    assertThrows(IllegalArgumentException.class, () -> GuardBand.atLeast(1, -0.1, 6));
  }
}
