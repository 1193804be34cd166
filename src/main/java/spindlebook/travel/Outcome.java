package spindlebook.travel;

/** How an end, or one of its limits, stands. */
public enum Outcome {
  SHORT("short"),
  CANT_TELL("can't tell"),
  NEEDS("needs a reading"),
  CLEAR("clear");

  private final String words;

  Outcome(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }

  /** The one that weighs more: short, then can't tell, then needs, then clear. */
  Outcome worse(Outcome other) {
    return ordinal() <= other.ordinal() ? this : other;
  }
}
