package spindlebook.parts;

/** Which way a thread runs. */
public enum Hand {
  RIGHT("anticlockwise"),
  LEFT("clockwise");

  private final String outward;

  Hand(String outward) {
    this.outward = outward;
  }

  /** Which way the rod end is turned to come out, looking at it from its ball. */
  public String outward() {
    return outward;
  }
}
