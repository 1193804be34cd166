package spindlebook.log;

/** The book says no, in one clear sentence for the terminal or the page. */
public final class BookRefused extends RuntimeException {
  private static final long serialVersionUID = 1L;

  /** What stands in the way. */
  public enum Why {
    /** The book on the disk cannot be opened or read as it is; its file was left untouched. */
    BOOK,
    /** This entry can never be written as it was sent. */
    ENTRY,
    /** Whoever sent it may only look. */
    LOOKS,
    /** The disk did not take it; the sender keeps it and may try again later. */
    DISK
  }

  private final Why why;

  private BookRefused(Why why, String sentence, Throwable cause) {
    super(sentence, cause);
    this.why = why;
  }

  public Why why() {
    return why;
  }

  static BookRefused book(String sentence, Object... words) {
    return new BookRefused(Why.BOOK, String.format(sentence, words), null);
  }

  public static BookRefused book(Throwable cause, String sentence, Object... words) {
    return new BookRefused(Why.BOOK, String.format(sentence, words), cause);
  }

  static BookRefused entry(String sentence, Object... words) {
    return new BookRefused(Why.ENTRY, String.format(sentence, words), null);
  }

  static BookRefused looks() {
    return new BookRefused(
        Why.LOOKS,
        "This device may only look, so nothing was written. Use one that keeps the book.",
        null);
  }

  static BookRefused disk(Throwable cause, String sentence, Object... words) {
    return new BookRefused(Why.DISK, String.format(sentence, words), cause);
  }

  /** Foreign text cut to a length that fits a sentence. */
  static String shown(String text) {
    if (text == null) {
      return "";
    }
    String oneLine = text.replaceAll("\\p{Cntrl}", " ");
    return oneLine.length() <= 40 ? oneLine : oneLine.substring(0, 40) + "…";
  }
}
