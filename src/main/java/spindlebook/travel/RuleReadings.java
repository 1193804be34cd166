package spindlebook.travel;

import java.util.List;
import java.util.Optional;
import spindlebook.curve.Bound;
import spindlebook.curve.Node;
import spindlebook.curve.Rule;
import spindlebook.definition.WatchPoint;
import spindlebook.entry.Content.ToRead;
import spindlebook.entry.Pairing;
import spindlebook.entry.Quantity;
import spindlebook.entry.Steering;
import spindlebook.uncertainty.Figure;

/**
 * A rule as it is kept in one steering and pairing, with the readings that tell of it; of the
 * ground there are none. Its parts are {@link Limit}'s.
 */
record RuleReadings(
    Limit.Kind kind,
    WatchPoint point,
    Steering steering,
    Pairing pairing,
    Rule rule,
    List<Node> nodes) {

  /** How far a value read is inside the rule; less than nothing breaks it. */
  Figure inside(Figure value) {
    return value.plus(-rule.limit()).times(rule instanceof Rule.AtLeast ? 1 : -1);
  }

  /** How far the value read at a wheel position is inside; empty for a bound. */
  Optional<Figure> insideAt(Figure positionMm) {
    return Node.merge(nodes).stream()
        .filter(n -> n.bound() == Bound.EXACT)
        .filter(n -> n.positionMm().value() == positionMm.value())
        .map(n -> inside(n.value()))
        .findFirst();
  }

  /** What tells more of it at an end; null for the ground. */
  ToRead toRead(End end) {
    return kind == Limit.Kind.GROUND ? null : toRead(end, kind, point, steering, pairing);
  }

  static ToRead toRead(
      End end, Limit.Kind kind, WatchPoint point, Steering steering, Pairing pairing) {
    boolean ofPoint = kind == Limit.Kind.WATCH_POINT;
    return new ToRead(
        CornerLimits.nameAt(end),
        null,
        ofPoint ? steering : Steering.STRAIGHT,
        ofPoint ? Quantity.WATCH_POINT : Quantity.SHOCK_LENGTH,
        ofPoint ? point.point() : null,
        CornerLimits.asked(pairing));
  }
}
