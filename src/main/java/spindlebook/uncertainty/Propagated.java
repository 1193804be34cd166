package spindlebook.uncertainty;

import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * A figure computed from others by any smooth formula.
 *
 * <pre>  c_i = (f(x_i + u_i) − f(x_i − u_i)) / 2 u_i        part_s = Σi c_i part_s(x_i)</pre>
 *
 * <p>u_i is the input's standard uncertainty, so a formula that bends over ± u is followed as far
 * as a straight line can. An input without uncertainty has none to hand on; what two inputs share
 * goes through both and may cancel. Source: JCGM 100:2008, 5.1.3 note 2, from memory.
 *
 * <p>Worked example: x² at x = 3 with u 0.1: c = (3.1² − 2.9²)/0.2 = 6, u = 0.6.
 */
public final class Propagated {
  private Propagated() {}

  public static Figure of(List<Figure> inputs, ToDoubleFunction<double[]> formula) {
    double[] x = inputs.stream().mapToDouble(Figure::value).toArray();
    double[] sensitivities = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      double u = inputs.get(i).u();
      if (u > 0) {
        double there = x[i];
        x[i] = there + u;
        double up = formula.applyAsDouble(x);
        x[i] = there - u;
        double down = formula.applyAsDouble(x);
        x[i] = there;
        sensitivities[i] = (up - down) / (2 * u);
      }
    }
    return Figure.linear(formula.applyAsDouble(x), inputs, sensitivities);
  }
}
