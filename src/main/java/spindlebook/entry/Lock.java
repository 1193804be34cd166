package spindlebook.entry;

import spindlebook.definition.Place;

/** Where the steering stood as one wheel sees it: the inner wheel of a turn is at inner lock. */
public enum Lock {
  STRAIGHT("straight"),
  INNER("inner lock"),
  OUTER("outer lock"),
  PART_INNER("part lock, inner"),
  PART_OUTER("part lock, outer");

  private final String words;

  Lock(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }

  /** Turned left, the left wheel is the inner one. */
  public static Lock of(Place place, Steering steering) {
    return switch (place.left() ? steering : steering.mirrored()) {
      case STRAIGHT -> STRAIGHT;
      case FULL_LEFT -> INNER;
      case FULL_RIGHT -> OUTER;
      case PART_LEFT -> PART_INNER;
      case PART_RIGHT -> PART_OUTER;
    };
  }
}
