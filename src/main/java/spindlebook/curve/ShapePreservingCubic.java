package spindlebook.curve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Draws the curve through the readings that invents no bump: between two readings it only rises,
 * only falls or stays level, and never leaves the range of the two.
 *
 * <pre>
 *   h_i = x_(i+1) − x_i,  δ_i = (y_(i+1) − y_i) / h_i
 *   inner slope  d_i = 0 if δ_(i−1) δ_i ≤ 0, else (w1 + w2) / (w1/δ_(i−1) + w2/δ_i)
 *                w1 = 2 h_i + h_(i−1),  w2 = h_i + 2 h_(i−1)
 *   end slope    d = ((2 h0 + h1) δ0 − h0 δ1) / (h0 + h1); 0 if its sign is not that of δ0;
 *                3 δ0 if δ0 and δ1 differ in sign and |d| &gt; 3 |δ0|
 *   piece        y = y_i (1+2t)(1−t)² + h d_i t (1−t)² + y_(i+1) t² (3−2t) − h d_(i+1) t² (1−t),
 *                t = (x − x_i) / h_i
 * </pre>
 *
 * <p>x and y in whatever units the caller holds (here millimetres of wheel position against
 * millimetres or radians); slopes in y per x. Two points give the straight line.
 *
 * <p>Assumes that the true curve has no turn between two readings. Where it has one the curve is
 * wrong by as much as the turn is high; near a reading that is the highest or lowest the curve is
 * too flat. Never extrapolated: a place outside the first and last x is an
 * IllegalArgumentException.
 *
 * <p>Source: F. N. Fritsch and J. Butland, "A method for constructing local monotone piecewise
 * cubic interpolants", SIAM J. Sci. Stat. Comput. 5 (1984), and the three-point end slope of C.
 * Moler, "Numerical Computing with MATLAB" (2004), both from memory; equal to scipy's
 * PchipInterpolator.
 *
 * <p>Worked example: gaps 4, 15, 31 mm at −120, −20, 60 mm: slopes 0.06, 0.143478, 0.24; the gap is
 * 12.7 mm at −36.3989 mm (a straight line says −40.9).
 */
public final class ShapePreservingCubic {
  private final double[] x;
  private final double[] y;
  private final double[] slopes;

  /** At least two points, x strictly increasing, all finite. */
  public ShapePreservingCubic(double[] x, double[] y) {
    if (x.length != y.length || x.length < 2) {
      throw new IllegalArgumentException(
          "a curve needs two or more points, x and y alike: " + x.length + " and " + y.length);
    }
    for (int i = 0; i < x.length; i++) {
      if (!Double.isFinite(x[i]) || !Double.isFinite(y[i]) || (i > 0 && !(x[i] > x[i - 1]))) {
        throw new IllegalArgumentException(
            "x must increase strictly and all be finite: " + Arrays.toString(x));
      }
    }
    this.x = x.clone();
    this.y = y.clone();
    this.slopes = slopes(x, y);
  }

  public double from() {
    return x[0];
  }

  public double to() {
    return x[x.length - 1];
  }

  public double value(double at) {
    int i = piece(inside(at));
    double low = Math.min(y[i], y[i + 1]);
    double high = Math.max(y[i], y[i + 1]);
    // Rounding may leave the range by a last digit; the curve does not.
    return Math.min(high, Math.max(low, hermite(i, at)));
  }

  public double slope(double at) {
    return hermiteSlope(piece(inside(at)), at);
  }

  /**
   * Every place where the curve meets the level, in order of x, ends included. A piece turns
   * nowhere, so each holds at most one, found to the last digit.
   */
  public List<Crossing> crossings(double level) {
    List<Crossing> found = new ArrayList<>();
    int last = x.length - 1;
    int i = 0;
    while (i <= last) {
      if (y[i] == level) {
        int first = i;
        while (i < last && y[i + 1] == level) {
          i++;
        }
        found.add(meeting(first, i, level));
      }
      if (i < last && y[i + 1] != level && (y[i] < level) != (y[i + 1] < level) && y[i] != level) {
        boolean rising = y[i] < level;
        int p = i;
        double at =
            Bisection.zero(
                v -> hermite(p, v) - level, rising ? x[i] : x[i + 1], rising ? x[i + 1] : x[i]);
        found.add(new Crossing.At(at, rising));
      }
      i++;
    }
    return List.copyOf(found);
  }

  /** Points first to last lie on the level; their neighbours, where there are any, do not. */
  private Crossing meeting(int first, int last, double level) {
    if (last > first) {
      return new Crossing.Plateau(x[first], x[last]);
    }
    if (first == 0) {
      return new Crossing.At(x[0], y[1] > level);
    }
    if (last == x.length - 1) {
      return new Crossing.At(x[last], y[last - 1] < level);
    }
    boolean fromBelow = y[first - 1] < level;
    boolean toAbove = y[first + 1] > level;
    return fromBelow == toAbove ? new Crossing.At(x[first], toAbove) : new Crossing.Touch(x[first]);
  }

  // The next three continue the outer pieces, for trying how the curve answers when an end is
  // moved.

  public double continued(double at) {
    return hermite(piece(at), at);
  }

  double continuedSlope(double at) {
    return hermiteSlope(piece(at), at);
  }

  /** The value on the straight line between the two points around {@code at}. */
  double straight(double at) {
    return straight(piece(at), at);
  }

  /** The slope of that straight line. */
  public double secant(double at) {
    return secant(piece(at));
  }

  /** The value on the straight line through a point and the next, also outside the two. */
  public double straight(int point, double at) {
    return y[point] + secant(point) * (at - x[point]);
  }

  /** The slope of that straight line. */
  public double secant(int point) {
    return (y[point + 1] - y[point]) / (x[point + 1] - x[point]);
  }

  private double inside(double at) {
    if (!(at >= from() && at <= to())) {
      throw new IllegalArgumentException(
          at + " lies outside the readings, " + from() + " to " + to() + ": not extrapolated");
    }
    return at;
  }

  private int piece(double at) {
    int found = Arrays.binarySearch(x, at);
    int i = found >= 0 ? found : -found - 2;
    return Math.max(0, Math.min(i, x.length - 2));
  }

  private double hermite(int i, double at) {
    double h = x[i + 1] - x[i];
    double t = (at - x[i]) / h;
    double r = 1 - t;
    return y[i] * (1 + 2 * t) * r * r
        + h * slopes[i] * t * r * r
        + y[i + 1] * t * t * (3 - 2 * t)
        - h * slopes[i + 1] * t * t * r;
  }

  private double hermiteSlope(int i, double at) {
    double h = x[i + 1] - x[i];
    double t = (at - x[i]) / h;
    double secant = (y[i + 1] - y[i]) / h;
    return 6 * t * (1 - t) * secant
        + slopes[i] * (1 - t) * (1 - 3 * t)
        + slopes[i + 1] * t * (3 * t - 2);
  }

  private static double[] slopes(double[] x, double[] y) {
    int pieces = x.length - 1;
    double[] h = new double[pieces];
    double[] secant = new double[pieces];
    for (int i = 0; i < pieces; i++) {
      h[i] = x[i + 1] - x[i];
      secant[i] = (y[i + 1] - y[i]) / h[i];
    }
    double[] slopes = new double[x.length];
    if (pieces == 1) {
      Arrays.fill(slopes, secant[0]);
      return slopes;
    }
    slopes[0] = endSlope(h[0], h[1], secant[0], secant[1]);
    slopes[pieces] = endSlope(h[pieces - 1], h[pieces - 2], secant[pieces - 1], secant[pieces - 2]);
    for (int i = 1; i < pieces; i++) {
      if (Math.signum(secant[i - 1]) * Math.signum(secant[i]) > 0) {
        double w1 = 2 * h[i] + h[i - 1];
        double w2 = h[i] + 2 * h[i - 1];
        slopes[i] = (w1 + w2) / (w1 / secant[i - 1] + w2 / secant[i]);
      }
    }
    return slopes;
  }

  private static double endSlope(double h0, double h1, double secant0, double secant1) {
    double slope = ((2 * h0 + h1) * secant0 - h0 * secant1) / (h0 + h1);
    if (Math.signum(slope) != Math.signum(secant0)) {
      return 0;
    }
    boolean turns = Math.signum(secant0) != Math.signum(secant1);
    return turns && Math.abs(slope) > 3 * Math.abs(secant0) ? 3 * secant0 : slope;
  }
}
