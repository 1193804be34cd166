package spindlebook.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Source: reference/travel.json, computed outside this program after JCGM 100:2008. */
class UncertaintyBudgetTest {
  private static final double RELATIVE = 1e-12;

  static Stream<JsonNode> budgets() {
    return TravelReference.each(TravelReference.travel().at("/uncertainty/cases"));
  }

  @ParameterizedTest
  @MethodSource("budgets")
  void a_budget_of_independent_inputs_combines_as_the_reference_says(JsonNode budget) {
    List<Figure> inputs = new ArrayList<>();
    List<Double> coefficients = new ArrayList<>();
    double value = 0;
    for (JsonNode component : budget.get("components")) {
      double input = component.get("value_mm").doubleValue();
      double coefficient = component.get("coeff").doubleValue();
      Source own = new Source(component.get("name").asText(), SourceKind.PLACING);
      inputs.add(Figure.of(input, own, component.get("u_mm").doubleValue()));
      coefficients.add(coefficient);
      value += coefficient * input;
    }
    double[] sensitivities = coefficients.stream().mapToDouble(c -> c).toArray();
    Figure y = Figure.linear(value, inputs, sensitivities);
    near(budget.get("y_mm").doubleValue(), y.value());
    near(budget.get("u_c_mm").doubleValue(), y.u());
    near(budget.get("U_mm").doubleValue(), y.U());
    assertEquals(budget.get("k").doubleValue(), Figure.K);
  }

  @Test
  void a_tape_placed_to_a_thirty_second_has_the_reference_uncertainty() {
    JsonNode uncertainty = TravelReference.travel().get("uncertainty");
    double u = Rectangular.u(uncertainty.get("a_mm").doubleValue());
    near(uncertainty.get("u_read_mm").doubleValue(), u);
    Figure one = Figure.of(671.5125, new Source("bump", SourceKind.PLACING), u);
    Figure other = Figure.of(288.925, new Source("droop", SourceKind.PLACING), u);
    near(uncertainty.get("u_diff_mm").doubleValue(), one.minus(other).u());
    near(uncertainty.get("U_diff_k2_mm").doubleValue(), one.minus(other).U());
    near(uncertainty.get("U_diff_k2_in").doubleValue(), one.minus(other).U() / 25.4);
  }

  @Test
  void a_graduation_of_a_sixteenth_is_as_doubtful_as_a_half_width_of_a_thirty_second() {
    near(Rectangular.u(25.4 / 32), Rectangular.resolutionU(25.4 / 16));
    assertEquals(0.4583, Rectangular.resolutionU(1.5875), 5e-5);
  }

  private static void near(double expected, double actual) {
    assertEquals(expected, actual, RELATIVE * Math.abs(expected));
  }
}
