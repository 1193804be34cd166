package spindlebook.travel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import spindlebook.curve.Bound;
import spindlebook.curve.Node;
import spindlebook.curve.Rule;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Outcome;
import spindlebook.uncertainty.Settles;
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;

/** What would settle a limit on the curve; hand calculation, no table outside. */
class ReadOtherwiseTest {
  /** A gap opening by 0.2 per mm that meets 6 at 230, read at four heights. */
  private static Limit droop(double stopMm, double placing, double steps, double tool) {
    List<Node> nodes = new ArrayList<>();
    for (double z : new double[] {180, 220, 260, 300}) {
      Figure gap =
          Figure.exact(6 + 0.2 * (z - 230))
              .withSource(new Source("g" + z, SourceKind.PLACING), placing)
              .withSource(new Source("g" + z, SourceKind.RESOLUTION), steps)
              .withSource(new Source("shanks", SourceKind.TOOL), tool);
      nodes.add(new Node(Figure.exact(z), gap, Bound.EXACT, List.of("g" + z)));
    }
    Rule rule = new Rule.AtLeast(6);
    EndLimit at = RuleAlongTravel.along(nodes, rule).droop();
    RuleReadings of = new RuleReadings(Limit.Kind.SHOCK, null, null, null, rule, nodes);
    CornerLimits.Found found = new CornerLimits.Found(of, at, null, List.of());
    return Judged.of(End.DROOP, found, Figure.exact(stopMm));
  }

  @Test
  void a_band_that_placing_made_narrows_with_repeats() {
    // By hand: a quarter of the way from 220 to 260 the curve weighs the four gaps by −0.0703,
    // 0.8672,
    // 0.2266, −0.0234, in all 0.8994 of one; U 0.8994 · 1.0/0.2 = 4.4968, at a room of 3: 4.4968/√2
    // =
    // 3.18, 4.4968/√3 = 2.60.
    Limit limit = droop(233, 0.5, 0, 0);
    assertEquals(Outcome.CANT_TELL, limit.outcome());
    assertEquals(5 * Math.sqrt(0.808838), limit.roomMm().U(), 1e-5);
    assertEquals(new Settles.Repeats(3), limit.settles());
    assertEquals(new Settles.Repeats(3), droop(227, 0.5, 0, 0).settles());
  }

  @Test
  void a_band_that_the_steps_made_wants_a_finer_scale() {
    assertEquals(new Settles.FinerTool(0.5), droop(233, 0.1, 0.5, 0).settles());
    // Twice is 0.8994 · 2 · √(0.5²/2 + 0.35²)/0.2 = 4.47; fine and twice 3.18, fine and three times
    // 2.60; three times with a quarter of the steps 2.71, with half of them 3.04.
    assertEquals(new Settles.RepeatsWithFinerTool(3, 0.25), droop(233, 0.5, 0.35, 0).settles());
  }

  @Test
  void what_the_tool_does_to_all_readings_stays() {
    assertEquals(new Settles.RepeatingWillNot(), droop(233, 0.1, 0.1, 0.5).settles());
  }

  @Test
  void the_number_told_decides_and_one_less_does_not_with_the_values_as_they_are() {
    Random random = new Random(20261125);
    int told = 0;
    for (int i = 0; i < 2500; i++) {
      SimulatedCorner corner = SimulatedCorner.any(random);
      SimulatedCorner.Sitting sitting = corner.sitting(TapeError.BIAS, random);
      Limit limit = sitting.judged(corner.limitMm() + TapeError.spread(random, 4));
      if (limit.settles() instanceof Settles.Repeats repeats && limit.found()) {
        told++;
        double away = Math.abs(limit.roomMm().value());
        assertTrue(away >= roomU(sitting, corner, limit, repeats.n()), "corner " + i);
        assertTrue(away < roomU(sitting, corner, limit, repeats.n() - 1), "corner " + i);
      }
    }
    assertTrue(told > 30, "the generator must reach the case: " + told);
  }

  /** The same values with every hand √n better, found and judged anew. */
  private static double roomU(
      SimulatedCorner.Sitting sitting, SimulatedCorner corner, Limit limit, int n) {
    List<Node> nodes =
        sitting.nodes.stream()
            .map(
                node ->
                    new Node(
                        Settles.readOtherwise(node.positionMm(), n, 1),
                        Settles.readOtherwise(node.value(), n, 1),
                        Bound.EXACT,
                        node.readings()))
            .toList();
    Along along = RuleAlongTravel.along(nodes, corner.rule());
    EndLimit at = corner.end() == End.DROOP ? along.droop() : along.bump();
    Figure reachMm = Settles.readOtherwise(limit.reachMm(), n, 1);
    return Judged.room(corner.end(), reachMm, at.positionMm()).U();
  }
}
