package spindlebook.drawing;

/**
 * Pushes labels apart along a line as little as possible, their order kept.
 *
 * <p>Least squares under order: with a label's extent {@code e[i]} and the place it would like
 * {@code c[i]}, the substitution z = centre − (extents before it) turns "no overlap" into "z never
 * falls", which pooling adjacent violators solves exactly (Barlow, Bartholomew, Bremner, Brunk,
 * Statistical Inference under Order Restrictions, 1972; from memory). Holding the result between
 * two ends keeps it the least-squares answer.
 */
public final class Spread {
  private Spread() {}

  /**
   * @param wanted where each centre would like to be, drawing units, ascending
   * @param extents how long each label is along the line, drawing units
   * @param low where the first label may begin
   * @param high where the last label may end; at least {@code low} plus all extents
   * @return the centres, ascending, apart by half of both extents or more
   */
  public static double[] apart(double[] wanted, double[] extents, double low, double high) {
    int n = wanted.length;
    double[] before = new double[n];
    double sum = 0;
    for (int i = 0; i < n; i++) {
      before[i] = sum + extents[i] / 2;
      sum += extents[i];
    }
    if (sum > high - low + 1e-9) {
      throw new IllegalArgumentException("no room: " + sum + " in " + (high - low));
    }
    double[] mean = new double[n];
    int[] count = new int[n];
    int pools = 0;
    for (int i = 0; i < n; i++) {
      mean[pools] = wanted[i] - before[i];
      count[pools] = 1;
      pools++;
      while (pools > 1 && mean[pools - 2] > mean[pools - 1]) {
        int both = count[pools - 2] + count[pools - 1];
        mean[pools - 2] =
            (mean[pools - 2] * count[pools - 2] + mean[pools - 1] * count[pools - 1]) / both;
        count[pools - 2] = both;
        pools--;
      }
    }
    double[] centres = new double[n];
    int i = 0;
    for (int pool = 0; pool < pools; pool++) {
      double held = Math.max(low, Math.min(high - sum, mean[pool]));
      for (int k = 0; k < count[pool]; k++, i++) {
        centres[i] = held + before[i];
      }
    }
    return centres;
  }
}
