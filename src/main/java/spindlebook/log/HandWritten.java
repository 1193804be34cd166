package spindlebook.log;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import spindlebook.definition.Setting;
import spindlebook.definition.SettingUnit;
import spindlebook.units.AngleText;
import spindlebook.units.LengthUnit;
import spindlebook.units.TapeText;
import spindlebook.units.TypedAngle;
import spindlebook.units.TypedLength;

/** Values in a book written by hand, as plain text. */
final class HandWritten {
  private static final Pattern HOLE = Pattern.compile("hole (\\d{1,3})");
  private static final Pattern TURNS = Pattern.compile("(-?\\d{1,3}(?:\\.\\d{1,3})?) turns?");

  private HandWritten() {}

  /** A length that says its unit: a bare number would have two readings, and has none here. */
  static Optional<TypedLength> length(String text) {
    Optional<TypedLength> asInches = TapeText.plain(text, LengthUnit.INCH);
    Optional<TypedLength> asMm = TapeText.plain(text, LengthUnit.MM);
    return asInches.filter(in -> asMm.filter(mm -> mm.mm() == in.mm()).isPresent());
  }

  static Optional<TypedAngle> angle(String text) {
    return AngleText.read(text).plain();
  }

  /** {@code hole 3}, {@code 2 turns}, a length with its unit, or any other words. */
  static Setting setting(String text) {
    Matcher hole = HOLE.matcher(text);
    if (hole.matches()) {
      return new Setting(hole.group(1), SettingUnit.HOLES, Double.valueOf(hole.group(1)));
    }
    Matcher turns = TURNS.matcher(text);
    if (turns.matches()) {
      return new Setting(turns.group(1), SettingUnit.TURNS, Double.valueOf(turns.group(1)));
    }
    return length(text)
        .map(l -> new Setting(text, SettingUnit.LENGTH, l.mm()))
        .orElseGet(() -> Setting.words(text));
  }
}
