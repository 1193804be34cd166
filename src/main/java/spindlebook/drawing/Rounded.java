package spindlebook.drawing;

import java.math.BigDecimal;
import java.math.RoundingMode;
import spindlebook.uncertainty.Figure;

/**
 * Figures in decimals: as many as their ± bears, two digits of it, rounded up so that what is
 * unsure is never said smaller. −0.466 ± 0.0412 reads −0.466 ± 0.042.
 */
public final class Rounded {
  private static final int MOST_DECIMALS = 6;

  private Rounded() {}

  /** With its sign; {@code size} of one shown unit. */
  public static FigureText signed(Figure figure, double size, String unit) {
    return signed(figure, size, unit, decimals(figure.U() / size));
  }

  /** The same in so many decimals, where more would be nothing a hand could set. */
  public static FigureText signed(Figure figure, double size, String unit, int decimals) {
    double expanded = figure.U() / size;
    FigureText text = FigureText.of(signed(figure.value() / size, decimals), unit);
    return expanded > 0 ? text.within(plain(expanded, decimals, RoundingMode.CEILING)) : text;
  }

  /** Without a +, for what has no direction. */
  public static FigureText plain(Figure figure, double size, String unit) {
    FigureText signed = signed(figure, size, unit);
    return signed.sign().equals("+")
        ? new FigureText("", signed.whole(), "", "", unit, signed.plusMinus())
        : signed;
  }

  /** Of radians, with its sign. */
  public static FigureText degrees(Figure rad) {
    return signed(rad, Math.toRadians(1), "°");
  }

  /** The same without a +. */
  public static FigureText plainDegrees(Figure rad) {
    return plain(rad, Math.toRadians(1), "°");
  }

  public static String signed(double value, int decimals) {
    String text = plain(value, decimals, RoundingMode.HALF_UP);
    boolean nothing = new BigDecimal(text).signum() == 0;
    if (nothing) {
      return text.replace("-", "");
    }
    return text.startsWith("-") ? "−" + text.substring(1) : "+" + text;
  }

  /** A plain decimal of something that is never below nothing. */
  public static String number(double value, int decimals) {
    return plain(value, decimals, RoundingMode.HALF_UP);
  }

  private static String plain(double value, int decimals, RoundingMode rounding) {
    // What is only noise of the double must not round a whole step up.
    return BigDecimal.valueOf(value)
        .setScale(12, RoundingMode.HALF_UP)
        .setScale(decimals, rounding)
        .toPlainString();
  }

  private static int decimals(double expanded) {
    if (!(expanded > 0)) {
      return 3;
    }
    return Math.max(0, Math.min(MOST_DECIMALS, 1 - (int) Math.floor(Math.log10(expanded))));
  }
}
