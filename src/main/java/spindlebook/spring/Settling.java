package spindlebook.spring;

import java.util.Arrays;
import org.apache.commons.math3.linear.SingularMatrixException;
import org.apache.commons.math3.util.MathArrays;

/**
 * Fits factors of columns together with the one time τ that the columns hang on.
 *
 * <pre>
 *   RSS(τ) = least over c of Σj (y_j − Σk c_k X_k(t_j; τ))²     least over τ
 * </pre>
 *
 * <p>For a τ the factors are plain least squares, so nothing needs a start that somebody guesses: τ
 * is looked for from a fiftieth of the first step of use to fifty times all of it, and all
 * parameters polished together by Gauss and Newton's. Source: variable projection, Golub and
 * Pereyra 1973, from memory; checked against NIST StRD Misra1a and BoxBOD.
 *
 * <p>Worked example: 500, 506.321, 508.647, 509.502, 509.817 mm at 0, 6, 12, 18, 24 h: L0 500, a 10
 * mm, τ 6 h.
 */
record Settling(Settling.Columns columns, double[] hours, double[] y) {
  /** The columns at a use and a τ. */
  interface Columns {
    double[] at(double hours, double tauHours);
  }

  private static final int STEPS = 200;
  private static final int POLISHES = 50;

  /** Parameters: the factors in order, then τ. */
  LeastSquares fit() {
    double most = Arrays.stream(hours).max().orElseThrow();
    double least = Arrays.stream(hours).filter(t -> t > 0).min().orElse(most);
    double from = Math.log(least / 50);
    double step = (Math.log(most * 50) - from) / STEPS;
    int best = 0;
    for (int i = 1; i <= STEPS; i++) {
      if (rss(from + i * step) < rss(from + best * step)) {
        best = i;
      }
    }
    double tau = Math.exp(from + best * step);
    double[] factors = linear(tau).parameters();
    double[] p = Arrays.copyOf(factors, factors.length + 1);
    p[factors.length] = tau;
    LeastSquares there = step(p);
    for (int i = 0; i < POLISHES; i++) {
      double[] next = MathArrays.ebeAdd(p, there.parameters());
      // Where the readings tell no τ a step may lead away.
      if (!(squares(next) <= squares(p) * (1 + 1e-12)) || !(next[factors.length] > 0)) {
        break;
      }
      p = next;
      there = step(p);
    }
    return new LeastSquares(p, there.unscaled(), squares(p), there.dof());
  }

  /** Gauss and Newton's: the residuals by the gradients. */
  private LeastSquares step(double[] p) {
    return LeastSquares.of(hours, t -> gradient(columns, t, p), residuals(p));
  }

  private double rss(double logTau) {
    try {
      return linear(Math.exp(logTau)).rss();
    } catch (SingularMatrixException alike) {
      return Double.MAX_VALUE;
    }
  }

  private LeastSquares linear(double tau) {
    return LeastSquares.of(hours, t -> columns.at(t, tau), y);
  }

  private double[] residuals(double[] p) {
    return MathArrays.ebeSubtract(y, Arrays.stream(hours).map(t -> value(columns, t, p)).toArray());
  }

  private double squares(double[] p) {
    double norm = MathArrays.safeNorm(residuals(p));
    return norm * norm;
  }

  private static double value(Columns columns, double t, double[] p) {
    return LeastSquares.dot(p, columns.at(t, p[p.length - 1]));
  }

  /** By the factors, the columns; by τ, a central difference that errs by 1e-10 of itself. */
  static double[] gradient(Columns columns, double t, double[] p) {
    double[] x = columns.at(t, p[p.length - 1]);
    double[] g = Arrays.copyOf(x, p.length);
    double step = 1e-5 * p[p.length - 1];
    double[] moved = p.clone();
    moved[p.length - 1] += step;
    double up = value(columns, t, moved);
    moved[p.length - 1] -= 2 * step;
    g[p.length - 1] = (up - value(columns, t, moved)) / (2 * step);
    return g;
  }
}
