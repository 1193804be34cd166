package spindlebook.spring;

import java.util.Arrays;
import java.util.function.DoubleFunction;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.stat.regression.OLSMultipleLinearRegression;

/**
 * The sum of given columns nearest to the readings, all weighed alike.
 *
 * <pre>
 *   least Σj (y_j − Σk c_k X_jk)²     s² = RSS/(n − p)     C = s² (XᵀX)⁻¹     se_k = √C_kk
 * </pre>
 *
 * <p>y in mm, X as the caller makes it; n readings, p columns. By QR (Commons Math). Assumes errors
 * of like size that know nothing of each other. Columns that cannot be told apart, or n ≤ p, are an
 * IllegalArgumentException of Commons Math's. Source: ordinary least squares, any textbook; checked
 * against NIST StRD Norris, Pontius, NoInt1 and NoInt2.
 *
 * <p>Worked example: 1, 2, 2, 4 at 0, 1, 2, 3 with columns 1 and x: c = 0.9, 0.9; RSS 0.7, s
 * 0.5916, se of the slope 0.2646.
 *
 * @param unscaled (XᵀX)⁻¹
 */
public record LeastSquares(double[] parameters, RealMatrix unscaled, double rss, int dof) {

  static LeastSquares of(double[] at, DoubleFunction<double[]> row, double[] y) {
    return of(Arrays.stream(at).mapToObj(row).toArray(double[][]::new), y);
  }

  static LeastSquares of(double[][] rows, double[] y) {
    OLSMultipleLinearRegression fit = new OLSMultipleLinearRegression();
    fit.setNoIntercept(true);
    fit.newSampleData(y, rows);
    return new LeastSquares(
        fit.estimateRegressionParameters(),
        MatrixUtils.createRealMatrix(fit.estimateRegressionParametersVariance()),
        fit.calculateResidualSumOfSquares(),
        y.length - rows[0].length);
  }

  /** The columns times their factors; more factors than columns are left out. */
  static double dot(double[] factors, double[] columns) {
    double sum = 0;
    for (int k = 0; k < columns.length; k++) {
      sum += factors[k] * columns[k];
    }
    return sum;
  }

  public double sd() {
    return Math.sqrt(rss / dof);
  }

  public double se(int parameter) {
    return sd() * Math.sqrt(unscaled.getEntry(parameter, parameter));
  }

  /** gᵀ (XᵀX)⁻¹ g: what the parameters' doubt does along g, in units of s². */
  double leverage(double[] along) {
    return dot(along, unscaled.operate(along));
  }
}
