package spindlebook.setting;

import spindlebook.definition.Adjuster;
import spindlebook.definition.Setting;
import spindlebook.definition.SettingUnit;
import spindlebook.page.Posted;
import spindlebook.units.LengthUnit;
import spindlebook.units.NumberText;
import spindlebook.units.TypedLength;

/** A new setting, typed in the adjuster's own unit. */
public final class AdjustmentForm {
  private AdjustmentForm() {}

  private static final double MOST_COUNT = 1000;

  static String needed(Adjuster adjuster) {
    return "Type what it is set to now, in " + adjuster.unit().words() + ".";
  }

  /** A setting in its unit, or null with a problem. */
  public static Setting setting(Posted posted, String name, Adjuster adjuster, LengthUnit unit) {
    SettingUnit in = adjuster.unit();
    String typed = posted.text(name).strip();
    if (typed.isEmpty()) {
      posted.wrong(name, needed(adjuster));
      return null;
    }
    switch (in) {
      case LENGTH -> {
        TypedLength length =
            fromZero(adjuster) ? posted.lengthFromZero(name, unit) : posted.length(name, unit);
        return length == null ? null : new Setting(typed(typed, unit), in, length.mm());
      }
      case WORDS -> {
        String words = posted.line(name, 120);
        return words == null ? null : Setting.words(words);
      }
      default -> {
        return counted(posted, name, in, typed);
      }
    }
  }

  /** A strap, spacer or shim has a length; a rack or a rod may be counted both ways from a mark. */
  private static boolean fromZero(Adjuster adjuster) {
    return switch (adjuster.kind()) {
      case LIMIT_STRAP, BUMP_STOP_SPACER, TIE_ROD_SHIM -> true;
      default -> false;
    };
  }

  private static Setting counted(Posted posted, String name, SettingUnit in, String typed) {
    double amount = NumberText.read(typed).orElse(Double.NaN);
    boolean whole = in == SettingUnit.TURNS || amount == Math.rint(amount);
    if (whole && Math.abs(amount) <= MOST_COUNT) {
      return new Setting(typed, in, amount);
    }
    posted.wrong(
        name,
        in == SettingUnit.HOLES
            ? "'" + typed + "' is no hole: type a whole number such as 3."
            : "'" + typed + "' is no count of turns: type a number such as 2, 2.5 or 2 1/2.");
    return null;
  }

  private static String typed(String typed, LengthUnit unit) {
    char last = typed.charAt(typed.length() - 1);
    boolean bare = Character.isDigit(last) || Character.getType(last) == Character.OTHER_NUMBER;
    return bare ? typed + " " + unit.word() : typed;
  }
}
