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

  /** U of a figure, had its readings been taken otherwise and come out the same. */
  @FunctionalInterface
  interface Expanded {
    /**
     * @param n times as many readings of each place
     * @param finerTool with a scale that has no steps
     */
    double with(int n, boolean finerTool);
  }

  static Settles how(Figure y, double limit) {
    return how(Math.abs(y.value() - limit), (n, finerTool) -> expanded(y, n, finerTool));
  }

  /** For a figure whose U is no plain sum over its sources: {@code away} from its limit. */
  static Settles how(double away, Expanded u) {
    double now = u.with(1, false);
    if (away > now || now == 0) {
      return new Settled();
    }
    if (away < u.with(MOST, true)) {
      return new RepeatingWillNot();
    }
    OptionalInt repeats = repeats(u, away, false);
    // Exactly U away on the broken side still can't tell, so only a smaller U counts as a cure.
    double finer = u.with(1, true);
    boolean finerTool = away >= finer && finer < now;
    if (repeats.isPresent()) {
      return finerTool
          ? new RepeatsOrFinerTool(repeats.getAsInt())
          : new Repeats(repeats.getAsInt());
    }
    if (finerTool) {
      return new FinerTool();
    }
    OptionalInt both = repeats(u, away, true);
    return both.isPresent() ? new RepeatsWithFinerTool(both.getAsInt()) : new RepeatingWillNot();
  }

  /** The fewest readings that decide; U only falls with their number. */
  private static OptionalInt repeats(Expanded u, double away, boolean finerTool) {
    if (away < u.with(MOST, finerTool)) {
      return OptionalInt.empty();
    }
    int tooFew = 1;
    int enough = MOST;
    while (enough - tooFew > 1) {
      int middle = (tooFew + enough) / 2;
      if (away >= u.with(middle, finerTool)) {
        enough = middle;
      } else {
        tooFew = middle;
      }
    }
    return u.with(enough, finerTool) < u.with(1, finerTool)
        ? OptionalInt.of(enough)
        : OptionalInt.empty();
  }

  private static double expanded(Figure y, int n, boolean finerTool) {
    return readOtherwise(y, n, finerTool).U();
  }

  /** The same value from {@code n} times as many readings, or from a scale without steps. */
  static Figure readOtherwise(Figure y, int n, boolean finerTool) {
    Map<Source, Double> parts = new LinkedHashMap<>();
    y.parts()
        .forEach(
            (source, part) ->
                parts.put(
                    source,
                    switch (source.kind()) {
                      case PLACING -> part / Math.sqrt(n);
                      case RESOLUTION -> finerTool ? 0 : part;
                      case TOOL, MARK, ALLOWANCE, TILT, INTERPOLATION -> part;
                    }));
    return Figure.of(y.value(), parts);
  }
}
