package spindlebook.units;

import java.math.BigDecimal;

/**
 * One thing that a text may mean: a count, and its unit when the text names one.
 *
 * @param unit null when the text names none
 * @param feet whether the text names feet, so that a choice is spelled with feet
 */
record Amount(Count count, LengthUnit unit, boolean feet) {
  private static final BigDecimal TWELVE = BigDecimal.valueOf(12);

  static Amount ofFeet(Count count) {
    return new Amount(
        new Count(count.value().multiply(TWELVE), count.form()), LengthUnit.INCH, true);
  }

  static Amount ofFeetAndInches(BigDecimal feet, Count inches) {
    return new Amount(
        new Count(feet.multiply(TWELVE).add(inches.value()), inches.form()), LengthUnit.INCH, true);
  }

  static boolean isUnderAFoot(Count inches) {
    return inches.value().compareTo(TWELVE) < 0;
  }

  Amount in(LengthUnit other) {
    return new Amount(count, other, feet);
  }

  Amount negated() {
    return new Amount(new Count(count.value().negate(), count.form()), unit, feet);
  }

  /** Exact, then rounded once to the nearest double. */
  double mm() {
    return count.value().multiply(unit.exactMm()).doubleValue();
  }

  /** A spelling that reads back to this and nothing else. */
  String spelled() {
    if (unit != LengthUnit.INCH || !count.isFraction()) {
      return plain() + " " + unit.word();
    }
    return feet
        ? TapeFormat.feetInches(mm(), Fractions.FINEST)
        : TapeFormat.inches(mm(), Fractions.FINEST) + " in";
  }

  private String plain() {
    return count.value().signum() == 0 ? "0" : count.value().stripTrailingZeros().toPlainString();
  }
}
