package spindlebook.units;

import java.util.Set;

/** The words, written or spoken, that name a unit. */
final class UnitWords {
  static final Set<String> INCHES = Set.of("in", "ins", "inch", "inches");
  static final Set<String> FEET = Set.of("ft", "foot", "feet");
  static final Set<String> MILLIMETRES =
      Set.of("mm", "millimetre", "millimetres", "millimeter", "millimeters");
  static final Set<String> CENTIMETRES =
      Set.of("cm", "centimetre", "centimetres", "centimeter", "centimeters");
  static final Set<String> DEGREES = Set.of("deg", "degs", "degree", "degrees");
  static final Set<String> MINUTES = Set.of("min", "mins", "minute", "minutes");
  static final Set<String> SECONDS = Set.of("sec", "secs", "second", "seconds");

  private UnitWords() {}

  /** The unit a word names, or null; feet are no unit of their own. */
  static LengthUnit lengthUnit(String word) {
    if (INCHES.contains(word)) {
      return LengthUnit.INCH;
    }
    if (MILLIMETRES.contains(word)) {
      return LengthUnit.MM;
    }
    return CENTIMETRES.contains(word) ? LengthUnit.CM : null;
  }
}
