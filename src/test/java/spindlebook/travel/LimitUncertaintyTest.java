package spindlebook.travel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static spindlebook.travel.Readings.CALIPER;
import static spindlebook.travel.Readings.MARK;
import static spindlebook.travel.Readings.own;
import static spindlebook.travel.Readings.read;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import spindlebook.curve.Bound;
import spindlebook.curve.MeasuredCurve;
import spindlebook.curve.Node;
import spindlebook.curve.Rule;
import spindlebook.curve.ShapePreservingCubicTest;
import spindlebook.uncertainty.Figure;

/**
 * Source: derived in docs/methods.md; checked by moving the readings and looking again, the worked
 * example by scipy (PchipInterpolator, brentq).
 */
class LimitUncertaintyTest {
  @Test
  void the_worked_example_has_the_uncertainty_of_the_docstring() {
    List<Node> nodes =
        List.of(read(-120, 0, 4, 0.25), read(-20, 0, 15, 0.25), read(60, 0, 31, 0.25));
    EndLimit.Crosses droop = droop(nodes, 12.7);
    assertEquals(-36.40, droop.positionMm().value(), 5e-3);
    assertEquals(-40.91, droop.aboutMm(), 5e-3);
    assertEquals(-33.20, droop.surelyKeptMm(), 5e-3);
    assertEquals(-39.45, droop.surelyBrokenMm(), 5e-3);
    assertEquals(6.23, droop.positionMm().U(), 5e-3);
  }

  @Test
  void a_mark_error_shared_by_all_positions_moves_the_limit_one_to_one() {
    Random random = new Random(3);
    for (int run = 0; run < 200; run++) {
      List<Node> nodes = opening(random, 0);
      List<Node> moved =
          nodes.stream()
              .map(n -> new Node(n.positionMm().plus(1.25), n.value(), n.bound(), n.readings()))
              .toList();
      Figure limit = droop(nodes, 12.7).positionMm();
      assertEquals(limit.value() + 1.25, droop(moved, 12.7).positionMm().value(), 1e-9);
      assertEquals(0.4, limit.parts().get(MARK), 1e-7);
      Figure ride = own("ride", 3, 0.2).plus(Figure.of(0, MARK, 0.4));
      assertEquals(0, ride.minus(limit).parts().getOrDefault(MARK, 0.0), 1e-7);
    }
  }

  @Test
  void a_tool_error_shared_by_all_gaps_moves_the_limit_by_error_over_slope() {
    Random random = new Random(4);
    for (int run = 0; run < 200; run++) {
      List<Node> nodes = opening(random, 0);
      Figure limit = droop(nodes, 12.7).positionMm();
      double slope = MeasuredCurve.through(nodes).cubic().slope(limit.value());
      assertEquals(-0.1 / slope, limit.parts().get(CALIPER), 1e-6 / slope);
    }
  }

  @Test
  void each_reading_moves_the_limit_as_its_part_says() {
    Random random = new Random(5);
    for (int run = 0; run < 50; run++) {
      List<Node> nodes = opening(random, 0);
      Figure limit = droop(nodes, 12.7).positionMm();
      for (int i = 0; i < nodes.size(); i++) {
        Node node = nodes.get(i);
        List<Node> gapMoved = new ArrayList<>(nodes);
        gapMoved.set(
            i, new Node(node.positionMm(), node.value().plus(1e-4), Bound.EXACT, List.of()));
        double byGap = (droop(gapMoved, 12.7).positionMm().value() - limit.value()) / 1e-4;
        assertEquals(0.3 * byGap, part(limit, "gap " + i), 2e-3);
        List<Node> heightMoved = new ArrayList<>(nodes);
        heightMoved.set(
            i, new Node(node.positionMm().plus(1e-4), node.value(), Bound.EXACT, List.of()));
        double byHeight = (droop(heightMoved, 12.7).positionMm().value() - limit.value()) / 1e-4;
        assertEquals(0.2 * byHeight, part(limit, "height " + i), 2e-3);
      }
    }
  }

  @Test
  void the_uncertainty_is_never_less_than_half_of_value_and_u_turned_into_positions() {
    Random random = new Random(6);
    for (int run = 0; run < 300; run++) {
      List<Node> nodes = opening(random, 2.5);
      EndLimit end = RuleAlongTravel.along(nodes, new Rule.AtLeast(12.7)).droop();
      if (end instanceof EndLimit.Crosses droop && droop.how() == EndLimit.How.CUBIC) {
        double at = droop.positionMm().value();
        double expanded = droop.positionMm().U() + 1e-9;
        assertTrue(Double.isNaN(droop.surelyKeptMm()) || droop.surelyKeptMm() >= at);
        assertTrue(Double.isNaN(droop.surelyBrokenMm()) || droop.surelyBrokenMm() <= at);
        assertTrue(!((droop.surelyKeptMm() - droop.surelyBrokenMm()) / 2 > expanded));
        assertTrue(Math.abs(at - droop.aboutMm()) / Math.sqrt(3) * 2 <= expanded);
      }
    }
  }

  @Test
  void readings_alike_but_for_the_last_digits_meet_the_rule_anywhere_between_them() {
    List<Node> nodes =
        List.of(
            read(-120, 0, Math.nextDown(12.7), 0.25),
            read(-20, 0, 12.7, 0.25),
            read(60, 0, 12.7, 0.25));
    // By hand: met in the first 100 mm, perhaps at 60: 180 at most, and the line's 100 beside it.
    double U = droop(nodes, 12.7).positionMm().U();
    assertTrue(U >= 80 && U <= Math.hypot(180, 2 * 100 / Math.sqrt(3)), "U " + U);
  }

  @Test
  void a_limit_next_to_a_turning_reading_keeps_a_bounded_uncertainty() {
    List<Node> nodes =
        List.of(read(-100, 0.3, 12.699, 0.4), read(0, 0.3, 12.71, 0.4), read(100, 0.3, 12.70, 0.4));
    EndLimit.Crosses droop = droop(nodes, 12.7);
    assertTrue(Double.isNaN(droop.surelyKeptMm()), "no reading keeps the rule by its U");
    assertTrue(Double.isNaN(droop.surelyBrokenMm()));
    assertTrue(droop.positionMm().U() > 100, "the whole stretch is doubtful");
    assertTrue(Double.isFinite(droop.positionMm().U()));
  }

  private static double part(Figure figure, String id) {
    return figure.parts().entrySet().stream()
        .filter(part -> part.getKey().id().equals(id))
        .mapToDouble(part -> part.getValue())
        .sum();
  }

  private static EndLimit.Crosses droop(List<Node> nodes, double limit) {
    return (EndLimit.Crosses) RuleAlongTravel.along(nodes, new Rule.AtLeast(limit)).droop();
  }

  /**
   * A gap that opens towards bump, from under 12.7 mm to above it, with noise of the given size.
   */
  private static List<Node> opening(Random random, double noise) {
    double[] x = ShapePreservingCubicTest.positions(random, 4 + random.nextInt(4));
    List<Node> nodes = new ArrayList<>();
    double gap = 1 + 8 * random.nextDouble();
    for (int i = 0; i < x.length; i++) {
      Figure position = own("height " + i, x[i], 0.2).withSource(MARK, 0.4);
      double value = gap + noise * random.nextGaussian();
      Figure read = own("gap " + i, value, 0.3).withSource(CALIPER, 0.1);
      nodes.add(new Node(position, read, Bound.EXACT, List.of("reading " + i)));
      gap += 5 + 20 * random.nextDouble();
    }
    return nodes;
  }
}
