package spindlebook.definition;

import java.util.Map;

/** What one definition is about: a thing that counts from there on, or no longer does. */
public sealed interface Defined
    permits CarDetails,
        Tool,
        WatchPoint,
        Adjuster,
        Given,
        HeldBack,
        Retired,
        Spring,
        BumpStop,
        CornerWeight {

  /** By the names they have in the book. */
  Map<String, Class<? extends Defined>> NAMES =
      Map.ofEntries(
          Map.entry("details", CarDetails.class),
          Map.entry("tool", Tool.class),
          Map.entry("watchPoint", WatchPoint.class),
          Map.entry("adjuster", Adjuster.class),
          Map.entry("given", Given.class),
          Map.entry("heldBack", HeldBack.class),
          Map.entry("retired", Retired.class),
          Map.entry("spring", Spring.class),
          Map.entry("bumpStop", BumpStop.class),
          Map.entry("cornerWeight", CornerWeight.class));

  /** As it is told in the book: {@code tool the tape}. */
  String inWords();

  /** Whether it belongs to the whole car, not to a corner. */
  default boolean ofCar() {
    return false;
  }
}
