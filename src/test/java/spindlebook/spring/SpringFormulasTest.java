package spindlebook.spring;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.DoubleFunction;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import spindlebook.curve.Bound;
import spindlebook.curve.MeasuredCurve;
import spindlebook.curve.Node;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;

/**
 * The worked examples of docs/methods-springs.md on the reference corner, and how doubt goes
 * through the formulas: against the same sum done again with the input moved. The rest by hand.
 */
class SpringFormulasTest {
  private static final ShockCurve SHOCK = SpringReferenceTest.SHOCK;
  private static final Figure MASS = Figure.exact(520);
  private static final Figure ZERO = Figure.exact(791.1728362241438);
  private static final WheelSpring WHEEL =
      new WheelSpring(SHOCK, Coil.single(Figure.exact(56), ZERO));

  private static Figure doubted(double value, double u) {
    return Figure.of(value, new Source("what is tried", SourceKind.PLACING), u);
  }

  /** u of a figure is how much it moves when its one doubted input moves by u. */
  private static void follows(double at, double u, DoubleFunction<ToDoubleFunction<Figure>> of) {
    double moved =
        Math.abs(
                of.apply(1).applyAsDouble(Figure.exact(at + u))
                    - of.apply(1).applyAsDouble(Figure.exact(at - u)))
            / 2;
    double said = of.apply(0).applyAsDouble(doubted(at, u));
    assertTrue(moved > 0);
    assertEquals(moved, said, 0.02 * moved);
  }

  /** Of a figure made from an input: its value (1) or its u (0). */
  private static DoubleFunction<ToDoubleFunction<Figure>> of(Function<Figure, Figure> formula) {
    return which -> in -> which == 1 ? formula.apply(in).value() : formula.apply(in).u();
  }

  @Test
  void the_shock_at_a_position_and_over_the_travel() {
    ShockCurve.Here here = SHOCK.at(-200);
    assertEquals(772.499, here.lengthMm().value(), 5e-4);
    assertEquals(0.62106, here.ratio().value(), 5e-6);
    assertEquals(-0.00006357, here.bendPerMm().value(), 5e-9);
    Figure droop = SHOCK.at(-250).lengthMm();
    Figure bump = SHOCK.at(250).lengthMm();
    assertEquals(325.425, droop.minus(bump).value(), 5e-4);
    // With 9.525 mm kept open and 12.7 closed.
    assertEquals(813.224, droop.value() + 9.525, 5e-4);
    assertEquals(465.574, bump.value() - 12.7, 5e-4);
    assertThrows(IllegalArgumentException.class, () -> SHOCK.at(301));
    assertTrue(SHOCK.wheelAt(Figure.exact(900)).isEmpty());
  }

  @Test
  void read_with_one_tape_the_stroke_is_surer_than_a_length_and_the_ratio_near_the_true_one() {
    Source tape = new Source("tape", SourceKind.TOOL);
    List<Node> nodes = new ArrayList<>();
    for (double z = -250; z <= 250; z += 100) {
      double length = Math.round(SHOCK.at(z).lengthMm().value() * 2) / 2.0;
      Figure read =
          Figure.of(length, tape, 0.6).withSource(new Source("at " + z, SourceKind.PLACING), 0.25);
      nodes.add(new Node(Figure.exact(z), read, Bound.EXACT, List.of("at " + z)));
    }
    ShockCurve read = ShockCurve.read(MeasuredCurve.through(nodes));
    assertEquals(
        0.25 * Math.sqrt(2), read.at(-250).lengthMm().minus(read.at(250).lengthMm()).u(), 1e-6);
    for (double z : new double[] {-200, -75, 0, 130, 200}) {
      ShockCurve.Here got = read.at(z);
      ShockCurve.Here is = SHOCK.at(z);
      assertTrue(Math.abs(got.ratio().value() - is.ratio().value()) <= 1.5 * got.ratio().U());
      assertTrue(
          Math.abs(got.bendPerMm().value() - is.bendPerMm().value()) <= 1.5 * got.bendPerMm().U(),
          () -> z + ": " + got.bendPerMm() + " " + is.bendPerMm());
    }
    Figure rate = new WheelSpring(read, WHEEL.coil()).rateNPerMm(0);
    assertTrue(Math.abs(rate.value() - WHEEL.rateNPerMm(0).value()) <= rate.U());
  }

  @Test
  void two_springs_and_where_they_bind() {
    Coil coil = new Coil(Figure.exact(44), Figure.exact(26), Figure.exact(95), Figure.exact(800));
    double most = 800 - coil.crossoverMm().value();
    assertEquals(151.136, most, 5e-4);
    assertEquals(16.343, coil.at(Figure.exact(700), Coil::rateNPerMm).value(), 5e-4);
    assertEquals(186.653, coil.at(coil.crossoverMm(), Coil::energyJ).value(), 5e-4);
    // 150 mm of the main spring: 95 of the tender and 150 of its own.
    assertEquals(555, coil.bindsAtMm(Figure.exact(150)).value(), 1e-9);
    // 40 mm of the main spring at 1760 N, the tender then 67.692 mm in.
    assertEquals(800 - 40 - 67.692, coil.bindsAtMm(Figure.exact(40)).value(), 1e-3);
    Coil one = Coil.single(Figure.exact(56), ZERO);
    assertEquals(591.173, one.bindsAtMm(Figure.exact(200)).value(), 1e-3);
    assertEquals(0, one.at(Figure.exact(800), Coil::forceN).value());
  }

  @Test
  void where_the_car_sits() {
    WheelSpring.Ride ride = WHEEL.ride(MASS).orElseThrow();
    assertEquals(-3.200, ride.positionMm().value(), 5e-4);
    assertEquals(24.706, ride.rateNPerMm().value(), 5e-4);
    assertEquals(1.0970, ride.hz().value(), 5e-5);
    Figure onTyre = WheelSpring.onTyre(ride.rateNPerMm(), Figure.exact(280));
    assertEquals(1.0516, WheelSpring.hz(onTyre, MASS).value(), 5e-5);
    assertEquals(-2.204, WHEEL.collarToSitAt(0, MASS).value(), 5e-4);
    assertEquals(791.173, ZERO.value(), 5e-4);
    assertTrue(WHEEL.ride(Figure.exact(5000)).isEmpty(), "beyond what is known");
  }

  @Test
  void a_wanted_ride_gives_the_spring_that_has_it() {
    Coil wanted = WHEEL.wanted(-20, 1.2, MASS);
    WheelSpring.Ride ride = new WheelSpring(SHOCK, wanted).ride(MASS).orElseThrow();
    assertEquals(-20, ride.positionMm().value(), 1e-6);
    assertEquals(1.2, ride.hz().value(), 1e-6);
  }

  @Test
  void doubt_of_the_mass_moves_where_it_sits_and_how_fast_it_bounces() {
    follows(520, 5, of(mass -> WHEEL.ride(mass).orElseThrow().positionMm()));
    follows(520, 5, of(mass -> WHEEL.ride(mass).orElseThrow().hz()));
    follows(56, 1, of(rate -> ride(rate).positionMm()));
    follows(56, 1, of(rate -> ride(rate).hz()));
    follows(56, 1, of(rate -> new WheelSpring(SHOCK, Coil.single(rate, ZERO)).forceN(100)));
  }

  private static WheelSpring.Ride ride(Figure rate) {
    return new WheelSpring(SHOCK, Coil.single(rate, ZERO)).ride(MASS).orElseThrow();
  }

  private static Drop drop(Figure mass, Figure high, Figure damped, Figure touch, Figure chart) {
    return new Drop(
        WHEEL, SpringReferenceTest.stop(), chart, touch, Figure.exact(-250), mass, high, damped);
  }

  private static final Figure HIGH = Figure.exact(100);
  private static final Figure TOUCH = Figure.exact(170);

  @Test
  void a_drop_rests_on_its_stop() {
    Drop.Rest rest = drop(MASS, HIGH, Figure.exact(0), TOUCH, Figure.exact(1)).rest().orElseThrow();
    assertEquals(246.364, rest.positionMm().value(), 5e-4);
    assertEquals(76.364, rest.crushMm().value(), 5e-4);
    assertEquals(13488.03, rest.stopN().value(), 0.01);
    assertEquals(25854.85, rest.wheelN().value(), 0.01);
    Drop far = drop(MASS, Figure.exact(3000), Figure.exact(0), TOUCH, Figure.exact(1));
    assertTrue(far.rest().isEmpty(), "past what the chart says");
    Drop edge = drop(MASS, HIGH, Figure.exact(0), doubted(170, 80), Figure.exact(1));
    assertTrue(edge.rest().isEmpty(), "its doubt reaches past the chart");
  }

  @Test
  void every_doubt_moves_where_a_drop_rests_and_how_hard_it_is() {
    Figure none = Figure.exact(0);
    Figure one = Figure.exact(1);
    follows(520, 5, of(m -> drop(m, HIGH, none, TOUCH, one).rest().orElseThrow().positionMm()));
    follows(520, 5, of(m -> drop(m, HIGH, none, TOUCH, one).rest().orElseThrow().wheelN()));
    follows(100, 5, of(h -> drop(MASS, h, none, TOUCH, one).rest().orElseThrow().stopN()));
    follows(0.1, 0.02, of(d -> drop(MASS, HIGH, d, TOUCH, one).rest().orElseThrow().stopN()));
    follows(170, 1, of(t -> drop(MASS, HIGH, none, t, one).rest().orElseThrow().stopN()));
    follows(170, 1, of(t -> drop(MASS, HIGH, none, t, one).rest().orElseThrow().crushMm()));
    follows(1, 0.03, of(c -> drop(MASS, HIGH, none, TOUCH, c).rest().orElseThrow().stopN()));
    follows(
        1,
        0.03,
        of(c -> drop(MASS, HIGH, none, TOUCH, c).energyAt(Figure.exact(240)).stopTakesJ()));
  }

  @Test
  void a_stop_by_three_points_of_its_chart() {
    StopChart chart = new StopChart(new double[] {0, 20, 40}, new double[] {0, 1000, 4000});
    assertEquals(0, chart.forceN(-3));
    assertEquals(2187.5, chart.forceN(30), 1e-9);
    double sum = 0;
    for (int i = 0; i < 35000; i++) {
      sum += chart.forceN((i + 0.5) / 1000) / 1e6;
    }
    assertEquals(sum, chart.energyJ(35), 1e-6);
    assertThrows(IllegalArgumentException.class, () -> chart.forceN(41));
    assertThrows(
        IllegalArgumentException.class,
        () -> new StopChart(new double[] {5, 20}, new double[] {0, 1000}));
  }

  /** Source: statics; the worked example of docs/methods-springs.md. */
  @Test
  void one_corner_raised_moves_all_four() {
    List<Figure> raised =
        List.of(Figure.exact(10), Figure.exact(0), Figure.exact(0), Figure.exact(0));
    List<Figure> rates = Collections.nCopies(4, Figure.exact(20));
    double[] more =
        RigidFrame.moreLoadN(raised, rates, 1).stream().mapToDouble(Figure::value).toArray();
    assertArrayEquals(new double[] {50, -50, -50, 50}, more, 1e-9);
    double[] rises = new double[4];
    for (int i = 0; i < 4; i++) {
      rises[i] = raised.get(i).value() - more[i] / 20;
    }
    assertArrayEquals(new double[] {7.5, 2.5, 2.5, -2.5}, rises, 1e-9);

    // Of other tracks and rates the loads still leave weight and both moments as they were.
    List<Figure> other =
        List.of(Figure.exact(18), Figure.exact(20), Figure.exact(31), Figure.exact(25));
    double[] f =
        RigidFrame.moreLoadN(raised, other, 1.1).stream().mapToDouble(Figure::value).toArray();
    assertEquals(0, f[0] + f[1] + f[2] + f[3], 1e-9);
    assertEquals(0, f[0] + f[1], 1e-9);
    assertEquals(0, 1.1 * (f[0] - f[1]) + (f[2] - f[3]), 1e-9);
  }

  /**
   * The balance m g = k x MR turns a hair with the mass, and so does the doubt of x by JCGM 100.
   */
  @Test
  void a_hair_more_mass_leaves_how_sure_it_is_where_it_sits() {
    List<Node> read = List.of(node(-315.2, 787.4), node(-110.3, 621.8), node(84.7, 458.4));
    WheelSpring wheel =
        new WheelSpring(
            ShockCurve.read(MeasuredCurve.through(read)),
            Coil.single(Figure.exact(61.6), Figure.exact(777.5)));
    StopChart stop = new StopChart(new double[] {0, 60}, new double[] {0, 9000});
    double x = 0;
    double push = 0;
    for (double kg = 400; kg < 440; kg++) {
      Figure mass = Figure.exact(kg);
      double nextX = wheel.ride(mass).orElseThrow().compressionMm().u();
      Figure droop = Figure.exact(-300);
      Figure none = Figure.exact(0);
      Drop drop =
          new Drop(wheel, stop, Figure.exact(1), Figure.exact(-100), droop, mass, none, none);
      double nextPush = drop.rest().orElseThrow().wheelN().u();
      if (kg > 400) {
        assertEquals(x, nextX, 0.05 * x, kg + " kg");
        assertEquals(push, nextPush, 0.15 * push, kg + " kg");
      }
      x = nextX;
      push = nextPush;
    }
  }

  private static Node node(double positionMm, double shockMm) {
    return new Node(
        Figure.exact(positionMm), Figure.exact(shockMm), Bound.EXACT, List.of("" + positionMm));
  }
}
