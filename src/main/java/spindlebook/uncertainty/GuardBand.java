package spindlebook.uncertainty;

/**
 * Says whether a figure keeps its rule for sure, breaks it for sure, or cannot tell.
 *
 * <pre>
 *   lower limit l, upper limit u, guard band g = U (k = 2), all in the unit of y
 *   clear:      l + U ≤ y ≤ u − U       (ends included)
 *   short:      y &lt; l − U or y &gt; u + U   (ends not included)
 *   can't tell: everything else
 * </pre>
 *
 * <p>Assumes that U covers the error as stated; limits themselves are exact. When the zone between
 * the limits is narrower than 2 U nothing can be clear. U = 0: at the limit is clear.
 *
 * <p>Source: ISO 14253-1, the rule for proving conformity and non-conformity as worded in the 1998
 * and 2013 editions (guard band U); from memory. The 2017 edition works from a conformance
 * probability, 95 % unless agreed otherwise, which needs a band of only about 1.645 u beside a
 * single limit: the wider band is kept here because a tape's error is no normal distribution.
 *
 * <p>Worked example: limit at least 10, U = 1.5: 11.5 is clear, 11.4375 can't tell, 8.5 can't tell,
 * 8.4375 is short.
 */
public final class GuardBand {
  private GuardBand() {}

  public static Outcome atLeast(double y, double expanded, double lower) {
    return between(y, expanded, lower, Double.POSITIVE_INFINITY);
  }

  public static Outcome atLeast(Figure y, double lower) {
    return atLeast(y.value(), y.U(), lower);
  }

  public static Outcome atMost(double y, double expanded, double upper) {
    return between(y, expanded, Double.NEGATIVE_INFINITY, upper);
  }

  public static Outcome atMost(Figure y, double upper) {
    return atMost(y.value(), y.U(), upper);
  }

  /** Whether two parts stay apart by such a gap: at 0 they touch. */
  public static Outcome apart(Figure gapMm) {
    return atLeast(gapMm, Double.MIN_VALUE);
  }

  public static Outcome between(Figure y, double lower, double upper) {
    return between(y.value(), y.U(), lower, upper);
  }

  /** {@code expanded} is U, not negative; {@code lower} is not above {@code upper}. */
  public static Outcome between(double y, double expanded, double lower, double upper) {
    if (!(expanded >= 0) || Double.isNaN(y) || !(lower <= upper)) {
      throw new IllegalArgumentException(
          "cannot judge y " + y + ", U " + expanded + " between " + lower + " and " + upper);
    }
    if (y >= lower + expanded && y <= upper - expanded) {
      return Outcome.CLEAR;
    }
    return y < lower - expanded || y > upper + expanded ? Outcome.SHORT : Outcome.CANT_TELL;
  }
}
