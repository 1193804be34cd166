package spindlebook.travel;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import spindlebook.curve.Node;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Source;

/**
 * How wide a limit's interval is for somebody who knows the shape of the true curve and needs the
 * readings only for how high it lies: y_j = f(x_j) + a + error, generalised least squares for a,
 * then X = a / f'. The errors are those the readings state, what is shared counted once; an error
 * common to all values shifts a whole, one of the mark shifts X whole.
 *
 * <p>Source: textbook generalised least squares (Aitken), from memory: u²(a) = 1 / (1ᵀ V⁻¹ 1).
 */
final class KnownCurve {
  private KnownCurve() {}

  /** Full width 2U (k = 2) in mm of wheel. */
  static double widthMm(SimulatedCorner corner, List<Node> nodes) {
    int n = nodes.size();
    RealMatrix v = new Array2DRowRealMatrix(n, n);
    Figure[] residual = new Figure[n];
    Set<Source> sources = new LinkedHashSet<>();
    double atLimit = corner.curve().slope(corner.limitMm());
    for (int j = 0; j < n; j++) {
      double slope = corner.curve().slope(corner.heightsMm()[j]);
      residual[j] = nodes.get(j).value().minus(nodes.get(j).positionMm().times(slope));
      sources.addAll(residual[j].parts().keySet());
    }
    for (int j = 0; j < n; j++) {
      for (int k = 0; k < n; k++) {
        v.setEntry(j, k, residual[j].covariance(residual[k]));
      }
    }
    RealMatrix inverse = new LUDecomposition(v).getSolver().getInverse();
    double weight = 0;
    for (int j = 0; j < n; j++) {
      for (int k = 0; k < n; k++) {
        weight += inverse.getEntry(j, k);
      }
    }
    return 2 * Figure.K * Math.sqrt(1 / weight) / Math.abs(atLimit);
  }
}
