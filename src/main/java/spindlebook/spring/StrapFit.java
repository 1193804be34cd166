package spindlebook.spring;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.apache.commons.math3.distribution.FDistribution;
import org.apache.commons.math3.distribution.TDistribution;
import spindlebook.curve.Bisection;

/**
 * Tells how long a strap will be at a use, and at which use a length is reached.
 *
 * <pre>
 *   next reading at t:  ŷ(t) ± t(0.975, n−p) s √(1 + gᵀ (JᵀJ)⁻¹ g)     g = ∂ŷ/∂parameters at t
 *   length L reached:   centre ŷ = L;  early ŷ + … = L;  late ŷ − … = L
 * </pre>
 *
 * <p>t in hours, lengths in mm under one stated pull, s at least the tape's own u, which a lucky
 * run of readings does not undo. Early or late is empty when it does not come within a hundred
 * million hours: of a straight line exactly when its pace is not told from none, t² s² ≥ c² Sxx
 * (Fieller). For the straight line and the log exact under normal errors; with τ by the delta
 * method. Assumes that the strap goes on by its shape. Source: prediction interval and Fieller's
 * theorem, any textbook of regression; from memory; checked against the strap series' reference
 * numbers.
 *
 * <p>Worked example: ten readings from 455.3 mm new to 460.3 mm at 50 h, straight: 0.10905 mm an
 * hour; 464 mm reached at 81.97 h, from 71.46 to 95.19 h.
 *
 * @param found L0 in mm, then a in mm or b, c in mm an hour, then τ in hours, as the shape has them
 * @param tapeUMm standard uncertainty of one reading by itself, not what all of them share
 */
public record StrapFit(
    StrapShape shape, double[] hours, double[] lengthMm, double tapeUMm, LeastSquares found) {
  private static final double NEVER_HOURS = 1e8;

  /** Throws Commons Math's own exceptions where the readings do not tell the parameters. */
  public static StrapFit of(StrapShape shape, double[] hours, double[] lengthMm, double tapeUMm) {
    return new StrapFit(
        shape,
        hours,
        lengthMm,
        tapeUMm,
        shape.settles
            ? new Settling(shape::columns, hours, lengthMm).fit()
            : LeastSquares.of(hours, t -> shape.columns(t, 1), lengthMm));
  }

  public double at(double t) {
    double[] p = found.parameters();
    return LeastSquares.dot(p, shape.columns(t, p[p.length - 1]));
  }

  /** Half of the 95 % interval of one more reading there, mm. */
  public double nextWithin(double t) {
    return wide() * spread(t);
  }

  private double wide() {
    return new TDistribution(found.dof()).inverseCumulativeProbability(0.975)
        * Math.max(found.sd(), tapeUMm);
  }

  private double spread(double t) {
    double[] p = found.parameters();
    return Math.sqrt(
        1
            + found.leverage(
                shape.settles ? Settling.gradient(shape::columns, t, p) : shape.columns(t, 1)));
  }

  /** Whether the readings show where it bends: τ known to within itself. */
  boolean told() {
    int tau = found.parameters().length - 1;
    return !shape.settles || found.se(tau) < found.parameters()[tau];
  }

  /** From when to when a length is reached; what does not come is empty. */
  public Reached reaches(double mm) {
    double wide = wide();
    return new Reached(
        first(t -> at(t) + wide * spread(t) - mm),
        first(t -> at(t) - mm),
        first(t -> at(t) - wide * spread(t) - mm));
  }

  private OptionalDouble first(DoubleUnaryOperator beyond) {
    if (beyond.applyAsDouble(0) >= 0) {
      return OptionalDouble.of(0);
    }
    double before = 0;
    for (double t = Arrays.stream(hours).max().orElseThrow() / 1000 + 1e-3;
        t < NEVER_HOURS;
        t *= 1.05) {
      if (beyond.applyAsDouble(t) >= 0) {
        return OptionalDouble.of(Bisection.zero(beyond, before, t));
      }
      before = t;
    }
    return OptionalDouble.empty();
  }

  /**
   * How often chance alone would scatter the readings about this shape as they do or more; small
   * where the shape does not fit. Against repeats at the same use where there are any (F), else
   * against the tape's own u (χ²), else empty.
   *
   * <pre>
   *   F = ((RSS − PE)/(n − p − q))/(PE/q)     χ² = RSS/u²     PE, q: of repeats about their mean
   * </pre>
   */
  public OptionalDouble lackOfFit() {
    TreeMap<Double, List<Double>> places = new TreeMap<>();
    for (int i = 0; i < hours.length; i++) {
      places.computeIfAbsent(hours[i], t -> new ArrayList<>()).add(lengthMm[i]);
    }
    int q = hours.length - places.size();
    double pure = places.values().stream().mapToDouble(StrapFit::aboutMean).sum();
    if (q > 0 && pure > 0 && found.dof() > q) {
      double f = (found.rss() - pure) / (found.dof() - q) / (pure / q);
      return OptionalDouble.of(1 - new FDistribution(found.dof() - q, q).cumulativeProbability(f));
    }
    return tapeUMm > 0
        ? OptionalDouble.of(
            1
                - new ChiSquaredDistribution(found.dof())
                    .cumulativeProbability(found.rss() / (tapeUMm * tapeUMm)))
        : OptionalDouble.empty();
  }

  private static double aboutMean(List<Double> repeats) {
    double mean = repeats.stream().mapToDouble(y -> y).average().orElseThrow();
    return repeats.stream().mapToDouble(y -> (y - mean) * (y - mean)).sum();
  }

  /** Akaike's criterion for few readings: the less, the better the shape for what it costs. */
  double aicc() {
    int n = hours.length;
    int k = n - found.dof() + 1;
    double spread = Math.max(found.rss() / n, tapeUMm * tapeUMm * found.dof() / n);
    return n * Math.log(Math.max(spread, 1e-12)) + 2.0 * k * n / Math.max(1e-9, n - k - 1);
  }

  /** Hours of use: the interval's early end, the middle, its late end. */
  public record Reached(OptionalDouble early, OptionalDouble centre, OptionalDouble late) {}
}
