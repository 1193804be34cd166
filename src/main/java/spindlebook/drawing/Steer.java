package spindlebook.drawing;

/** Which way the front wheels are turned. */
public enum Steer {
  LEFT("full left"),
  STRAIGHT("straight ahead"),
  RIGHT("full right");

  private final String word;

  Steer(String word) {
    this.word = word;
  }

  public String word() {
    return word;
  }
}
