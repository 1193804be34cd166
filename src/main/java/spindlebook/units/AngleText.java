package spindlebook.units;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Reads an angle the way people write one: {@code 1.5}, {@code 1.5°}, {@code -0° 45'}, {@code 0°
 * 45' 30"}, {@code 1 1/4 deg}. A bare number is degrees; the rules are in docs/methods.md,
 * 'Angles'.
 *
 * <p>Degrees are worked out exactly and turned into radians once (× π/180): {@code 1° 30'} is
 * 0.0261799 rad.
 */
public final class AngleText {
  static final String RULE = "angle-1";
  private static final int LONGEST = 60;
  private static final double FULL_TURN_DEGREES = 360;
  private static final String ADVICE = "type an angle like 1.5, -0° 45', 0° 45' 30\" or 1 1/4 deg";

  private AngleText() {}

  /**
   * Reads a text; either sign is read up to a full turn, tighter ranges are for the caller to
   * check.
   */
  public static TextRead<TypedAngle> read(String text) {
    if (Tokeniser.isBlank(text)) {
      return new TextRead.Refused<>("Nothing is typed yet: " + ADVICE + ".");
    }
    try {
      return readOrThrow(text);
    } catch (Unreadable unreadable) {
      return new TextRead.Refused<>(unreadable.sentence(text, ADVICE));
    }
  }

  private static TextRead<TypedAngle> readOrThrow(String text) throws Unreadable {
    if (text.length() > LONGEST) {
      throw new Unreadable("is too long for one angle");
    }
    List<Token> tokens = Tokeniser.cut(text);
    return SpokenWords.isSpoken(tokens)
        ? settle(text, SpokenAngle.read(tokens), SpokenAngle.RULE)
        : settle(text, AngleGrammar.read(tokens), RULE);
  }

  private static TextRead<TypedAngle> settle(String text, List<AngleAmount> amounts, String rule)
      throws Unreadable {
    Map<Double, AngleAmount> byDegrees = new LinkedHashMap<>();
    for (AngleAmount amount : amounts) {
      if (Math.abs(amount.degreesInAll()) <= FULL_TURN_DEGREES) {
        byDegrees.putIfAbsent(amount.degreesInAll(), amount);
      }
    }
    List<AngleAmount> left = List.copyOf(byDegrees.values());
    if (left.isEmpty()) {
      throw new Unreadable("is more than a full turn");
    }
    return left.size() == 1
        ? new TextRead.Value<>(typedAs(text, left.get(0), rule))
        : new TextRead.TwoMeanings<>(
            left.stream().map(amount -> typedAs(amount.spelled(), amount, RULE)).toList());
  }

  private static TypedAngle typedAs(String typed, AngleAmount amount, String rule) {
    return new TypedAngle(typed, Math.toRadians(amount.degreesInAll()), rule);
  }
}
