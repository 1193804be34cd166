package spindlebook.alignment;

import java.util.Objects;
import spindlebook.definition.Place;
import spindlebook.entry.AlignmentWay;
import spindlebook.entry.SweptBy;
import spindlebook.uncertainty.Figure;

/**
 * One wheel swung from lock to lock, camber read at both ends and straight ahead.
 *
 * @param wheel on the right everything is mirrored: right lock is to it what left is to the left
 * @param by what the lock angles count: the owner says which
 * @param leftLockRad + to the left, so more than 0
 * @param rightLockRad less than 0; need not be as far as the left one
 * @param toeStraightRad of this wheel, + in
 */
public record Sweep(
    Place wheel,
    SweptBy by,
    Figure leftLockRad,
    Figure rightLockRad,
    Figure camberLeftRad,
    Figure camberStraightRad,
    Figure camberRightRad,
    Figure toeStraightRad) {
  /** Less of a swing than this, each way, tells nothing: 3 degrees. */
  public static final double LEAST_LOCK_RAD = AlignmentWay.Swing.LEAST_LOCK_RAD;

  public Sweep {
    Objects.requireNonNull(wheel, "wheel");
    Objects.requireNonNull(by, "by");
    if (!(leftLockRad.value() >= LEAST_LOCK_RAD && rightLockRad.value() <= -LEAST_LOCK_RAD)) {
      throw new IllegalArgumentException(
          "a sweep goes at least 3 degrees to the left (+) and to the right (−): "
              + leftLockRad.value()
              + " and "
              + rightLockRad.value());
    }
  }

  /** The same sweep as its mirror image on the left side would read. */
  Sweep asLeft() {
    return wheel.left()
        ? this
        : new Sweep(
            wheel.mirror(),
            by,
            rightLockRad.times(-1),
            leftLockRad.times(-1),
            camberRightRad,
            camberStraightRad,
            camberLeftRad,
            toeStraightRad);
  }
}
