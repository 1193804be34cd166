package spindlebook.units;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * Reads a length the way people write one beside a car: {@code 8 1/4}, {@code 8-1/4}, {@code 8¼},
 * {@code 8.25"}, {@code 1' 8 1/4"}, {@code 210 mm}, {@code 11/16}. Words are read too: {@code eight
 * and a quarter}. A bare number takes the unit given; the rules are in docs/methods.md, 'Tape
 * text'.
 *
 * <p>The value is worked out exactly in decimal, with 25.4 mm to the inch, and rounded once to the
 * nearest double: {@code 8 1/4} in inches is 209.55 mm.
 */
public final class TapeText {
  static final String RULE = "tape-1";
  private static final int LONGEST = 60;
  private static final String ADVICE =
      "type a length like 8 1/4 in, 8.25 in, 1' 8 1/4\", 210 mm or 21.0 cm";

  private TapeText() {}

  /** Reads a text; either sign is read, ranges are for the caller to check. */
  public static TextRead<TypedLength> read(String text, LengthUnit bare) {
    Objects.requireNonNull(bare, "bare");
    if (Tokeniser.isBlank(text)) {
      return new TextRead.Refused<>("Nothing is typed yet: " + ADVICE + ".");
    }
    try {
      return readOrThrow(text, bare);
    } catch (Unreadable unreadable) {
      return new TextRead.Refused<>(unreadable.sentence(text, ADVICE));
    }
  }

  /** The length, when the text has exactly one meaning. */
  public static Optional<TypedLength> plain(String text, LengthUnit bare) {
    return read(text, bare).plain();
  }

  private static TextRead<TypedLength> readOrThrow(String text, LengthUnit bare) throws Unreadable {
    if (text.length() > LONGEST) {
      throw new Unreadable("is too long for one length");
    }
    List<Token> tokens = Tokeniser.cut(text);
    return SpokenWords.isSpoken(tokens)
        ? Meanings.settle(text, SpokenLength.read(tokens), bare, SpokenLength.RULE)
        : Meanings.settle(text, TapeGrammar.read(tokens), bare, RULE);
  }
}
