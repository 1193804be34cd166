package spindlebook.units;

import java.math.BigDecimal;
import java.math.MathContext;

/** One thing that a text may mean as an angle: degrees, minutes and seconds, exactly. */
record AngleAmount(boolean negative, BigDecimal degrees, BigDecimal minutes, BigDecimal seconds) {
  private static final BigDecimal SIXTY = BigDecimal.valueOf(60);

  /** Positive or negative, within what a double holds. */
  double degreesInAll() {
    BigDecimal allSeconds = degrees.multiply(SIXTY).add(minutes).multiply(SIXTY).add(seconds);
    double magnitude =
        allSeconds.divide(SIXTY.multiply(SIXTY), MathContext.DECIMAL128).doubleValue();
    return (negative ? -magnitude : magnitude) + 0.0;
  }

  AngleAmount negated() {
    return new AngleAmount(!negative, degrees, minutes, seconds);
  }

  /** A spelling that reads back to this and nothing else. */
  String spelled() {
    StringBuilder text = new StringBuilder();
    if (degrees.signum() > 0 || minutes.signum() == 0) {
      text.append(plain(degrees)).append("° ");
    }
    if (minutes.signum() > 0 || seconds.signum() > 0) {
      text.append(plain(minutes)).append("' ");
    }
    if (seconds.signum() > 0) {
      text.append(plain(seconds)).append('"');
    }
    return (degreesInAll() < 0 ? "-" : "") + text.toString().strip();
  }

  private static String plain(BigDecimal number) {
    return number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString();
  }
}
