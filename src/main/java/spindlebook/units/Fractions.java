package spindlebook.units;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;

/**
 * Fractions as a tape has them: halves to sixty-fourths, and what digits run together before the
 * slash can mean.
 */
final class Fractions {
  static final int FINEST = 64;

  private Fractions() {}

  /** A denominator that a tape has. */
  static int denominator(String digits) throws Unreadable {
    String plain = withoutLeadingZeros(digits);
    if (plain.equals("0")) {
      throw new Unreadable("divides by zero");
    }
    int den = plain.length() > 3 ? 0 : Integer.parseInt(plain);
    if (den < 2 || den > FINEST || Integer.bitCount(den) != 1) {
      throw new Unreadable(
          "has a fraction other than halves, quarters, eighths, 16ths, 32nds or 64ths");
    }
    return den;
  }

  static Count of(BigDecimal whole, String numerator, int den) throws Unreadable {
    BigDecimal num = new BigDecimal(numerator);
    if (num.compareTo(BigDecimal.valueOf(den)) >= 0) {
      throw new Unreadable("has a whole number beside a fraction that is not less than one");
    }
    return new Count(whole.add(quotient(num, den)), Count.Form.FRACTION);
  }

  /**
   * A fraction that stands alone. Less than one, it is what it says: {@code 11/16}. From one
   * upwards the space after a whole number may have been left out, so {@code 81/4} is 8 1/4 or 20
   * 1/4, and {@code 111/16} has three meanings.
   */
  static List<Count> alone(String digits, int den) {
    BigDecimal num = new BigDecimal(digits);
    List<Count> meanings = new ArrayList<>();
    if (num.compareTo(BigDecimal.valueOf(den)) >= 0) {
      for (int cut = Math.max(1, digits.length() - 2); cut < digits.length(); cut++) {
        String part = digits.substring(cut);
        boolean numerator =
            !(part.length() > 1 && part.startsWith("0")) && Integer.parseInt(part) < den;
        if (numerator) {
          BigDecimal whole = new BigDecimal(digits.substring(0, cut));
          meanings.add(
              new Count(whole.add(quotient(new BigDecimal(part), den)), Count.Form.FRACTION));
        }
      }
    }
    meanings.add(new Count(quotient(num, den), Count.Form.FRACTION));
    return meanings;
  }

  /** A fraction said in words, which has no digits that could have run together. */
  static Count spoken(int numerator, int den) {
    return new Count(quotient(BigDecimal.valueOf(numerator), den), Count.Form.FRACTION);
  }

  /** Exact, because the denominator is a power of two. */
  private static BigDecimal quotient(BigDecimal num, int den) {
    return num.divide(BigDecimal.valueOf(den));
  }

  private static String withoutLeadingZeros(String digits) {
    int first = 0;
    while (first < digits.length() - 1 && digits.charAt(first) == '0') {
      first++;
    }
    return digits.substring(first);
  }
}
