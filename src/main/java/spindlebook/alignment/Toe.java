package spindlebook.alignment;

import java.util.List;
import java.util.function.ToDoubleFunction;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Propagated;

/**
 * Toe of one wheel, said in degrees, or in millimetres or inches across the wheel's edge.
 *
 * <pre>
 *   across one wheel   m = D sin t             t = asin(m / D)
 *   total              T = D (sin tL + sin tR) total angle = tL + tR
 * </pre>
 *
 * t toe in rad, + front edge inward; D the diameter (or plate length) it is said across, mm, at the
 * height of the hub; m, T in mm, rear gap less front gap. T / D is the total angle to 1e-5 of it;
 * taken as one wheel's it is twice too much. |m| ≤ D, else IllegalArgumentException.
 *
 * <p>Assumes the edge's two points lie at one height. Source: plane geometry; derived in
 * docs/methods-alignment.md.
 *
 * <p>Worked example: 0.25° in each wheel across 28 in (711.2 mm): 3.103 mm a wheel, 6.206 mm =
 * 0.244 in total.
 *
 * @param rad toe of this wheel
 */
public record Toe(Figure rad) {

  /** From what it is across one wheel. */
  public static Toe acrossOneWheel(Figure toeMm, Figure acrossMm) {
    return new Toe(asin(List.of(toeMm, acrossMm), v -> v[0] / v[1]));
  }

  public Figure mm(double acrossMm) {
    double t = rad.value();
    return Figure.linear(
        acrossMm * Math.sin(t), List.of(rad), new double[] {acrossMm * Math.cos(t)});
  }

  public static Figure totalRad(Toe left, Toe right) {
    return left.rad.plus(right.rad);
  }

  /** The ± of a sine near 1 may reach beyond it: there the angle ends at a right one. */
  static Figure asin(List<Figure> inputs, ToDoubleFunction<double[]> sine) {
    double there = sine.applyAsDouble(inputs.stream().mapToDouble(Figure::value).toArray());
    if (!(Math.abs(there) <= 1)) {
      throw new IllegalArgumentException("a toe of " + there + " times the spacing is no angle");
    }
    return Propagated.of(inputs, v -> Math.asin(Math.max(-1, Math.min(1, sine.applyAsDouble(v)))));
  }
}
