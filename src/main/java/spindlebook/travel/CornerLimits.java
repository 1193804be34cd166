package spindlebook.travel;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import spindlebook.curve.Bound;
import spindlebook.curve.Node;
import spindlebook.curve.Nodes;
import spindlebook.curve.Rule;
import spindlebook.definition.Allowance;
import spindlebook.definition.Dimension;
import spindlebook.definition.Given;
import spindlebook.definition.HeldBack;
import spindlebook.definition.WatchPoint;
import spindlebook.entry.Content.ToRead;
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
   * One rule at one end, with the readings that tell of it; of the ground there are none.
   *
   * @param before what it was by its readings before they all went stale; null while any holds
   * @param gone what made them stale, in words
   */
  record Found(
      Limit.Kind kind,
      WatchPoint point,
      Steering steering,
      Pairing pairing,
      EndLimit at,
      ToRead toRead,
      List<Node> nodes,
      Rule rule,
      EndLimit before,
      List<String> gone) {

    /** How far the value read at a wheel position is inside its rule; empty for a bound. */
    Optional<Figure> clearanceAt(Figure positionMm) {
      return Node.merge(nodes).stream()
          .filter(n -> n.bound() == Bound.EXACT)
          .filter(n -> n.positionMm().value() == positionMm.value())
          .map(n -> n.value().plus(-rule.limit()).times(rule instanceof Rule.AtLeast ? 1 : -1))
          .findFirst();
    }

    /** A limit that once was. */
    Found noLonger() {
      return new Found(
          kind,
          point,
          steering,
          pairing,
          at,
          toRead,
          nodes,
          rule,
          before == null ? at : before,
          gone);
    }
  }

  /** A broken stretch, with the readings that tell of it. */
  record Broken(MidTravel mid, List<Node> nodes, Rule rule) {
    /** Its near edge as a limit of an end. */
    Found asLimitOf(End end) {
      WatchPoint point = mid.point();
      ToRead toRead = watchPointToRead(end, point, mid.steering(), mid.pairing());
      return new Found(
          Limit.Kind.WATCH_POINT,
          point,
          mid.steering(),
          mid.pairing(),
          mid.shortfall().near(end),
          toRead,
          nodes,
          rule,
          null,
          List.of());
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

  CornerLimits(Card card) {
    this.card = card;
    for (End end : End.values()) {
      found.put(end, new ArrayList<>());
      changed.put(end, new ArrayList<>());
      needs.put(end, new ArrayList<>());
    }
    card.watchPoints().forEach(this::watchPoint);
    shock();
    WorkedOut.part(this::ground, why -> needs.get(End.BUMP).add(need(End.BUMP, why)));
    for (Dimension d : List.of(Dimension.MARK_INBOARD, Dimension.READ_POINT_OUTBOARD)) {
      if (card.givenBefore(d).isPresent()) {
        needs.values().forEach(n -> n.add(Need.give(card, d)));
      }
    }
  }

  /** A limit whose position holds all its doubt. */
  private static Found at(
      Limit.Kind kind, WatchPoint point, Steering steering, Figure limitMm, List<String> readings) {
    EndLimit.Crosses crosses =
        new EndLimit.Crosses(
            limitMm,
            limitMm.value() - limitMm.U(),
            limitMm.value() + limitMm.U(),
            EndLimit.How.CUBIC,
            limitMm.value(),
            null,
            readings);
    return new Found(kind, point, steering, null, crosses, null, List.of(), null, null, List.of());
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
        Rule.of(point.keep()).forEach(rule -> curves.add(curve(point, steering, pairing, rule)));
      }
    }
    return curves;
  }

  private Curve curve(WatchPoint point, Steering steering, Pairing pairing, Rule rule) {
    List<Node> nodes = Nodes.watchPoint(card, point.point(), steering, pairing, rule);
    Along along = RuleAlongTravel.along(nodes, rule);
    return new Curve(
        found(End.DROOP, point, steering, pairing, along, nodes, rule),
        found(End.BUMP, point, steering, pairing, along, nodes, rule),
        along.midTravel().stream()
            .map(s -> new Broken(MidTravel.of(point, steering, pairing, s, rule), nodes, rule))
            .toList(),
        along.hardlyKept().stream()
            .map(s -> MidTravel.of(point, steering, pairing, s, rule))
            .toList());
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
    ground.ifPresent(
        limit -> found.get(End.BUMP).add(at(Limit.Kind.GROUND, null, null, limit, List.of())));
    if (ground.isEmpty()) {
      GroundLimit.before(card)
          .map(limit -> at(Limit.Kind.GROUND, null, null, limit, List.of()))
          .ifPresent(f -> changed.get(End.BUMP).add(f.noLonger()));
    }
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
    Figure kept = HeldFigures.of(held.get());
    Rule rule = new Rule.AtLeast(0);
    List<Node> left = left(end, lengths, ofEnd, kept);
    EndLimit at = at(end, RuleAlongTravel.along(left, rule));
    List<Node> stale =
        left(
            end,
            Nodes.lengths(card, Quantity.SHOCK_LENGTH, pairing, SeenReading::stale),
            ofEnd,
            kept);
    Found limit =
        new Found(
            Limit.Kind.SHOCK,
            null,
            null,
            pairing,
            at,
            shockToRead(end, pairing),
            left,
            rule,
            before(end, at, stale, rule),
            gone(card.readingsOf(Quantity.SHOCK_LENGTH), r -> Nodes.stood(r.height(), pairing)));
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

  private static List<String> gone(List<SeenReading> readings, Predicate<SeenReading> which) {
    return Change.each(
            readings.stream().filter(r -> r.stale() && which.test(r)).map(SeenReading::because))
        .map(Change::words)
        .distinct()
        .toList();
  }

  private static ToRead shockToRead(End end, Pairing pairing) {
    return new ToRead(
        nameAt(end), null, Steering.STRAIGHT, Quantity.SHOCK_LENGTH, null, asked(pairing));
  }

  private static ToRead watchPointToRead(
      End end, WatchPoint point, Steering steering, Pairing pairing) {
    return new ToRead(
        nameAt(end), null, steering, Quantity.WATCH_POINT, point.point(), asked(pairing));
  }

  /** The pairing as it is asked for: only crossed is said. */
  public static Pairing asked(Pairing pairing) {
    return pairing == Pairing.CROSSED ? pairing : null;
  }

  /** The named height nearest to an end's stop. */
  public static HeightName nameAt(End end) {
    return end == End.DROOP ? HeightName.ON_THE_STRAP : HeightName.STOP_TOUCH;
  }

  private Found found(
      End end,
      WatchPoint point,
      Steering steering,
      Pairing pairing,
      Along along,
      List<Node> nodes,
      Rule rule) {
    EndLimit at = at(end, along);
    List<Node> stale =
        Nodes.watchPoint(card, point.point(), steering, pairing, rule, SeenReading::stale);
    return new Found(
        Limit.Kind.WATCH_POINT,
        point,
        steering,
        pairing,
        at,
        watchPointToRead(end, point, steering, pairing),
        nodes,
        rule,
        before(end, at, stale, rule),
        gone(
            card.readingsOf(point.point()),
            r -> r.reading().steering() == steering && Nodes.stood(r.height(), pairing)));
  }
}
