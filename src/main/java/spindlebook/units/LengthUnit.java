package spindlebook.units;

import java.math.BigDecimal;

/**
 * The unit a length is counted in, and that a bare number takes.
 *
 * <p>One inch is exactly 25.4 mm (international yard and pound agreement, 1959). Feet are read and
 * written, but a length in feet counts as inches: nobody's tape counts bare numbers in feet.
 */
public enum LengthUnit {
  INCH("in", "inches", "25.4"),
  MM("mm", "millimetres", "1"),
  CM("cm", "centimetres", "10");

  private final String word;
  private final String many;
  private final BigDecimal exactMm;

  LengthUnit(String word, String many, String exactMm) {
    this.word = word;
    this.many = many;
    this.exactMm = new BigDecimal(exactMm);
  }

  /** The word written after a number: {@code in}, {@code mm}, {@code cm}. */
  public String word() {
    return word;
  }

  /** As it is said: {@code inches}. */
  public String many() {
    return many;
  }

  /** How many millimetres one of this unit is. */
  public double mm() {
    return exactMm.doubleValue();
  }

  BigDecimal exactMm() {
    return exactMm;
  }
}
