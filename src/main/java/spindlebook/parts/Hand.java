package spindlebook.parts;

/** Which way a thread runs. */
public enum Hand {
  RIGHT("right-hand", "anticlockwise"),
  LEFT("left-hand", "clockwise");

  private final String words;
  private final String outward;

  Hand(String words, String outward) {
    this.words = words;
    this.outward = outward;
  }

  public String words() {
    return words;
  }

  /** Which way the rod end is turned to come out, looking at it from its ball. */
  public String outward() {
    return outward;
  }
}
