package spindlebook.uncertainty;

import java.util.LinkedHashMap;
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
 * no promise. A finer tool has half of today's steps, a quarter, and so on down to {@link #FINEST};
 * the coarsest that decides is told. n stops at {@link #MOST}: nobody places a tape more often.
 * Source: derived in docs/methods.md from JCGM 100:2008 eq. 10 and 4.2.3.
 *
 * <p>Worked example: 1.0 mm above its limit, placing u = 0.8 mm, scale u = 0.2 mm, nothing shared:
 * U is 1.65 mm; n = 4 gives 0.89 mm, n = 3 gives 1.01 mm. Answer: 4 readings.
 */
public sealed interface Settles {
  /** The largest number of repeats that is still advised. */
  int MOST = 20;

  /** The finest scale that is told, as a share of today's steps. */
  double FINEST = 1.0 / 16;

  /** Read it {@code n} times in all. */
  record Repeats(int n) implements Settles {}

  /**
   * A finer scale is enough, reading it again is not.
   *
   * @param steps the largest share of today's steps that is enough; 0 when it is less than {@link
   *     #FINEST}
   */
  record FinerTool(double steps) implements Settles {}

  /** Either {@code n} readings in all or a finer scale is enough; {@code steps} as there. */
  record RepeatsOrFinerTool(int n, double steps) implements Settles {}

  /** A finer scale and {@code n} readings in all with it; {@code steps} as there. */
  record RepeatsWithFinerTool(int n, double steps) implements Settles {}

  /** What all readings share, or the value itself, is too near the limit. */
  record RepeatingWillNot() implements Settles {}

  /** It is further from its limit than U already. */
  record Settled() implements Settles {}

  /** Whether reading it again, or with a finer tool, settles it; null for what has no answer. */
  static boolean byReading(Settles settles) {
    return settles != null
        && !(settles instanceof RepeatingWillNot)
        && !(settles instanceof Settled);
  }

  /** U of a figure, had its readings been taken otherwise and come out the same. */
  @FunctionalInterface
  interface Expanded {
    /**
     * @param n times as many readings of each place
     * @param steps the scale's steps as a share of today's: 1 the same scale, 0 none at all
     */
    double with(int n, double steps);
  }

  static Settles how(Figure y, double limit) {
    return how(Math.abs(y.value() - limit), (n, steps) -> readOtherwise(y, n, steps).U());
  }

  /** For a figure whose U is no plain sum over its sources: {@code away} from its limit. */
  static Settles how(double away, Expanded u) {
    double now = u.with(1, 1);
    if (away > now || now == 0) {
      return new Settled();
    }
    if (away < u.with(MOST, 0)) {
      return new RepeatingWillNot();
    }
    OptionalInt repeats = repeats(u, away, 1);
    // Exactly U away on the broken side still can't tell, so only a smaller U counts as a cure.
    double finer = u.with(1, 0);
    boolean finerTool = away >= finer && finer < now;
    if (repeats.isPresent()) {
      return finerTool
          ? new RepeatsOrFinerTool(repeats.getAsInt(), steps(u, away, 1))
          : new Repeats(repeats.getAsInt());
    }
    if (finerTool) {
      return new FinerTool(steps(u, away, 1));
    }
    OptionalInt both = repeats(u, away, 0);
    return both.isPresent()
        ? new RepeatsWithFinerTool(both.getAsInt(), steps(u, away, both.getAsInt()))
        : new RepeatingWillNot();
  }

  /** The coarsest of the finer scales that decides with so many readings; 0 when none does. */
  private static double steps(Expanded u, double away, int n) {
    double now = u.with(1, 1);
    for (double steps = 0.5; steps >= FINEST; steps /= 2) {
      double finer = u.with(n, steps);
      if (away >= finer && finer < now) {
        return steps;
      }
    }
    return 0;
  }

  /** The fewest readings that decide; U only falls with their number. */
  private static OptionalInt repeats(Expanded u, double away, double steps) {
    if (away < u.with(MOST, steps)) {
      return OptionalInt.empty();
    }
    int tooFew = 1;
    int enough = MOST;
    while (enough - tooFew > 1) {
      int middle = (tooFew + enough) / 2;
      if (away >= u.with(middle, steps)) {
        enough = middle;
      } else {
        tooFew = middle;
      }
    }
    return u.with(enough, steps) < u.with(1, steps) ? OptionalInt.of(enough) : OptionalInt.empty();
  }

  /** The same value from {@code n} times as many readings, or from a scale with finer steps. */
  static Figure readOtherwise(Figure y, int n, double steps) {
    Map<Source, Double> parts = new LinkedHashMap<>();
    y.parts()
        .forEach(
            (source, part) ->
                parts.put(
                    source,
                    switch (source.kind()) {
                      case PLACING -> part / Math.sqrt(n);
                      case RESOLUTION -> part * steps;
                      case TOOL, MARK, ALLOWANCE, TILT, INTERPOLATION -> part;
                    }));
    return Figure.of(y.value(), parts);
  }
}
