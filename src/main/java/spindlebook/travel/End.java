package spindlebook.travel;

import spindlebook.definition.AdjusterKind;

/** The two ends of a corner's motion. */
public enum End {
  DROOP("droop", -1, AdjusterKind.LIMIT_STRAP),
  BUMP("bump", +1, AdjusterKind.BUMP_STOP_SPACER);

  private final String words;
  private final int outward;
  private final AdjusterKind setBy;

  End(String words, int outward, AdjusterKind setBy) {
    this.words = words;
    this.outward = outward;
    this.setBy = setBy;
  }

  public String words() {
    return words;
  }

  /** −1 towards droop, +1 towards bump: the sign of wheel position on the way out. */
  public int outward() {
    return outward;
  }

  /** What sets its stop. */
  public AdjusterKind setBy() {
    return setBy;
  }
}
