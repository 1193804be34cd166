package spindlebook.finding;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import spindlebook.alignment.AlignedFinding;
import spindlebook.alignment.MeasuredAlignment;
import spindlebook.corner.AlignedFigure;
import spindlebook.corner.Card;
import spindlebook.corner.EntryWords;
import spindlebook.corner.Given;
import spindlebook.corner.HeldBack;
import spindlebook.corner.InForce;
import spindlebook.corner.Lock;
import spindlebook.corner.Setting;
import spindlebook.corner.Steering;
import spindlebook.finding.Finding.Group;
import spindlebook.travel.CornerTravel;
import spindlebook.travel.End;
import spindlebook.travel.EndFindings;
import spindlebook.travel.EndLimit;
import spindlebook.travel.Limit;
import spindlebook.travel.MidTravel;
import spindlebook.travel.TravelFindings;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Outcome;

/**
 * All that is known of a corner.
 *
 * @param byLock whether limits are named by the lock as this wheel sees it, to be held against the
 *     other side
 * @param foretold what stands in for a figure that is not known
 */
public record Findings(
    Card card,
    TravelFindings travel,
    MeasuredAlignment alignment,
    boolean byLock,
    Map<CornerFigure, Figure> foretold) {
  public static final String NOT_KNOWN = "not known";

  /**
   * @param mirror the other wheel of its axle; empty where the car has none
   */
  public static Findings of(Card card, Optional<Card> mirror, boolean byLock) {
    return of(card, mirror, byLock, Map.of());
  }

  public static Findings of(
      Card card, Optional<Card> mirror, boolean byLock, Map<CornerFigure, Figure> foretold) {
    return new Findings(
        card, CornerTravel.of(card), new MeasuredAlignment(card, mirror), byLock, foretold);
  }

  /** In one order, all that there could be: what is not known says so. */
  public List<Finding> all() {
    List<Finding> all = new ArrayList<>();
    card.adjusters().forEach(a -> all.add(setting(a)));
    for (End end : End.values()) {
      all.add(nearest(travel.at(end)));
    }
    for (CornerFigure f : CornerFigure.values()) {
      all.add(figure(f));
    }
    for (End end : End.values()) {
      travel.at(end).limits().forEach(l -> all.add(limit(end, l)));
    }
    travel.midTravel().forEach(m -> all.add(midTravel(m)));
    alignment.findings().forEach(a -> all.add(aligned(a)));
    all.addAll(rules(card));
    card.aligned().targets().stream()
        .map(t -> t.target())
        .map(
            t ->
                rule("target: " + t.figure().words(), "target: " + t.figure().words(), t.inWords()))
        .forEach(all::add);
    return all;
  }

  private static Finding setting(InForce set) {
    Setting to = set.setting();
    return new Finding(
        Group.SETTING,
        set.adjuster().adjuster(),
        set.adjuster().name(),
        null,
        to == null ? "not said" : to.inWords(),
        value(to),
        to == null ? "never said" : null,
        null,
        null,
        List.of());
  }

  /** Its amount, or its words where there is none. */
  private static Finding.SetTo value(Setting to) {
    return to == null
        ? null
        : new Finding.SetTo(
            to.unit(),
            to.amount() == null
                ? to.typed().strip().toLowerCase(Locale.ROOT)
                : Double.toString(Math.rint(to.amount() * 1e6)));
  }

  private Finding nearest(EndFindings end) {
    boolean needs = end.outcome() == Outcome.NEEDS;
    Optional<Limit> rules = end.rules();
    return new Finding(
        Group.NEAREST,
        end.end().words(),
        "what rules " + end.end().words(),
        null,
        rules.map(this::name).orElse("none found"),
        rules.map(this::id).orElse(""),
        needs ? NOT_KNOWN : null,
        null,
        end.outcome(),
        rules.map(Limit::readings).orElse(List.of()));
  }

  private Finding figure(CornerFigure what) {
    Optional<Figure> known = what.of(travel);
    Figure figure = known.orElse(foretold.get(what));
    return new Finding(
        Group.FIGURE,
        what.name(),
        what.words(),
        figure,
        figure == null ? NOT_KNOWN : known.isEmpty() ? "foretold" : "",
        null,
        figure == null ? NOT_KNOWN : null,
        known.isPresent() && what.atLeast(travel) ? "at least so much" : null,
        null,
        List.of());
  }

  private Finding limit(End end, Limit limit) {
    boolean broken = limit.at() instanceof EndLimit.BrokenThroughout;
    return new Finding(
        Group.LIMIT,
        end.words() + " " + id(limit),
        end.words() + ": " + name(limit),
        limit.roomMm(),
        limit.roomMm() != null ? "" : broken ? "at every height read" : NOT_KNOWN,
        null,
        limit.outcome() == Outcome.NEEDS ? "needs a reading" : null,
        broken ? "broken at every height read" : limit.found() ? null : "lies beyond what was read",
        limit.outcome(),
        limit.readings());
  }

  private Finding midTravel(MidTravel mid) {
    return new Finding(
        Group.MID_TRAVEL,
        "mid-travel " + id(mid.point().point(), mid.steering()) + mid.pairing(),
        "mid-travel: " + (byLock ? names().byLock(mid) : names().of(mid)),
        null,
        "in mid-travel",
        "",
        null,
        null,
        mid.outcome(),
        mid.shortfall().readings());
  }

  private Finding aligned(AlignedFinding found) {
    return new Finding(
        Group.ALIGNMENT,
        found.figure().name(),
        found.figure().words(),
        found.value(),
        NOT_KNOWN,
        null,
        found.counts() ? null : found.value() == null ? NOT_KNOWN : found.stands().words(),
        null,
        found.against() == null ? null : found.against().decision(),
        List.of());
  }

  /** Of a finding of alignment. */
  public AlignedFinding aligned(Finding finding) {
    return alignment.of(AlignedFigure.valueOf(finding.id()));
  }

  // --- rules

  /** What is demanded, held back and given on a corner, as its owner typed it. */
  public static List<Finding> rules(Card card) {
    List<Finding> rules = new ArrayList<>();
    card.watchPoints()
        .forEach(w -> rules.add(rule(w.point(), w.name(), EntryWords.keep(w.keep()))));
    new TreeMap<>(card.heldBack())
        .forEach((a, held) -> rules.add(rule(word(a), "held back: " + a.words(), much(held))));
    new TreeMap<>(card.given())
        .forEach(
            (d, seen) ->
                rules.add(
                    rule(
                        word(d),
                        "given: " + d.words(),
                        much(seen.given()) + (seen.stands().counts() ? "" : ", measure again"))));
    return rules;
  }

  private static Finding rule(String id, String name, String says) {
    return new Finding(Group.RULE, id, name, null, says, says, null, null, null, List.of());
  }

  private static String word(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private static String much(Given given) {
    return given.length().words()
        + (given.halfWidth() == null ? "" : " ± " + given.halfWidth().words());
  }

  private static String much(HeldBack held) {
    return held.allowance().share()
        ? held.percent() + " %"
        : held.length().words()
            + (held.halfWidth() == null ? "" : " ± " + held.halfWidth().words());
  }

  // --- what a limit is called

  private LimitNames names() {
    return new LimitNames(card, travel);
  }

  private String name(Limit limit) {
    return byLock ? names().byLock(limit) : names().of(limit);
  }

  /** The same for the same thing on another card. */
  public String id(Limit limit) {
    String point = limit.point() == null ? limit.kind().name() : limit.point().point();
    return id(point, limit.steering()) + limit.pairing();
  }

  private String id(String point, Steering steering) {
    return point + " " + (steering == null ? Lock.STRAIGHT : Lock.of(card.place(), steering)) + " ";
  }
}
