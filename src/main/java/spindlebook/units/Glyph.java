package spindlebook.units;

/**
 * The many characters a phone or a word processor puts in place of the few that lengths are written
 * with.
 */
final class Glyph {
  private static final String RAISED = "⁰¹²³⁴⁵⁶⁷⁸⁹";
  private static final String LOWERED = "₀₁₂₃₄₅₆₇₈₉";
  private static final String ONE_CHARACTER = "½¼¾⅛⅜⅝⅞⅓⅔⅕⅖⅗⅘⅙⅚⅐⅑⅒↉";
  private static final String[] FRACTIONS = {
    "1/2", "1/4", "3/4", "1/8", "3/8", "5/8", "7/8", "1/3", "2/3", "1/5", "2/5", "3/5", "4/5",
    "1/6", "5/6", "1/7", "1/9", "1/10", "0/3"
  };
  private static final String SAME = "-‐‑‒–—―−﹘﹣ '′’‘‛ʹʼ´ \"″“”‟ʺ /∕⁄ °º˚ ";
  private static final int FULL_WIDTH_FIRST = 0xFF01;
  private static final int FULL_WIDTH_LAST = 0xFF5E;
  private static final int FULL_WIDTH_SHIFT = 0xFF01 - '!';

  private Glyph() {}

  /**
   * The plain character that looks the same: ASCII wherever there is one, the degree sign, a plain
   * space.
   */
  static int plain(int codePoint) {
    int c = codePoint;
    if (c >= FULL_WIDTH_FIRST && c <= FULL_WIDTH_LAST) {
      c -= FULL_WIDTH_SHIFT;
    }
    if (Character.isDigit(c)) {
      return '0' + Character.digit(c, 10);
    }
    if (Character.isWhitespace(c) || Character.isSpaceChar(c)) {
      return ' ';
    }
    int at = SAME.indexOf(c);
    if (at >= 0) {
      return SAME.charAt(SAME.lastIndexOf(' ', at) + 1);
    }
    return c >= 'A' && c <= 'Z' ? c + ('a' - 'A') : c;
  }

  /** Marks that nobody sees: direction marks, joiners, the byte-order mark. */
  static boolean isInvisible(int codePoint) {
    return Character.getType(codePoint) == Character.FORMAT;
  }

  /** 0 to 9, or -1. */
  static int raisedDigit(int codePoint) {
    return RAISED.indexOf(codePoint);
  }

  /** 0 to 9, or -1. */
  static int loweredDigit(int codePoint) {
    return LOWERED.indexOf(codePoint);
  }

  /** {@code 1/4} for ¼, or null. */
  static String fraction(int codePoint) {
    int at = ONE_CHARACTER.indexOf(codePoint);
    return at < 0 ? null : FRACTIONS[at];
  }
}
