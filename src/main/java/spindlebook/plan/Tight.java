package spindlebook.plan;

import java.util.List;
import java.util.function.Predicate;
import spindlebook.definition.Keep;
import spindlebook.definition.Part;
import spindlebook.definition.WatchPlace;
import spindlebook.definition.WatchPoint;
import spindlebook.entry.GapResult;
import spindlebook.entry.Pairing;
import spindlebook.entry.Steering;
import spindlebook.fold.Card;
import spindlebook.fold.SeenReading;

/**
 * Where a watch point gets tight, so that no eye tells whether it keeps its rule: as it was read at
 * that end before (crossed, else both together), else as the mirror corner was, inner lock for
 * inner lock, else as such places usually do.
 *
 * <p>Tight is within twice the rule or a quarter inch of it, five degrees, an eighth of a plunge.
 * What usually does is common practice, no source: rod ends, hoses, drive shafts at droop; what
 * stands under the frame, and tyres, at bump; rod ends, hoses and tyres more at a lock than
 * straight.
 */
public final class Tight {
  private static final double NEAR_MM = 6.35;
  private static final double NEAR_RAD = Math.toRadians(5);

  private Tight() {}

  /**
   * @param mirror null where there is none
   * @param droop at the droop end, else at the bump end
   * @param round readings of this round are not 'before'
   * @param usually whether what such places usually do counts where nothing was read
   */
  public static boolean at(
      Card card,
      Card mirror,
      WatchPoint point,
      Steering steering,
      Pairing pairing,
      boolean droop,
      String round,
      boolean usually) {
    List<SeenReading> before = before(card, point, steering, pairing, droop, round);
    if (before.isEmpty() && pairing == Pairing.CROSSED) {
      before = before(card, point, steering, Pairing.BOTH_TOGETHER, droop, "");
    }
    if (before.isEmpty() && mirror != null) {
      before = before(mirror, point, steering.mirrored(), pairing, droop, round);
    }
    return before.isEmpty()
        ? usually && usually(point.place(), steering, droop, card.layout().steered())
        : before.stream().anyMatch(r -> near(r, point));
  }

  private static List<SeenReading> before(
      Card card,
      WatchPoint point,
      Steering steering,
      Pairing pairing,
      boolean droop,
      String round) {
    Predicate<SeenReading> there =
        r ->
            r.reading().steering() == steering
                && r.height().pairing() == pairing
                && !r.height().round().key().equals(round)
                && JackPlan.furtherOut(r.height().name(), 2) != null
                && JackPlan.droop(r.height().name()) == droop
                && (r.counts() || r.stale())
                && r.reading().result() != GapResult.NOT_LOOKED;
    return card.readingsOf(point.point()).stream().filter(there).toList();
  }

  private static boolean near(SeenReading read, WatchPoint point) {
    if (read.reading().result() == GapResult.WELL_CLEAR) {
      return false;
    }
    if (read.value() == null) {
      return true;
    }
    double value = read.value().value();
    Keep keep = point.keep();
    return keep.mostAngle() != null
        ? value > keep.mostAngle().rad() - NEAR_RAD
        : (keep.least() != null && value < keep.least().mm() + near(keep.least().mm()))
            || (keep.most() != null && value > keep.most().mm() - NEAR_MM / 2);
  }

  private static double near(double leastMm) {
    return leastMm < 0 ? NEAR_MM / 2 : Math.max(leastMm, NEAR_MM);
  }

  private static boolean usually(
      WatchPlace place, Steering steering, boolean droop, boolean steered) {
    boolean turns = place.has(Part.ROD_END) || place.has(Part.HOSE) || place.has(Part.TYRE);
    if (steered && turns && steering == Steering.STRAIGHT && place.steered()) {
      return false;
    }
    boolean bump =
        place.has(Part.TYRE)
            || (place.has(Part.FRAME)
                && !place.has(Part.HOSE)
                && !place.has(Part.DRIVE_SHAFT)
                && place != WatchPlace.TRAILING_ARM_PIVOT)
            || place.has(Part.TANK)
            || place == WatchPlace.SHOCK_UPPER_ARM
            || place == WatchPlace.SPRING_UPPER_ARM;
    boolean neither = place.has(Part.WHEEL);
    return !neither && bump != droop;
  }
}
