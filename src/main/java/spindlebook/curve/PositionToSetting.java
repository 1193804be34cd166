package spindlebook.curve;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Rectangular;
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;

/**
 * Turns a change at the wheel into a change of strap, stop gap or shock length, back again, and
 * into what can be set.
 *
 * <pre>
 *   change = l(to) − l(from)      l: length against wheel position, mm, + towards bump
 *   beyond the readings:  l(x) = l(e) + l'(e) (x − e),  e: the nearest end that was read
 * </pre>
 *
 * <p>Inside the readings l is the curve through them; the ratio changes along the travel, so this
 * is not ratio × change. Beyond them it is, and the answer says {@link By#RATIO}; its uncertainty
 * then holds c (x − e)² / 2 as a rectangular half width, c the largest bend between any two
 * neighbouring pieces that were read: it assumes that a length bends no more outside the readings
 * than inside. Everything from two readings is called RATIO too, and no bend is known of it:
 *
 * <pre>
 *   two readings at x0, x1:  error(x) = l''/2 (x − x0)(x − x1),  |l''| ≤ |ratio| / 1000 mm
 * </pre>
 *
 * one unknown for both ends of a change, rectangular ({@link MeasuredCurve}); a third reading says
 * how the length bends and does away with most of it.
 *
 * <p>From a length l'(e) y away back to the wheel, past the readings, the bend weighs more, because
 * the ratio falls with it: l' x − c x²/2 = l' y gives
 *
 * <pre>  x − y = 4/(1+q)² · c y²/2 / l',   q² = 1 − 2 c y / l', not less than 0</pre>
 *
 * <p>Source: derived in docs/methods.md; the error of the straight line is Lagrange's remainder.
 * Worked example: a strap 548.829 mm long at −260 mm must stop the wheel 25 mm higher: 12.283 mm
 * shorter; the ratio at −260 alone says 12.346 mm. With holes 1 in apart that is one hole, 25.4 mm.
 * Read only at −260 and at 40 mm, 150 mm shorter: 12.500 mm, of which 25 · 275 / 2 / 2000 = 1.719
 * mm either way is not known.
 */
public final class PositionToSetting {
  private PositionToSetting() {}

  /** How a change was found. */
  public enum By {
    /** On the curve through three or more readings, inside them. */
    CURVE,
    /** By a constant ratio: a straight line, or beyond the readings. */
    RATIO
  }

  /** A change in mm, of the length or of the wheel. */
  public record Converted(Figure changeMm, By by) {}

  /** Which way a setting may be wrong. */
  public enum Rounding {
    /** Never longer than asked: a strap. */
    DOWN,
    /** Never thinner than asked: a bump-stop spacer. */
    UP
  }

  /**
   * What can be set.
   *
   * @param count holes, turns or parts of a turn, shims; + longer or thicker
   * @param stepMm what one of them is
   * @param changeMm what all of them are
   */
  public record Steps(long count, double stepMm, double changeMm) {}

  /** By how much the length differs between two wheel positions. */
  public static Converted lengthChange(List<Node> lengths, double fromMm, double toMm) {
    MeasuredCurve curve = MeasuredCurve.through(lengths);
    Figure change = length(curve, toMm).minus(length(curve, fromMm));
    return new Converted(change, by(curve, fromMm, toMm));
  }

  /**
   * How far the wheel goes from {@code fromMm} when the length there changes by {@code
   * lengthChangeMm}: to the nearest position with that length. IllegalArgumentException when there
   * is none, or the length is level there.
   */
  public static Converted wheelChange(List<Node> lengths, double fromMm, double lengthChangeMm) {
    return wheelChange(lengths, fromMm, Figure.exact(lengthChangeMm))
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "no wheel position has a length other by " + lengthChangeMm));
  }

  /** Empty when no position has that length, or at the nearest that has it the length is level. */
  public static Optional<Converted> wheelChange(
      List<Node> lengths, double fromMm, Figure lengthChangeMm) {
    MeasuredCurve curve = MeasuredCurve.through(lengths);
    Figure start = length(curve, fromMm);
    double wanted = start.value() + lengthChangeMm.value();
    return positionsWith(curve, wanted)
        .boxed()
        .min(Comparator.comparingDouble(x -> Math.abs(x - fromMm)))
        .filter(x -> !Ratio.level(curve.cubic().slope(nearestRead(curve, x))))
        .map(toMm -> to(toMm, fromMm, curve, start, lengthChangeMm));
  }

  private static Converted to(
      double toMm, double fromMm, MeasuredCurve curve, Figure start, Figure lengthChangeMm) {
    double slope = curve.cubic().slope(nearestRead(curve, toMm));
    Figure change =
        Figure.linear(
            toMm - fromMm,
            List.of(start, length(curve, toMm, slant(curve, toMm)), lengthChangeMm),
            new double[] {1 / slope, -1 / slope, 1 / slope});
    return new Converted(change, by(curve, fromMm, toMm));
  }

  /**
   * The nearest setting on the cautious side. For turns, {@code stepMm} is pitch × the fraction of
   * a turn that can be set. A change that is whole steps but for the last digits is those steps.
   */
  public static Steps steps(double changeMm, double stepMm, Rounding cautious) {
    if (!(stepMm > 0) || !Double.isFinite(changeMm)) {
      throw new IllegalArgumentException("cannot set " + changeMm + " mm in steps of " + stepMm);
    }
    double exactly = changeMm / stepMm;
    double whole = Math.rint(exactly);
    double slack = 1e-9 * Math.max(1, Math.abs(exactly));
    double count =
        Math.abs(exactly - whole) <= slack
            ? whole
            : cautious == Rounding.UP ? Math.ceil(exactly) : Math.floor(exactly);
    return new Steps((long) count, stepMm, count * stepMm);
  }

  /** What a setting really gives at the wheel, seen from {@code fromMm}. */
  public static Converted atWheel(List<Node> lengths, double fromMm, Steps steps) {
    return wheelChange(lengths, fromMm, steps.changeMm());
  }

  private static Figure length(MeasuredCurve curve, double positionMm) {
    return length(curve, positionMm, 1);
  }

  /**
   * What a bend beyond the readings moves the wheel by, as a multiple of bend over slope: the ratio
   * falls as the bend goes on, and the wheel goes further for it.
   */
  private static double slant(MeasuredCurve curve, double positionMm) {
    double end = nearestRead(curve, positionMm);
    double fall =
        largestBend(curve) * Math.abs(positionMm - end) / Math.abs(curve.cubic().slope(end));
    return 4 / Math.pow(1 + Math.sqrt(Math.max(0, 1 - 2 * fall)), 2);
  }

  private static Figure length(MeasuredCurve curve, double positionMm, double slant) {
    double end = nearestRead(curve, positionMm);
    double beyond = positionMm - end;
    double square = slant * beyond * beyond / 2;
    if (curve.nodes().size() == 2) {
      // The straight line carries its bend on; past the readings only the square is still to come.
      return curve.at(end).plus(curve.slopeAt(end).times(beyond)).plus(curve.bendOfTwo(square));
    }
    if (beyond == 0) {
      return curve.at(positionMm);
    }
    Figure straight = curve.at(end).plus(curve.slopeAt(end).times(beyond));
    double bend = Rectangular.u(largestBend(curve) * square);
    Source shape = new Source("length beyond readings at " + positionMm, SourceKind.INTERPOLATION);
    return bend > 0 ? straight.withSource(shape, bend) : straight;
  }

  /** The largest change of slope per mm from one piece to the next; of one piece the assumed. */
  private static double largestBend(MeasuredCurve curve) {
    if (curve.nodes().size() == 2) {
      return curve.bendOfTwo();
    }
    double[] x = curve.nodes().stream().mapToDouble(node -> node.positionMm().value()).toArray();
    double[] y = curve.nodes().stream().mapToDouble(node -> node.value().value()).toArray();
    double largest = 0;
    for (int i = 2; i < x.length; i++) {
      double before = (y[i - 1] - y[i - 2]) / (x[i - 1] - x[i - 2]);
      double after = (y[i] - y[i - 1]) / (x[i] - x[i - 1]);
      largest = Math.max(largest, Math.abs(after - before) / ((x[i] - x[i - 2]) / 2));
    }
    return largest;
  }

  private static DoubleStream positionsWith(MeasuredCurve curve, double length) {
    DoubleStream inside =
        curve.cubic().crossings(length).stream().flatMapToDouble(PositionToSetting::places);
    // A line from one end that comes out past the other is no continuation of the curve.
    DoubleStream below =
        onTheLineFrom(curve, curve.fromMm(), length).filter(x -> x < curve.fromMm());
    DoubleStream above = onTheLineFrom(curve, curve.toMm(), length).filter(x -> x > curve.toMm());
    return DoubleStream.concat(inside, DoubleStream.concat(below, above));
  }

  private static DoubleStream onTheLineFrom(MeasuredCurve curve, double end, double length) {
    double slope = curve.cubic().slope(end);
    return slope == 0
        ? DoubleStream.empty()
        : DoubleStream.of(end + (length - curve.cubic().value(end)) / slope);
  }

  private static DoubleStream places(Crossing crossing) {
    if (crossing instanceof Crossing.Plateau plateau) {
      return DoubleStream.of(plateau.from(), plateau.to());
    }
    return crossing instanceof Crossing.At at
        ? DoubleStream.of(at.x())
        : DoubleStream.of(((Crossing.Touch) crossing).x());
  }

  private static double nearestRead(MeasuredCurve curve, double positionMm) {
    return Math.min(curve.toMm(), Math.max(curve.fromMm(), positionMm));
  }

  private static By by(MeasuredCurve curve, double fromMm, double toMm) {
    boolean inside = nearestRead(curve, fromMm) == fromMm && nearestRead(curve, toMm) == toMm;
    return inside && curve.nodes().size() > 2 ? By.CURVE : By.RATIO;
  }
}
