package spindlebook.alignment;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import spindlebook.curve.Bound;
import spindlebook.curve.Node;
import spindlebook.definition.RackSide;
import spindlebook.uncertainty.Figure;

/** bump_steer.json against the program: fits, ranges, estimates, signs. */
class BumpSteerReferenceTest {
  private static final JsonNode FILE = Reference.bumpSteer();
  private static final List<JsonNode> CASES = Reference.rows(FILE.get("cases"));

  @Test
  void there_are_six_cases_ten_signs_and_one_double_cure() {
    assertEquals(6, CASES.size());
    assertEquals(10, FILE.get("sign_rules").get("rows").size());
    assertEquals(1, FILE.get("two_parameter_fix").size());
  }

  @Test
  void fits_of_degree_one_to_three_on_three_windows_are_met() {
    int checked = 0;
    for (JsonNode fault : CASES) {
      for (JsonNode fit : fault.get("fits")) {
        double[] window = Reference.numbers(fit.get("window"));
        JsonNode table = fault.get(window[1] > 200 ? "table_wide" : "table");
        List<double[]> inside = inside(table, window);
        assertEquals(fit.get("n").intValue(), inside.size());
        PolynomialFit found =
            new PolynomialFit(column(inside, 0), column(inside, 1), fit.get("degree").intValue());
        double[] wanted = Reference.numbers(fit.get("coef_increasing_powers"));
        double[] got = {found.value(0), found.slope(0), found.curvature(0) / 2};
        for (int k = 0; k < Math.min(3, wanted.length); k++) {
          assertEquals(wanted[k], got[k], 1e-8 * Math.abs(wanted[k]));
        }
        if (wanted.length == 4) {
          double cubic = (found.curvature(1) - found.curvature(0)) / 6;
          assertEquals(wanted[3], cubic, 1e-7 * Math.abs(wanted[3]));
        }
        assertEquals(fit.get("residual_sd").doubleValue(), found.residualSd(), 1e-10);
        checked++;
      }
    }
    assertEquals(54, checked);
  }

  @Test
  void the_range_over_a_window_is_that_of_the_table() {
    for (JsonNode fault : CASES) {
      BumpSteer steer = new BumpSteer(nodes(fault.get("table")));
      assertEquals(
          fault.get("p2p_table_120").doubleValue(),
          rangeDegrees(steer, new Window(-120, 120)),
          1e-7);
      assertEquals(
          fault.get("p2p_table_80").doubleValue(), rangeDegrees(steer, new Window(-80, 80)), 1e-7);
      ToeRange wider = steer.range(new Window(-200, 100)).orElseThrow();
      assertFalse(wider.readThroughout());
      assertEquals(new Window(-120, 100), wider.read());
    }
  }

  @Test
  void slope_and_bend_from_five_places_two_millimetres_apart_are_the_exact_ones() {
    for (JsonNode fault : CASES) {
      RigidCorner corner = corner(fault);
      List<Node> nodes = new ArrayList<>();
      for (double z : new double[] {-4, -2, 0, 2, 4}) {
        nodes.add(node(z, corner.toe(z)));
      }
      BumpShape shape = new BumpSteer(nodes).shape(new Window(-5, 5), 0).orElseThrow();
      double slope = fault.get("slope_at_ride_exact_deg_per_mm").doubleValue();
      double bend = fault.get("curvature_at_ride_deg_per_mm2").doubleValue();
      assertEquals(slope, Math.toDegrees(shape.slope().value()), 1e-8);
      assertEquals(bend, Math.toDegrees(shape.curvature().value()), 1e-4 * Math.abs(bend));
    }
  }

  @Test
  void a_tried_shim_gives_the_linear_estimate_of_the_cure() {
    for (JsonNode fault : CASES) {
      double slope = fault.get("slope_at_ride_exact_deg_per_mm").doubleValue();
      double perMm = fault.get("d_slope_d_outer_up_deg_per_mm_per_mm").doubleValue();
      Figure more =
          ShimTried.moreMm(Figure.exact(slope - perMm), Figure.exact(slope), 1).orElseThrow();
      double wanted = fault.get("linear_estimate_of_fix_mm").doubleValue();
      assertEquals(wanted, more.value(), 1e-9);
    }
  }

  @Test
  void totals_to_the_sixteenth_are_those_of_the_table() {
    int checked = 0;
    for (JsonNode fault : CASES) {
      double[] toe = Reference.numbers(fault.get("table").get("toe_in_deg"));
      double[] total =
          Reference.numbers(fault.get("table").get("total_toe_in_quantised_1_16in_mm_D838"));
      for (int i = 0; i < toe.length; i++) {
        Toe wheel = new Toe(Figure.exact(Math.toRadians(toe[i])));
        double mm = 2 * wheel.mm(838.2).value();
        assertEquals(total[i], Math.rint(mm / 1.5875) * 1.5875, 1e-9);
        checked++;
      }
    }
    assertEquals(150, checked);
  }

  @Test
  void each_sign_means_the_fault_that_made_it() {
    for (JsonNode row : FILE.get("sign_rules").get("rows")) {
      RackSide rack =
          row.get("where").asText().contains("BEHIND")
              ? RackSide.BEHIND_AXLE
              : RackSide.AHEAD_OF_AXLE;
      TieRodFault height = TieRodFault.ofSlope(row.get("d_slope").doubleValue(), rack);
      TieRodFault length = TieRodFault.ofCurvature(row.get("d_curvature").doubleValue(), rack);
      switch (row.get("error").asText()) {
        case "a_outer_up_6" -> assertEquals(TieRodFault.OUTER_TOO_HIGH, height);
        case "a_outer_down_6" -> assertEquals(TieRodFault.OUTER_TOO_LOW, height);
        case "b_longer_inner_in_15" -> assertEquals(TieRodFault.TOO_LONG, length);
        case "b_shorter_inner_out_15" -> assertEquals(TieRodFault.TOO_SHORT, length);
        case "c_both_up6_in15" -> {
          assertEquals(TieRodFault.OUTER_TOO_HIGH, height);
          assertEquals(TieRodFault.TOO_LONG, length);
        }
        default -> throw new AssertionError("unknown fault " + row);
      }
    }
  }

  @Test
  void the_rack_taken_to_be_on_the_other_side_turns_every_meaning_round() {
    assertEquals(TieRodFault.OUTER_TOO_LOW, TieRodFault.ofSlope(-0.004, RackSide.AHEAD_OF_AXLE));
    assertEquals(TieRodFault.TOO_SHORT, TieRodFault.ofCurvature(3e-5, RackSide.AHEAD_OF_AXLE));
  }

  @Test
  void the_named_faults_are_read_off_their_tables() {
    String[][] wanted = {
      {"a_outer_up_6", "OUTER_TOO_HIGH"},
      {"a_outer_down_6", "OUTER_TOO_LOW"},
      {"b_longer_inner_in_15", "OUTER_TOO_HIGH"},
      {"b_shorter_inner_out_15", "TOO_SHORT"},
      {"c_both_up6_in15", "OUTER_TOO_HIGH"}
    };
    for (String[] pair : wanted) {
      JsonNode fault =
          CASES.stream().filter(c -> c.get("id").asText().endsWith(pair[0])).findFirst().get();
      BumpShape shape =
          new BumpSteer(nodes(fault.get("table"))).shape(new Window(-120, 120), 0).orElseThrow();
      List<FaultSeen> said = ShapeMeaning.of(shape, RackSide.BEHIND_AXLE).said();
      assertEquals(TieRodFault.valueOf(pair[1]), said.get(0).fault(), pair[0]);
      assertTrue(said.get(0).sureness() == FaultSeen.Sureness.PLAIN);
    }
  }

  private static double rangeDegrees(BumpSteer steer, Window window) {
    return Math.toDegrees(steer.range(window).orElseThrow().rad().value());
  }

  private static List<Node> nodes(JsonNode table) {
    double[] z = Reference.numbers(table.get("z"));
    double[] toe = Reference.numbers(table.get("toe_in_deg"));
    List<Node> nodes = new ArrayList<>();
    for (int i = 0; i < z.length; i++) {
      nodes.add(node(z[i], Math.toRadians(toe[i])));
    }
    return nodes;
  }

  static RigidCorner corner(JsonNode fault) {
    return RigidCorner.of(ReferenceCorner.G1)
        .withRod(Reference.point(fault.get("TI")), Reference.point(fault.get("TO")));
  }

  private static Node node(double z, double toeRad) {
    return new Node(Figure.exact(z), Figure.exact(toeRad), Bound.EXACT, List.of("toe at " + z));
  }

  private static List<double[]> inside(JsonNode table, double[] window) {
    double[] z = Reference.numbers(table.get("z"));
    double[] toe = Reference.numbers(table.get("toe_in_deg"));
    List<double[]> inside = new ArrayList<>();
    for (int i = 0; i < z.length; i++) {
      if (z[i] >= window[0] && z[i] <= window[1]) {
        inside.add(new double[] {z[i], toe[i]});
      }
    }
    return inside;
  }

  private static double[] column(List<double[]> rows, int k) {
    return rows.stream().mapToDouble(row -> row[k]).toArray();
  }
}
