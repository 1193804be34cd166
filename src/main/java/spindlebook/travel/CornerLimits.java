package spindlebook.travel;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import spindlebook.curve.Node;
import spindlebook.curve.Nodes;
import spindlebook.curve.Rule;
import spindlebook.definition.Allowance;
import spindlebook.definition.Dimension;
import spindlebook.definition.Given;
import spindlebook.definition.HeldBack;
import spindlebook.definition.WatchPoint;
import spindlebook.entry.GapResult;
import spindlebook.entry.HeightName;
import spindlebook.entry.Pairing;
import spindlebook.entry.Quantity;
import spindlebook.entry.Steering;
import spindlebook.fold.Card;
import spindlebook.fold.Change;
import spindlebook.fold.Memo;
import spindlebook.fold.SeenGiven;
import spindlebook.fold.SeenReading;
import spindlebook.uncertainty.Figure;

/** Every rule of a corner laid along its travel: watch points, the shock's two ends, the ground. */
public final class CornerLimits {

  /**
   * What a rule says at one end.
   *
   * @param before what it said by its readings before they all went stale; null while any holds
   * @param gone what made them stale, in words
   */
  record Found(RuleReadings of, EndLimit at, EndLimit before, List<String> gone) {
    /** A limit that once was. */
    Found noLonger() {
      return new Found(of, at, before == null ? at : before, gone);
    }
  }

  /** A broken stretch. */
  record Broken(RuleReadings of, MidTravel mid) {
    /** Its near edge as a limit of an end. */
    Found asLimitOf(End end) {
      return new Found(of, mid.shortfall().near(end), null, List.of());
    }
  }

  final Map<End, List<Found>> found = new EnumMap<>(End.class);

  /** Limits told by lengths given of parts that were changed since: they rule no more. */
  final Map<End, List<Found>> changed = new EnumMap<>(End.class);

  final Map<End, List<Need>> needs = new EnumMap<>(End.class);
  final List<Broken> broken = new ArrayList<>();
  final List<MidTravel> hardlyKept = new ArrayList<>();

  private static final Set<GapResult> UNSEEN = EnumSet.of(GapResult.NOT_LOOKED, GapResult.UNREAD);

  private final Card card;

  private CornerLimits(Card card) {
    this.card = card;
    for (End end : End.values()) {
      found.put(end, new ArrayList<>());
      changed.put(end, new ArrayList<>());
      needs.put(end, new ArrayList<>());
    }
  }

  static CornerLimits of(Card card) {
    CornerLimits all = new CornerLimits(card);
    card.watchPoints().forEach(all::watchPoint);
    all.shock();
    WorkedOut.part(all::ground, why -> all.needs.get(End.BUMP).add(need(End.BUMP, why)));
    for (Dimension d : List.of(Dimension.MARK_INBOARD, Dimension.READ_POINT_OUTBOARD)) {
      if (card.givenBefore(d).isPresent()) {
        all.needs.values().forEach(n -> n.add(Need.give(card, d)));
      }
    }
    return all;
  }

  /** Of one watch point alone. */
  static CornerLimits of(Card card, WatchPoint point) {
    CornerLimits its = new CornerLimits(card);
    its.watchPoint(point);
    return its;
  }

  /** What one rule of a watch point says at both ends, and between them. */
  private record Curve(Found droop, Found bump, List<Broken> broken, List<MidTravel> hardlyKept) {}

  private void watchPoint(WatchPoint point) {
    List<Curve> curves =
        card.memo().get(new Memo.Of(point.point(), Curve.class), () -> curves(point));
    for (Curve curve : curves) {
      found.get(End.DROOP).add(curve.droop());
      found.get(End.BUMP).add(curve.bump());
      broken.addAll(curve.broken());
      hardlyKept.addAll(curve.hardlyKept());
    }
  }

  private List<Curve> curves(WatchPoint point) {
    List<Curve> curves = new ArrayList<>();
    for (Steering steering : steeringsOf(point)) {
      for (Pairing pairing : card.pairings()) {
        for (Rule rule : Rule.of(point.keep())) {
          List<Node> nodes = Nodes.watchPoint(card, point.point(), steering, pairing, rule);
          curves.add(
              curve(
                  new RuleReadings(Limit.Kind.WATCH_POINT, point, steering, pairing, rule, nodes)));
        }
      }
    }
    return curves;
  }

  private Curve curve(RuleReadings of) {
    Along along = RuleAlongTravel.along(of.nodes(), of.rule());
    return new Curve(
        found(End.DROOP, of, along),
        found(End.BUMP, of, along),
        along.midTravel().stream().map(s -> new Broken(of, MidTravel.of(of, s))).toList(),
        along.hardlyKept().stream().map(s -> MidTravel.of(of, s)).toList());
  }

  /** Those it is to be looked at, and any part lock at which it was, also when that went stale. */
  private List<Steering> steeringsOf(WatchPoint point) {
    List<Steering> steerings = new ArrayList<>(card.steeringsFor(point));
    for (Steering steering : Steering.values()) {
      boolean read =
          card.readingsOf(point.point()).stream()
              .filter(r -> r.counts() || r.stale())
              .filter(r -> r.reading().steering() == steering)
              .anyMatch(r -> !UNSEEN.contains(r.reading().result()));
      if (read && !steerings.contains(steering)) {
        steerings.add(steering);
      }
    }
    return steerings;
  }

  private void ground() {
    Optional<Figure> ground = GroundLimit.of(card, needs.get(End.BUMP));
    ground.map(CornerLimits::ground).ifPresent(found.get(End.BUMP)::add);
    if (ground.isEmpty()) {
      GroundLimit.before(card)
          .map(limit -> ground(limit).noLonger())
          .ifPresent(changed.get(End.BUMP)::add);
    }
  }

  /** Its position holds all its doubt. */
  private static Found ground(Figure limitMm) {
    EndLimit.Crosses crosses =
        new EndLimit.Crosses(
            limitMm,
            limitMm.value() - limitMm.U(),
            limitMm.value() + limitMm.U(),
            EndLimit.How.CUBIC,
            limitMm.value(),
            null,
            List.of());
    RuleReadings of = new RuleReadings(Limit.Kind.GROUND, null, null, null, null, List.of());
    return new Found(of, crosses, null, List.of());
  }

  private static Need need(End end, String why) {
    return WorkedOut.need(nameAt(end), why);
  }

  /** The shock a reserve short of open ends droop, a reserve short of closed ends bump. */
  private void shock() {
    for (Pairing pairing : card.pairings()) {
      if (asked(pairing) == null || shockReadIn(pairing)) {
        WorkedOut.part(
            () -> shockEnd(End.DROOP, Dimension.SHOCK_OPEN, Allowance.SHOCK_OPEN_RESERVE, pairing),
            why -> needs.get(End.DROOP).add(need(End.DROOP, why)));
        WorkedOut.part(
            () ->
                shockEnd(End.BUMP, Dimension.SHOCK_CLOSED, Allowance.SHOCK_CLOSED_RESERVE, pairing),
            why -> needs.get(End.BUMP).add(need(End.BUMP, why)));
      }
    }
  }

  /**
   * A shock stands between an axle's spindles: crossed it is used less at the same wheel position,
   * so it is not asked for, and counts when it was read.
   */
  private boolean shockReadIn(Pairing pairing) {
    return card.readingsOf(Quantity.SHOCK_LENGTH).stream()
        .filter(r -> r.counts() || r.stale())
        .anyMatch(r -> Nodes.stood(r.height(), pairing));
  }

  private void shockEnd(End end, Dimension of, Allowance reserve, Pairing pairing) {
    List<Node> lengths = Nodes.lengths(card, Quantity.SHOCK_LENGTH, pairing);
    Optional<Given> given = card.given(of);
    Optional<HeldBack> held = card.heldBack(reserve);
    if (given.isEmpty()) {
      needs.get(end).add(Need.give(card, of));
    }
    if (held.isEmpty()) {
      needs.get(end).add(Need.choose(reserve));
    }
    Optional<Given> then = given.or(() -> card.givenBefore(of).map(SeenGiven::given));
    if (then.isEmpty() || held.isEmpty()) {
      return;
    }
    // Stroke left at this end beyond the reserve, so that an unsure open or closed length, or
    // reserve, is one source for all heights.
    Figure ofEnd = GivenFigures.of(then.get());
    Figure kept = GivenFigures.of(held.get());
    Rule rule = new Rule.AtLeast(0);
    List<Node> stale = Nodes.lengths(card, Quantity.SHOCK_LENGTH, pairing, SeenReading::stale);
    List<Node> left = left(end, lengths, ofEnd, kept);
    Found limit =
        found(
            end,
            new RuleReadings(Limit.Kind.SHOCK, null, null, pairing, rule, left),
            RuleAlongTravel.along(left, rule),
            left(end, stale, ofEnd, kept),
            card.readingsOf(Quantity.SHOCK_LENGTH));
    if (given.isPresent()) {
      found.get(end).add(limit);
    } else {
      changed.get(end).add(limit.noLonger());
    }
  }

  private static List<Node> left(End end, List<Node> lengths, Figure ofEnd, Figure kept) {
    return lengths.stream()
        .map(
            n ->
                new Node(
                    n.positionMm(),
                    (end == End.DROOP ? ofEnd.minus(n.value()) : n.value().minus(ofEnd))
                        .minus(kept),
                    n.bound(),
                    n.readings()))
        .toList();
  }

  private static EndLimit at(End end, Along along) {
    return end == End.DROOP ? along.droop() : along.bump();
  }

  /**
   * A broken stretch among them could be a limit of either end, and what could not be worked out
   * could lie anywhere: no place is known to be kept.
   */
  private static EndLimit before(End end, EndLimit at, List<Node> stale, Rule rule) {
    if (at instanceof EndLimit.NotRead not && !not.because().isEmpty()) {
      return new EndLimit.BrokenThroughout(List.of());
    }
    if (!(at instanceof EndLimit.NotRead) || stale.isEmpty()) {
      return null;
    }
    Along along = RuleAlongTravel.along(stale, rule);
    return along.midTravel().isEmpty()
        ? at(end, along)
        : new EndLimit.BrokenThroughout(along.midTravel().get(0).readings());
  }

  private static List<String> gone(RuleReadings of, List<SeenReading> readings) {
    return Change.each(
            readings.stream()
                .filter(r -> r.stale() && Nodes.stood(r.height(), of.pairing()))
                .filter(r -> of.steering() == null || r.reading().steering() == of.steering())
                .map(SeenReading::because))
        .map(Change::words)
        .distinct()
        .toList();
  }

  /** The pairing as it is asked for: only crossed is said. */
  public static Pairing asked(Pairing pairing) {
    return pairing == Pairing.CROSSED ? pairing : null;
  }

  /** The named height nearest to an end's stop. */
  public static HeightName nameAt(End end) {
    return end == End.DROOP ? HeightName.ON_THE_STRAP : HeightName.STOP_TOUCH;
  }

  private Found found(End end, RuleReadings of, Along along) {
    String point = of.point().point();
    return found(
        end,
        of,
        along,
        Nodes.watchPoint(card, point, of.steering(), of.pairing(), of.rule(), SeenReading::stale),
        card.readingsOf(point));
  }

  private static Found found(
      End end, RuleReadings of, Along along, List<Node> stale, List<SeenReading> readings) {
    EndLimit at = at(end, along);
    return new Found(of, at, before(end, at, stale, of.rule()), gone(of, readings));
  }
}
