package spindlebook.definition;

/** What is held back on purpose. The owner's numbers. */
public enum Allowance {
  STRAP_STRETCH("a new strap's stretch, of its length", true),
  IMPACT_RESERVE("impact beyond the solid stop, at the wheel", false),
  SHOCK_OPEN_RESERVE("shock stroke left when open", false),
  SHOCK_CLOSED_RESERVE("shock stroke left when closed", false),
  GROUND_CLEARANCE("frame to ground at full bump", false);

  private final String words;
  private final boolean share;

  Allowance(String words, boolean share) {
    this.words = words;
    this.share = share;
  }

  public String words() {
    return words;
  }

  /** Given in per cent of a length, not as a length. */
  public boolean share() {
    return share;
  }
}
