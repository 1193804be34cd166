package spindlebook.travel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static spindlebook.travel.Readings.exact;
import static spindlebook.travel.Readings.read;
import static spindlebook.travel.Readings.touches;
import static spindlebook.travel.Readings.wellClear;
import static spindlebook.uncertainty.TravelReference.numbers;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import spindlebook.curve.Bound;
import spindlebook.curve.Node;
import spindlebook.curve.Rule;
import spindlebook.curve.ShapePreservingCubic;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.TravelReference;

/** Source: reference/travel.json for crossings; the rest worked out by hand from design's rules. */
class RuleAlongTravelTest {
  private static final Rule AT_LEAST_12 = new Rule.AtLeast(12);

  static Stream<JsonNode> tablesWithOneCrossing() {
    return TravelReference.each(TravelReference.travel().at("/gap_tables/tables"))
        .filter(table -> table.get("status").asText().equals("one crossing"));
  }

  @ParameterizedTest
  @MethodSource("tablesWithOneCrossing")
  void a_gap_that_opens_towards_bump_limits_droop_where_the_reference_says(JsonNode table) {
    Rule rule = new Rule.AtLeast(table.get("required_gap_mm").doubleValue());
    List<Node> nodes = exact(numbers(table.get("height_mm")), numbers(table.get("gap_mm")));
    Along along = RuleAlongTravel.along(nodes, rule);
    EndLimit.Crosses droop = assertInstanceOf(EndLimit.Crosses.class, along.droop());
    assertEquals(EndLimit.How.CUBIC, droop.how());
    assertEquals(
        table.at("/pchip_fritsch_butland/crossings/0").doubleValue(),
        droop.positionMm().value(),
        1e-9);
    assertEquals(table.at("/linear_crossings/0").doubleValue(), droop.aboutMm(), 1e-9);
    assertEquals(droop.positionMm().value(), droop.surelyKeptMm(), 1e-9, "nothing is doubted");
    assertInstanceOf(EndLimit.KeptTo.class, along.bump());
    assertEquals(List.of(), along.midTravel());
  }

  @Test
  void several_crossings_are_an_end_limit_and_a_shortfall_in_mid_travel() {
    JsonNode table = table("multiple_crossing");
    List<Node> nodes = exact(numbers(table.get("height_mm")), numbers(table.get("gap_mm")));
    Along along = RuleAlongTravel.along(nodes, new Rule.AtLeast(12.7));
    double[] crossings = numbers(table.at("/pchip_fritsch_butland/crossings"));
    double[] straight = numbers(table.get("linear_crossings"));
    assertInstanceOf(EndLimit.KeptTo.class, along.droop());
    EndLimit.Crosses bump = (EndLimit.Crosses) along.bump();
    assertEquals(crossings[2], bump.positionMm().value(), 1e-9);
    assertEquals(straight[2], bump.aboutMm(), 1e-9);
    Shortfall shortfall = along.midTravel().get(0);
    assertEquals(1, along.midTravel().size());
    assertEquals(crossings[0], shortfall.fromMm().value(), 1e-9);
    assertEquals(crossings[1], shortfall.toMm().value(), 1e-9);
    assertEquals(8, shortfall.worst().value());
    assertEquals(List.of("@-150.0", "@-100.0"), shortfall.readings());
  }

  @Test
  void no_crossing_is_kept_to_the_last_reading_and_not_extrapolated() {
    JsonNode table = table("no_crossing_all_above");
    List<Node> nodes = exact(numbers(table.get("height_mm")), numbers(table.get("gap_mm")));
    Along along = RuleAlongTravel.along(nodes, new Rule.AtLeast(12.7));
    EndLimit.KeptTo droop = (EndLimit.KeptTo) along.droop();
    assertEquals(-200, droop.positionMm().value());
    assertEquals(OptionalDouble.of(-200), droop.surelyKeptMm());
    assertEquals(0, ((EndLimit.KeptTo) along.bump()).positionMm().value());
  }

  @Test
  void a_broken_rule_at_every_reading_is_said_so() {
    Along along = RuleAlongTravel.along(List.of(exact(0, 5), touches(50)), AT_LEAST_12);
    assertEquals(new EndLimit.BrokenThroughout(List.of("@0.0", "@50.0")), along.droop());
    assertEquals(along.droop(), along.bump());
  }

  @Test
  void nothing_read_is_not_read() {
    assertEquals(
        new EndLimit.NotRead(List.of()), RuleAlongTravel.along(List.of(), AT_LEAST_12).droop());
    Along thinDrill = RuleAlongTravel.along(List.of(wellClear(0, 3)), AT_LEAST_12);
    assertEquals(
        new EndLimit.NotRead(List.of()), thinDrill.bump(), "a thin drill that goes tells nothing");
  }

  @Test
  void two_readings_are_a_bracket_planned_from_the_clearer_end() {
    Along along = RuleAlongTravel.along(List.of(exact(-200, 4), exact(-100, 20)), AT_LEAST_12);
    EndLimit.Crosses droop = (EndLimit.Crosses) along.droop();
    assertEquals(EndLimit.How.BRACKET, droop.how());
    assertEquals(-100, droop.positionMm().value());
    assertEquals(-150, droop.aboutMm(), 1e-12);
    assertEquals(-200, droop.surelyBrokenMm());
    assertEquals(List.of("@-100.0", "@-200.0"), droop.readings());
  }

  @Test
  void well_clear_ends_a_bracket_and_never_enters_the_cubic() {
    List<Node> nodes =
        List.of(exact(-200, 4), wellClear(-150, 12), exact(-100, 20), exact(0, 30), exact(50, 33));
    EndLimit.Crosses droop = (EndLimit.Crosses) RuleAlongTravel.along(nodes, AT_LEAST_12).droop();
    assertEquals(EndLimit.How.BRACKET, droop.how());
    assertEquals(-150, droop.positionMm().value());
    assertTrue(Double.isNaN(droop.aboutMm()));

    List<Node> withFarClear = new ArrayList<>(nodes);
    withFarClear.set(1, wellClear(20, 12));
    List<Node> without = new ArrayList<>(nodes);
    without.remove(1);
    assertEquals(
        RuleAlongTravel.along(without, AT_LEAST_12).droop(),
        RuleAlongTravel.along(withFarClear, AT_LEAST_12).droop());
  }

  @Test
  void a_touch_of_metal_makes_a_limit_planned_from_the_next_reading() {
    List<Node> nodes = List.of(touches(-200), exact(-150, 15), exact(-50, 20), exact(0, 25));
    EndLimit.Crosses droop = (EndLimit.Crosses) RuleAlongTravel.along(nodes, AT_LEAST_12).droop();
    assertEquals(-150, droop.positionMm().value());
    assertEquals(-200, droop.surelyBrokenMm());
  }

  @Test
  void a_touch_outweighs_a_number_at_the_same_place() {
    List<Node> nodes = List.of(exact(-100, 20), exact(0, 14), exact(100, 25), exact(150, 26));
    List<Node> alsoTouching = new ArrayList<>(nodes);
    alsoTouching.add(touches(0));
    assertEquals(List.of(), RuleAlongTravel.along(nodes, AT_LEAST_12).midTravel());
    Shortfall shortfall = RuleAlongTravel.along(alsoTouching, AT_LEAST_12).midTravel().get(0);
    assertEquals(-100, shortfall.fromMm().value());
    assertEquals(100, shortfall.toMm().value());
    List<Node> alsoClear = List.of(exact(-100, 5), wellClear(-100, 12), exact(0, 14), exact(9, 15));
    EndLimit.Crosses droop =
        (EndLimit.Crosses) RuleAlongTravel.along(alsoClear, AT_LEAST_12).droop();
    assertTrue(droop.positionMm().value() > -100, "well clear does not outweigh a short number");
  }

  @Test
  void well_clear_between_two_touches_is_kept_there_and_limits_both_ends() {
    Along along =
        RuleAlongTravel.along(List.of(touches(-200), wellClear(-50, 12), touches(60)), AT_LEAST_12);
    EndLimit.Crosses droop = assertInstanceOf(EndLimit.Crosses.class, along.droop());
    EndLimit.Crosses bump = assertInstanceOf(EndLimit.Crosses.class, along.bump());
    assertEquals(-50, droop.positionMm().value());
    assertEquals(-200, droop.brokenMm().value());
    assertEquals(-50, bump.positionMm().value());
    assertEquals(60, bump.brokenMm().value());
  }

  @Test
  void a_touch_of_the_limit_is_no_crossing() {
    Along fromAbove =
        RuleAlongTravel.along(List.of(exact(-50, 20), exact(0, 12), exact(50, 20)), AT_LEAST_12);
    assertInstanceOf(EndLimit.KeptTo.class, fromAbove.droop());
    Along fromBelow =
        RuleAlongTravel.along(List.of(exact(-50, 5), exact(0, 12), exact(50, 5)), AT_LEAST_12);
    assertInstanceOf(EndLimit.BrokenThroughout.class, fromBelow.droop());
  }

  @Test
  void a_plateau_at_the_limit_keeps_the_rule() {
    List<Node> nodes =
        List.of(exact(-100, 5), exact(-50, 12), exact(0, 12), exact(50, 5), exact(90, 2));
    Along along = RuleAlongTravel.along(nodes, AT_LEAST_12);
    assertEquals(-50, ((EndLimit.Crosses) along.droop()).positionMm().value(), 1e-9);
    assertEquals(0, ((EndLimit.Crosses) along.bump()).positionMm().value(), 1e-9);
  }

  @Test
  void an_angle_that_grows_towards_both_ends_limits_both() {
    double[] positions = {-200, -100, 0, 100, 200};
    double[] angles = {30, 20, 10, 20, 30};
    Along along = RuleAlongTravel.along(exact(positions, angles), new Rule.AtMost(25));
    EndLimit.Crosses droop = (EndLimit.Crosses) along.droop();
    EndLimit.Crosses bump = (EndLimit.Crosses) along.bump();
    assertEquals(-150, droop.aboutMm(), 1e-12);
    assertEquals(-droop.positionMm().value(), bump.positionMm().value(), 1e-9);
    assertTrue(droop.positionMm().value() < -100 && droop.positionMm().value() > -200);
  }

  @Test
  void turning_the_sense_of_value_and_rule_changes_nothing() {
    List<Node> gaps = new ArrayList<>();
    List<Node> angles = new ArrayList<>();
    double[] values = {3, 9, 16, 24, 11, 4};
    for (int i = 0; i < values.length; i++) {
      gaps.add(read(50 * i, 0.4, values[i], 0.3));
      angles.add(
          new Node(
              gaps.get(i).positionMm(),
              gaps.get(i).value().times(-1),
              Bound.EXACT,
              gaps.get(i).readings()));
    }
    Along gap = RuleAlongTravel.along(gaps, AT_LEAST_12);
    Along angle = RuleAlongTravel.along(angles, new Rule.AtMost(-12));
    for (boolean droop : new boolean[] {true, false}) {
      EndLimit.Crosses one = (EndLimit.Crosses) (droop ? gap.droop() : gap.bump());
      EndLimit.Crosses other = (EndLimit.Crosses) (droop ? angle.droop() : angle.bump());
      assertEquals(one.positionMm().value(), other.positionMm().value(), 1e-12);
      assertEquals(one.positionMm().u(), other.positionMm().u(), 1e-9);
      assertEquals(one.surelyKeptMm(), other.surelyKeptMm(), 1e-12);
      assertEquals(one.surelyBrokenMm(), other.surelyBrokenMm(), 1e-12);
    }
  }

  @Test
  void kept_to_the_last_reading_says_how_far_it_is_surely_kept() {
    List<Node> nodes =
        List.of(
            read(-200, 0, 12.5, 0.5), read(-100, 0, 16, 0.5), read(0, 0, 22, 0.5), exact(50, 25));
    EndLimit.KeptTo droop = (EndLimit.KeptTo) RuleAlongTravel.along(nodes, AT_LEAST_12).droop();
    double surely = droop.surelyKeptMm().getAsDouble();
    assertEquals(-200, droop.positionMm().value());
    assertTrue(surely > -200 && surely < -100);
    double[] x = {-200, -100, 0, 50};
    assertEquals(
        13,
        new ShapePreservingCubic(x, new double[] {12.5, 16, 22, 25}).value(surely),
        1e-9,
        "limit and U, all U being 1 there");
    List<Node> near = List.of(read(-200, 0, 12.5, 0.5), read(-100, 0, 12.7, 0.5));
    EndLimit.KeptTo nowhere = (EndLimit.KeptTo) RuleAlongTravel.along(near, AT_LEAST_12).droop();
    assertEquals(OptionalDouble.empty(), nowhere.surelyKeptMm());
  }

  @Test
  void the_order_in_which_nodes_arrive_does_not_matter() {
    List<Node> nodes = List.of(exact(0, 20), exact(-200, 4), exact(100, 30), exact(-100, 15));
    List<Node> sorted = List.of(nodes.get(1), nodes.get(3), nodes.get(0), nodes.get(2));
    assertEquals(
        RuleAlongTravel.along(sorted, AT_LEAST_12), RuleAlongTravel.along(nodes, AT_LEAST_12));
  }

  @Test
  void a_figure_with_a_mark_keeps_its_mark_in_a_bracket() {
    Node kept = Readings.node(Figure.of(-100, Readings.MARK, 0.4), Figure.exact(20), Bound.EXACT);
    Node broken = Readings.node(Figure.of(-200, Readings.MARK, 0.4), Figure.exact(4), Bound.EXACT);
    EndLimit.Crosses droop =
        (EndLimit.Crosses) RuleAlongTravel.along(List.of(kept, broken), AT_LEAST_12).droop();
    assertEquals(kept.positionMm(), droop.positionMm());
  }

  private static JsonNode table(String id) {
    return TravelReference.each(TravelReference.travel().at("/gap_tables/tables"))
        .filter(table -> table.get("id").asText().equals(id))
        .findFirst()
        .orElseThrow();
  }
}
