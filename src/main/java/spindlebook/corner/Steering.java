package spindlebook.corner;

/** Where the steering stood. Left lock is the car's left on either side of the car. */
public enum Steering {
  STRAIGHT("straight"),
  FULL_LEFT("full left"),
  FULL_RIGHT("full right"),
  PART_LEFT("part left"),
  PART_RIGHT("part right");

  private final String words;

  Steering(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }

  public boolean full() {
    return this == FULL_LEFT || this == FULL_RIGHT;
  }

  public boolean steered() {
    return this != STRAIGHT;
  }
}
