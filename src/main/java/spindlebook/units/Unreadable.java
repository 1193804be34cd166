package spindlebook.units;

/**
 * Why a text is refused: the middle of a sentence, between what was typed and what would be
 * accepted.
 */
final class Unreadable extends Exception {
  private static final long serialVersionUID = 1;

  Unreadable(String problem) {
    super(problem, null, false, false); // part of the normal way through: no stack trace to collect
  }

  static Unreadable nonsense() {
    return new Unreadable("cannot be read");
  }

  /** One sentence: the words as typed, what is the matter, what would be accepted. */
  String sentence(String typed, String advice) {
    return Quote.of(typed) + " " + getMessage() + ": " + advice + ".";
  }
}
