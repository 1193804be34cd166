package spindlebook.uncertainty;

import java.util.HashMap;
import java.util.Map;

/**
 * The mean of figures while they come in, as {@link Figure#mean} gives it, without adding up all of
 * them again for each.
 *
 * <pre>
 *   u²(x − m) = u²(x) + u²(m) − 2 u(x, m)      u²(m) = Σs (Σi part_s(xi))² / n²
 * </pre>
 *
 * <p>Source: JCGM 100:2008, eq. 16, with sources that figures share; numbered from memory.
 */
public final class MeanSoFar {
  private final Map<Source, Double> sums = new HashMap<>();
  private double squares;
  private double sum;
  private int n;

  public void add(Figure next) {
    n++;
    sum += next.value();
    next.eachPart(
        (source, part) -> {
          double before = sums.getOrDefault(source, 0.0);
          sums.put(source, before + part);
          squares += part * (2 * before + part);
        });
  }

  /** Whether a figure differs from the mean by no more than the U of that difference. */
  public boolean within(Figure next) {
    double[] shared = {0};
    next.eachPart((source, part) -> shared[0] += part * sums.getOrDefault(source, 0.0));
    double variance = next.covariance(next) + squares / n / n - 2 * shared[0] / n;
    return Math.abs(next.value() - sum / n) <= Figure.K * Math.sqrt(Math.max(0, variance));
  }
}
