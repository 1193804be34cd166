package spindlebook.uncertainty;

import java.util.Map;
import java.util.OptionalInt;

/**
 * Tells what would settle a figure that can't tell: read it again, take a finer tool, both, or that
 * repeating will not settle it.
 *
 * <pre>
 *   needed: |y − limit| ≥ U(n),   U(n)² = k² (Σ shared² + Σ resolution² + Σ placing² / n)
 * </pre>
 *
 * <p>n counts the readings as a multiple of those there are now: a figure from one reading of each
 * place needs n readings of each. It assumes that the value stays where it is, so it is a hint and
 * no promise. A finer tool is taken to have no steps at all. n stops at {@link #MOST}: nobody
 * places a tape more often. Source: derived in docs/methods.md from JCGM 100:2008 eq. 10 and 4.2.3.
 *
 * <p>Worked example: 1.0 mm above its limit, placing u = 0.8 mm, scale u = 0.2 mm, nothing shared:
 * U is 1.65 mm; n = 4 gives 0.89 mm, n = 3 gives 1.01 mm. Answer: 4 readings.
 */
public sealed interface Settles {
  /** The largest number of repeats that is still advised. */
  int MOST = 20;

  /** Read it {@code n} times in all. */
  record Repeats(int n) implements Settles {}

  /** A finer scale is enough, reading it again is not. */
  record FinerTool() implements Settles {}

  /** Either {@code n} readings in all or a finer scale is enough. */
  record RepeatsOrFinerTool(int n) implements Settles {}

  /** A finer scale and {@code n} readings in all with it. */
  record RepeatsWithFinerTool(int n) implements Settles {}

  /** What all readings share, or the value itself, is too near the limit. */
  record RepeatingWillNot() implements Settles {}

  /** It is further from its limit than U already. */
  record Settled() implements Settles {}

  static Settles how(Figure y, double limit) {
    double away = Math.abs(y.value() - limit);
    double now = y.U();
    if (away > now || now == 0) {
      return new Settled();
    }
    OptionalInt repeats = repeats(y, away, false);
    // Exactly U away on the broken side still can't tell, so only a smaller U counts as a cure.
    double finer = expanded(y, 1, true);
    boolean finerTool = away >= finer && finer < now;
    if (repeats.isPresent()) {
      return finerTool
          ? new RepeatsOrFinerTool(repeats.getAsInt())
          : new Repeats(repeats.getAsInt());
    }
    if (finerTool) {
      return new FinerTool();
    }
    OptionalInt both = repeats(y, away, true);
    return both.isPresent() ? new RepeatsWithFinerTool(both.getAsInt()) : new RepeatingWillNot();
  }

  private static OptionalInt repeats(Figure y, double away, boolean finerTool) {
    double once = expanded(y, 1, finerTool);
    for (int n = 2; n <= MOST; n++) {
      double expanded = expanded(y, n, finerTool);
      if (away >= expanded && expanded < once) {
        return OptionalInt.of(n);
      }
    }
    return OptionalInt.empty();
  }

  private static double expanded(Figure y, int n, boolean finerTool) {
    double sum = 0;
    for (Map.Entry<Source, Double> part : y.parts().entrySet()) {
      double square = part.getValue() * part.getValue();
      sum +=
          switch (part.getKey().kind()) {
            case PLACING -> square / n;
            case RESOLUTION -> finerTool ? 0 : square;
            case TOOL, MARK, ALLOWANCE, TILT, INTERPOLATION -> square;
          };
    }
    return Figure.K * Math.sqrt(sum);
  }
}
