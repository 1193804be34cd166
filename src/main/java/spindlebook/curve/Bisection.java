package spindlebook.curve;

import java.util.function.DoubleUnaryOperator;

/** Finds where a continuous function passes zero between two places, to the last digit. */
public final class Bisection {
  private Bisection() {}

  /**
   * A zero in the closed interval. {@code f(negativeAt) ≤ 0} and {@code f(positiveAt) ≥ 0}; either
   * end may be the greater one.
   */
  public static double zero(DoubleUnaryOperator f, double negativeAt, double positiveAt) {
    // A flat end would be missed by some 1e-7: the last digits of f do not see it.
    if (f.applyAsDouble(positiveAt) == 0) {
      return positiveAt;
    }
    if (f.applyAsDouble(negativeAt) == 0) {
      return negativeAt;
    }
    double negative = negativeAt;
    double positive = positiveAt;
    while (true) {
      double middle = negative + 0.5 * (positive - negative);
      if (middle == negative || middle == positive) {
        // Neighbouring numbers: the one with the smaller remainder.
        return Math.abs(f.applyAsDouble(negative)) < Math.abs(f.applyAsDouble(positive))
            ? negative
            : positive;
      }
      double at = f.applyAsDouble(middle);
      if (at == 0) {
        return middle;
      }
      if (at < 0) {
        negative = middle;
      } else {
        positive = middle;
      }
    }
  }
}
