package spindlebook.entry;

/** What befell the car, as against what was set on it. Cannot be put back. */
public enum HappeningKind {
  HIT_OR_BENT("hit or bent"),
  CUT_WELDED_GROUND("cut, welded or ground"),
  DRIVEN("driven");

  private final String words;

  HappeningKind(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
