package spindlebook.travel;

import java.util.List;
import java.util.Optional;
import spindlebook.definition.WatchPoint;
import spindlebook.entry.Content.ToRead;
import spindlebook.entry.Pairing;
import spindlebook.entry.Steering;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Outcome;
import spindlebook.uncertainty.Settles;

/**
 * One thing that limits an end, and how it stands against the stop with all that is held back
 * there.
 *
 * @param point the watch point, null for the shock and the ground
 * @param steering where the steering stood, null where it does not matter
 * @param pairing how the ends of a solid axle stood; null for a wheel hung alone, and for the
 *     ground
 * @param at where the rule is met, or how far it is known to be kept
 * @param reachMm where the stop lets the wheel go in the end: S − e, or B + r; null when not known
 * @param roomMm wheel travel from there to the limit; negative when the wheel gets past it; null
 *     when either is not known
 * @param settles what would settle a can't-tell; null otherwise
 */
public record Limit(
    Kind kind,
    WatchPoint point,
    Steering steering,
    Pairing pairing,
    EndLimit at,
    Figure reachMm,
    Figure roomMm,
    Outcome outcome,
    Settles settles,
    List<Need> needs) {

  /** What limits. */
  public enum Kind {
    WATCH_POINT,
    SHOCK,
    GROUND
  }

  /** The pairing in which it acts, in words; empty for a wheel hung alone. */
  public String condition() {
    return pairing == null ? "" : pairing.words();
  }

  /** What tells more of it at an end. */
  public ToRead toRead(End end) {
    return RuleReadings.toRead(end, kind, point, steering, pairing);
  }

  /** The wheel position of the limit, or of the last place where the rule is known to be kept. */
  public Figure positionMm() {
    return at.positionMm();
  }

  /** The two readings between which it lies; empty where it is on a curve, or was not found. */
  public Optional<EndLimit.Crosses> bracket() {
    return at instanceof EndLimit.Crosses c && c.brokenMm() != null
        ? Optional.of(c)
        : Optional.empty();
  }

  /** Whether the limit itself was found, not only how far the rule is kept. */
  public boolean found() {
    return at instanceof EndLimit.Crosses;
  }

  /** Whether its rule is kept at the last reading, while the wheel may go further than that. */
  public boolean mayGoPastWhatWasRead() {
    return outcome == Outcome.CANT_TELL && !found() && !needs.isEmpty();
  }

  public List<String> readings() {
    return at.readings();
  }
}
