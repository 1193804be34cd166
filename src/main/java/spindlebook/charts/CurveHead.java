package spindlebook.charts;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import spindlebook.card.Shown;
import spindlebook.charts.BumpSteerView.Range;
import spindlebook.curve.Node;
import spindlebook.definition.Dimension;
import spindlebook.definition.Keep;
import spindlebook.drawing.FigureText;
import spindlebook.drawing.Lengths;
import spindlebook.drawing.State;
import spindlebook.entry.Steering;
import spindlebook.fold.SeenReading;
import spindlebook.uncertainty.Figure;

/**
 * What a curve comes to, before anything else is said of it.
 *
 * @param state null where no limit is held against it
 * @param word what the state is called of such a thing
 * @param words where that is, or what the figure is: "full right at −8 3/8 in", "moves"
 * @param limit what it is held against; may be empty
 */
public record CurveHead(State state, String word, String words, FigureText figure, String limit) {

  /** Empty where nothing of it is judged. */
  static Optional<CurveHead> of(CurvePair pair, BumpSteerView steer) {
    return pair.other() != null
        ? Optional.empty()
        : steer != null ? toe(pair, steer.ranges) : tightest(pair);
  }

  /** How far toe moves over the usable travel. */
  private static Optional<CurveHead> toe(CurvePair pair, List<Range> ranges) {
    if (ranges.isEmpty() || ranges.get(0).angle() == null) {
      return Optional.empty();
    }
    Range range = ranges.get(0);
    Lengths lengths = new Lengths(pair.card().details().unit());
    String limit =
        pair.card()
            .given(Dimension.TOE_RANGE)
            .map(g -> "limit " + lengths.text(g.length().mm()))
            .orElse("");
    State state = limit.isEmpty() ? null : range.state();
    return Optional.of(
        new CurveHead(
            state,
            state == State.SHORT ? "too much" : state == null ? "" : state.word(),
            "moves",
            range.length() == null ? range.angle() : range.length(),
            limit));
  }

  /** One value and the room it has; the reading is of one steering. */
  private record Judged(CurveRead read, Node node, State state, double room) {}

  /** The reading with the least room, where the wheel gets to. */
  private static Optional<CurveHead> tightest(CurvePair pair) {
    if (pair.of().point() == null) {
      return Optional.empty();
    }
    Keep keep = pair.of().point().keep();
    List<Judged> judged = new ArrayList<>();
    for (CurveRead read : pair.here()) {
      for (int i = 0; i < read.nodes().size(); i++) {
        Node node = read.nodes().get(i);
        SeenReading reading = read.readings().get(i);
        // Beyond where its stop lets the wheel go a value alarms nobody.
        if (!pair.chart().travel().outOfReach(node.positionMm().value())) {
          judged.add(new Judged(read, node, Shown.state(reading), room(keep, node.value())));
        }
      }
    }
    return judged.stream()
        .min(
            Comparator.comparing((Judged j) -> j.state() != State.SHORT)
                .thenComparing(j -> j.state() != State.CANT_TELL)
                .thenComparingDouble(Judged::room))
        .map(j -> head(pair, keep, j));
  }

  private static CurveHead head(CurvePair pair, Keep keep, Judged worst) {
    Lengths lengths = new Lengths(pair.card().details().unit());
    Steering lock = worst.read().steering();
    String at = lengths.signedText(pair.chart().zero().from(worst.node().positionMm()));
    return new CurveHead(
        worst.state(),
        worst.state() == State.SHORT && keep.mostAngle() != null
            ? "too much"
            : worst.state().word(),
        (lock.steered() ? lock.words() + " " : "") + "at " + at,
        pair.of().text(worst.node().value(), worst.read().angle(), lengths),
        "");
  }

  /** Less is tighter. */
  private static double room(Keep keep, Figure value) {
    double room = Double.POSITIVE_INFINITY;
    if (keep.least() != null) {
      room = value.value() - keep.least().mm();
    }
    if (keep.most() != null) {
      room = Math.min(room, keep.most().mm() - value.value());
    }
    return keep.mostAngle() == null ? room : keep.mostAngle().rad() - value.value();
  }
}
