package spindlebook.fold;

/** What an entered value is worth now. */
public enum Standing {
  LIVE("holds", true),
  PUT_BACK("put back, not confirmed", true),
  WORKED_OUT("worked out, not read since", true),
  STALE("stale", false),
  IN_DOUBT("in doubt", false),
  REPLACED("read again since", false),
  OUTSIDE("no wheel position", false);

  private final String words;
  private final boolean counts;

  Standing(String words, boolean counts) {
    this.words = words;
    this.counts = counts;
  }

  public String words() {
    return words;
  }

  /** Whether figures are computed from it. */
  public boolean counts() {
    return counts;
  }
}
