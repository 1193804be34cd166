package spindlebook.definition;

import java.util.Map;

/** What one definition is about: a thing that counts from there on, or no longer does. */
public sealed interface Defined
    permits CarDetails, Tool, WatchPoint, Adjuster, Given, HeldBack, Retired {

  /** By the names they have in the book. */
  Map<String, Class<? extends Defined>> NAMES =
      Map.of(
          "details", CarDetails.class,
          "tool", Tool.class,
          "watchPoint", WatchPoint.class,
          "adjuster", Adjuster.class,
          "given", Given.class,
          "heldBack", HeldBack.class,
          "retired", Retired.class);

  /** As it is told in the book: {@code tool the tape}. */
  String inWords();

  /** Whether it belongs to the whole car, not to a corner. */
  default boolean ofCar() {
    return false;
  }
}
