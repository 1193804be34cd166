package spindlebook.uncertainty;

/**
 * How doubtful a number is that may lie anywhere between two ends, all places alike.
 *
 * <pre>  u = a / √3   (a: half the width)        u = g / √12   (g: one graduation, a = g/2)</pre>
 *
 * <p>In the unit of a or g. Assumes that nothing is known but the ends; a hand that mostly hits the
 * middle does better. Source: JCGM 100:2008, 4.3.7 and F.2.2.1, from memory.
 *
 * <p>Worked example: a tape placed to ± 1/32 in (0.79375 mm): u = 0.4583 mm. A rule with
 * graduations of 1/16 in (1.5875 mm): u = 0.4583 mm.
 */
public final class Rectangular {
  private Rectangular() {}

  /** Standard uncertainty of a value known to ± {@code halfWidth}, which is not negative. */
  public static double u(double halfWidth) {
    if (!(halfWidth >= 0)) {
      throw new IllegalArgumentException("a half width is not negative: " + halfWidth);
    }
    return halfWidth / Math.sqrt(3);
  }

  /** An owner's number, known to ± {@code halfWidth}; exact where that is 0. */
  public static Figure within(double value, String id, double halfWidth) {
    Figure exact = Figure.exact(value);
    return halfWidth == 0
        ? exact
        : exact.withSource(new Source(id, SourceKind.ALLOWANCE), u(halfWidth));
  }

  /** Standard uncertainty of reading a scale to its nearest graduation. */
  public static double resolutionU(double graduation) {
    if (!(graduation >= 0)) {
      throw new IllegalArgumentException("a graduation is not negative: " + graduation);
    }
    return graduation / Math.sqrt(12);
  }
}
