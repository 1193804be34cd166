package spindlebook.travel;

/** The two ends of a corner's motion. */
public enum End {
  DROOP("droop", -1),
  BUMP("bump", +1);

  private final String words;
  private final int outward;

  End(String words, int outward) {
    this.words = words;
    this.outward = outward;
  }

  public String words() {
    return words;
  }

  /** −1 towards droop, +1 towards bump: the sign of wheel position on the way out. */
  public int outward() {
    return outward;
  }
}
