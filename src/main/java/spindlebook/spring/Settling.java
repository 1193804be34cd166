package spindlebook.spring;

import java.util.Arrays;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresBuilder;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresOptimizer.Optimum;
import org.apache.commons.math3.fitting.leastsquares.LevenbergMarquardtOptimizer;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.SingularMatrixException;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;
import org.apache.commons.math3.util.Pair;

/**
 * Fits factors of columns together with the one time τ that the columns hang on.
 *
 * <pre>
 *   RSS(τ) = least over c of Σj (y_j − Σk c_k X_k(t_j; τ))²     least over τ
 * </pre>
 *
 * <p>For a τ the factors are plain least squares, so nothing needs a start that somebody guesses: τ
 * is looked for from a fiftieth of the first step of use to fifty times all of it, narrowed by
 * Brent's method, and all parameters polished together by Levenberg and Marquardt's. Source:
 * variable projection, Golub and Pereyra 1973, from memory; checked against NIST StRD Misra1a and
 * BoxBOD. A least at either end of that stretch is no time that the data tell: fitted as it is,
 * with the doubt it has.
 *
 * <p>Worked example: 500, 506.321, 508.647, 509.502, 509.817 mm at 0, 6, 12, 18, 24 h: L0 500, a 10
 * mm, τ 6 h.
 */
final class Settling {
  /** The columns at a use and a τ. */
  interface Columns {
    double[] at(double hours, double tauHours);
  }

  private static final int STEPS = 60;

  private final Columns columns;
  private final double[] hours;
  private final double[] y;

  private Settling(Columns columns, double[] hours, double[] y) {
    this.columns = columns;
    this.hours = hours;
    this.y = y;
  }

  /** Parameters: the factors in order, then τ. */
  static LeastSquares fit(Columns columns, double[] hours, double[] y) {
    return new Settling(columns, hours, y).fit();
  }

  private LeastSquares fit() {
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
    double middle = from + best * step;
    double log =
        new BrentOptimizer(1e-9, 1e-12)
            .optimize(
                new MaxEval(500),
                GoalType.MINIMIZE,
                new UnivariateObjectiveFunction(this::rss),
                new SearchInterval(middle - step, middle + step, middle))
            .getPoint();
    double[] factors = linear(Math.exp(log)).parameters();
    double[] start = Arrays.copyOf(factors, factors.length + 1);
    start[factors.length] = Math.exp(log);
    Optimum polished = polished(start);
    double[] parameters = polished.getPoint().toArray();
    RealMatrix r = new QRDecomposition(jacobian(parameters)).getR();
    int p = parameters.length;
    RealMatrix inverse =
        new QRDecomposition(r.getSubMatrix(0, p - 1, 0, p - 1)).getSolver().getInverse();
    return new LeastSquares(
        parameters, inverse.multiply(inverse.transpose()), squares(parameters), hours.length - p);
  }

  private Optimum polished(double[] start) {
    return new LevenbergMarquardtOptimizer()
        .withCostRelativeTolerance(1e-15)
        .withParameterRelativeTolerance(1e-13)
        .withOrthoTolerance(1e-15)
        .optimize(
            new LeastSquaresBuilder()
                .start(start)
                .target(y)
                .model(
                    at ->
                        new Pair<>(
                            new ArrayRealVector(model(at.toArray())), jacobian(at.toArray())))
                .maxEvaluations(1000)
                .maxIterations(1000)
                .build());
  }

  private double rss(double logTau) {
    try {
      return linear(Math.exp(logTau)).rss();
    } catch (SingularMatrixException alike) {
      return Double.MAX_VALUE;
    }
  }

  private LeastSquares linear(double tau) {
    return LeastSquares.of(
        Arrays.stream(hours).mapToObj(t -> columns.at(t, tau)).toArray(double[][]::new), y);
  }

  private double[] model(double[] p) {
    return Arrays.stream(hours).map(t -> value(columns, t, p)).toArray();
  }

  private double squares(double[] p) {
    double[] model = model(p);
    double sum = 0;
    for (int j = 0; j < y.length; j++) {
      sum += (y[j] - model[j]) * (y[j] - model[j]);
    }
    return sum;
  }

  private RealMatrix jacobian(double[] p) {
    return new Array2DRowRealMatrix(
        Arrays.stream(hours).mapToObj(t -> gradient(columns, t, p)).toArray(double[][]::new));
  }

  static double value(Columns columns, double t, double[] p) {
    double[] x = columns.at(t, p[p.length - 1]);
    double sum = 0;
    for (int k = 0; k < x.length; k++) {
      sum += p[k] * x[k];
    }
    return sum;
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
