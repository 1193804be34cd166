package spindlebook.travel;

import java.util.List;
import spindlebook.uncertainty.Figure;

/**
 * Where an end's stop stands.
 *
 * @param positionMm wheel position, + towards bump
 * @param computed worked out from touch and crush, not reached by hand
 * @param notConfirmed rests on a setting that was put back and not read since
 * @param otherMm where it is by the other way of finding it, computed or read, when the two are
 *     further apart than their ±: the nearer in of the two, so that margins count to the further
 *     out; null when they agree or there is one alone
 */
public record StopFound(
    Figure positionMm,
    boolean computed,
    boolean notConfirmed,
    List<String> readings,
    Figure otherMm) {
  StopFound against(StopFound other) {
    return new StopFound(positionMm, computed, notConfirmed, readings, other.positionMm);
  }

  /** Where it lets the wheel go in the end, what is held back used up: S − e, or B + r. */
  Figure reachMm(HeldAtWheel held, End end) {
    return positionMm.plus(held.mm().times(end.outward()));
  }

  /** The nearer in of the two, for travel that is there for sure. */
  Figure nearestMm() {
    return otherMm == null ? positionMm : otherMm;
  }
}
