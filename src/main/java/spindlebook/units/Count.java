package spindlebook.units;

import java.math.BigDecimal;
import java.util.List;

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

  boolean isLessThanOne() {
    return value.compareTo(BigDecimal.ONE) < 0;
  }

  /**
   * What must be whole because something smaller follows it: feet before inches, degrees before
   * minutes.
   */
  static BigDecimal onlyWhole(List<Count> counts) throws Unreadable {
    if (counts.size() != 1 || !counts.get(0).isWhole()) {
      throw new Unreadable("has a part that is not whole before a smaller one");
    }
    return counts.get(0).value();
  }
}
