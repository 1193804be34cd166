package spindlebook.units;

import java.math.BigDecimal;

/** How many of a unit, exactly, before the unit is known. */
record Count(BigDecimal value, Form form) {
  enum Form {
    WHOLE,
    DECIMAL,
    FRACTION
  }

  static Count of(BigDecimal value, boolean whole) {
    return new Count(value, whole ? Form.WHOLE : Form.DECIMAL);
  }

  boolean isWhole() {
    return form == Form.WHOLE;
  }

  boolean isFraction() {
    return form == Form.FRACTION;
  }
}
