package spindlebook.units;

import java.util.Objects;

/**
 * A length as somebody typed it, kept for ever, with its value and the rule that read it.
 *
 * @param typed the text, byte for byte
 * @param mm the value, in millimetres, finite, either sign
 * @param unit what the text counted in; feet count as inches
 * @param rule the rule that read it, such as {@code tape-1}: a later rule never changes an earlier
 *     value
 */
public record TypedLength(String typed, double mm, LengthUnit unit, String rule) {
  public TypedLength {
    Objects.requireNonNull(typed, "typed");
    Objects.requireNonNull(unit, "unit");
    Objects.requireNonNull(rule, "rule");
    if (!Double.isFinite(mm)) {
      throw new IllegalArgumentException("a length is a finite number of millimetres, not " + mm);
    }
    mm = mm + 0.0; // so that "-0" equals "0"
  }
}
