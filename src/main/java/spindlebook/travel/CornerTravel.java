package spindlebook.travel;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import spindlebook.curve.Nodes;
import spindlebook.definition.Allowance;
import spindlebook.definition.HeldBack;
import spindlebook.definition.WatchPoint;
import spindlebook.entry.HeightName;
import spindlebook.entry.Pairing;
import spindlebook.fold.Card;
import spindlebook.fold.SeenHeight;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.GuardBand;
import spindlebook.uncertainty.Outcome;

/**
 * The travel of one corner: where each end stops, what limits it, what is held back, and what is
 * left to use.
 *
 * <pre>
 *   droop:  needed stop = L + e     margin = S − e − L
 *   bump:   needed stop = U − r     margin = U − r − B
 *   usable as set = B − S           usable as it could be = (U − r) − (L + e)
 * </pre>
 *
 * L highest limit of droop, U lowest limit of bump, S where the strap stops the wheel today, B
 * where the bump stop is solid, e strap stretch still to come, r impact beyond the solid stop; all
 * in mm at the wheel, positions + towards bump. Two limits do not add: the one that acts first
 * rules. Stretch does add, because it comes after the strap was set.
 *
 * <p>Each term is a {@link Figure} with its sources, so what two terms share cancels. A term that
 * is missing gives no total but a {@link Need}. Derived in docs/methods-corner.md.
 *
 * <p>The needed stop takes e of the strap as long as it would then be ({@link NeededStop}); the
 * margin takes it as it is set.
 *
 * <p>Worked (in inches): L 8.00, S 10.00, e 1.00: margin +1.00. L 11.00: margin −2.00.
 */
public final class CornerTravel {
  private static final double TINY_MM = 1e-9;

  private final Card card;
  private final CornerLimits limits;
  private final List<SeenHeight> ride;
  private final Optional<Figure> rideMm;
  private final Set<MidTravel> beyondAStop = new HashSet<>();

  private CornerTravel(Card card, CornerLimits limits) {
    this.card = card;
    this.limits = limits;
    this.ride = Nodes.at(card, HeightName.RIDE, card.pairings().get(0));
    this.rideMm = ride.isEmpty() ? Optional.empty() : Optional.of(Nodes.meanPosition(ride));
  }

  public static TravelFindings of(Card card) {
    return card.memo()
        .get(
            CornerTravel.class,
            () ->
                WorkedOut.or(
                    () -> new CornerTravel(card, CornerLimits.of(card)).findings(),
                    why -> nothing(card, why)));
  }

  /**
   * The limits of one watch point alone, where the stops let the wheel go as far as they do now:
   * what a reading more of it changes, without working out all the rest anew.
   *
   * @param stops the findings of the same card without the reading
   */
  public static List<Limit> limits(Card card, WatchPoint point, TravelFindings stops, End end) {
    return WorkedOut.or(
        () -> {
          CornerTravel travel = new CornerTravel(card, CornerLimits.of(card, point));
          List<Stop> as = stopsOf(stops.at(end));
          return travel.found(end, as).stream().map(f -> judged(end, f, as)).toList();
        },
        why -> List.of());
  }

  private static List<Stop> stopsOf(EndFindings end) {
    return end.reaches().stream()
        .map(r -> new Stop(end.end(), r.pairing(), r.stop(), Optional.empty(), r.needs(), r.mm()))
        .toList();
  }

  private static TravelFindings nothing(Card card, String why) {
    EndFindings droop = nothing(card, End.DROOP, needs(HeightName.ON_THE_STRAP, why));
    EndFindings bump = nothing(card, End.BUMP, needs(HeightName.FULL_BUMP, why));
    return new TravelFindings(
        Optional.empty(),
        List.of(),
        droop,
        bump,
        nothing(droop.needs()),
        nothing(bump.needs()),
        List.of(),
        Optional.empty());
  }

  private static EndFindings nothing(Card card, End end, List<Need> needs) {
    return new EndFindings(
        end,
        Optional.empty(),
        Optional.empty(),
        List.of(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        false,
        Outcome.NEEDS,
        needs,
        Optional.empty(),
        card.pairings().stream()
            .map(
                p ->
                    new EndFindings.Reach(
                        p, Optional.empty(), null, Optional.empty(), Optional.empty(), needs))
            .toList());
  }

  private static Total nothing(List<Need> needs) {
    return new Total(Optional.empty(), Optional.empty(), Optional.empty(), false, needs);
  }

  private TravelFindings findings() {
    EndFindings droop = droop();
    EndFindings bump = bump();
    return new TravelFindings(
        rideMm,
        Nodes.keys(ride),
        droop,
        bump,
        asSet(droop, bump),
        asItCouldBe(droop, bump),
        Stream.concat(
                limits.broken.stream().map(CornerLimits.Broken::mid), limits.hardlyKept.stream())
            .filter(m -> !beyondAStop.contains(m))
            .toList(),
        rawMm(card.heights().stream().filter(SeenHeight::stopCounts)));
  }

  /**
   * An end's stop with the ends of a solid axle in one pairing, null for a wheel hung alone.
   *
   * @param reachMm where it lets the wheel go in the end; null when that is not known
   */
  private record Stop(
      End end,
      Pairing pairing,
      Optional<StopFound> found,
      Optional<HeldAtWheel> held,
      List<Need> needs,
      Figure reachMm) {

    static Stop of(
        End end,
        Pairing pairing,
        Optional<StopFound> found,
        Optional<HeldAtWheel> held,
        List<Need> needs) {
      Figure reachMm = found.flatMap(f -> held.map(h -> f.reachMm(h, end))).orElse(null);
      return new Stop(end, pairing, found, held, needs, reachMm);
    }
  }

  /**
   * The stop in the pairing of a limit. The ground has none: it is met by the wheel that goes
   * furthest.
   */
  private static Stop stopOf(List<Stop> stops, Pairing pairing) {
    return stops.stream()
        .filter(s -> s.pairing() == pairing)
        .findFirst()
        .orElseGet(
            () ->
                stops.stream()
                    .filter(s -> s.reachMm() != null)
                    .max(Comparator.comparingDouble(s -> s.reachMm().value() * s.end().outward()))
                    .orElse(stops.get(0)));
  }

  private EndFindings droop() {
    return end(End.DROOP, HeightName.ON_THE_STRAP, this::strap);
  }

  /** A stop or an end that cannot be worked out is missing, and says why. */
  private EndFindings end(End end, HeightName at, Function<Pairing, Stop> stop) {
    List<Stop> stops =
        card.pairings().stream()
            .map(p -> WorkedOut.or(() -> stop.apply(p), why -> missing(end, p, needs(at, why))))
            .toList();
    return WorkedOut.or(
        () -> end(end, stops),
        why ->
            end(end, stops.stream().map(s -> missing(end, s.pairing(), needs(at, why))).toList()));
  }

  private static Stop missing(End end, Pairing pairing, List<Need> needs) {
    return new Stop(end, pairing, Optional.empty(), Optional.empty(), needs, null);
  }

  private static List<Need> needs(HeightName at, String why) {
    return List.of(WorkedOut.need(at, why));
  }

  private Stop strap(Pairing pairing) {
    List<Need> needs = new ArrayList<>();
    List<SeenHeight> onTheStrap = Nodes.at(card, HeightName.ON_THE_STRAP, pairing);
    Optional<StopFound> stop = Optional.empty();
    StrapStretch stretch = new StrapStretch(card, pairing);
    Optional<HeldAtWheel> held;
    if (onTheStrap.isEmpty()) {
      needs.add(
          Need.read(
              HeightName.ON_THE_STRAP,
              null,
              pairing,
              SolidStop.why(card, HeightName.ON_THE_STRAP, pairing)));
      held = stretch.withoutStop();
    } else {
      Figure atMm = Nodes.meanPosition(onTheStrap);
      stop =
          Optional.of(
              new StopFound(
                  atMm, false, SolidStop.unconfirmed(onTheStrap), Nodes.keys(onTheStrap), null));
      held = stretch.heldBack(atMm.value());
    }
    needs.addAll(stretch.needs);
    return Stop.of(End.DROOP, pairing, stop, held, needs);
  }

  private EndFindings bump() {
    return end(End.BUMP, HeightName.FULL_BUMP, this::solid);
  }

  private Stop solid(Pairing pairing) {
    SolidStop solid = new SolidStop(card, pairing);
    Optional<StopFound> stop = solid.found();
    List<Need> needs = new ArrayList<>(solid.needs);
    Optional<HeldBack> reserve = card.heldBack(Allowance.IMPACT_RESERVE);
    if (reserve.isEmpty()) {
      needs.add(Need.choose(Allowance.IMPACT_RESERVE));
    }
    Optional<HeldAtWheel> held =
        reserve.map(
            r -> new HeldAtWheel(GivenFigures.of(r), null, null, List.of(), List.of(), false));
    return Stop.of(End.BUMP, pairing, stop, held, needs);
  }

  private EndFindings end(End end, List<Stop> stops) {
    List<CornerLimits.Found> found = found(end, stops);
    List<Limit> judged =
        found.stream().map(f -> judged(end, f, stops)).sorted(inOrderOfActing(end, stops)).toList();
    List<Need> needs = new ArrayList<>();
    stops.forEach(s -> needs.addAll(s.needs()));
    needs.addAll(limits.needs.get(end));

    // A rule that is broken at every height has no place where a stop would keep it.
    List<Limit> placed =
        judged.stream().anyMatch(l -> l.at() instanceof EndLimit.BrokenThroughout)
            ? List.of()
            : judged.stream().filter(l -> l.positionMm() != null).toList();
    Optional<Limit> rules = placed.stream().filter(Limit::found).findFirst();
    // Further out than the last reading of any rule nobody has looked. A rule whose readings all
    // went stale may be nearer still: without it the margin would look better for that.
    Optional<Limit> nearest =
        placed.stream()
            .min(Comparator.comparingDouble(l -> beyondStopMm(end, l, stops)))
            .filter(
                l ->
                    Stream.concat(found.stream(), limits.changed.get(end).stream())
                        .noneMatch(f -> actedBefore(end, f, l, stops)));
    judged.stream()
        .filter(l -> !outOfReach(end, l, rules, stops))
        .forEach(l -> needs.addAll(l.needs()));
    boolean atLeast = nearest.filter(l -> !l.found()).isPresent();
    Outcome outcome = needs.isEmpty() ? Outcome.CLEAR : Outcome.NEEDS;
    for (Limit limit : judged) {
      outcome = outcome.worse(limit.outcome());
    }
    // A pairing whose stop is not known may let the wheel past its limits: without it the margin
    // would look better for that.
    boolean unsure =
        placed.stream().anyMatch(l -> stopOf(stops, l.pairing()).reachMm() == null)
            || found.stream()
                .anyMatch(
                    f -> f.before() != null && stopOf(stops, f.of().pairing()).reachMm() == null);
    // Both together, unless a limit of the axle crossed comes first.
    Stop stop = stopOf(stops, nearest.map(Limit::pairing).orElse(null));
    Figure reachMm = stop.reachMm();
    Optional<HeldAtWheel> held = stop.held();
    Optional<Figure> margin =
        nearest
            .filter(l -> reachMm != null && !unsure)
            .map(l -> Judged.room(end, reachMm, l.positionMm()));
    Optional<Figure> neededStop = nearest.flatMap(l -> needed(end, l, stop));
    Optional<Cure> cure =
        rules.filter(l -> l.roomMm() != null && l.roomMm().value() < 0).isPresent()
                && margin.isPresent()
            ? cure(end, placed, stop, stops).map(c -> c.leaving(openAfter(c, end, found, stops)))
            : Optional.empty();
    return new EndFindings(
        end,
        stop.found(),
        held,
        judged,
        rules,
        neededStop,
        margin,
        atLeast,
        outcome,
        distinct(needs),
        cure,
        stops.stream()
            .map(s -> reach(end, s, nearest.flatMap(n -> firstOf(end, placed, s, stops))))
            .toList());
  }

  private List<CornerLimits.Found> found(End end, List<Stop> stops) {
    return Stream.concat(limits.found.get(end).stream(), shortfallsBeyond(end, stops)).toList();
  }

  private static Limit judged(End end, CornerLimits.Found found, List<Stop> stops) {
    return Judged.of(end, found, stopOf(stops, found.of().pairing()).reachMm());
  }

  private EndFindings.Reach reach(End end, Stop stop, Optional<Limit> first) {
    return new EndFindings.Reach(
        stop.pairing(),
        stop.found(),
        stop.reachMm(),
        first
            .filter(l -> stop.reachMm() != null)
            .map(l -> Judged.room(end, stop.reachMm(), l.positionMm())),
        first.flatMap(l -> needed(end, l, stop)),
        stop.needs());
  }

  /** The limit that comes first in a stop's pairing. */
  private static Optional<Limit> firstOf(End end, List<Limit> placed, Stop stop, List<Stop> stops) {
    return placed.stream()
        .filter(l -> stopOf(stops, l.pairing()).equals(stop))
        .min(Comparator.comparingDouble(l -> l.positionMm().value() * end.outward()));
  }

  private Optional<Figure> needed(End end, Limit limit, Stop stop) {
    if (end == End.DROOP && stop.found().isPresent()) {
      Figure stopMm = stop.found().get().positionMm();
      return stop.held()
          .map(h -> NeededStop.ofStrap(card, stop.pairing(), stopMm, h, limit.positionMm()));
    }
    return stop.held().map(h -> limit.positionMm().minus(h.mm().times(end.outward())));
  }

  /**
   * The change that keeps the limits of every pairing, worked out in each from the lengths read in
   * it, because a strap moves the wheel by more in one than in the other; where none were read,
   * from those of the pairing that rules.
   */
  private Optional<Cure> cure(End end, List<Limit> placed, Stop ruling, List<Stop> stops) {
    List<Optional<Cure>> cures = new ArrayList<>();
    for (Stop stop : stops) {
      List<Limit> its =
          placed.stream()
              .filter(l -> l.roomMm() != null && stopOf(stops, l.pairing()).equals(stop))
              .toList();
      if (StopCure.wantsStopNearer(its)) {
        cures.add(cure(end, its, stop).or(() -> cure(end, its, ruling)));
      }
    }
    return cures.stream().anyMatch(Optional::isEmpty)
        ? Optional.empty()
        : cures.stream().flatMap(Optional::stream).max(Comparator.comparingDouble(Cure::setMm));
  }

  private Optional<Cure> cure(End end, List<Limit> limits, Stop stop) {
    return stop.found()
        .flatMap(s -> StopCure.of(card, end, stop.pairing(), s.positionMm().value(), limits));
  }

  /** The limit that cannot be told though the stop is set as advised; null when none is left. */
  private static Limit openAfter(
      Cure cure, End end, List<CornerLimits.Found> found, List<Stop> stops) {
    double inwardMm = -end.outward() * cure.atWheelMm();
    return found.stream()
        .map(
            f -> {
              Figure nowMm = stopOf(stops, f.of().pairing()).reachMm();
              return Judged.of(end, f, nowMm == null ? null : nowMm.plus(inwardMm));
            })
        .filter(l -> l.outcome() == Outcome.CANT_TELL || l.outcome() == Outcome.SHORT)
        .findFirst()
        .orElse(null);
  }

  private static boolean actedBefore(
      End end, CornerLimits.Found found, Limit nearest, List<Stop> stops) {
    EndLimit stale = found.before();
    Figure thenMm = stale == null ? null : stale.positionMm();
    return stale instanceof EndLimit.BrokenThroughout
        || (thenMm != null
            && beyondStopMm(end, nearest, stops)
                    - beyondStopMm(end, thenMm, found.of().pairing(), stops)
                > TINY_MM);
  }

  /**
   * Kept as far as the limit that rules, and further: the stop has to end the motion before that,
   * so what lies beyond is not asked for.
   */
  private static boolean outOfReach(End end, Limit limit, Optional<Limit> rules, List<Stop> stops) {
    return limit.at() instanceof EndLimit.KeptTo
        && rules.isPresent()
        && beyondStopMm(end, limit, stops) - beyondStopMm(end, rules.get(), stops) >= -TINY_MM;
  }

  /**
   * A broken stretch that the wheel never gets through, because the stop ends its motion before or
   * inside, is no shortfall in mid-travel but a limit: a stop set nearer keeps the wheel out of it.
   */
  private Stream<CornerLimits.Found> shortfallsBeyond(End end, List<Stop> stops) {
    List<CornerLimits.Found> beyond = new ArrayList<>();
    for (CornerLimits.Broken broken : limits.broken) {
      Figure reachMm = stopOf(stops, broken.mid().pairing()).reachMm();
      if (reachMm == null) {
        continue;
      }
      Shortfall stretch = broken.mid().shortfall();
      boolean endsBeforeItsFarEdge =
          Judged.room(end, reachMm, stretch.far(end).positionMm()).value() >= 0;
      if (endsBeforeItsFarEdge && !ridesIn(end, stretch)) {
        beyondAStop.add(broken.mid());
        beyond.add(broken.asLimitOf(end));
      }
    }
    for (MidTravel hardly : limits.hardlyKept) {
      Figure reachMm = stopOf(stops, hardly.pairing()).reachMm();
      if (reachMm == null) {
        continue;
      }
      Figure edgeMm = hardly.shortfall().near(end).positionMm();
      if (GuardBand.atLeast(Judged.room(end, reachMm, edgeMm), 0) == Outcome.CLEAR) {
        beyondAStop.add(hardly);
      }
    }
    return beyond.stream();
  }

  /** Where the car stands in it, or beyond, no stop keeps the wheel out of it. */
  private boolean ridesIn(End end, Shortfall stretch) {
    return rideMm
        .filter(r -> Judged.room(end, r, stretch.near(end).positionMm()).value() < 0)
        .isPresent();
  }

  /** Found limits first, from the one that acts first outwards; broken throughout before all. */
  private static Comparator<Limit> inOrderOfActing(End end, List<Stop> stops) {
    return Comparator.comparingInt(CornerTravel::rank)
        .thenComparingDouble(l -> l.positionMm() == null ? 0 : beyondStopMm(end, l, stops));
  }

  /**
   * How far beyond where its stop lets the wheel go a limit acts: what acts first on an axle whose
   * stops let it further crossed than both together. A stop that is not known stands where the
   * other does.
   */
  private static double beyondStopMm(End end, Limit limit, List<Stop> stops) {
    return beyondStopMm(end, limit.positionMm(), limit.pairing(), stops);
  }

  private static double beyondStopMm(
      End end, Figure positionMm, Pairing pairing, List<Stop> stops) {
    Figure itsOwn = stopOf(stops, pairing).reachMm();
    Figure reachMm =
        itsOwn != null
            ? itsOwn
            : stops.stream().map(Stop::reachMm).filter(Objects::nonNull).findFirst().orElse(null);
    return (positionMm.value() - (reachMm == null ? 0 : reachMm.value())) * end.outward();
  }

  private static int rank(Limit limit) {
    if (limit.at() instanceof EndLimit.BrokenThroughout) {
      return 0;
    }
    if (limit.found()) {
      return 1;
    }
    return limit.at() instanceof EndLimit.KeptTo ? 2 : 3;
  }

  private Total asSet(EndFindings droop, EndFindings bump) {
    List<Need> needs = new ArrayList<>();
    // From stop to stop in one pairing: an axle's travel is that of both ends together.
    EndFindings.Reach low = droop.reaches().get(0);
    EndFindings.Reach high = bump.reaches().get(0);
    for (EndFindings.Reach reach : List.of(low, high)) {
      if (reach.stop().isEmpty()) {
        needs.addAll(reach.needs().stream().filter(CornerTravel::ofStop).toList());
      }
    }
    return total(
        low.stop().map(StopFound::positionMm), high.stop().map(StopFound::nearestMm), false, needs);
  }

  /** What the stop itself needs, as against its limits and what is held back. */
  private static List<Need> stopNeeds(EndFindings end) {
    return end.needs().stream().filter(CornerTravel::ofStop).toList();
  }

  private static boolean ofStop(Need need) {
    return need.dimension() == spindlebook.definition.Dimension.STOP_CRUSH
        || (need.toRead() != null
            && (need.toRead().quantity() == null
                || need.toRead().quantity() == spindlebook.entry.Quantity.STOP_GAP));
  }

  private Total asItCouldBe(EndFindings droop, EndFindings bump) {
    List<Need> needs = new ArrayList<>();
    for (EndFindings end : List.of(droop, bump)) {
      // Where e and r do not rest on the stop, L + e and U − r stand without S and B; on an axle
      // only once both pairings have said theirs.
      boolean stands =
          end.neededStopMm().isPresent()
              && (end.reaches().size() == 1
                  || end.reaches().stream().allMatch(r -> r.neededMm().isPresent()));
      List<Need> stop = stands ? stopNeeds(end) : List.of();
      List<Need> settling = end.settling();
      end.needs().stream()
          .filter(n -> !stop.contains(n) && !settling.contains(n))
          .forEach(needs::add);
    }
    return total(
        innermost(droop), innermost(bump), droop.marginAtLeast() || bump.marginAtLeast(), needs);
  }

  /** What both pairings leave: travel that is there level and crossed. */
  private static Optional<Figure> innermost(EndFindings end) {
    return end.reaches().stream()
        .flatMap(r -> r.neededMm().stream())
        .min(Comparator.comparingDouble(f -> f.value() * end.end().outward()));
  }

  private Total total(
      Optional<Figure> lowMm, Optional<Figure> highMm, boolean atLeast, List<Need> needs) {
    if (!needs.isEmpty() || lowMm.isEmpty() || highMm.isEmpty()) {
      return new Total(
          Optional.empty(), Optional.empty(), Optional.empty(), atLeast, distinct(needs));
    }
    return WorkedOut.or(
        () ->
            new Total(
                Optional.of(highMm.get().minus(lowMm.get())),
                rideMm.map(r -> r.minus(lowMm.get())),
                rideMm.map(r -> highMm.get().minus(r)),
                atLeast,
                List.of()),
        why -> nothing(needs(HeightName.ON_THE_STRAP, why)));
  }

  /** Highest less lowest of heights whose position counts; empty for fewer than two. */
  public static Optional<Figure> rawMm(Stream<SeenHeight> heights) {
    List<Figure> positions =
        heights
            .map(SeenHeight::positionMm)
            .sorted(Comparator.comparingDouble(Figure::value))
            .toList();
    return positions.size() < 2
        ? Optional.empty()
        : Optional.of(positions.get(positions.size() - 1).minus(positions.get(0)));
  }

  private static List<Need> distinct(List<Need> needs) {
    return needs.stream().distinct().toList();
  }
}
