package spindlebook.curve;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.function.Function;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.GuardBand;
import spindlebook.uncertainty.MeanSoFar;
import spindlebook.uncertainty.Outcome;

/**
 * One value read at one wheel position.
 *
 * @param positionMm wheel position, + towards bump
 * @param value in mm or rad, as the curve it belongs to
 * @param bound what the reading says about the value
 * @param readings ids of the readings it stands on
 */
public record Node(Figure positionMm, Figure value, Bound bound, List<String> readings) {
  public Node {
    Objects.requireNonNull(positionMm, "positionMm");
    Objects.requireNonNull(value, "value");
    Objects.requireNonNull(bound, "bound");
    readings = List.copyOf(readings);
  }

  /**
   * Makes one node of readings that were taken at the same place again, and sorts by position.
   *
   * <p>Two nodes are at the same place when their positions differ by no more than the expanded
   * uncertainty of that difference (k = 2; a shared mark cancels in it), counted from the mean of
   * the place so far; or when they are equal, as at one height. So no two places are equal.
   *
   * <ul>
   *   <li>Exact readings become their mean in position and value. They put aside every bound at
   *       that place: whoever read a number saw more than whoever looked. Where a bound contradicts
   *       the number to the worse, {@code RuleAlongTravel} takes the bound.
   *   <li>Without an exact reading the tightest bound of each sense is kept, at the mean position;
   *       an at-least and an at-most stay two nodes.
   * </ul>
   *
   * <p>Source: derived in docs/methods.md. Worked example: 20.0 and 21.0 mm read at −100.0 and
   * −99.5 mm, each position with U = 0.9 mm of its own (1.27 mm for the difference): one node, 20.5
   * mm at −99.75 mm.
   */
  public static List<Node> merge(List<Node> nodes) {
    List<Node> sorted = new ArrayList<>(nodes);
    sorted.sort(byPosition());
    List<Node> merged = new ArrayList<>();
    int first = 0;
    MeanSoFar place = new MeanSoFar();
    for (int i = 0; i < sorted.size(); i++) {
      Figure next = sorted.get(i).positionMm;
      if (i > first
          && !place.within(next)
          && next.value() != sorted.get(i - 1).positionMm.value()) {
        merged.addAll(onePlace(sorted.subList(first, i)));
        first = i;
        place = new MeanSoFar();
      }
      place.add(next);
    }
    merged.addAll(onePlace(sorted.subList(first, sorted.size())));
    merged.sort(byPosition());
    // The mean of one place may stand close to the next.
    return merged.size() < nodes.size() ? merge(merged) : List.copyOf(merged);
  }

  /** How its value alone stands against a rule; a bound from the better side cannot tell. */
  public Outcome against(Rule rule) {
    if (bound == Bound.EXACT) {
      return rule instanceof Rule.AtLeast
          ? GuardBand.atLeast(value, rule.limit())
          : GuardBand.atMost(value, rule.limit());
    }
    boolean kept = rule.kept(value.value());
    boolean fromTheWorseSide = (rule instanceof Rule.AtLeast) == (bound == Bound.AT_LEAST);
    return kept != fromTheWorseSide ? Outcome.CANT_TELL : kept ? Outcome.CLEAR : Outcome.SHORT;
  }

  public boolean samePlaceAs(Node other) {
    Figure apart = other.positionMm.minus(positionMm);
    return Math.abs(apart.value()) <= apart.U();
  }

  private static List<Node> onePlace(List<Node> place) {
    List<Node> exact = withBound(place, Bound.EXACT);
    if (!exact.isEmpty()) {
      return List.of(together(exact, mean(exact, Node::value)));
    }
    List<Node> bounds = new ArrayList<>();
    Comparator<Node> byValue = Comparator.comparingDouble(node -> node.value.value());
    List<Node> atLeast = withBound(place, Bound.AT_LEAST);
    atLeast.stream().max(byValue).ifPresent(n -> bounds.add(together(atLeast, n.value)));
    List<Node> atMost = withBound(place, Bound.AT_MOST);
    atMost.stream().min(byValue).ifPresent(n -> bounds.add(together(atMost, n.value)));
    return bounds;
  }

  private static Node together(List<Node> nodes, Figure value) {
    List<String> readings = nodes.stream().flatMap(n -> n.readings.stream()).distinct().toList();
    return new Node(mean(nodes, Node::positionMm), value, nodes.get(0).bound, readings);
  }

  private static Figure mean(List<Node> nodes, Function<Node, Figure> what) {
    return nodes.size() == 1
        ? what.apply(nodes.get(0))
        : Figure.mean(nodes.stream().map(what).toList());
  }

  private static List<Node> withBound(List<Node> nodes, Bound bound) {
    return nodes.stream().filter(node -> node.bound == bound).toList();
  }

  private static Comparator<Node> byPosition() {
    return Comparator.comparingDouble(node -> node.positionMm.value());
  }
}
