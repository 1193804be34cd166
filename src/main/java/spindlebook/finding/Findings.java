package spindlebook.finding;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.Stream;
import spindlebook.definition.Given;
import spindlebook.definition.HeldBack;
import spindlebook.definition.Setting;
import spindlebook.entry.Joint;
import spindlebook.entry.Lock;
import spindlebook.entry.Steering;
import spindlebook.finding.Finding.Group;
import spindlebook.fold.Card;
import spindlebook.fold.InForce;
import spindlebook.fold.Standing;
import spindlebook.measured.AlignedFinding;
import spindlebook.measured.JointSwing;
import spindlebook.measured.MeasuredAlignment;
import spindlebook.ride.CornerRide;
import spindlebook.ride.RideFinding;
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
 * All that is known of a corner, as one list that pages, print, comparisons, kept copies and tables
 * draw from.
 */
public final class Findings {
  public static final String NOT_KNOWN = "not known";

  private final Card card;
  private final TravelFindings travel;
  private final boolean byLock;
  private final Map<CornerFigure, Figure> foretold;
  private List<Finding> all = List.of();

  private Findings(
      Card card, TravelFindings travel, boolean byLock, Map<CornerFigure, Figure> foretold) {
    this.card = card;
    this.travel = travel;
    this.byLock = byLock;
    this.foretold = foretold;
  }

  /**
   * @param mirror the other wheel of its axle; empty where the car has none
   * @param byLock whether limits are named by the lock as this wheel sees it, to be held against
   *     the other side
   */
  public static Findings of(Card card, Optional<Card> mirror, boolean byLock) {
    return of(card, mirror, byLock, Map.of());
  }

  /**
   * @param foretold what stands in for a figure that is not known
   */
  public static Findings of(
      Card card, Optional<Card> mirror, boolean byLock, Map<CornerFigure, Figure> foretold) {
    Findings findings = new Findings(card, CornerTravel.of(card), byLock, foretold);
    findings.all = findings.all(new MeasuredAlignment(card, mirror), mirror);
    return findings;
  }

  /** What one end is made of, in the order in which it adds up: stop, held back, limits, margin. */
  public static List<Finding> ofEnd(Card card, TravelFindings travel, End end) {
    return new Findings(card, travel, false, Map.of()).end(end);
  }

  public Card card() {
    return card;
  }

  public TravelFindings travel() {
    return travel;
  }

  /** In the order of their groups, all that there could be: what is not known says so. */
  public List<Finding> all() {
    return all;
  }

  private List<Finding> all(MeasuredAlignment alignment, Optional<Card> mirror) {
    List<Finding> all = new ArrayList<>(rules(card));
    figures(f -> f.group() == Group.TOTAL).forEach(all::add);
    for (End end : End.values()) {
      all.addAll(end(end));
      all.add(rules(travel.at(end)));
    }
    travel.midTravel().forEach(m -> all.add(midTravel(m)));
    card.adjusters().forEach(a -> all.add(setting(a)));
    card.aligned().targets().stream()
        .map(t -> t.content())
        .map(
            t ->
                rule("target: " + t.figure().words(), "target: " + t.figure().words(), t.inWords()))
        .forEach(all::add);
    alignment.findings().forEach(a -> all.add(of(a)));
    JointSwing.of(card, mirror).forEach(s -> all.add(of(s)));
    CornerRide.of(card).findings().forEach(r -> all.add(of(r)));
    all.sort(Comparator.comparing(Finding::group));
    return List.copyOf(all);
  }

  /** Those of some groups, in their order. */
  public List<Finding> all(Group... groups) {
    List<Group> wanted = List.of(groups);
    return all.stream().filter(f -> wanted.contains(f.group())).toList();
  }

  public Finding of(CornerFigure figure) {
    return all.stream()
        .filter(f -> f.group() == figure.group() && f.id().equals(figure.name()))
        .findFirst()
        .orElseThrow();
  }

  private static Finding setting(InForce set) {
    Setting to = set.setting();
    return Finding.of(Group.SETTING, null, set.adjuster().adjuster(), set.adjuster().name())
        .from(List.of(), set)
        .says(to == null ? "not said" : to.inWords(), value(to))
        .unsure(to == null ? "never said" : null, null);
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

  private List<Finding> end(End end) {
    Stream<Finding> limits = travel.at(end).limits().stream().map(l -> limit(end, l));
    return Stream.concat(figures(f -> f.group() != Group.TOTAL && f.end() == end), limits)
        .sorted(Comparator.comparing(f -> f.group() == Group.MARGIN))
        .toList();
  }

  private Stream<Finding> figures(Predicate<CornerFigure> wanted) {
    return Stream.of(CornerFigure.values()).filter(wanted).map(this::figure);
  }

  private Finding rules(EndFindings end) {
    Optional<Limit> rules = end.rules();
    String words = end.end().words();
    return Finding.of(Group.RULES_END, end.end(), words, "what rules " + words)
        .figure(null, rules.map(Limit::positionMm).orElse(null))
        .decided(end.outcome(), null)
        .from(rules.map(Limit::readings).orElse(List.of()), end)
        .says(rules.map(this::name).orElse("none found"), rules.map(this::id).orElse(""))
        .unsure(end.outcome() == Outcome.NEEDS ? NOT_KNOWN : null, null);
  }

  private Finding figure(CornerFigure what) {
    Optional<Figure> known = what.of(travel);
    Figure figure = known.orElse(foretold.get(what));
    return Finding.of(what.group(), what.end(), what.name(), what.words())
        .figure(figure, what.positionMm(travel))
        .decided(
            what.group() == Group.MARGIN ? travel.at(what.end()).outcome() : null,
            what.unconfirmed(travel) ? Standing.PUT_BACK : null)
        .from(what.readings(travel), what.end() == null ? travel : travel.at(what.end()))
        .says(figure == null ? NOT_KNOWN : known.isEmpty() ? "foretold" : "", null)
        .unsure(
            figure == null ? NOT_KNOWN : null,
            known.isPresent() && what.atLeast(travel) ? "at least so much" : null);
  }

  private Finding limit(End end, Limit limit) {
    boolean broken = limit.at() instanceof EndLimit.BrokenThroughout;
    return Finding.of(Group.LIMIT, end, end.words() + " " + id(limit), name(limit))
        .figure(limit.roomMm(), limit.positionMm())
        .decided(limit.outcome(), null)
        .from(limit.readings(), limit)
        .says(limit.roomMm() != null ? "" : broken ? "at every height read" : NOT_KNOWN, null)
        .unsure(
            limit.outcome() == Outcome.NEEDS ? "needs a reading" : null,
            broken
                ? "broken at every height read"
                : limit.found() ? null : "lies beyond what was read");
  }

  private Finding midTravel(MidTravel mid) {
    String id = "mid-travel " + id(mid.point().point(), mid.steering()) + mid.pairing();
    String name = byLock ? names().byLock(mid) : names().of(mid);
    return Finding.of(Group.MID_TRAVEL, null, id, name)
        .figure(null, mid.shortfall().fromMm())
        .decided(mid.outcome(), null)
        .from(mid.shortfall().readings(), mid)
        .says("in mid-travel", "");
  }

  public static Finding of(AlignedFinding found) {
    return Finding.of(Group.ALIGNMENT, null, found.figure().name(), found.figure().words())
        .figure(found.value(), null)
        .decided(
            found.target() == null ? null : found.outcome(),
            found.stands() == Standing.LIVE ? null : found.stands())
        .from(found.readings(), found)
        .says(NOT_KNOWN, null)
        .unsure(
            found.counts() ? null : found.value() == null ? NOT_KNOWN : found.stands().words(),
            null);
  }

  public static Finding of(RideFinding found) {
    return Finding.of(Group.SPRING, null, found.id(), found.words())
        .figure(found.value(), null)
        .decided(found.outcome(), found.stands())
        .from(found.readings(), found)
        .says(
            found.value() != null
                ? ""
                : found.need() == null ? NOT_KNOWN : "needs " + found.need().words(),
            null)
        .unsure(found.value() == null ? NOT_KNOWN : null, null);
  }

  public static Finding of(JointSwing of) {
    String allows = of.allows() == null ? null : of.allows().words();
    return swing(of.joint(), of.worst(), of.position(), allows)
        .decided(of.outcome(), of.stands())
        .from(of.from(), of);
  }

  /**
   * @param allows as typed; null where nobody said
   */
  public static Finding swing(Joint joint, Figure most, Figure position, String allows) {
    return Finding.of(Group.SWIVEL, null, joint.name(), joint.swings() + ", most it swings")
        .figure(most, position)
        .says(allows == null ? "needs what its hardware allows" : "allows " + allows, null);
  }

  /** Of a finding of alignment. */
  public static AlignedFinding aligned(Finding finding) {
    return (AlignedFinding) finding.of();
  }

  // --- rules

  /** What is demanded, held back and given on a corner, as its owner typed it. */
  public static List<Finding> rules(Card card) {
    List<Finding> rules = new ArrayList<>();
    card.watchPoints().forEach(w -> rules.add(rule(w.point(), w.name(), w.keep().inWords())));
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
    return Finding.of(Group.RULE, null, id, name).says(says, says);
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
