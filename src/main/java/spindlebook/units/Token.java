package spindlebook.units;

/**
 * One piece of typed text.
 *
 * @param text digits with their dots and commas, {@code 1/4} for a one-character fraction, a word
 *     in small letters
 * @param spaced whether a space stood before it
 */
record Token(Kind kind, String text, boolean spaced) {
  enum Kind {
    NUMBER,
    RAISED,
    LOWERED,
    ONE_CHARACTER_FRACTION,
    SLASH,
    DASH,
    COMMA,
    DOT,
    AND,
    FOOT_MARK,
    INCH_MARK,
    DEGREE_MARK,
    WORD,
    OTHER
  }

  boolean isWholeNumber() {
    return kind == Kind.NUMBER && text.chars().allMatch(c -> c >= '0' && c <= '9');
  }
}
