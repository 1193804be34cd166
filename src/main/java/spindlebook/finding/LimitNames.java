package spindlebook.finding;

import spindlebook.definition.WatchPoint;
import spindlebook.entry.Lock;
import spindlebook.entry.Pairing;
import spindlebook.entry.Steering;
import spindlebook.fold.Card;
import spindlebook.travel.Limit;
import spindlebook.travel.MidTravel;
import spindlebook.travel.TravelFindings;

/** What the limits of a corner are called. */
public record LimitNames(Card card, TravelFindings travel) {
  /** "Tie rod to upper arm, full right". */
  public String of(Limit limit) {
    return switch (limit.kind()) {
      case SHOCK ->
          (travel.droop().limits().contains(limit)
                  ? "shock's reserve at its open end"
                  : "shock's reserve at its closed end")
              + pairing(limit.pairing());
      case GROUND -> "frame to ground";
      case WATCH_POINT -> of(limit.point(), limit.steering()) + pairing(limit.pairing());
    };
  }

  public String of(MidTravel mid) {
    return of(mid.point(), mid.steering()) + pairing(mid.pairing());
  }

  public String of(WatchPoint point, Steering steering) {
    boolean swung = card.steeringsFor(point).size() > 1 || steering.steered();
    return swung ? point.name() + ", " + steering.words() : point.name();
  }

  /** The same with the lock as this wheel sees it, which has the same name on the other side. */
  String byLock(Limit limit) {
    return limit.kind() == Limit.Kind.WATCH_POINT
        ? byLock(limit.point(), limit.steering()) + pairing(limit.pairing())
        : of(limit);
  }

  String byLock(MidTravel mid) {
    return byLock(mid.point(), mid.steering()) + pairing(mid.pairing());
  }

  private String byLock(WatchPoint point, Steering steering) {
    return steering != null && steering.steered()
        ? point.name() + ", " + Lock.of(card.place(), steering).words()
        : point.name();
  }

  /** ", crossed"; empty for a wheel hung alone. */
  public static String pairing(Pairing pairing) {
    return pairing == null ? "" : ", " + pairing.words();
  }
}
