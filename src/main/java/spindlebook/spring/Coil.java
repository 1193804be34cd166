package spindlebook.spring;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleBiFunction;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Propagated;

/**
 * The coil on a shock, or two in series with a crossover stop.
 *
 * <pre>
 *   x = zero − L      zero = open + preload, the shock length at which the coil is just loose
 *   kₛ = kₜ kₘ/(kₜ + kₘ)    until the tender has closed by the gap:  F_c = kₜ gap,  x_c = F_c/kₛ
 *   x ≤ 0: F = 0      x ≤ x_c: F = kₛ x      beyond: F = F_c + kₘ (x − x_c)
 * </pre>
 *
 * <p>k in N/mm of main (m) and tender (t), lengths in mm, F in N. The gap counts what the tender is
 * pressed together, which is less than what the shock is. Force is continuous, the rate jumps at
 * x_c. One spring: no tender. Straight springs, no friction. Source: springs in series, any
 * textbook. Worked example: 26 and 44 N/mm, gap 95 mm: 16.343 N/mm up to 151.136 mm and 2470 N,
 * then 44; 186.653 J to there.
 *
 * @param tenderNPerMm 0: there is none
 */
public record Coil(Figure mainNPerMm, Figure tenderNPerMm, Figure gapMm, Figure zeroForceMm) {
  public static Coil single(Figure rateNPerMm, Figure zeroForceMm) {
    return new Coil(rateNPerMm, Figure.exact(0), Figure.exact(0), zeroForceMm);
  }

  List<Figure> inputs() {
    return List.of(mainNPerMm, tenderNPerMm, gapMm, zeroForceMm);
  }

  // Each formula by itself takes its inputs in that order, so that doubt goes through any of them.

  private static double both(double[] c) {
    return c[1] == 0 ? c[0] : c[0] * c[1] / (c[0] + c[1]);
  }

  /** Of both in series; of one spring its own. */
  public double seriesNPerMm() {
    return both(new double[] {mainNPerMm.value(), tenderNPerMm.value()});
  }

  static double crossover(double[] c) {
    return c[1] == 0 ? 0 : c[1] * c[2] / both(c);
  }

  public static double forceN(double[] c, double lengthMm) {
    double x = Math.max(0, c[3] - lengthMm);
    double most = crossover(c);
    return both(c) * Math.min(x, most) + c[0] * Math.max(0, x - most);
  }

  /** At the crossover itself that of both. */
  public static double rateNPerMm(double[] c, double lengthMm) {
    double x = c[3] - lengthMm;
    return x <= 0 ? 0 : x <= crossover(c) ? both(c) : c[0];
  }

  public static double energyJ(double[] c, double lengthMm) {
    double x = Math.max(0, c[3] - lengthMm);
    double most = crossover(c);
    double main = Math.max(0, x - most);
    double first = Math.min(x, most);
    return (both(c) * (first * first / 2 + first * main) + c[0] * main * main / 2) / 1000;
  }

  /** How far it is pressed together under a force. */
  static double compressionMm(double[] c, double forceN) {
    double first = Math.min(forceN, c[1] * c[2]);
    return first / both(c) + (forceN - first) / c[0];
  }

  /** Shock length at which the stop takes the tender out. Of one spring, where it is just loose. */
  public Figure crossoverMm() {
    return Propagated.of(inputs(), v -> v[3] - crossover(v));
  }

  /**
   * Shock length at which the main spring's turns touch, {@code travelMm} its free less its solid
   * length. The tender's travel must be more than the gap, else its solid length is the stop.
   */
  public Figure bindsAtMm(Figure travelMm) {
    return at(travelMm, (v, travel) -> v[3] - compressionMm(v, v[0] * travel));
  }

  /** Force, rate or energy at a shock length, with its doubt. */
  public Figure at(Figure lengthMm, ToDoubleBiFunction<double[], Double> formula) {
    List<Figure> all = new ArrayList<>(inputs());
    all.add(lengthMm);
    return Propagated.of(all, v -> formula.applyAsDouble(v, v[4]));
  }
}
