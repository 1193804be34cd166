package spindlebook.units;

import java.util.Objects;

/**
 * An angle as somebody typed it, kept for ever, with its value and the rule that read it.
 *
 * @param typed the text, byte for byte
 * @param rad the value, in radians, finite, either sign
 * @param rule the rule that read it, such as {@code angle-1}
 */
public record TypedAngle(String typed, double rad, String rule) {
  public TypedAngle {
    Objects.requireNonNull(typed, "typed");
    Objects.requireNonNull(rule, "rule");
    if (!Double.isFinite(rad)) {
      throw new IllegalArgumentException("an angle is a finite number of radians, not " + rad);
    }
    rad = rad + 0.0; // so that "-0" equals "0"
  }

  /** As typed; a bare number is degrees. */
  public String words() {
    String text = TypedLength.minus(typed.strip());
    boolean bare = !text.isEmpty() && Character.isDigit(text.charAt(text.length() - 1));
    return bare ? text + "°" : text;
  }
}
