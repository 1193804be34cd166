package spindlebook.definition;

/** Where on the car a corner stands. Left and right are the driver's. */
public enum Place {
  LEFT_FRONT("left front"),
  RIGHT_FRONT("right front"),
  LEFT_REAR("left rear"),
  RIGHT_REAR("right rear");

  private final String words;

  Place(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }

  public boolean left() {
    return this == LEFT_FRONT || this == LEFT_REAR;
  }

  public boolean front() {
    return this == LEFT_FRONT || this == RIGHT_FRONT;
  }

  /** The same end of the car, the other side. */
  public Place mirror() {
    return switch (this) {
      case LEFT_FRONT -> RIGHT_FRONT;
      case RIGHT_FRONT -> LEFT_FRONT;
      case LEFT_REAR -> RIGHT_REAR;
      case RIGHT_REAR -> LEFT_REAR;
    };
  }
}
