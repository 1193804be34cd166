package spindlebook.corner;

import java.time.Instant;
import java.util.List;
import spindlebook.uncertainty.Figure;

/**
 * A reading as the card sees it.
 *
 * @param point the watch point in its present version; null for other quantities and when it is
 *     retired
 * @param pointThen the watch point in the version under which it was looked at
 * @param value millimetres, or radians for an angle; null when the result is no number
 * @param because the changes that moved it since it was taken
 */
public record SeenReading(
    String key,
    long n,
    Instant at,
    String who,
    SeenHeight height,
    Content.Reading reading,
    WatchPoint point,
    WatchPoint pointThen,
    Figure value,
    Standing stands,
    List<Change> because) {

  public String what() {
    if (point != null) {
      return point.name();
    }
    return pointThen == null ? reading.quantity().words() : pointThen.name();
  }

  public boolean counts() {
    return stands.counts() && height.positionCounts();
  }

  public boolean of(Quantity quantity) {
    return reading.quantity() == quantity;
  }

  public boolean of(String watchPoint) {
    return reading.quantity() == Quantity.WATCH_POINT && watchPoint.equals(reading.point());
  }

  SeenReading replaced() {
    return new SeenReading(
        key, n, at, who, height, reading, point, pointThen, value, Standing.REPLACED, because);
  }

  /** Same thing read at the same named place and steering. */
  boolean samePlace(SeenReading other) {
    return reading.quantity() == other.reading.quantity()
        && reading.steering() == other.reading.steering()
        && java.util.Objects.equals(reading.point(), other.reading.point())
        && (height.key().equals(other.height.key())
            || (height.name().onePlace() && height.name() == other.height.name()));
  }
}
