package spindlebook.fold;

import java.util.List;
import java.util.Objects;
import spindlebook.definition.WatchPoint;
import spindlebook.entry.Content;
import spindlebook.entry.Quantity;
import spindlebook.uncertainty.Figure;

/**
 * A reading as the card sees it.
 *
 * @param point the watch point in its present version; null for other quantities and when it is
 *     retired
 * @param pointThen the watch point in the version under which it was looked at
 * @param value millimetres, or radians for an angle; null when the result is no number
 * @param mounts of a strap's length: what it is worth as the distance of the strap's mounts at that
 *     wheel position, which neither a drive nor a setting of the strap moves; the same as {@code
 *     stands} for everything else
 * @param named what it is worth at the place its height names, where no wheel position is asked
 *     for, as in alignment at ride: as {@code stands}, and the frame mark may be missing
 * @param because the changes that moved it since it was taken
 */
public record SeenReading(
    Noted entry,
    SeenHeight height,
    Content.Reading reading,
    WatchPoint point,
    WatchPoint pointThen,
    Figure value,
    Standing stands,
    Standing mounts,
    Standing named,
    List<Change> because)
    implements OfEntry {
  static final double NEAR_MM = 12.7;

  public String what() {
    if (point != null) {
      return point.name();
    }
    if (pointThen != null) {
      return pointThen.name();
    }
    return reading.quantity() == Quantity.WATCH_POINT
        ? reading.point()
        : reading.quantity().words();
  }

  /** What it is of: the key of a watch point, or a quantity. */
  Object thing() {
    return reading.quantity() == Quantity.WATCH_POINT ? reading.point() : reading.quantity();
  }

  /** Whether it was read of a watch point that this corner does not have, or no longer has. */
  public boolean notWatched() {
    return reading.quantity() == Quantity.WATCH_POINT && point == null;
  }

  public boolean counts() {
    return stands.counts() && height.positionCounts();
  }

  /** Whether it would count, had nothing been changed since. */
  public boolean stale() {
    return stands == Standing.STALE && height.positionCounts();
  }

  /** Whether it tells how a length goes with wheel position. */
  public boolean countsAlongTravel() {
    return mounts.counts() && height.positionCounts();
  }

  public boolean of(Quantity quantity) {
    return reading.quantity() == quantity;
  }

  public boolean of(String watchPoint) {
    return reading.quantity() == Quantity.WATCH_POINT && watchPoint.equals(reading.point());
  }

  SeenReading replaced() {
    return with(height, Standing.REPLACED, Standing.REPLACED, Standing.REPLACED);
  }

  /** Read again at the place its height names; where along the travel is not known of both. */
  SeenReading replacedWhereNamed() {
    return with(height, stands, mounts, Standing.REPLACED);
  }

  /** With its height as that is seen now. */
  SeenReading at(SeenHeight seen) {
    return with(seen, stands, mounts, named);
  }

  private SeenReading with(
      SeenHeight seen, Standing alongTravel, Standing ofMounts, Standing whereNamed) {
    return new SeenReading(
        entry, seen, reading, point, pointThen, value, alongTravel, ofMounts, whereNamed, because);
  }

  /** Same thing read at the same named place and steering. */
  boolean samePlace(SeenReading other) {
    return sameThing(other)
        && (height.key().equals(other.height.key())
            || (height.name().onePlace() && height.name() == other.height.name()));
  }

  /**
   * Same thing read in between, or past one stop, by the same words of the owner's or within half
   * an inch of wheel (common practice, no source): near enough to be what was to be read again.
   */
  boolean near(SeenReading other) {
    if (!sameThing(other) || height.name().onePlace() || height.name() != other.height.name()) {
      return false;
    }
    String label = height.height().label();
    boolean sameWords =
        label != null && !label.isBlank() && label.equals(other.height.height().label());
    return sameWords
        || (height.positionMm() != null
            && other.height.positionMm() != null
            && Math.abs(height.positionMm().value() - other.height.positionMm().value())
                <= NEAR_MM);
  }

  boolean sameThing(SeenReading other) {
    return reading.quantity() == other.reading.quantity()
        && reading.steering() == other.reading.steering()
        && height.pairing() == other.height.pairing()
        && Objects.equals(reading.point(), other.reading.point());
  }
}
