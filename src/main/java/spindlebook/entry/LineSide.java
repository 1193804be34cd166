package spindlebook.entry;

/**
 * On which side of the wheel the line runs that toe was measured from; of a line that leans, on
 * which side of it the places lie that tell how far.
 */
public enum LineSide {
  INBOARD("inboard of the wheel"),
  OUTBOARD("outboard of the wheel");

  private final String words;

  LineSide(String words) {
    this.words = words;
  }

  /** Of the line, from the wheel. */
  public String words() {
    return words;
  }
}
