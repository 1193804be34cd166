package spindlebook.travel;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import spindlebook.curve.Bisection;
import spindlebook.curve.Bound;
import spindlebook.curve.MeasuredCurve;
import spindlebook.curve.Node;
import spindlebook.curve.Rule;
import spindlebook.curve.ShapePreservingCubic;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Rectangular;
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;

/**
 * Finds where, between a reading that keeps its rule and a neighbour that breaks it, the rule is
 * met, and how sure that is.
 *
 * <p><b>Bracket.</b> When one of the two is no number, or fewer than three exact readings were
 * taken, the wheel is planned to go no further than the reading that keeps the rule.
 *
 * <p><b>Cubic.</b> Else, with f the curve through all exact readings and r the rule:
 *
 * <pre>
 *   f(X) = r                                   X: wheel position, mm
 *   ∂X/∂y_j = −(∂f/∂y_j) / f'(X),  ∂X/∂x_j = −(∂f/∂x_j) / f'(X)
 *   |f(K) − r| = U(K) on the kept side, |f(B) − r| = U(B) on the broken side
 *   d = |X − where the straight line between the two readings meets r|
 *   U²(X) = max( k² u²_first order, (|K−B|/2)² + k² u²_positions alone ) + k² d²/3
 * </pre>
 *
 * <p>U(x) is that of the straight line between the nodes (k = 2), in which their own errors average
 * as they do in f. A mark shared by all positions moves X one to one; an error shared by all values
 * moves it by that error over the slope. X is never better than the half of K to B, value ± U
 * turned into positions, where f is steeper or flatter than at X: what is missing is added as an
 * interpolation source of its own. What the readings leave open of the shape between them is d,
 * another, rectangular, and is counted there alone. K and B are looked for only as far as readings
 * of that side go; where none keeps (breaks) the rule by its U the answer is NaN and the distance
 * runs to the last reading of that side.
 *
 * <p>Where the curve is flat at X (slope below a tenth of the straight line's, next to a reading
 * where the value turns) the straight line's sensitivities are used: the curve's would be without
 * bound.
 *
 * <p>Source: derived in docs/methods.md; first-order terms JCGM 100:2008 eq. 13. Worked example:
 * gaps 4, 15, 31 mm ± 0.5 at −120, −20, 60 mm exactly, at least 12.7: X = −36.40 mm, the straight
 * line says −40.91 mm, surely kept from −33.20, surely broken below −39.45 mm, U = 6.23 mm.
 */
final class RuleMet {
  private static final double FLAT = 0.1;
  private static final double LEVEL = 1e-9;

  private final Rule rule;
  private final MeasuredCurve curve;

  /** {@code telling} are merged. */
  RuleMet(List<Node> telling, Rule rule) {
    this.rule = rule;
    List<Node> exact = telling.stream().filter(node -> node.bound() == Bound.EXACT).toList();
    this.curve = exact.size() >= 3 ? new MeasuredCurve(exact) : null;
  }

  /** Both runs counted from the limit outwards. */
  EndLimit.Crosses between(List<Node> kept, List<Node> broken) {
    Node lastKept = kept.get(0);
    Node firstBroken = broken.get(0);
    boolean bothExact = lastKept.bound() == Bound.EXACT && firstBroken.bound() == Bound.EXACT;
    double about = bothExact ? straightLine(lastKept, firstBroken) : Double.NaN;
    return bothExact && curve != null
        ? onCurve(kept, broken, about)
        : new EndLimit.Crosses(
            lastKept.positionMm(),
            surely(kept, Double.NaN, true),
            surely(broken, Double.NaN, false),
            EndLimit.How.BRACKET,
            about,
            firstBroken.positionMm(),
            readings(lastKept, firstBroken));
  }

  private EndLimit.Crosses onCurve(List<Node> kept, List<Node> broken, double about) {
    DoubleUnaryOperator clearance = x -> rule.clearance(curve.cubic().value(x));
    double met = Bisection.zero(clearance, position(broken.get(0)), position(kept.get(0)));
    double surelyKept = surely(kept, met, true);
    double surelyBroken = surely(broken, met, false);
    double half = (reach(met, surelyKept, kept) + reach(met, surelyBroken, broken)) / 2;
    int piece = Math.min(curve.nodes().indexOf(kept.get(0)), curve.nodes().indexOf(broken.get(0)));
    List<String> readings = around(piece);
    return new EndLimit.Crosses(
        sure(met, piece, half, about, readings),
        surelyKept,
        surelyBroken,
        EndLimit.How.CUBIC,
        about,
        null,
        readings);
  }

  /** {@code piece} is the one the rule is met in: at its end the curve may go on level. */
  private Figure sure(double met, int piece, double half, double about, List<String> readings) {
    double secant = curve.cubic().secant(piece);
    double slope = curve.cubic().slope(met);
    boolean flat = Math.abs(slope) < FLAT * Math.abs(secant);
    ToDoubleFunction<ShapePreservingCubic> value =
        flat ? cubic -> cubic.straight(piece, met) : cubic -> cubic.continued(met);
    double perValue = -1 / (flat ? secant : slope);
    // Readings alike but for the last digits: it is met anywhere between them, as K and B say.
    boolean level = Math.abs(secant) < LEVEL;
    Figure firstOrder = curve.figure(met, value, level ? 0 : perValue);
    double positionsU = curve.byPositionsAlone(met, value, perValue).u();
    double missing = square(half / Figure.K) + square(positionsU) - square(firstOrder.u());
    String where = " between " + readings + " at " + rule;
    Figure banded =
        missing > 0
            ? firstOrder.withSource(interpolation("band" + where), Math.sqrt(missing))
            : firstOrder;
    double bend = Rectangular.u(Math.abs(met - about));
    return bend > 0 ? banded.withSource(interpolation("bend" + where), bend) : banded;
  }

  /**
   * The first position, counted from {@code start}, where the value keeps (breaks) the rule by its
   * U; NaN when none was read. {@code start} is a position on the curve where it does not, or NaN.
   */
  double surely(List<Node> outwards, double start, boolean kept) {
    boolean drawn = !Double.isNaN(start);
    double unsure = start;
    for (Node node : outwards) {
      double clearance = RuleAlongTravel.clearance(node, rule);
      double beyond = (kept ? clearance : -clearance) - node.value().U();
      boolean onCurve = curve != null && node.bound() == Bound.EXACT;
      if (beyond >= 0) {
        return onCurve && !Double.isNaN(unsure)
            ? Bisection.zero(x -> beyond(x, kept, drawn), unsure, position(node))
            : position(node);
      }
      unsure = onCurve ? position(node) : Double.NaN;
    }
    return Double.NaN;
  }

  private double beyond(double x, boolean kept, boolean drawn) {
    double clearance = rule.clearance(curve.cubic().value(x));
    return (kept ? clearance : -clearance) - curve.expandedAt(x, drawn);
  }

  private static double reach(double met, double surely, List<Node> outwards) {
    return Math.abs(
        met - (Double.isNaN(surely) ? position(outwards.get(outwards.size() - 1)) : surely));
  }

  /** Where the straight line between two exact nodes meets the rule. */
  private double straightLine(Node one, Node other) {
    double first = RuleAlongTravel.clearance(one, rule);
    double second = RuleAlongTravel.clearance(other, rule);
    return position(one) + (position(other) - position(one)) * (first / (first - second));
  }

  /** The readings that shape a piece of the curve: those of its ends and their outer neighbours. */
  private List<String> around(int piece) {
    List<Node> nodes = curve.nodes();
    return nodes.subList(Math.max(0, piece - 1), Math.min(nodes.size(), piece + 3)).stream()
        .flatMap(node -> node.readings().stream())
        .distinct()
        .toList();
  }

  private static List<String> readings(Node one, Node other) {
    return Stream.of(one, other).flatMap(node -> node.readings().stream()).distinct().toList();
  }

  private static Source interpolation(String id) {
    return new Source(id, SourceKind.INTERPOLATION);
  }

  private static double position(Node node) {
    return node.positionMm().value();
  }

  private static double square(double number) {
    return number * number;
  }
}
