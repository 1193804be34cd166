package spindlebook.units;

import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A number without a unit, as typed: {@code 2.5}, {@code 2,5}, {@code −3}, {@code 2 1/2}, {@code
 * ½}. No letters and no exponents, so not all that Java would take.
 */
public final class NumberText {
  private static final Pattern DECIMAL =
      Pattern.compile("[+-]?(?:\\d{1,9}(?:\\.\\d{0,9})?|\\.\\d{1,9})");
  private static final Pattern MIXED =
      Pattern.compile("([+-]?)(?:(\\d{1,9})[ -]+)?(\\d{1,3})/([1-9]\\d{0,2})");

  private static final Pattern GROUPED = Pattern.compile("\\b[1-9]\\d{0,2},\\d{3}\\b");

  private NumberText() {}

  /** As it is typed, without a .0. */
  public static String plain(double number) {
    return number == Math.rint(number)
        ? Long.toString(Math.round(number))
        : Double.toString(number);
  }

  /**
   * Empty for what is none, and for what may be two: 81/4 is 8 1/4 as well, 1,200 twelve hundred.
   */
  public static OptionalDouble read(String typed) {
    if (GROUPED.matcher(typed).find()) {
      return OptionalDouble.empty();
    }
    String plain =
        typed
            .replace(',', '.')
            .replace('−', '-')
            .replace("½", " 1/2")
            .replace("¼", " 1/4")
            .replace("¾", " 3/4")
            .strip();
    if (DECIMAL.matcher(plain).matches()) {
      return OptionalDouble.of(Double.parseDouble(plain));
    }
    Matcher mixed = MIXED.matcher(plain);
    if (!mixed.matches()) {
      return OptionalDouble.empty();
    }
    double whole = mixed.group(2) == null ? 0 : Double.parseDouble(mixed.group(2));
    double part = Double.parseDouble(mixed.group(3)) / Double.parseDouble(mixed.group(4));
    double sign = mixed.group(1).equals("-") ? -1 : 1;
    return part < 1 ? OptionalDouble.of(sign * (whole + part)) : OptionalDouble.empty();
  }
}
