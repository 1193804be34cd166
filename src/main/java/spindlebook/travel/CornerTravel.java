package spindlebook.travel;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import spindlebook.corner.Allowance;
import spindlebook.corner.Card;
import spindlebook.corner.Content.ToRead;
import spindlebook.corner.HeightName;
import spindlebook.corner.HeldBack;
import spindlebook.corner.SeenHeight;
import spindlebook.corner.Steering;
import spindlebook.uncertainty.Decision;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.GuardBand;

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
 * <p>Worked (in inches): L 8.00, S 10.00, e 1.00: margin +1.00, the strap may be let out by 1.00 at
 * the wheel. L 11.00: margin −2.00.
 */
public final class CornerTravel {
  private static final double TINY_MM = 1e-9;

  private final Card card;
  private final CornerLimits limits;
  private final List<SeenHeight> ride;
  private final Optional<Figure> rideMm;
  private final Set<MidTravel> beyondAStop = new HashSet<>();

  private CornerTravel(Card card) {
    this.card = card;
    this.limits = new CornerLimits(card);
    this.ride = Nodes.at(card, HeightName.RIDE);
    this.rideMm = ride.isEmpty() ? Optional.empty() : Optional.of(Nodes.meanPosition(ride));
  }

  public static TravelFindings of(Card card) {
    return new CornerTravel(card).findings();
  }

  private TravelFindings findings() {
    EndFindings droop = droop();
    EndFindings bump = bump();
    return new TravelFindings(
        card.corner(),
        card.n(),
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
        raw());
  }

  private EndFindings droop() {
    List<Need> needs = new ArrayList<>();
    List<SeenHeight> onTheStrap = Nodes.at(card, HeightName.ON_THE_STRAP);
    Optional<StopFound> stop = Optional.empty();
    StrapStretch stretch = new StrapStretch(card);
    Optional<HeldAtWheel> held;
    if (onTheStrap.isEmpty()) {
      needs.add(
          Need.read(
              new ToRead(HeightName.ON_THE_STRAP, null, Steering.STRAIGHT, null, null),
              SolidStop.why(card, HeightName.ON_THE_STRAP)));
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
    return end(End.DROOP, stop, held, needs);
  }

  private EndFindings bump() {
    SolidStop solid = new SolidStop(card);
    Optional<StopFound> stop = solid.found();
    List<Need> needs = new ArrayList<>(solid.needs);
    Optional<HeldBack> reserve = card.heldBack(Allowance.IMPACT_RESERVE);
    if (reserve.isEmpty()) {
      needs.add(Need.choose(Allowance.IMPACT_RESERVE));
    }
    Optional<HeldAtWheel> held =
        reserve.map(r -> new HeldAtWheel(HeldFigures.of(r), null, null, List.of(), List.of()));
    return end(End.BUMP, stop, held, needs);
  }

  private EndFindings end(
      End end, Optional<StopFound> stop, Optional<HeldAtWheel> held, List<Need> needs) {
    Figure reachMm =
        stop.isEmpty() || held.isEmpty()
            ? null
            : stop.get().positionMm().plus(held.get().mm().times(end.outward()));
    List<CornerLimits.Found> found =
        Stream.concat(limits.found.get(end).stream(), shortfallsBeyond(end, reachMm)).toList();
    List<Limit> judged =
        found.stream().map(f -> Judged.of(end, f, reachMm)).sorted(inOrderOfActing(end)).toList();
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
            .min(Comparator.comparingDouble(l -> l.positionMm().value() * end.outward()))
            .filter(l -> found.stream().noneMatch(f -> actedBefore(end, f.before(), l)));
    judged.stream().filter(l -> !outOfReach(end, l, rules)).forEach(l -> needs.addAll(l.needs()));
    boolean atLeast = nearest.filter(l -> !l.found()).isPresent();
    Outcome outcome = needs.isEmpty() ? Outcome.CLEAR : Outcome.NEEDS;
    for (Limit limit : judged) {
      outcome = outcome.worse(limit.outcome());
    }
    Optional<Figure> margin =
        nearest.filter(l -> reachMm != null).map(l -> Judged.room(end, reachMm, l.positionMm()));
    Optional<Figure> neededStop =
        nearest
            .filter(l -> held.isPresent())
            .map(l -> l.positionMm().minus(held.get().mm().times(end.outward())));
    Optional<Cure> cure =
        rules.isPresent() && margin.isPresent() && rules.get().roomMm().value() < 0
            ? StopCure.of(card, end, stop.get().positionMm().value(), placed)
                .map(c -> c.leaving(openAfter(c, end, found, reachMm)))
            : Optional.empty();
    return new EndFindings(
        end,
        stop,
        held,
        judged,
        rules,
        neededStop,
        margin,
        atLeast,
        outcome,
        distinct(needs),
        cure);
  }

  /** The limit that cannot be told though the stop is set as advised; null when none is left. */
  private static Limit openAfter(
      Cure cure, End end, List<CornerLimits.Found> found, Figure reachMm) {
    Figure thenMm = reachMm.plus(-end.outward() * cure.atWheelMm());
    return found.stream()
        .map(f -> Judged.of(end, f, thenMm))
        .filter(l -> l.outcome() == Outcome.CANT_TELL || l.outcome() == Outcome.SHORT)
        .findFirst()
        .orElse(null);
  }

  private static boolean actedBefore(End end, EndLimit stale, Limit nearest) {
    Figure thenMm = stale == null ? null : EndLimit.positionMm(stale);
    return stale instanceof EndLimit.BrokenThroughout
        || (thenMm != null && Judged.room(end, thenMm, nearest.positionMm()).value() > TINY_MM);
  }

  /**
   * Kept as far as the limit that rules, and further: the stop has to end the motion before that,
   * so what lies beyond is not asked for.
   */
  private static boolean outOfReach(End end, Limit limit, Optional<Limit> rules) {
    return limit.at() instanceof EndLimit.KeptTo
        && rules.isPresent()
        && Judged.room(end, rules.get().positionMm(), limit.positionMm()).value() >= 0;
  }

  /**
   * A broken stretch that the wheel never gets through, because the stop ends its motion before or
   * inside, is no shortfall in mid-travel but a limit: a stop set nearer keeps the wheel out of it.
   */
  private Stream<CornerLimits.Found> shortfallsBeyond(End end, Figure reachMm) {
    List<CornerLimits.Found> beyond = new ArrayList<>();
    if (reachMm == null) {
      return beyond.stream();
    }
    for (CornerLimits.Broken broken : limits.broken) {
      Shortfall stretch = broken.mid().shortfall();
      boolean endsBeforeItsFarEdge =
          Judged.room(end, reachMm, stretch.far(end).positionMm()).value() >= 0;
      if (endsBeforeItsFarEdge && !ridesIn(end, stretch)) {
        beyondAStop.add(broken.mid());
        beyond.add(broken.asLimitOf(end));
      }
    }
    for (MidTravel hardly : limits.hardlyKept) {
      Figure edgeMm = hardly.shortfall().near(end).positionMm();
      if (GuardBand.atLeast(Judged.room(end, reachMm, edgeMm), 0) == Decision.CLEAR) {
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
  private static Comparator<Limit> inOrderOfActing(End end) {
    return Comparator.comparingInt(CornerTravel::rank)
        .thenComparingDouble(
            l -> l.positionMm() == null ? 0 : l.positionMm().value() * end.outward());
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
    for (EndFindings end : List.of(droop, bump)) {
      if (end.stop().isEmpty()) {
        needs.addAll(stopNeeds(end));
      }
    }
    return total(
        droop.stop().map(StopFound::positionMm),
        bump.stop().map(StopFound::nearestMm),
        false,
        needs);
  }

  /** What the stop itself needs, as against its limits and what is held back. */
  private static List<Need> stopNeeds(EndFindings end) {
    return end.needs().stream()
        .filter(
            n ->
                n.dimension() == spindlebook.corner.Dimension.STOP_CRUSH
                    || (n.toRead() != null
                        && (n.toRead().quantity() == null
                            || n.toRead().quantity() == spindlebook.corner.Quantity.STOP_GAP)))
        .toList();
  }

  /** What would settle a can't-tell whose limit is there, planned with; no term is missing. */
  private static List<Need> settling(EndFindings end) {
    List<Need> missing = new ArrayList<>();
    List<Need> settling = new ArrayList<>();
    end.limits()
        .forEach(l -> (l.outcome() == Outcome.CANT_TELL ? settling : missing).addAll(l.needs()));
    settling.removeAll(missing);
    return settling;
  }

  private Total asItCouldBe(EndFindings droop, EndFindings bump) {
    List<Need> needs = new ArrayList<>();
    for (EndFindings end : List.of(droop, bump)) {
      // Where e and r do not rest on the stop, L + e and U − r stand without S and B.
      List<Need> stop = end.neededStopMm().isPresent() ? stopNeeds(end) : List.of();
      List<Need> settling = settling(end);
      end.needs().stream()
          .filter(n -> !stop.contains(n) && !settling.contains(n))
          .forEach(needs::add);
    }
    return total(
        droop.neededStopMm(),
        bump.neededStopMm(),
        droop.marginAtLeast() || bump.marginAtLeast(),
        needs);
  }

  private Total total(
      Optional<Figure> lowMm, Optional<Figure> highMm, boolean atLeast, List<Need> needs) {
    if (!needs.isEmpty() || lowMm.isEmpty() || highMm.isEmpty()) {
      return new Total(
          Optional.empty(), Optional.empty(), Optional.empty(), atLeast, distinct(needs));
    }
    return new Total(
        Optional.of(highMm.get().minus(lowMm.get())),
        rideMm.map(r -> r.minus(lowMm.get())),
        rideMm.map(r -> highMm.get().minus(r)),
        atLeast,
        List.of());
  }

  private Optional<Figure> raw() {
    List<Figure> positions =
        card.heights().stream()
            .filter(SeenHeight::stopCounts)
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
