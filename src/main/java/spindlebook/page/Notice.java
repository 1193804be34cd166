package spindlebook.page;

/**
 * One strip above the page: what has just happened or what stands in the way.
 *
 * @param kind BOOK for "in the book", PROBLEM for what was not accepted, NOTE for the rest
 */
public record Notice(Kind kind, String text) {
  /** Why the strip is there. */
  public enum Kind {
    BOOK,
    PROBLEM,
    NOTE
  }

  public String mark() {
    return "notice-" + kind.name().toLowerCase(java.util.Locale.ROOT);
  }
}
