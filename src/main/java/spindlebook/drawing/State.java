package spindlebook.drawing;

/**
 * How much a reading or a margin is worth. Each has a word, a shape and a colour: never colour
 * alone.
 */
public enum State {
  CLEAR("clear"),
  SHORT("too close"),
  CANT_TELL("can’t tell"),
  STALE("measure again"),
  PUT_BACK("set back, check it"),
  WORKED_OUT("worked out"),
  IN_DOUBT("check this"),
  NOT_MEASURED("not measured"),
  LIVE("good");

  private final String word;

  State(String word) {
    this.word = word;
  }

  public String word() {
    return word;
  }

  /**
   * The word where a table's cell has no room for all of it; the key beside the table says the
   * rest.
   */
  public String brief() {
    return this == PUT_BACK ? "set back" : word;
  }

  /** The class that colours it, for example {@code is-cant-tell}. */
  public String mark() {
    return "is-" + name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
  }
}
