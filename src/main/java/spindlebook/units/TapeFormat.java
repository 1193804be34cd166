package spindlebook.units;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * Writes lengths the way a tape shows them. Inches go to the nearest 1/denominator, half a step
 * away from zero; what is written with a unit reads back through {@link TapeText}.
 *
 * <p>A value within a thousand-millionth of a step of a line counts as on the line: 8 1/4 in
 * arrives as 209.55 mm, which no double holds exactly, and rounding it up must not make it 8 5/16.
 */
public final class TapeFormat {
  private static final double ON_THE_LINE = 1e-9;
  private static final double MOST_STEPS = 1e15;
  private static final int INCHES_PER_FOOT = 12;

  private TapeFormat() {}

  /**
   * A length in inches, in lowest terms, for pages that set fractions small.
   *
   * @param whole whole inches, 0 or more
   * @param num 0 to den − 1
   * @param den a power of two, 1 when num is 0
   */
  public record Fraction(boolean negative, long whole, int num, int den) {
    /** To the nearest 1/denominator inch, half a step away from zero. */
    public static Fraction ofMm(double mm, int denominator) {
      long steps = (long) Math.floor(Math.abs(steps(mm, denominator)) + 0.5 + ON_THE_LINE);
      int num = (int) (steps % denominator);
      int den = denominator;
      while (den > 1 && num % 2 == 0) {
        num /= 2;
        den /= 2;
      }
      return new Fraction(mm < 0 && steps > 0, steps / denominator, num, den);
    }

    /** {@code 8 1/4}, {@code -3/16}, {@code 0}. */
    public String text() {
      return (negative ? "-" : "") + magnitude(whole);
    }

    private String magnitude(long inches) {
      if (num == 0) {
        return Long.toString(inches);
      }
      return (inches == 0 ? "" : inches + " ") + num + "/" + den;
    }
  }

  /** {@code 8 1/4}, without the unit. */
  public static String inches(double mm, int denominator) {
    return Fraction.ofMm(mm, denominator).text();
  }

  /** {@code 1' 8 1/4"}; under a foot {@code 8 1/4"}. */
  public static String feetInches(double mm, int denominator) {
    Fraction total = Fraction.ofMm(mm, denominator);
    long feet = total.whole() / INCHES_PER_FOOT;
    String inches = total.magnitude(total.whole() % INCHES_PER_FOOT) + "\"";
    return (total.negative() ? "-" : "") + (feet == 0 ? "" : feet + "' ") + inches;
  }

  /** {@code 209.6 mm}, half a step away from zero. */
  public static String mm(double mm, int decimals) {
    return decimal(mm, decimals) + " mm";
  }

  /**
   * With its unit: {@code 8 1/4 in}, {@code 209.6 mm}, {@code 21.0 cm}; the denominator counts for
   * inches only.
   */
  public static String length(double mm, LengthUnit unit, int denominator) {
    return switch (unit) {
      case INCH -> inches(mm, denominator) + " in";
      case MM -> mm(mm, 1);
      case CM -> decimal(mm / LengthUnit.CM.mm(), 1) + " cm";
    };
  }

  /** The lowest line of the tape not below this, in millimetres; −1/8 in to quarters is 0. */
  public static double roundUp(double mm, int denominator) {
    return onLine(Math.ceil(steps(mm, denominator) - ON_THE_LINE), denominator);
  }

  private static double onLine(double steps, int denominator) {
    BigDecimal inches = new BigDecimal(steps).divide(BigDecimal.valueOf(denominator));
    return inches.multiply(LengthUnit.INCH.exactMm()).doubleValue();
  }

  private static double steps(double mm, int denominator) {
    if (denominator < 2 || denominator > Fractions.FINEST || Integer.bitCount(denominator) != 1) {
      throw new IllegalArgumentException("a tape has halves to 64ths, not 1/" + denominator);
    }
    double steps = mm / LengthUnit.INCH.mm() * denominator;
    if (!(Math.abs(steps) < MOST_STEPS)) {
      throw new IllegalArgumentException("no tape shows " + mm + " mm");
    }
    return steps;
  }

  private static String decimal(double number, int decimals) {
    if (!Double.isFinite(number)) {
      throw new IllegalArgumentException("no tape shows " + number);
    }
    return BigDecimal.valueOf(number).setScale(decimals, RoundingMode.HALF_UP).toPlainString();
  }
}
