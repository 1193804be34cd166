package spindlebook.fold;

import java.util.Set;
import spindlebook.definition.AdjusterKind;
import spindlebook.definition.Dimension;
import spindlebook.definition.Part;
import spindlebook.definition.WatchPlace;
import spindlebook.entry.AlignedThing;
import spindlebook.entry.HeightName;
import spindlebook.entry.Joint;
import spindlebook.entry.Quantity;
import spindlebook.entry.Steering;

/** What a change may move: where a stop is, or a reading. */
public sealed interface Subject {
  /**
   * The wheel position at which a named height of this corner lies.
   *
   * @param otherEnd where the other end of a crossed axle may have stood; empty where it does not
   *     matter
   */
  record StopPosition(HeightName name, Set<HeightName> otherEnd) implements Subject {
    public StopPosition {
      otherEnd = Set.copyOf(otherEnd);
    }

    public StopPosition(HeightName name) {
      this(name, Set.of());
    }
  }

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

  /** A length that was given once: it hangs on its part. */
  record GivenLength(Dimension dimension) implements Subject {}

  /** What was said of a part: its spring's rate, where its stop touches. */
  record OfPart(AdjusterKind part) implements Subject {}

  /** Where a joint of the linkage was laid out. */
  record JointLaidOut(Joint joint) implements Subject {}

  /** A measurement of alignment, taken at ride. */
  record Alignment(AlignedThing thing) implements Subject {}
}
