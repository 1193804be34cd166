package spindlebook.alignment;

import java.util.Optional;

/** A stretch of wheel positions, mm, + towards bump. */
public record Window(double fromMm, double toMm) {
  public Window {
    if (!(fromMm < toMm)) {
      throw new IllegalArgumentException("no stretch runs from " + fromMm + " to " + toMm);
    }
  }

  /** So much travel about a place: the middle 8 in of it, say. */
  public static Window about(double middleMm, double lengthMm) {
    return new Window(middleMm - lengthMm / 2, middleMm + lengthMm / 2);
  }

  public double lengthMm() {
    return toMm - fromMm;
  }

  public boolean holds(double positionMm) {
    return positionMm >= fromMm && positionMm <= toMm;
  }

  /** What the two have in common; empty when that is no stretch. */
  public Optional<Window> within(Window other) {
    double from = Math.max(fromMm, other.fromMm);
    double to = Math.min(toMm, other.toMm);
    return from < to ? Optional.of(new Window(from, to)) : Optional.empty();
  }
}
