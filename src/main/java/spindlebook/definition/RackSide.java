package spindlebook.definition;

/** The side of the front axle on which the steering rack lies. */
public enum RackSide {
  AHEAD_OF_AXLE("ahead of the axle"),
  BEHIND_AXLE("behind the axle");

  private final String words;

  RackSide(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
