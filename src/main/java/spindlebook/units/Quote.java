package spindlebook.units;

/** What somebody typed, fit to stand inside a sentence. */
final class Quote {
  private static final int LONGEST = 24;

  private Quote() {}

  /** In quotation marks, on one line, without invisible characters, shortened when long. */
  static String of(String typed) {
    StringBuilder shown = new StringBuilder("“");
    int[] codePoints = typed.strip().codePoints().filter(c -> !Glyph.isInvisible(c)).toArray();
    boolean shortened = codePoints.length > LONGEST;
    for (int i = 0; i < (shortened ? LONGEST - 1 : codePoints.length); i++) {
      shown.appendCodePoint(visible(codePoints[i]));
    }
    return shown.append(shortened ? "…”" : "”").toString();
  }

  private static int visible(int c) {
    return switch (Character.getType(c)) {
      case Character.CONTROL,
          Character.LINE_SEPARATOR,
          Character.PARAGRAPH_SEPARATOR,
          Character.SPACE_SEPARATOR ->
          ' ';
      case Character.SURROGATE, Character.UNASSIGNED, Character.PRIVATE_USE -> '\uFFFD';
      default -> c;
    };
  }
}
