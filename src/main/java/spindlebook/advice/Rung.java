package spindlebook.advice;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import spindlebook.entry.Steering;
import spindlebook.travel.End;
import spindlebook.travel.Judged;
import spindlebook.travel.Limit;
import spindlebook.travel.Need;
import spindlebook.uncertainty.Figure;

/**
 * One thing that ends, or may end, the motion at one end.
 *
 * @param limit what is known of it; null for the stop, and for a shock or ground of which a number
 *     was never given
 * @param condition in which it acts, where steering does not say it; may be empty
 * @param atMm wheel position at which it acts, as it is planned with: where the stop lets the wheel
 *     go in the end, where a limit's rule is met, or the reading of a bracket that keeps it; of a
 *     rule kept at its last reading, that reading; null when it is not known
 * @param reachMm where the stop lets the wheel go in the motion in which this acts, on a solid axle
 *     both together or crossed; null when that is not known
 * @param brokenMm the other end of a bracket: it acts somewhere between; null otherwise
 * @param wins what curing it wins
 * @param needs what is missing of it
 */
public record Rung(
    What what,
    Limit limit,
    String condition,
    State state,
    Figure atMm,
    Figure reachMm,
    Figure brokenMm,
    Win wins,
    List<Need> needs) {

  /** What acts. */
  public enum What {
    STOP,
    GAP,
    ANGLE,
    PLUNGE,
    SHOCK,
    GROUND
  }

  /** How well its place is known. */
  public enum State {
    /** Its rule is broken at every height read: it has no place on the ladder, and comes first. */
    EVERYWHERE,
    /** There, within its ±. */
    ACTS,
    /** Between two readings; planned from the one that keeps its rule. */
    BRACKET,
    /** Beyond its last reading, if at all. */
    KEPT_TO,
    /** A term is missing or stale: it could act anywhere. */
    NEEDS
  }

  /** What can be done about it to win travel. */
  public enum CuredBy {
    /** The stop let out: a longer strap, a thinner spacer. */
    STOP,
    /** Room made where it acts. */
    PLACE,
    /** Less lock. */
    STEERING_STOP
  }

  /** Where the steering stands when it acts; null where it does not matter. */
  public Steering steering() {
    return limit == null ? null : limit.steering();
  }

  /** What cures it, to win travel. */
  public Set<CuredBy> curedBy() {
    if (what == What.STOP) {
      return EnumSet.of(CuredBy.STOP);
    }
    return steering() != null && steering().full()
        ? EnumSet.of(CuredBy.PLACE, CuredBy.STEERING_STOP)
        : EnumSet.of(CuredBy.PLACE);
  }

  /** Whether it is known to act at a place. */
  public boolean acts() {
    return state == State.ACTS || state == State.BRACKET;
  }

  /** Wheel travel from where its stop lets the wheel go; negative when the wheel gets past it. */
  Figure roomMm(End end) {
    return reachMm == null ? null : Judged.room(end, reachMm, atMm);
  }

  Rung winning(Win win) {
    return new Rung(what, limit, condition, state, atMm, reachMm, brokenMm, win, needs);
  }
}
