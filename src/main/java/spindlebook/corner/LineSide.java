package spindlebook.corner;

/** On which side of the wheel the line runs that toe was measured from. */
public enum LineSide {
  INBOARD("inboard of the wheel"),
  OUTBOARD("outboard of the wheel");

  private final String words;

  LineSide(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
