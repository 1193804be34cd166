package spindlebook.travel;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import spindlebook.curve.Node;
import spindlebook.curve.Rule;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Settles;

/**
 * Tells what would settle a limit on the curve that can't tell, by finding it again on paper from
 * the same values read n times over, or by a finer scale.
 *
 * <pre>
 *   placing of every node and of the stop / √n; resolution smaller with a finer scale; the rest stays
 *   needed: |room| ≥ U_room(n)
 * </pre>
 *
 * <p>A limit's U is no plain sum over its sources: where value ± U meets the rule sets part of it
 * ({@link RuleMet}), and that band narrows as the value's own U does. Taken as a source that stays
 * it would say that repeating will not help where it does. What the curve's bend leaves open does
 * stay: only one more height narrows that. Assumes that the values stay where they are: a hint and
 * no promise.
 *
 * <p>Source: derived in docs/methods-travel.md. Worked example: a gap opening by 0.2 per mm of
 * wheel, placing u = 0.5 mm, all else exact: U of the limit is 1.0 / 0.2 = 5 mm; a room of 3 mm
 * needs 5/√n ≤ 3: read it three times.
 */
final class ReadOtherwise {
  private static final double TINY_MM = 1e-6;

  private ReadOtherwise() {}

  static Settles settles(
      End end, CornerLimits.Found found, EndLimit.Crosses crosses, Figure reachMm) {
    Figure room = Judged.room(end, reachMm, crosses.positionMm());
    List<Node> merged = Node.merge(found.of().nodes());
    if (at(crosses, merged, found.of().rule()).isEmpty()) {
      return Settles.how(room, 0);
    }
    return Settles.how(
        Math.abs(room.value()),
        (n, steps) -> {
          if (n == 1 && steps == 1) {
            return room.U();
          }
          List<Node> nodes = merged.stream().map(node -> node(node, n, steps)).toList();
          Figure limitMm =
              at(crosses, nodes, found.of().rule())
                  .map(EndLimit.Crosses::positionMm)
                  .orElseGet(crosses::positionMm);
          return Judged.room(end, Settles.readOtherwise(reachMm, n, steps), limitMm).U();
        });
  }

  private static Node node(Node node, int n, double steps) {
    return new Node(
        Settles.readOtherwise(node.positionMm(), n, steps),
        Settles.readOtherwise(node.value(), n, steps),
        node.bound(),
        node.readings());
  }

  /** The same limit among those the nodes have: its place depends on the values alone. */
  private static Optional<EndLimit.Crosses> at(
      EndLimit.Crosses wanted, List<Node> nodes, Rule rule) {
    if (rule == null) {
      return Optional.empty();
    }
    Along along = RuleAlongTravel.along(nodes, rule);
    return Stream.concat(
            Stream.of(along.droop(), along.bump()),
            along.midTravel().stream().flatMap(s -> Stream.of(s.from(), s.to())))
        .filter(EndLimit.Crosses.class::isInstance)
        .map(EndLimit.Crosses.class::cast)
        .filter(c -> c.how() == EndLimit.How.CUBIC)
        .filter(c -> Math.abs(c.positionMm().value() - wanted.positionMm().value()) <= TINY_MM)
        .findFirst();
  }
}
