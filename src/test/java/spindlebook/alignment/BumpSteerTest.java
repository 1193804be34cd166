package spindlebook.alignment;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import spindlebook.alignment.FaultSeen.Sureness;
import spindlebook.curve.Bound;
import spindlebook.curve.Node;
import spindlebook.definition.RackSide;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Outcome;
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;

/** Bump steer: the worked examples, windows, limits, doubt. */
class BumpSteerTest {
  private static final Window TRAVEL = new Window(-120, 120);
  private static final double[] Z = {-120, -60, 0, 60, 120};
  private static final double[] OUTER_UP = {0.6075, 0.3669, 0.1, -0.1926, -0.5107};

  @Test
  void five_readings_of_a_rod_too_high_say_so() {
    BumpSteer steer = new BumpSteer(nodes(Z, OUTER_UP, 0.02));
    BumpShape shape = steer.shape(TRAVEL, 0).orElseThrow();
    assertEquals(-0.004664, degrees(shape.slope()), 5e-7);
    assertEquals(3, shape.degree());
    ToeRange range = steer.range(TRAVEL).orElseThrow();
    assertEquals(1.1182, degrees(range.rad()), 1e-9);
    assertEquals(-120, range.mostInAtMm());
    assertEquals(120, range.mostOutAtMm());
    ShapeMeaning meaning = ShapeMeaning.of(shape, RackSide.BEHIND_AXLE);
    assertEquals(TieRodFault.OUTER_TOO_HIGH, meaning.height().fault());
    assertEquals(Sureness.PLAIN, meaning.height().sureness());
    assertEquals(Sureness.CANT_TELL, meaning.length().sureness());
    assertEquals(List.of(TellsApart.TOE_AT_RIDE_AND_ENDS, TellsApart.ROD_HEIGHTS), meaning.next());
  }

  @Test
  void the_fit_of_one_two_five_is_one_and_x_squared() {
    PolynomialFit fit = new PolynomialFit(new double[] {0, 1, 2}, new double[] {1, 2, 5}, 2);
    assertEquals(1, fit.value(0), 1e-12);
    assertEquals(0, fit.slope(0), 1e-12);
    assertEquals(1, fit.curvature(0) / 2, 1e-12);
    assertThrows(
        IllegalArgumentException.class,
        () -> new PolynomialFit(new double[] {0, 1, 1}, new double[] {1, 2, 5}, 2));
  }

  @Test
  void the_middle_of_the_travel_has_its_own_range_and_decision() {
    BumpSteer steer = new BumpSteer(nodes(Z, OUTER_UP, 0.02));
    ToeRange middle = steer.range(Window.about(0, 120)).orElseThrow();
    assertEquals(0.3669 + 0.1926, degrees(middle.rad()), 1e-9);
    assertEquals(0.02 * Math.sqrt(2), Math.toDegrees(middle.rad().u()), 1e-9);
    assertTrue(middle.readThroughout());
    assertEquals(Outcome.SHORT, middle.atMost(Math.toRadians(0.4)).decision());
    assertEquals(Outcome.CANT_TELL, middle.atMost(Math.toRadians(0.55)).decision());
    assertEquals(Outcome.CLEAR, middle.atMost(Math.toRadians(0.7)).decision());
    assertEquals(middle.rad().value() * 711.2, middle.mm(711.2).value(), 1e-9);
  }

  /** JCGM 100, 5.1.2: of two readings with errors of their own, u apart is √2 u, alike or not. */
  @Test
  void level_toe_is_no_surer_than_its_readings() {
    BumpSteer steer = new BumpSteer(nodes(Z, new double[] {0.1, 0.1, 0.1, 0.1, 0.1}, 0.02));
    ToeRange range = steer.range(TRAVEL).orElseThrow();
    assertEquals(0, degrees(range.rad()), 1e-12);
    assertEquals(0.02 * Math.sqrt(2), Math.toDegrees(range.rad().u()), 1e-9);
    assertEquals(Outcome.CANT_TELL, range.atMost(Math.toRadians(0.05)).decision());
  }

  @Test
  void beyond_the_readings_nothing_is_made_up() {
    BumpSteer steer = new BumpSteer(nodes(Z, OUTER_UP, 0.02));
    assertEquals(TRAVEL, steer.read());
    assertEquals(Optional.empty(), steer.range(new Window(130, 200)));
    assertEquals(Optional.empty(), steer.shape(new Window(-120, -50), -60));
    assertEquals(Optional.empty(), steer.shape(TRAVEL, 125));
  }

  @Test
  void half_a_degree_of_range_is_seven_millimetres_across_a_wheel() {
    ToeRange range = new ToeRange(TRAVEL, TRAVEL, Figure.exact(Math.toRadians(0.5595)), -120, 120);
    assertEquals(6.945, range.mm(711.2).value(), 5e-4);
  }

  @Test
  void a_slope_plainly_down_with_a_bend_within_its_noise_means_the_outer_end_is_too_high() {
    BumpShape shape =
        new BumpShape(TRAVEL, 9, 3, 0, Figure.exact(0), perMm(-0.0047, 0.0004), perMm(-7e-6, 1e-5));
    ShapeMeaning meaning = ShapeMeaning.of(shape, RackSide.BEHIND_AXLE);
    assertEquals(TieRodFault.OUTER_TOO_HIGH, meaning.height().fault());
    assertEquals(Sureness.PLAIN, meaning.height().sureness());
    assertEquals(Sureness.CANT_TELL, meaning.length().sureness());
    assertEquals(TieRodFault.OUTER_TOO_HIGH, TieRodFault.ofSlope(-0.0047, RackSide.BEHIND_AXLE));
    assertEquals(TieRodFault.OUTER_TOO_LOW, TieRodFault.ofSlope(-0.0047, RackSide.AHEAD_OF_AXLE));
  }

  private static Figure perMm(double degrees, double expandedDegrees) {
    Source noise = new Source("toe " + degrees, SourceKind.PLACING);
    return Figure.of(Math.toRadians(degrees), noise, Math.toRadians(expandedDegrees) / 2);
  }

  @Test
  void three_places_ask_for_five() {
    BumpShape shape =
        new BumpSteer(nodes(new double[] {-100, 0, 100}, new double[] {0.4, 0, -0.4}, 0.01))
            .shape(TRAVEL, 0)
            .orElseThrow();
    assertEquals(2, shape.degree());
    ShapeMeaning meaning = ShapeMeaning.of(shape, RackSide.AHEAD_OF_AXLE);
    assertEquals(TieRodFault.OUTER_TOO_LOW, meaning.said().get(0).fault());
    assertEquals(TellsApart.FIVE_PLACES, meaning.next().get(0));
  }

  @Test
  void a_bend_that_a_height_fault_brings_along_is_not_held_against_the_rods_length() {
    double[] toe = new double[Z.length];
    for (int i = 0; i < Z.length; i++) {
      toe[i] = -0.004 * Z[i] + 6e-6 / 2 * Z[i] * Z[i];
    }
    BumpShape shape = new BumpSteer(nodes(Z, toe, 1e-5)).shape(TRAVEL, 0).orElseThrow();
    ShapeMeaning meaning = ShapeMeaning.of(shape, RackSide.BEHIND_AXLE);
    assertEquals(Sureness.MAY_COME_WITH_THE_OTHER, meaning.length().sureness());
    assertEquals(1, meaning.said().size());
    assertTrue(meaning.next().contains(TellsApart.AFTER_FIRST_CURE));
  }

  @Test
  void readings_that_scatter_more_than_they_say_widen_the_slope() {
    double[] z = {-120, -80, -40, 0, 40, 80, 120};
    double[] toe = {0.1, -0.1, 0.1, -0.1, 0.1, -0.1, 0.1};
    BumpShape shape = new BumpSteer(nodes(z, toe, 0.001)).shape(TRAVEL, 0).orElseThrow();
    assertTrue(
        shape.slope().parts().keySet().stream()
            .anyMatch(s -> s.kind() == SourceKind.INTERPOLATION));
    assertTrue(
        ShapeMeaning.of(shape, RackSide.BEHIND_AXLE).said().isEmpty(), "mere scatter says nothing");
  }

  @Test
  void doubt_of_the_heights_enters_by_the_slope() {
    List<Node> nodes = new ArrayList<>();
    for (int i = 0; i < Z.length; i++) {
      Figure position = Figure.of(Z[i], new Source("h" + i, SourceKind.PLACING), 2);
      nodes.add(
          new Node(
              position,
              Figure.exact(Math.toRadians(-0.005 * Z[i])),
              Bound.EXACT,
              List.of("r" + i)));
    }
    BumpShape shape = new BumpSteer(nodes).shape(TRAVEL, 0).orElseThrow();
    BumpShape sure = new BumpSteer(nodes(Z, new double[5], 0.01)).shape(TRAVEL, 0).orElseThrow();
    assertEquals(sure.slope().u(), shape.slope().u(), 1e-12);
  }

  @Test
  void a_tried_shim_says_how_much_more() {
    Figure more =
        ShimTried.moreMm(Figure.exact(-0.000645), Figure.exact(-0.004664), 6).orElseThrow();
    assertEquals(-6.963, more.value(), 5e-4);
    assertEquals(-0.00067, (-0.004664 + 0.000645) / 6, 5e-7);
    RigidCorner tried = RigidCorner.of(ReferenceCorner.G1).outerUp(6);
    assertEquals(0, Math.toDegrees(tried.outerUp(-6.966).slope(0)), 1e-6, "exactly so much");
    Source noise = new Source("n", SourceKind.PLACING);
    assertEquals(
        Optional.empty(),
        ShimTried.moreMm(Figure.exact(-0.0006), Figure.of(-0.0007, noise, 0.001), 6));
    assertEquals(
        Optional.empty(), ShimTried.moreMm(Figure.exact(-0.0006), Figure.exact(-0.004), 0));
  }

  /**
   * By hand: more = −a h/(a − b); ∂/∂a = b h/(a − b)² = −225, ∂/∂b = −a h/(a − b)² = 1725 mm per
   * °/mm; two steps of their own 2 · 0.0002 · √(225² + 1725²) = 0.70, one for both 0.60.
   */
  @Test
  void the_steps_of_a_scale_do_not_cancel_between_before_and_after_a_shim() {
    Source steps = new Source("corner:ON_THE_STRAP@3:TOE:STRAIGHT", SourceKind.RESOLUTION);
    assertEquals(0.70, moreU(steps), 5e-3);
    Source scatter = new Source("scatter about the toe curve, 1", SourceKind.INTERPOLATION);
    assertEquals(0.70, moreU(scatter), 5e-3);
    assertEquals(0.6, moreU(new Source("tape", SourceKind.TOOL)), 5e-3);
  }

  @Test
  void a_change_of_slope_within_the_steps_of_both_readings_says_nothing_of_a_shim() {
    Source steps = new Source("corner:ON_THE_STRAP@3:TOE:STRAIGHT", SourceKind.RESOLUTION);
    Figure before = Figure.of(-0.0006, steps, 0.0002);
    assertEquals(Optional.empty(), ShimTried.moreMm(before, Figure.of(-0.0011, steps, 0.0002), 6));
  }

  private static double moreU(Source both) {
    Figure before = Figure.of(-0.0006, both, 0.0002);
    Figure more = ShimTried.moreMm(before, Figure.of(-0.0046, both, 0.0002), 6).orElseThrow();
    assertEquals(-6.9, more.value(), 1e-9);
    return more.U();
  }

  private static List<Node> nodes(double[] z, double[] toeDegrees, double uDegrees) {
    List<Node> nodes = new ArrayList<>();
    for (int i = 0; i < z.length; i++) {
      Source placing = new Source("toe " + i, SourceKind.PLACING);
      Figure toe = Figure.of(Math.toRadians(toeDegrees[i]), placing, Math.toRadians(uDegrees));
      nodes.add(new Node(Figure.exact(z[i]), toe, Bound.EXACT, List.of("toe " + i)));
    }
    return nodes;
  }

  private static double degrees(Figure rad) {
    return Math.toDegrees(rad.value());
  }
}
