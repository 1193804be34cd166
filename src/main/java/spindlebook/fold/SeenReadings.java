package spindlebook.fold;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToLongFunction;
import spindlebook.entry.GapResult;

/**
 * The readings of a card as they come in the book's order. A later reading of the same place stands
 * for earlier ones that no longer held as it was read: what was changed after both leaves them
 * repeats. Told to stand instead, it does so for those that hold as well, unless the place was
 * moved between them: then each is true where it was taken.
 */
final class SeenReadings {
  private final ToLongFunction<SeenHeight> era;
  private final ToLongFunction<SeenReading> moved;
  private final List<SeenReading> seen = new ArrayList<>();

  // So that a reading looks only at those it may stand for, and not at all before it.
  private final Spots standing = new Spots();
  private final Spots loose = new Spots();

  /**
   * @param era the last change that moved, or wore, the place a height names
   * @param moved the last change before a reading that moved what was read
   */
  SeenReadings(ToLongFunction<SeenHeight> era, ToLongFunction<SeenReading> moved) {
    this.era = era;
    this.moved = moved;
  }

  List<SeenReading> list() {
    return List.copyOf(seen);
  }

  /** With one reading more: for one, all before it are looked at. */
  static List<SeenReading> with(
      List<SeenReading> earlier,
      SeenReading later,
      ToLongFunction<SeenHeight> era,
      ToLongFunction<SeenReading> moved) {
    List<SeenReading> seen = new ArrayList<>(earlier.size() + 1);
    boolean instead = Boolean.FALSE.equals(later.reading().again());
    SeenReadings rule = new SeenReadings(era, moved);
    earlier.forEach(e -> seen.add(standsForAny(later) ? rule.after(e, later, instead) : e));
    seen.add(later);
    return seen;
  }

  private static boolean standsForAny(SeenReading later) {
    return looked(later) && (later.counts() || later.named().counts());
  }

  void add(SeenReading reading) {
    if (standsForAny(reading)) {
      boolean instead = Boolean.FALSE.equals(reading.reading().again());
      Spots earlier = instead ? standing : loose;
      earlier.forget(reading, this::replaced);
      earlier
          .near(reading, instead ? Spots.ANY : heldSince(reading))
          .forEach(i -> seen.set(i, after(seen.get(i), reading, instead)));
    }
    standing.add(reading, Spots.ANY, seen.size());
    if (mayBeReadAgain(reading, reading.stands()) || mayBeReadAgain(reading, reading.named())) {
      loose.add(reading, heldSince(reading), seen.size());
    }
    seen.add(reading);
  }

  private boolean replaced(int i) {
    SeenReading reading = seen.get(i);
    return reading.stands() == Standing.REPLACED && reading.named() == Standing.REPLACED;
  }

  /** An earlier reading as it stands after a later one. */
  private SeenReading after(SeenReading earlier, SeenReading later, boolean instead) {
    if (!earlier.sameThing(later)) {
      return earlier;
    }
    boolean open = later.counts() && noLongerHolds(earlier, earlier.stands(), later);
    boolean openWhereNamed =
        later.named().counts() && noLongerHolds(earlier, earlier.named(), later);
    if (!open && !openWhereNamed && !instead) {
      return earlier;
    }
    boolean samePlace = earlier.samePlace(later);
    boolean retaken =
        instead
            && samePlace
            && era.applyAsLong(earlier.height()) == era.applyAsLong(later.height());
    if ((open && (samePlace || earlier.near(later)))
        || (later.counts() && retaken && earlier.counts())) {
      return earlier.replaced();
    }
    if ((openWhereNamed && samePlace)
        || (later.named().counts() && retaken && earlier.named().counts())) {
      return earlier.replacedWhereNamed();
    }
    return earlier;
  }

  private boolean noLongerHolds(SeenReading earlier, Standing stands, SeenReading later) {
    boolean again = Boolean.TRUE.equals(later.reading().again());
    return mayBeReadAgain(earlier, stands)
        && !(stands == Standing.PUT_BACK && again && looked(earlier))
        && (heldSince(earlier) == Spots.ANY || heldSince(earlier) != moved.applyAsLong(later));
  }

  /** The change from which on it held until all that is known of; none where it counts no more. */
  private long heldSince(SeenReading reading) {
    boolean stale = reading.stands() == Standing.STALE || reading.named() == Standing.STALE;
    return stale || !looked(reading) ? Spots.ANY : moved.applyAsLong(reading);
  }

  /** Stale, put back, worked out, or counted though nobody looked. */
  private static boolean mayBeReadAgain(SeenReading reading, Standing stands) {
    return stands == Standing.STALE
        || stands == Standing.PUT_BACK
        || stands == Standing.WORKED_OUT
        || (stands.counts() && !looked(reading));
  }

  private static boolean looked(SeenReading reading) {
    GapResult result = reading.reading().result();
    return result != GapResult.NOT_LOOKED && result != GapResult.UNREAD;
  }
}
