package spindlebook.curve;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Rectangular;
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;

/**
 * A value against wheel position as it was read: the {@link ShapePreservingCubic} through all exact
 * nodes, with what each node's doubt does to it.
 *
 * <pre>
 *   part_s(f) = Σj ∂f/∂y_j part_s(y_j) + Σj ∂f/∂x_j part_s(x_j)
 *   between readings: one source more, rectangular, half width |cubic − straight line|
 *   two readings at x0, x1:  f'' (x − x0)(x − x1) / 2,  |f''| ≤ |slope| / 1000 mm, rectangular
 * </pre>
 *
 * <p>x_j wheel position of node j in mm, y_j its value; f any number drawn from the curve. The
 * sensitivities are central differences (steps 1e-5 of the nearest spacing and of the range of
 * values), so at a kink of the slope formula they are the mean of both sides. Since Σ ∂f/∂x_j = −f'
 * for f the value at a fixed place, a mark error shared by all positions slides the whole curve.
 *
 * <p>Assumes errors small against the spacing of the nodes. The difference to the straight line is
 * what is not known of the shape: nothing is known to choose between lines that bend as the
 * readings do and lines that hardly bend. Two readings tell of no bend at all: a slope is taken to
 * change by no more than a tenth in 100 mm of wheel, as the reference corner's strap and shock do
 * all but at full bump; one unknown for all that is drawn from the two, so the slope's term holds
 * for a constant bend only. Source: Lagrange's remainder; JCGM 100:2008, 5.1.3 note 2 (numerical
 * sensitivities), eq. 13; the interpolation term derived in docs/methods.md.
 */
public final class MeasuredCurve {
  /** Of the slope, per mm of wheel. */
  private static final double BEND_OF_TWO_READINGS = 1e-3;

  private final List<Node> nodes;
  private final ShapePreservingCubic cubic;

  /** Exact nodes that are merged already. */
  public MeasuredCurve(List<Node> nodes) {
    this.nodes = List.copyOf(nodes);
    this.cubic = cubic(xs(), ys());
  }

  /** Merges first; only exact nodes enter. At least two must remain. */
  public static MeasuredCurve through(List<Node> nodes) {
    List<Node> exact =
        Node.merge(nodes).stream().filter(node -> node.bound() == Bound.EXACT).toList();
    if (exact.size() < 2) {
      throw new IllegalArgumentException(
          "a curve needs exact readings at two or more wheel positions, not " + exact.size());
    }
    return new MeasuredCurve(exact);
  }

  /** The exact nodes, merged, in order of position. */
  public List<Node> nodes() {
    return nodes;
  }

  public double fromMm() {
    return cubic.from();
  }

  public double toMm() {
    return cubic.to();
  }

  /** The curve without its doubt. */
  public ShapePreservingCubic cubic() {
    return cubic;
  }

  /** The value at a wheel position inside the readings, with all its sources. */
  public Figure at(double positionMm) {
    double value = cubic.value(positionMm);
    Figure drawn = figure(value, c -> c.continued(positionMm), 1);
    return nodes.size() == 2
        ? drawn.plus(bendOfTwo((positionMm - fromMm()) * (positionMm - toMm()) / 2))
        : bent(drawn, value - cubic.straight(positionMm), "value at " + positionMm);
  }

  /** The slope at a wheel position inside the readings, per mm of wheel. */
  public Figure slopeAt(double positionMm) {
    double slope = cubic.slope(positionMm);
    Figure drawn = figure(slope, c -> c.continuedSlope(positionMm), 1);
    return nodes.size() == 2
        ? drawn.plus(bendOfTwo(positionMm - (fromMm() + toMm()) / 2))
        : bent(drawn, slope - cubic.secant(positionMm), "slope at " + positionMm);
  }

  /** What an unknown second derivative does to a number drawn from two readings, per unit of it. */
  Figure bendOfTwo(double perBend) {
    Source bend = new Source("bend between " + readings(), SourceKind.INTERPOLATION);
    return Figure.of(0, Map.of(bend, perBend * Rectangular.u(bendOfTwo())));
  }

  /** The most that a slope drawn from two readings is taken to change, per mm of wheel. */
  double bendOfTwo() {
    return BEND_OF_TWO_READINGS * Math.abs(cubic.secant(fromMm()));
  }

  /**
   * U of the value between the nodes: that of the line {@code drawn} between its neighbours, whose
   * own errors average in it; else, as if one of them had been read there, straight between theirs.
   */
  public double expandedAt(double positionMm, boolean drawn) {
    int i = 0;
    while (i < nodes.size() - 2 && positionMm > nodes.get(i + 1).positionMm().value()) {
      i++;
    }
    double x0 = nodes.get(i).positionMm().value();
    double x1 = nodes.get(i + 1).positionMm().value();
    double t = (positionMm - x0) / (x1 - x0);
    Figure before = nodes.get(i).value();
    Figure after = nodes.get(i + 1).value();
    double shared = drawn ? before.covariance(after) : before.u() * after.u();
    double variance =
        square((1 - t) * before.u()) + 2 * t * (1 - t) * shared + square(t * after.u());
    return Figure.K * Math.sqrt(Math.max(0, variance));
  }

  /** A number drawn from the curve: all sensitivities times {@code factor}. */
  public Figure figure(double value, ToDoubleFunction<ShapePreservingCubic> drawn, double factor) {
    List<Figure> inputs = new ArrayList<>();
    nodes.forEach(node -> inputs.add(node.value()));
    nodes.forEach(node -> inputs.add(node.positionMm()));
    double[] byValue = sensitivities(drawn, factor, ys(), valueStep(), true);
    double[] byPosition = sensitivities(drawn, factor, xs(), positionStep(), false);
    double[] all = new double[inputs.size()];
    System.arraycopy(byValue, 0, all, 0, byValue.length);
    System.arraycopy(byPosition, 0, all, byValue.length, byPosition.length);
    return Figure.linear(value, inputs, all);
  }

  /** As {@link #figure}, with the positions' share alone. */
  public Figure byPositionsAlone(
      double value, ToDoubleFunction<ShapePreservingCubic> drawn, double factor) {
    return Figure.linear(
        value,
        nodes.stream().map(Node::positionMm).toList(),
        sensitivities(drawn, factor, xs(), positionStep(), false));
  }

  private double[] sensitivities(
      ToDoubleFunction<ShapePreservingCubic> drawn,
      double factor,
      double[] moved,
      double step,
      boolean values) {
    double[] sensitivities = new double[moved.length];
    for (int j = 0; j < moved.length; j++) {
      double there = moved[j];
      moved[j] = there + step;
      double up = drawn.applyAsDouble(values ? cubic(xs(), moved) : cubic(moved, ys()));
      moved[j] = there - step;
      double down = drawn.applyAsDouble(values ? cubic(xs(), moved) : cubic(moved, ys()));
      moved[j] = there;
      sensitivities[j] = factor * (up - down) / (2 * step);
    }
    return sensitivities;
  }

  private Figure bent(Figure figure, double differenceToStraight, String what) {
    double u = Rectangular.u(Math.abs(differenceToStraight));
    return u == 0 ? figure : figure.withSource(betweenReadings(what), u);
  }

  private Source betweenReadings(String what) {
    return new Source("shape between " + readings() + ", " + what, SourceKind.INTERPOLATION);
  }

  private List<String> readings() {
    return nodes.stream().flatMap(node -> node.readings().stream()).toList();
  }

  private double valueStep() {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (double y : ys()) {
      low = Math.min(low, y);
      high = Math.max(high, y);
    }
    // Readings that are all alike still need a step that shows in the last digits.
    return 1e-5 * Math.max(high - low, 1e-3 * Math.max(1, Math.abs(high)));
  }

  private double positionStep() {
    double nearest = Double.POSITIVE_INFINITY;
    double[] x = xs();
    for (int i = 1; i < x.length; i++) {
      nearest = Math.min(nearest, x[i] - x[i - 1]);
    }
    return 1e-5 * nearest;
  }

  private double[] xs() {
    return nodes.stream().mapToDouble(node -> node.positionMm().value()).toArray();
  }

  private double[] ys() {
    return nodes.stream().mapToDouble(node -> node.value().value()).toArray();
  }

  private static double square(double number) {
    return number * number;
  }

  private static ShapePreservingCubic cubic(double[] x, double[] y) {
    return new ShapePreservingCubic(x, y);
  }
}
