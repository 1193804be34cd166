package spindlebook.linkage;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.exception.MathIllegalStateException;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresBuilder;
import org.apache.commons.math3.fitting.leastsquares.LevenbergMarquardtOptimizer;
import org.apache.commons.math3.fitting.leastsquares.ValueAndJacobianFunction;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.NonPositiveDefiniteMatrixException;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.util.Pair;
import spindlebook.uncertainty.Figure;

/**
 * Which joints agree best with what was read, how sure that is, and which reading is probably
 * wrong.
 *
 * <pre>
 *   rows d: reading − model at its height, and coordinate as given − x
 *   V: their covariance by shared sources; a reading's has slope × its height's in it
 *   least dᵀ V⁻¹ d;   J = ∂model/∂x,  C = (Jᵀ V⁻¹ J)⁻¹,  x moves by C Jᵀ V⁻¹ d, a sum of the rows' figures
 *   F = V⁻¹ − V⁻¹ J C Jᵀ V⁻¹      w_i = (V⁻¹ d)_i / √F_ii      off_i = (V⁻¹ d)_i / F_ii   at the least
 * </pre>
 *
 * off_i is how far row i lies from what all others say of it (leave one out, by the straight line
 * at the answer), w_i that in standard uncertainties: beyond 3.29 (1 in 1,000 by chance) the one
 * with the greatest is probably wrong. What nothing can tell apart from it is named with it.
 *
 * <p>The coordinates as given are rows like the readings: what the readings do not tell stays as
 * given, with its doubt, and what is told of others carries that doubt too. One whose u the
 * readings leave above 0.7 of what it was (its variance not halved) is named as not told.
 *
 * <p>Assumes one wrong row at a time; several that agree in their error move the joints instead.
 * Slopes for V are those of the joints as given. Source: least squares with covariance, JCGM
 * 100:2008 5.2; w and 3.29: Baarda, A testing procedure for use in geodetic networks, 1968; both
 * from memory. The least by Commons Math's Levenberg–Marquardt.
 *
 * @param joints with the calibrated coordinates
 * @param coordinates in the order asked; their figures' sources are the readings' and the givens'
 * @param untold those that the readings do not tell
 * @param readings what is left of each reading, in their order
 * @param wrong none, the one that is probably wrong, or several of which one is; a coordinate as
 *     given may be among them
 * @param redundancy how many readings are more than was needed: Σ (V F)_ii over the readings
 */
public record Calibration(
    Joints joints,
    List<CoordinateFigure> coordinates,
    List<Coordinate> untold,
    List<Misfit> readings,
    List<Misfit> wrong,
    double redundancy) {
  private static final double BY_CHANCE = 3.29;
  private static final double NOT_TOLD = 0.7;

  /** Rows whose w are correlated like this stand and fall together. */
  private static final double TOGETHER = 0.95;

  /** Steps to the least: readings that agree took 26 at most, such as disagree 200 and no end. */
  private static final int AGREE_BY = 60;

  /** F_ii u² of a row that nothing else checks. */
  private static final double UNCHECKED = 1e-3;

  /**
   * @param key of the reading; of a coordinate its words
   * @param left as read less as modelled now, mm or rad
   * @param off how far it lies from what the others say; NaN where nothing checks it
   * @param w that, in standard uncertainties
   */
  public record Misfit(String key, double left, double off, double w) {}

  public Calibration {
    coordinates = List.copyOf(coordinates);
    untold = List.copyOf(untold);
    readings = List.copyOf(readings);
    wrong = List.copyOf(wrong);
  }

  /**
   * @param given where each chosen coordinate is as given, such as {@link CoordinateFigure#asGiven}
   * @throws LinkageRefused where a reading's height is not reached with the joints as given, or a
   *     row has no doubt of its own
   */
  public static Calibration of(
      Joints joints, List<CoordinateFigure> given, List<CornerReading> readings) {
    if (given.isEmpty()) {
      throw new LinkageRefused("Choose at least one coordinate that may be other than given.");
    }
    CornerFit fit = new CornerFit(joints, given, readings);
    List<Figure> rows = fit.rows();
    Array2DRowRealMatrix whiten = whitening(rows);
    double[] best = best(fit, whiten);
    double[] off = fit.off(best);

    RealMatrix j = lowerTimes(whiten, fit.slopes(best, off));
    RealMatrix c = new CholeskyDecomposition(j.transpose().multiply(j)).getSolver().getInverse();
    RealMatrix gains = c.multiply(j.transpose()).multiply(whiten);
    List<CoordinateFigure> coordinates = new ArrayList<>();
    List<Coordinate> untold = new ArrayList<>();
    for (int k = 0; k < best.length; k++) {
      Coordinate coordinate = given.get(k).coordinate();
      coordinates.add(
          new CoordinateFigure(coordinate, Figure.linear(best[k], rows, gains.getRow(k))));
      if (coordinates.get(k).value().u() > NOT_TOLD * given.get(k).value().u()) {
        untold.add(coordinate);
      }
    }

    RealMatrix back = whiten.transpose();
    RealMatrix seen = back.multiply(j);
    RealMatrix f = back.multiply(whiten).subtract(seen.multiply(c).multiply(seen.transpose()));
    double[] pulls = back.operate(whiten.operate(off));
    List<Misfit> left = new ArrayList<>();
    for (int i = 0; i < off.length; i++) {
      boolean checked = f.getEntry(i, i) * Math.pow(rows.get(i).u(), 2) > UNCHECKED;
      left.add(
          new Misfit(
              i < readings.size()
                  ? readings.get(i).key()
                  : given.get(i - readings.size()).coordinate().words(),
              off[i],
              checked ? pulls[i] / f.getEntry(i, i) : Double.NaN,
              checked ? pulls[i] / Math.sqrt(f.getEntry(i, i)) : 0));
    }
    double redundancy = 0;
    for (int i = 0; i < readings.size(); i++) {
      for (int k = 0; k < off.length; k++) {
        redundancy += rows.get(i).covariance(rows.get(k)) * f.getEntry(k, i);
      }
    }
    return new Calibration(
        fit.joints(best),
        coordinates,
        untold,
        left.subList(0, readings.size()),
        wrong(left, f),
        redundancy);
  }

  /** W with W V Wᵀ = 1: whitened rows have u = 1 and no correlation. The inverse of V's root. */
  private static Array2DRowRealMatrix whitening(List<Figure> rows) {
    int m = rows.size();
    RealMatrix v = new Array2DRowRealMatrix(m, m);
    for (int i = 0; i < m; i++) {
      for (int k = 0; k <= i; k++) {
        double shared = rows.get(i).covariance(rows.get(k));
        v.setEntry(i, k, shared);
        v.setEntry(k, i, shared);
      }
    }
    RealMatrix root;
    try {
      root = new CholeskyDecomposition(v, 1e-9, 1e-18).getL();
    } catch (NonPositiveDefiniteMatrixException e) {
      throw new LinkageRefused("A reading has no doubt of its own, so nothing can be weighed.");
    }
    double[][] inverse = new double[m][m];
    for (int i = 0; i < m; i++) {
      inverse[i][i] = 1 / root.getEntry(i, i);
      for (int k = 0; k < i; k++) {
        double sum = 0;
        for (int j = k; j < i; j++) {
          sum -= root.getEntry(i, j) * inverse[j][k];
        }
        inverse[i][k] = sum / root.getEntry(i, i);
      }
    }
    return new Array2DRowRealMatrix(inverse, false);
  }

  /** Of a lower triangle, its rows of zeros left out. */
  private static RealMatrix lowerTimes(Array2DRowRealMatrix lower, RealMatrix narrow) {
    double[][] l = lower.getDataRef();
    double[][] n = narrow.getData();
    double[][] product = new double[l.length][narrow.getColumnDimension()];
    for (int i = 0; i < l.length; i++) {
      for (int k = 0; k <= i; k++) {
        for (int c = 0; c < product[i].length; c++) {
          product[i][c] += l[i][k] * n[k][c];
        }
      }
    }
    return new Array2DRowRealMatrix(product, false);
  }

  /** What is left of the readings, each by its doubt; slopes only of a step that is taken. */
  private record Whitened(CornerFit fit, Array2DRowRealMatrix whiten)
      implements ValueAndJacobianFunction {
    @Override
    public Pair<RealVector, RealMatrix> value(RealVector at) {
      return new Pair<>(computeValue(at.toArray()), computeJacobian(at.toArray()));
    }

    @Override
    public RealVector computeValue(double[] at) {
      return new ArrayRealVector(whiten.operate(fit.off(at)), false);
    }

    @Override
    public RealMatrix computeJacobian(double[] at) {
      return lowerTimes(whiten, fit.slopes(at, fit.off(at))).scalarMultiply(-1);
    }
  }

  private static double[] best(CornerFit fit, Array2DRowRealMatrix whiten) {
    try {
      return new LevenbergMarquardtOptimizer()
          .withParameterRelativeTolerance(1e-9)
          .withCostRelativeTolerance(1e-9)
          .optimize(
              new LeastSquaresBuilder()
                  .start(fit.start())
                  .target(new double[whiten.getRowDimension()])
                  .model(new Whitened(fit, whiten))
                  .lazyEvaluation(true)
                  .maxEvaluations(AGREE_BY)
                  .maxIterations(AGREE_BY)
                  .build())
          .getPoint()
          .toArray();
    } catch (MathIllegalStateException e) {
      throw new LinkageRefused("The readings lead to no corner: too many of them disagree.");
    }
  }

  private static List<Misfit> wrong(List<Misfit> left, RealMatrix f) {
    double[] w = left.stream().mapToDouble(l -> Math.abs(l.w)).toArray();
    int worst = new ArrayRealVector(w, false).getMaxIndex();
    List<Misfit> wrong = new ArrayList<>();
    for (int i = 0; i < w.length; i++) {
      double together =
          f.getEntry(i, worst) / Math.sqrt(f.getEntry(i, i) * f.getEntry(worst, worst));
      if (w[i] > BY_CHANCE && (i == worst || Math.abs(together) > TOGETHER)) {
        wrong.add(left.get(i));
      }
    }
    return wrong;
  }
}
