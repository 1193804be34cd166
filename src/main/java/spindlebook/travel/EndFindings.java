package spindlebook.travel;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import spindlebook.entry.HeightName;
import spindlebook.entry.Pairing;
import spindlebook.fold.Card;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Outcome;

/**
 * One end of the travel.
 *
 * @param stop where the strap, or the bump stop, ends the motion on purpose
 * @param heldBack strap stretch still to come, or impact beyond the solid stop, at the wheel
 * @param limits every limit of this end, in the order in which they act, first the one that acts
 *     first; those not known come last
 * @param rules the limit that acts first among those found; empty when none was, and when a rule is
 *     broken at every height
 * @param neededStopMm where the stop would have to be: L + e, with the stretch of the strap as long
 *     as it would then be ({@link NeededStop}), or U − r
 * @param marginMm how much further the stop could go: S − e − L, or U − r − B; negative is short
 * @param marginAtLeast counted to the last reading of a rule that is still kept there: the limit
 *     lies beyond, so there is at least this much
 * @param reaches where the stop lets the wheel go: one for a wheel hung alone, both together and
 *     crossed for an end of a solid axle; {@code stop} and {@code heldBack} are of the one that
 *     rules
 */
public record EndFindings(
    End end,
    Optional<StopFound> stop,
    Optional<HeldAtWheel> heldBack,
    List<Limit> limits,
    Optional<Limit> rules,
    Optional<Figure> neededStopMm,
    Optional<Figure> marginMm,
    boolean marginAtLeast,
    Outcome outcome,
    List<Need> needs,
    Optional<Cure> cure,
    List<Reach> reaches) {

  /**
   * Where the stop lets the wheel go in the end, with the ends of a solid axle in one pairing.
   *
   * @param pairing null for a wheel hung alone
   * @param stop empty when it was not read so
   * @param mm S − e, or B + r; null when a term is missing
   * @param marginMm how far that is from the limit that comes first in this pairing
   * @param neededMm where the stop would have to be in this pairing
   * @param needs what is missing of it
   */
  public record Reach(
      Pairing pairing,
      Optional<StopFound> stop,
      Figure mm,
      Optional<Figure> marginMm,
      Optional<Figure> neededMm,
      List<Need> needs) {}

  /** Where the wheel gets in the end, what is held back used up; empty while either is missing. */
  public Optional<Figure> reachMm() {
    return stop.flatMap(s -> heldBack.map(h -> s.reachMm(h, end)));
  }

  /** Whether its margin only says how much travel nobody has read. */
  public boolean unread() {
    return marginAtLeast && marginMm.filter(m -> m.value() < 0).isPresent();
  }

  /**
   * How far the wheel is kept from a limit, or gets past it: of what is broken or undecided its own
   * room, else the margin. Empty where a rule is broken at every height read, and where nothing is
   * known.
   */
  public Optional<Figure> roomMm() {
    Optional<Limit> worst =
        outcome == Outcome.SHORT || outcome == Outcome.CANT_TELL
            ? limits.stream().filter(l -> l.outcome() == outcome).findFirst()
            : Optional.empty();
    if (worst.isEmpty()) {
      return marginMm;
    }
    if (worst.get().at() instanceof EndLimit.BrokenThroughout) {
      return Optional.empty();
    }
    return outcome == Outcome.SHORT || unread()
        ? Optional.ofNullable(worst.get().roomMm())
        : marginMm;
  }

  /** The limits that one height further out reads; empty where they are fewer than two. */
  public Optional<UnreadReach> unreadReach() {
    return UnreadReach.of(end, limits);
  }

  /** Where the wheel hung with the strap off, if droop is to be read lower than that. */
  public OptionalDouble hungMm(Card card) {
    OptionalDouble wanted =
        Stream.concat(
                unreadReach().stream().map(UnreadReach::outToMm),
                needs.stream().map(Need::noHigherThanMm).filter(Objects::nonNull))
            .mapToDouble(mm -> mm)
            .min();
    OptionalDouble hung =
        card.heights().stream()
            .filter(h -> h.name() == HeightName.STRAP_OFF && h.positionCounts())
            .mapToDouble(h -> h.positionMm().value())
            .min();
    boolean above = hung.orElse(Double.NEGATIVE_INFINITY) > wanted.orElse(Double.POSITIVE_INFINITY);
    return end == End.DROOP && above ? hung : OptionalDouble.empty();
  }

  /** What would only settle a limit that is there. */
  public List<Need> settling() {
    List<Need> missing = new ArrayList<>();
    List<Need> settling = new ArrayList<>();
    limits.forEach(l -> (l.outcome() == Outcome.CANT_TELL ? settling : missing).addAll(l.needs()));
    settling.removeAll(missing);
    return settling;
  }
}
