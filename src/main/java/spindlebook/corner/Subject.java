package spindlebook.corner;

/** What a change may move: where a stop is, or a reading. */
public sealed interface Subject {
  /** The wheel position at which a named height of this corner lies. */
  record StopPosition(HeightName name) implements Subject {}

  /** A reading; {@code place} is null unless it is of a watch point. */
  record Taken(Quantity quantity, WatchPlace place, Steering steering, HeightName at)
      implements Subject {
    boolean of(Part part) {
      return place != null && place.has(part);
    }

    boolean is(Quantity other) {
      return quantity == other;
    }
  }

  /** A measurement of alignment, taken at ride. */
  record Alignment(AlignedThing thing) implements Subject {}
}
