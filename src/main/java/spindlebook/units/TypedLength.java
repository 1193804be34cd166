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

  /** As typed, with its unit; below nothing with a real minus, as figures have. */
  public String words() {
    String text = minus(typed.strip());
    if (text.isEmpty()) {
      return unit == LengthUnit.INCH
          ? TapeFormat.length(mm, LengthUnit.INCH, 16)
          : TapeFormat.mm(mm, 1);
    }
    char last = text.charAt(text.length() - 1);
    boolean bare = Character.isDigit(last) || Character.getType(last) == Character.OTHER_NUMBER;
    return bare ? text + " " + unit.word() : text;
  }

  /** Below nothing with a real minus. */
  public static String minus(String text) {
    return text.startsWith("-") ? "−" + text.substring(1) : text;
  }
}
