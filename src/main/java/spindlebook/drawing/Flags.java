package spindlebook.drawing;

/**
 * Labels under a lying blade, each a flag on a pole that drops from its mark: text to the right of
 * its pole, the rightmost flag highest, so that no pole runs through another's text.
 */
final class Flags {
  private Flags() {}

  /**
   * @param pole where each pole stands, drawing units, ascending
   * @param row the row of each flag, 0 highest
   */
  record Set(double[] pole, int[] row) {}

  /**
   * @param wanted where each pole would like to stand, drawing units from 0, ascending
   * @param widths how wide each flag is, at most {@code room}
   * @param room what must not be passed to the right
   * @param gap kept free between two poles where there is room for it
   */
  static Set plant(double[] wanted, double[] widths, double room, double gap) {
    int n = wanted.length;
    double widest = 0;
    for (double width : widths) {
      widest = Math.max(widest, width);
    }
    double step = n < 2 ? 0 : Math.max(0, Math.min(gap, (room - widest) / (n - 1)));
    double[] pole = new double[n];
    int[] row = new int[n];
    double right = Double.POSITIVE_INFINITY;
    for (int i = n - 1; i >= 0; i--) {
      pole[i] = Math.max(i * step, Math.min(Math.min(wanted[i], room - widths[i]), right));
      right = pole[i] - step;
      for (int j = i + 1; j < n; j++) {
        if (pole[j] < pole[i] + widths[i] + gap) {
          row[i] = Math.max(row[i], row[j] + 1);
        }
      }
    }
    return new Set(pole, row);
  }
}
