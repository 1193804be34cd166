package spindlebook.travel;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import spindlebook.curve.Bound;
import spindlebook.curve.Node;
import spindlebook.curve.Rule;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.SourceKind;

/**
 * A corner whose truth is known: one value along the travel that meets its rule at one place, and
 * the heights at which somebody reads it. Nothing is asked of its shape but that it is a curve of
 * the reference corner and that it keeps closing where it is read.
 *
 * @param curve how the value runs
 * @param sign +1 when the rule is 'at least', −1 when it is 'at most'
 * @param limitMm wheel position at which it truly meets its rule
 * @param markMm height of the frame mark over the floor
 */
record SimulatedCorner(
    TrueCurves.Curve curve,
    int sign,
    double limitMm,
    End end,
    double[] heightsMm,
    double markMm,
    boolean byTape) {

  static SimulatedCorner any(Random random) {
    while (true) {
      TrueCurves.Curve curve = TrueCurves.ALL.get(random.nextInt(TrueCurves.ALL.size()));
      int sign = curve.angle() || random.nextBoolean() ? -1 : 1;
      double[] heights = heights(random);
      double low = heights[0];
      double high = heights[heights.length - 1];
      double limit = low + (high - low) * (0.05 + 0.9 * random.nextDouble());
      if (closesOneWay(curve, low, high)) {
        boolean keptAbove = sign * curve.slope(limit) > 0;
        return new SimulatedCorner(
            curve,
            sign,
            limit,
            keptAbove ? End.DROOP : End.BUMP,
            heights,
            600 + 400 * random.nextDouble(),
            random.nextInt(4) == 0);
      }
    }
  }

  /** Three to seven over 200 mm or more of the travel, unevenly. */
  private static double[] heights(Random random) {
    double[] heights = new double[3 + random.nextInt(5)];
    double from = TrueCurves.FROM_MM + 200 * random.nextDouble();
    double to = Math.min(TrueCurves.TO_MM, from + 200 + 360 * random.nextDouble());
    double step = (to - from) / (heights.length - 1);
    for (int i = 0; i < heights.length; i++) {
      double by = i == 0 || i == heights.length - 1 ? 0 : TapeError.spread(random, 0.3);
      heights[i] = Math.min(to, from + step * (i + by));
    }
    return heights;
  }

  /** A value that turns between two readings is not told by them; the book says so. */
  private static boolean closesOneWay(TrueCurves.Curve curve, double from, double to) {
    double least = curve.angle() ? Math.toRadians(0.02) : 0.1;
    double direction = Math.signum(curve.slope(from));
    for (double x = from; x <= to; x += 4) {
      if (direction * curve.slope(x) < least) {
        return false;
      }
    }
    return true;
  }

  Rule rule() {
    double value = curve.at(limitMm);
    return sign > 0 ? new Rule.AtLeast(value) : new Rule.AtMost(value);
  }

  /** One of its heights is the limit itself: somebody read just where the stop ends the motion. */
  SimulatedCorner readAtItsLimit() {
    double[] moved = heightsMm.clone();
    int nearest = 0;
    for (int i = 1; i < moved.length; i++) {
      nearest = Math.abs(moved[i] - limitMm) < Math.abs(moved[nearest] - limitMm) ? i : nearest;
    }
    moved[nearest] = limitMm;
    return new SimulatedCorner(curve, sign, limitMm, end, moved, markMm, byTape);
  }

  /** Its values are read with the tape, or with drill shanks (an angle with its finder). */
  SimulatedCorner readBy(boolean tape) {
    return new SimulatedCorner(curve, sign, limitMm, end, heightsMm, markMm, tape);
  }

  /** Everything that was read in one sitting. */
  Sitting sitting(TapeError error, Random random) {
    return new Sitting(error, random);
  }

  /** One day's tools and one reading of the mark, which all positions share. */
  final class Sitting {
    private final Random random;
    private final TapeError.Tool tape;
    private final TapeError.Tool gauge;
    private final Figure mark;
    private final List<Figure> positions = new ArrayList<>();
    final List<Node> nodes = new ArrayList<>();

    private Sitting(TapeError error, Random random) {
      this.random = random;
      this.tape = error.tape(random);
      this.gauge = curve.angle() ? error.angleFinder(random) : byTape ? tape : error.shanks(random);
      this.mark = tape.read("mark", markMm, random, SourceKind.MARK);
      for (int i = 0; i < heightsMm.length; i++) {
        Figure positionMm = position("h" + i, heightsMm[i]);
        positions.add(positionMm);
        nodes.add(
            new Node(
                positionMm,
                gauge.read("v" + i, curve.at(heightsMm[i]), random),
                Bound.EXACT,
                List.of("@" + i)));
      }
    }

    Figure position(String id, double truthMm) {
      return tape.read(id, markMm + truthMm, random).minus(mark);
    }

    /** As it was read when the height was one of those, else read now. */
    Figure stop(double truthMm) {
      int i = Arrays.binarySearch(heightsMm, truthMm);
      return i >= 0 ? positions.get(i) : position("stop", truthMm);
    }

    /** Where it breaks its rule somebody only saw that it does: it touches, or binds. */
    Sitting onlyTouching() {
      Rule rule = rule();
      double past = sign > 0 ? Math.nextDown(rule.limit()) : Math.nextUp(rule.limit());
      nodes.replaceAll(
          node ->
              rule.kept(node.value().value())
                  ? node
                  : new Node(
                      node.positionMm(),
                      Figure.exact(past),
                      sign > 0 ? Bound.AT_MOST : Bound.AT_LEAST,
                      node.readings()));
      return this;
    }

    /** Nobody looked past the limit: only what truly keeps its rule was read. */
    Sitting onlyKept() {
      List<Node> kept = new ArrayList<>();
      for (int i = 0; i < heightsMm.length; i++) {
        if ((limitMm - heightsMm[i]) * end.outward() >= 0) {
          kept.add(nodes.get(i));
        }
      }
      nodes.retainAll(kept);
      return this;
    }

    Figure length(String id, double truthMm) {
      return tape.read(id, truthMm, random);
    }

    EndLimit limit() {
      Along along = RuleAlongTravel.along(nodes, rule());
      return end == End.DROOP ? along.droop() : along.bump();
    }

    /** What the book says of a stop that stands there, nothing held back. */
    Limit judged(double stopTruthMm) {
      return judged(stop(stopTruthMm));
    }

    /** And of one that lets the wheel go as far as the book says. */
    Limit judged(Figure reachMm) {
      return Judged.of(end, found(limit()), reachMm);
    }

    private CornerLimits.Found found(EndLimit at) {
      RuleReadings of = new RuleReadings(Limit.Kind.SHOCK, null, null, null, rule(), nodes);
      return new CornerLimits.Found(of, at, null, List.of());
    }
  }
}
