package spindlebook.spring;

import java.util.Arrays;
import spindlebook.curve.ShapePreservingCubic;

/**
 * A bump stop by points typed from its chart, taken at the wheel.
 *
 * <pre>
 *   F(d): shape-preserving cubic through the points      E(d) = ∫ F dd, exact by Simpson's rule
 * </pre>
 *
 * <p>d crush in mm of wheel from the touch, from 0 on, rising; F in N at the wheel: of a stop that
 * does not act there F = F_stop r, d = d_stop/r with r mm of stop per mm of wheel. Before the touch
 * 0; beyond the last point an IllegalArgumentException: what a stop does there nobody has drawn,
 * and no energy is counted. A chart of slow crush is too soft for a fast one in foam and in air.
 * Source: the maker's chart. Worked example: 0, 1000, 4000 N at 0, 20, 40 mm: 2187.5 N at 30 mm.
 */
public record StopChart(double[] crushMm, double[] forceN) {
  public StopChart {
    if (crushMm.length < 2 || crushMm[0] != 0 || Arrays.stream(forceN).anyMatch(f -> f < 0)) {
      throw new IllegalArgumentException("a stop's chart starts at 0 mm and pushes");
    }
  }

  public double mostMm() {
    return crushMm[crushMm.length - 1];
  }

  public double forceN(double mm) {
    return mm <= 0 ? 0 : new ShapePreservingCubic(crushMm, forceN).value(mm);
  }

  public double energyJ(double mm) {
    ShapePreservingCubic force = new ShapePreservingCubic(crushMm, forceN);
    double sum = 0;
    for (int i = 0; i < crushMm.length - 1 && crushMm[i] < mm; i++) {
      double from = crushMm[i];
      double to = Math.min(mm, crushMm[i + 1]);
      sum +=
          (to - from)
              / 6
              * (force.value(from) + 4 * force.value((from + to) / 2) + force.value(to));
    }
    return sum / 1000;
  }
}
