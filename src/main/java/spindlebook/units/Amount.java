package spindlebook.units;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/**
 * One thing that a text may mean: a count, and its unit when the text names one.
 *
 * @param unit null when the text names none
 * @param feet whether the text names feet, so that a choice is spelled with feet
 */
record Amount(Count count, LengthUnit unit, boolean feet) {
  private static final BigDecimal TWELVE = BigDecimal.valueOf(12);

  static List<Amount> of(List<Count> counts, LengthUnit unit) {
    return counts.stream().map(count -> new Amount(count, unit, false)).toList();
  }

  static Amount ofFeet(Count count) {
    return new Amount(
        new Count(count.value().multiply(TWELVE), count.form()), LengthUnit.INCH, true);
  }

  /**
   * Feet with what stands behind them: inches, or a part of a foot.
   *
   * @param mayBePart of what stands behind the feet whether it may be that
   */
  static List<Amount> ofFeetAnd(BigDecimal feet, List<Amount> behind, Predicate<Amount> mayBePart)
      throws Unreadable {
    List<Amount> amounts = new ArrayList<>();
    for (Amount one : behind) {
      Count count = one.count();
      if (mayBePart.test(one)) {
        amounts.add(ofFeet(new Count(feet.add(count.value()), Count.Form.FRACTION)));
      }
      if (count.value().compareTo(TWELVE) < 0) {
        BigDecimal inches = feet.multiply(TWELVE).add(count.value());
        amounts.add(new Amount(new Count(inches, count.form()), LengthUnit.INCH, true));
      }
    }
    if (amounts.isEmpty()) {
      throw new Unreadable("has a foot or more in inches behind its feet");
    }
    return amounts;
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
