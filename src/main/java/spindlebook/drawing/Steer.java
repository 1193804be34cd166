package spindlebook.drawing;

/** Which way the front wheels are drawn turned; the angle is a picture, not a measurement. */
public enum Steer {
  LEFT("full left", -24),
  STRAIGHT("straight ahead", 0),
  RIGHT("full right", 24);

  private final String word;
  private final int turnDeg;

  Steer(String word, int turnDeg) {
    this.word = word;
    this.turnDeg = turnDeg;
  }

  public String word() {
    return word;
  }

  /** Degrees clockwise on the page, so positive is to the right. */
  public int turnDeg() {
    return turnDeg;
  }
}
