package spindlebook.linkage;

import spindlebook.curve.Bisection;
import spindlebook.linkage.Found.StopsAssembling;

/**
 * The way to a wheel height: Newton's steps in the lower arm's angle by the exact dh/dθ, each short
 * enough that the branch is seen to go on (halved where dh/dθ bends, down to 1e-4 rad), until the
 * height lies between two poses; there never out of them.
 *
 * <p>A step that finds no pose is cut back to the last one, where upper arm and kingpin, or tie rod
 * and steering arm, stand in one line. There the lower arm stops and goes back while the wheel goes
 * on: the other branch takes over. Where dh/dθ turns, the wheel itself comes no further, and the
 * height is refused.
 */
final class March {
  private static final double STEP_RAD = 0.1;
  private static final double LEAST_STEP_RAD = 2e-3;
  private static final double NO_SHORTER_RAD = 1e-4;
  private static final double CLOSE_MM = 1e-10;

  /** At a dead centre θ's last digit is some 1e-6 mm of height. */
  private static final double AT_DEAD_CENTRE_MM = 1e-5;

  private static final int MOST_STEPS = 2000;

  private March() {}

  static Found to(Pose start, double heightMm) {
    Pose near = start;
    double shorter = STEP_RAD;
    for (int steps = 0; steps < MOST_STEPS; steps++) {
      double missing = heightMm - near.heightMm();
      if (Math.abs(missing) <= CLOSE_MM) {
        return near;
      }
      double most = Math.min(shorter, Math.max(LEAST_STEP_RAD, 4 * STEP_RAD * near.room()));
      double step = missing / near.heightPerRad();
      double angle = near.lowerRad() + Math.max(-most, Math.min(most, step));
      if (angle == near.lowerRad()) {
        return near;
      }
      Pose next = near.turnedTo(angle);
      shorter = 0.5 * Math.abs(angle - near.lowerRad());
      if (shorter > NO_SHORTER_RAD && (next == null || bends(near, next))) {
        continue;
      }
      shorter = STEP_RAD;
      Pose end = next == null ? lastBefore(near, angle) : next;
      if (end.lowerRad() == near.lowerRad() && Math.abs(missing) < AT_DEAD_CENTRE_MM) {
        return near;
      }
      if (!(end.heightPerRad() * near.heightPerRad() > 0)) {
        Pose last = whereTheHeightTurns(near, end);
        return (last.heightMm() - heightMm) * missing < 0
            ? new StopsAssembling(last.heightMm(), last.rackMm(), missing < 0)
            : between(near, last, heightMm);
      }
      if ((end.heightMm() - heightMm) * missing >= 0) {
        return between(near, end, heightMm);
      }
      near = next == null ? end.pastDeadCentre() : next;
      if (near == null || Math.abs(near.lowerRad()) > Math.PI) {
        return new StopsAssembling(end.heightMm(), end.rackMm(), missing < 0);
      }
    }
    return new StopsAssembling(near.heightMm(), near.rackMm(), heightMm < near.heightMm());
  }

  /**
   * Whether dh/dθ turns, changes threefold or has not the mean of both: there may be more between.
   */
  private static boolean bends(Pose near, Pose next) {
    double one = near.heightPerRad();
    double other = next.heightPerRad();
    double slope = (next.heightMm() - near.heightMm()) / (next.lowerRad() - near.lowerRad());
    double mean = 0.5 * (one + other);
    return !(other / one < 3 && one / other < 3)
        || one * other <= 0
        || Math.abs(slope - mean) > 0.1 * Math.abs(mean);
  }

  /** {@code near} lies before the height and {@code end} at it or beyond, on one branch. */
  private static Found between(Pose near, Pose end, double heightMm) {
    double before = near.lowerRad();
    double beyond = end.lowerRad();
    double way = end.heightMm() - near.heightMm();
    Pose at = end;
    for (int steps = 0; steps < MOST_STEPS; steps++) {
      double missing = heightMm - at.heightMm();
      if (Math.abs(missing) <= CLOSE_MM) {
        return at;
      }
      if (missing * way > 0) {
        before = at.lowerRad();
      } else {
        beyond = at.lowerRad();
      }
      double angle = at.lowerRad() + missing / at.heightPerRad();
      if (!((angle - before) * (angle - beyond) < 0)) {
        angle = before + 0.5 * (beyond - before);
      }
      Pose next = at.turnedTo(angle);
      if (next == null || angle == before || angle == beyond) {
        break;
      }
      at = next;
    }
    return at;
  }

  private static Pose lastBefore(Pose near, double angle) {
    double last = Bisection.zero(a -> near.turnedTo(a) == null ? 1 : -0.5, near.lowerRad(), angle);
    return near.turnedTo(last);
  }

  private static Pose whereTheHeightTurns(Pose near, Pose end) {
    double sign = Math.signum(end.heightPerRad());
    double turn =
        Bisection.zero(
            a -> {
              Pose at = near.turnedTo(a);
              return at == null ? 1 : sign * at.heightPerRad();
            },
            near.lowerRad(),
            end.lowerRad());
    Pose at = near.turnedTo(turn);
    return at == null ? lastBefore(near, turn) : at;
  }
}
