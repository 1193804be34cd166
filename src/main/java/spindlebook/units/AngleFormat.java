package spindlebook.units;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Writes angles in degrees; what is written reads back through {@link AngleText}. */
public final class AngleFormat {
  private static final int NOISE_DIGITS = 12;

  private AngleFormat() {}

  /** {@code -1.25°}, half a step away from zero; never {@code -0.00°}. */
  public static String degrees(double rad, int decimals) {
    if (!Double.isFinite(rad)) {
      throw new IllegalArgumentException("no angle finder shows " + rad);
    }
    // 1.25° in radians and back may be 1.2499999999999998°: drop what is only noise before rounding
    BigDecimal degrees =
        BigDecimal.valueOf(Math.toDegrees(rad))
            .setScale(Math.max(NOISE_DIGITS, decimals), RoundingMode.HALF_UP);
    return degrees.setScale(decimals, RoundingMode.HALF_UP).toPlainString() + "°";
  }
}
