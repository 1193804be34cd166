package spindlebook.alignment;

import org.apache.commons.math3.analysis.polynomials.PolynomialFunction;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * The polynomial nearest to the readings, all of them weighed alike.
 *
 * <pre>
 *   minimise Σj (y_j − Σk c_k x_j^k)²        solved by QR in t = (x − m) / w
 *   any number drawn from it:  f(a) = Σj W_j y_j
 *   rms = √(Σ r² / n)        sd = √(Σ r² / (n − p)),   r residual, p coefficients
 * </pre>
 *
 * x in mm of wheel position, y in what it comes in; m, w middle and half width of the readings. At
 * least p different x, else IllegalArgumentException; n = p: sd is 0. Source: ordinary least
 * squares, any textbook; from memory.
 *
 * <p>Worked example: y 1, 2, 5 at 0, 1, 2: c = 1, 0, 1.
 */
final class PolynomialFit {
  private final double[] x;
  private final double[] y;
  private final double middle;
  private final double half;
  private final int terms;
  private final RealMatrix solved;
  private final PolynomialFunction scaled;

  PolynomialFit(double[] x, double[] y, int degree) {
    this.x = x.clone();
    this.y = y.clone();
    this.terms = degree + 1;
    double low = java.util.Arrays.stream(x).min().orElseThrow();
    double high = java.util.Arrays.stream(x).max().orElseThrow();
    if (x.length != y.length
        || degree < 1
        || java.util.Arrays.stream(x).distinct().count() < terms) {
      throw new IllegalArgumentException(
          x.length + " readings do not make a curve of degree " + degree);
    }
    this.middle = (low + high) / 2;
    this.half = (high - low) / 2;
    RealMatrix powers = new Array2DRowRealMatrix(x.length, terms);
    for (int j = 0; j < x.length; j++) {
      powers.setRow(j, powers(scale(x[j])));
    }
    this.solved =
        new QRDecomposition(powers)
            .getSolver()
            .solve(MatrixUtils.createRealIdentityMatrix(x.length));
    this.scaled = new PolynomialFunction(solved.operate(y));
  }

  double value(double at) {
    return scaled.value(scale(at));
  }

  double slope(double at) {
    return scaled.polynomialDerivative().value(scale(at)) / half;
  }

  double curvature(double at) {
    return scaled.polynomialDerivative().polynomialDerivative().value(scale(at)) / (half * half);
  }

  /** W of value (0), slope (1) or curvature (2) at a place. */
  double[] weights(double at, int derivative) {
    double t = scale(at);
    double[] row = new double[terms];
    for (int k = derivative; k < terms; k++) {
      double factor = 1;
      for (int i = 0; i < derivative; i++) {
        factor *= (k - i) / half;
      }
      row[k] = factor * Math.pow(t, k - derivative);
    }
    return solved.preMultiply(row);
  }

  double residualSd() {
    return x.length == terms ? 0 : Math.sqrt(squares() / (x.length - terms));
  }

  private double squares() {
    double sum = 0;
    for (int j = 0; j < x.length; j++) {
      double r = y[j] - value(x[j]);
      sum += r * r;
    }
    return sum;
  }

  private double scale(double at) {
    return (at - middle) / half;
  }

  private double[] powers(double t) {
    double[] row = new double[terms];
    for (int k = 0; k < terms; k++) {
      row[k] = Math.pow(t, k);
    }
    return row;
  }
}
