package spindlebook.fold;

/** What an entered value is worth now. */
public enum Standing {
  LIVE("good", "holds", true),
  PUT_BACK("set back, check it", "put back, not confirmed", true),
  WORKED_OUT("worked out, not read since", "worked out, not read since", true),
  STALE("measure again", "stale", false),
  IN_DOUBT("check this", "in doubt", false),
  REPLACED("read again since", "read again since", false),
  OUTSIDE("no wheel position", "no wheel position", false);

  private final String words;
  private final String keptAs;
  private final boolean counts;

  Standing(String words, String keptAs, boolean counts) {
    this.words = words;
    this.keptAs = keptAs;
    this.counts = counts;
  }

  public String words() {
    return words;
  }

  /** In the copy that a sign-off keeps, which no change of words may change. */
  public String keptAs() {
    return keptAs;
  }

  /** Whether figures are computed from it. */
  public boolean counts() {
    return counts;
  }
}
