package spindlebook.drawing;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A figure ready to be set: large whole, small fraction, unit word, ± beside it. Nothing is rounded
 * or converted here.
 *
 * @param sign "+", "−" or empty
 * @param whole whole inches, or the whole decimal text such as "209.6"; empty for a bare fraction
 * @param numerator above the slash; empty when there is no fraction
 * @param denominator below the slash; empty when there is no fraction
 * @param unit the unit word, such as "in", "mm" or "°"; may be empty
 * @param plusMinus the ± that stands beside it, in the same unit; null when none is stated
 */
public record FigureText(
    String sign,
    String whole,
    String numerator,
    String denominator,
    String unit,
    FigureText plusMinus) {

  private static final Pattern FRACTION =
      Pattern.compile("([+\\-−]?)\\s*(\\d*)\\s*(?<!\\d)(\\d+)/(\\d+)");
  private static final Pattern SIGNED = Pattern.compile("([+\\-−])\\s*(\\S.*)");

  /**
   * Takes text apart that is already worded: "+5 3/8", "1/16", "−209.6"; other text stays whole.
   */
  public static FigureText of(String text, String unit) {
    String trimmed = text.strip();
    Matcher fraction = FRACTION.matcher(trimmed);
    if (fraction.matches()) {
      return new FigureText(
          minus(fraction.group(1)),
          fraction.group(2),
          fraction.group(3),
          fraction.group(4),
          unit,
          null);
    }
    Matcher signed = SIGNED.matcher(trimmed);
    if (signed.matches()) {
      return new FigureText(minus(signed.group(1)), signed.group(2), "", "", unit, null);
    }
    return new FigureText("", trimmed, "", "", unit, null);
  }

  /** The same figure with its ± beside it, given as worded text in the same unit. */
  public FigureText within(String plusMinusText) {
    return new FigureText(
        sign, whole, numerator, denominator, unit, FigureText.of(plusMinusText, ""));
  }

  /** Where its unit stands once for many. */
  public FigureText bare() {
    return new FigureText(sign, whole, numerator, denominator, "", plusMinus);
  }

  public boolean fraction() {
    return !numerator.isEmpty();
  }

  /** Figure without its unit, as a person types it: "+11 1/8". */
  public String plain() {
    String space = !whole.isEmpty() && fraction() ? " " : "";
    return sign + whole + space + (fraction() ? numerator + "/" + denominator : "");
  }

  /** All of it as one line of text, which is what a screen reader hears: "11 1/8 in ± 1/16". */
  public String words() {
    String withUnit = unit.isEmpty() ? plain() : plain() + (unit.equals("°") ? "" : " ") + unit;
    return plusMinus == null ? withUnit : withUnit + " ± " + plusMinus.words();
  }

  private static String minus(String sign) {
    return sign.equals("-") ? "−" : sign;
  }
}
