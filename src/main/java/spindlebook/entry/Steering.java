package spindlebook.entry;

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

  /** The same lock as the wheel sees it, on the car's other side: inner for inner. */
  public Steering mirrored() {
    return switch (this) {
      case FULL_LEFT -> FULL_RIGHT;
      case FULL_RIGHT -> FULL_LEFT;
      case PART_LEFT -> PART_RIGHT;
      case PART_RIGHT -> PART_LEFT;
      case STRAIGHT -> STRAIGHT;
    };
  }

  public boolean full() {
    return this == FULL_LEFT || this == FULL_RIGHT;
  }

  public boolean steered() {
    return this != STRAIGHT;
  }
}
