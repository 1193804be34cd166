package spindlebook.advice;

import java.util.List;
import java.util.Set;
import spindlebook.entry.Content;
import spindlebook.entry.Joint;
import spindlebook.entry.TelltaleKind;
import spindlebook.fold.Doubted;
import spindlebook.fold.ReadAgain;
import spindlebook.fold.SeenFastener;
import spindlebook.fold.SeenPart;
import spindlebook.fold.SeenToDo;
import spindlebook.fold.Written;
import spindlebook.travel.End;
import spindlebook.travel.Limit;
import spindlebook.travel.MidTravel;
import spindlebook.travel.Need;
import spindlebook.travel.UnreadReach;

/** One thing to see to before a drive, as the {@link DriveCheck} found it. */
public sealed interface ThingFirst {

  /** What kind of thing it is, the weightiest first. */
  enum Why {
    /** A rule is broken. */
    SHORT("short", "past a limit"),
    /** A drive took the wheel, or a gap, past what is allowed. */
    WENT_PAST("went past on a drive"),
    /** All that was held back for a strap's stretch has come. */
    USED_UP("used up"),
    /** A fastener that was touched, or found loose, and nobody has said is tight and marked. */
    OPENED("opened", "loosened"),
    /** A corner that has no round, or no height in any. */
    NOT_MEASURED("not measured"),
    /** An entry that waits for an answer. */
    IN_DOUBT("in doubt", "check this"),
    /** A rule that cannot be told kept or broken. */
    CANT_TELL("can't tell"),
    /** A term without which there is no total or no margin, or travel is not split. */
    MISSING("missing", "to measure or give"),
    /** Read under other settings. */
    STALE("stale", "measure again"),
    /** Changed and changed back. */
    NOT_CONFIRMED("put back, not confirmed", "set back, check it"),
    /** Not looked at since the last drive. */
    RE_CHECK("re-check due"),
    /** Used for as long as its owner wants before it is looked at. */
    PART_DUE("part to look at"),
    /** Written down to be done. */
    TO_DO("to do");

    private final String keptAs;
    private final String words;

    Why(String both) {
      this(both, both);
    }

    Why(String keptAs, String words) {
      this.keptAs = keptAs;
      this.words = words;
    }

    /** As a sign-off's copy says it, for ever. */
    public String keptAs() {
      return keptAs;
    }

    public String words() {
      return words;
    }
  }

  Why why();

  /** The corner's key; null for the whole car. */
  String corner();

  /** The end of the travel whose limits it is about; null for any other thing. */
  default End end() {
    return null;
  }

  /** The limits it is about. */
  default List<Limit> limits() {
    return List.of();
  }

  /** How many things it is: several readings to take are one line. */
  default int count() {
    return 1;
  }

  /** Whether it is about where the wheel goes or what was read, not about a drive or a job. */
  default boolean ofReadings() {
    return switch (why()) {
      case SHORT, CANT_TELL, MISSING, STALE, NOT_CONFIRMED -> true;
      case WENT_PAST, USED_UP, OPENED, NOT_MEASURED, IN_DOUBT, RE_CHECK, PART_DUE, TO_DO -> false;
    };
  }

  /** A limit that the stop lets the wheel get past, or that may be so. */
  record OfLimit(Why why, String corner, End end, Limit limit) implements ThingFirst {
    @Override
    public List<Limit> limits() {
      return List.of(limit);
    }
  }

  /** Rules of one end that one height further out reads all. */
  record NotReadFarEnough(Why why, String corner, UnreadReach reach) implements ThingFirst {
    @Override
    public End end() {
      return reach.end();
    }

    @Override
    public List<Limit> limits() {
      return reach.limits();
    }

    @Override
    public int count() {
      return reach.limits().size();
    }
  }

  /** A rule broken, or not surely kept, between the ends. */
  record OfMidTravel(Why why, String corner, MidTravel mid) implements ThingFirst {}

  /**
   * A figure of alignment against the owner's target: missed, undecided, stale, or not there.
   *
   * @param why SHORT, CANT_TELL, STALE, NOT_CONFIRMED or MISSING
   */
  record OffTarget(Why why, String corner, Written<Content.Target> target) implements ThingFirst {
    /** Where the wheel goes weighs more: the worst corner is told by that. */
    @Override
    public boolean ofReadings() {
      return false;
    }
  }

  /** A rod end or uniball that swings, or may swing, further than its hardware allows. */
  record SwingsTooFar(Why why, String corner, Joint joint, String allows) implements ThingFirst {
    @Override
    public boolean ofReadings() {
      return false;
    }
  }

  /** Full bump as read and as worked out disagree. */
  record StopsDisagree(Why why, String corner) implements ThingFirst {}

  /**
   * The ring on a shock's shaft says that a wheel went deeper than is allowed.
   *
   * @param bump where the wheel was
   * @param pastLimit past the limit of bump; else past where the stop with its reserve ends
   */
  record DeeperThanAllowed(Why why, String corner, DeepestBump.At bump, boolean pastLimit)
      implements ThingFirst {}

  /** Clay says that a gap came down to less than its rule asks. */
  record NearerThanAllowed(Why why, String corner, ClayGap clay) implements ThingFirst {}

  /**
   * The strap is longer than what was held back for its stretch allows.
   *
   * @param between the strap's length between drives, where that says so; null where a reading on
   *     it does
   */
  record StretchUsed(Why why, String corner, Written<Content.Telltale> between)
      implements ThingFirst {}

  record Opened(Why why, String corner, SeenFastener fastener) implements ThingFirst {}

  /**
   * @param corner null where the car has no corner at all
   * @param round a round was begun, without a height
   */
  record NotMeasured(Why why, String corner, boolean round) implements ThingFirst {}

  record InDoubt(Why why, String corner, Doubted doubted) implements ThingFirst {}

  /**
   * @param needs all readings, or all numbers to give and to choose; the one that matters most
   *     first
   */
  record Missing(Why why, String corner, List<Need> needs) implements ThingFirst {
    @Override
    public int count() {
      return needs.size();
    }
  }

  /** What no longer holds, or was put back and not confirmed, and is not among what is missing. */
  record Again(Why why, String corner, List<ReadAgain> again) implements ThingFirst {
    @Override
    public int count() {
      return again.size();
    }
  }

  /**
   * @param unread what was not read since the last drive
   * @param marks of how many fasteners nobody has looked at the mark since
   */
  record ReCheckDue(Why why, String corner, Set<TelltaleKind> unread, int marks)
      implements ThingFirst {
    @Override
    public int count() {
      return unread.size() + marks;
    }
  }

  /** A part that its owner wants looked at by now. */
  record PartDue(Why why, String corner, SeenPart part) implements ThingFirst {}

  record ToDo(Why why, String corner, SeenToDo toDo) implements ThingFirst {}
}
