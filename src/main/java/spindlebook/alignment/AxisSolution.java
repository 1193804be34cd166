package spindlebook.alignment;

import java.util.function.Function;

/** Two equations in tan caster and tan KPI, solved by Newton's method. */
final class AxisSolution {
  private static final double STEP = 1e-6;
  private static final double LAST_STEP = 1e-14;
  private static final int MOST = 60;

  private AxisSolution() {}

  /**
   * {@code remainders} of (tan caster, tan KPI) become zero at the answer.
   *
   * @return caster and KPI in rad; IllegalArgumentException where no axis explains the readings
   */
  static double[] rad(Function<double[], double[]> remainders) {
    double[] at = {0.05, 0.15};
    for (int i = 0; i < MOST; i++) {
      double[] f = remainders.apply(at);
      double[] byCaster = slope(remainders, at, 0);
      double[] byKpi = slope(remainders, at, 1);
      double det = byCaster[0] * byKpi[1] - byKpi[0] * byCaster[1];
      double stepCaster = (f[0] * byKpi[1] - f[1] * byKpi[0]) / det;
      double stepKpi = (byCaster[0] * f[1] - byCaster[1] * f[0]) / det;
      at[0] -= stepCaster;
      at[1] -= stepKpi;
      if (!(Math.abs(at[0]) < 3 && Math.abs(at[1]) < 3)) {
        break;
      }
      if (Math.abs(stepCaster) + Math.abs(stepKpi) < LAST_STEP) {
        break;
      }
    }
    double[] left = remainders.apply(at);
    if (!(Math.abs(left[0]) + Math.abs(left[1]) < 1e-12)) {
      throw new IllegalArgumentException("no steering axis explains what this sweep read");
    }
    return new double[] {Math.atan(at[0]), Math.atan(at[1])};
  }

  private static double[] slope(Function<double[], double[]> f, double[] at, int j) {
    double[] up = at.clone();
    double[] down = at.clone();
    up[j] += STEP;
    down[j] -= STEP;
    double[] high = f.apply(up);
    double[] low = f.apply(down);
    return new double[] {(high[0] - low[0]) / (2 * STEP), (high[1] - low[1]) / (2 * STEP)};
  }
}
