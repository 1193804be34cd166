package spindlebook;

import java.util.function.DoubleUnaryOperator;

/**
 * The shape-preserving cubic and its crossings, written a second time in the plainest way, so that
 * the story's figures are not checked against the code that made them. Fritsch and Butland 1984
 * with the three-point end slopes, as scipy's PchipInterpolator; from memory.
 */
final class HandSums {
  private HandSums() {}

  static double value(double[] x, double[] y, double at) {
    int i = piece(x, at);
    double[] d = slopes(x, y);
    double h = x[i + 1] - x[i];
    double t = (at - x[i]) / h;
    double rising = t * t * (3 - 2 * t);
    return y[i] * (1 - rising)
        + y[i + 1] * rising
        + h * t * (1 - t) * (1 - t) * d[i]
        - h * t * t * (1 - t) * d[i + 1];
  }

  /** Slope at one of the nodes. */
  static double slopeAtNode(double[] x, double[] y, int node) {
    return slopes(x, y)[node];
  }

  static double where(double[] x, double[] y, double level, double from, double to) {
    return zero(at -> value(x, y, at) - level, from, to);
  }

  /**
   * Where a strap is to stop the wheel that ends at {@code limit} stretched: by so much at the
   * strap where it stops today, and by a share more of every inch that it is longer.
   */
  static double stretchedTo(
      double limit, double[] x, double[] y, double stop, double stretch, double share, double to) {
    double length = value(x, y, limit);
    return where(
        x, y, length - (stretch + share * (length - value(x, y, stop))) / (1 + share), limit, to);
  }

  static double zero(DoubleUnaryOperator f, double from, double to) {
    double low = from;
    double high = to;
    for (int i = 0; i < 200; i++) {
      double middle = (low + high) / 2;
      if (Math.signum(f.applyAsDouble(middle)) == Math.signum(f.applyAsDouble(low))) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }

  private static int piece(double[] x, double at) {
    int i = 0;
    while (i < x.length - 2 && at > x[i + 1]) {
      i++;
    }
    return i;
  }

  private static double[] slopes(double[] x, double[] y) {
    int last = x.length - 1;
    double[] h = new double[last];
    double[] s = new double[last];
    for (int i = 0; i < last; i++) {
      h[i] = x[i + 1] - x[i];
      s[i] = (y[i + 1] - y[i]) / h[i];
    }
    double[] d = new double[last + 1];
    d[0] = atEnd(h[0], h[1], s[0], s[1]);
    d[last] = atEnd(h[last - 1], h[last - 2], s[last - 1], s[last - 2]);
    for (int i = 1; i < last; i++) {
      double near = 2 * h[i] + h[i - 1];
      double far = h[i] + 2 * h[i - 1];
      d[i] = s[i - 1] * s[i] <= 0 ? 0 : (near + far) / (near / s[i - 1] + far / s[i]);
    }
    return d;
  }

  private static double atEnd(double h0, double h1, double s0, double s1) {
    double d = ((2 * h0 + h1) * s0 - h0 * s1) / (h0 + h1);
    if (d * s0 <= 0) {
      return 0;
    }
    return s0 * s1 < 0 && Math.abs(d) > Math.abs(3 * s0) ? 3 * s0 : d;
  }
}
