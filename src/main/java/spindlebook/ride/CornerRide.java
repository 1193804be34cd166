package spindlebook.ride;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Supplier;
import java.util.stream.Stream;
import spindlebook.curve.MeasuredCurve;
import spindlebook.curve.Node;
import spindlebook.curve.Nodes;
import spindlebook.definition.Allowance;
import spindlebook.definition.BumpStop;
import spindlebook.definition.CornerWeight;
import spindlebook.definition.Dimension;
import spindlebook.definition.Spring;
import spindlebook.definition.Starter;
import spindlebook.definition.Tool;
import spindlebook.entry.HeightName;
import spindlebook.entry.Joint;
import spindlebook.entry.Quantity;
import spindlebook.entry.SpringFigure;
import spindlebook.fold.Card;
import spindlebook.fold.SeenSprings.Said;
import spindlebook.fold.Standing;
import spindlebook.fold.ToolError;
import spindlebook.linkage.CornerJoints;
import spindlebook.linkage.Linkage;
import spindlebook.linkage.Pose;
import spindlebook.spring.Coil;
import spindlebook.spring.Drop;
import spindlebook.spring.ShockCurve;
import spindlebook.spring.StopChart;
import spindlebook.spring.StrapLife;
import spindlebook.spring.WheelSpring;
import spindlebook.travel.CornerTravel;
import spindlebook.travel.End;
import spindlebook.travel.GivenFigures;
import spindlebook.travel.StopFound;
import spindlebook.travel.TravelFindings;
import spindlebook.travel.WorkedOut;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.GuardBand;
import spindlebook.uncertainty.Outcome;
import spindlebook.uncertainty.Propagated;
import spindlebook.uncertainty.Rectangular;
import spindlebook.units.AmountUnit;
import spindlebook.units.TypedAmount;
import spindlebook.units.TypedLength;

/**
 * What carries a corner, what ends its motion softly, how much stroke is kept and how long its
 * strap lasts, from what its card knows. Formulas: {@code spindlebook.spring}.
 *
 * <p>The shock along the travel is the curve through the lengths that were read, at two heights or
 * more; with fewer, that of the linkage as it was laid out, without the doubt of its joints. Full
 * droop is where the strap stops, full bump where the bump stop is solid. On a solid axle with both
 * ends together.
 */
public final class CornerRide {
  /** How far a linkage is followed either way, in what steps, and what its slope needs beyond. */
  private static final double MOST_MM = 500;

  private static final double STEP_MM = 5;
  private static final double MARGIN_MM = 2;

  private final Card card;
  private final TravelFindings travel;
  private final List<RideFinding> findings = new ArrayList<>();

  public final Optional<Figure> weightKg;
  public final Optional<Figure> sprungKg;
  public final Optional<ShockCurve> shock;
  public final Optional<Coil> coil;
  public final Optional<WheelSpring> wheel;
  public final Optional<WheelSpring.Ride> ride;
  public final List<StopOnLanding> stops;
  public final Optional<StrapLasts> strap;

  private CornerRide(Card card) {
    this.card = card;
    this.travel = CornerTravel.of(card);
    this.weightKg = weight().flatMap(w -> quietly(() -> onGround(w)));
    this.sprungKg = weight().flatMap(w -> quietly(() -> sprung(w)));
    this.shock = quietly(this::readShock);
    this.coil = spring().flatMap(s -> quietly(() -> coil(s)));
    this.wheel = both(shock, coil, WheelSpring::new);
    this.ride = both(wheel, sprungKg, (w, m) -> w.ride(m).orElse(null));
    this.stops = card.springs().stops().stream().map(this::landing).toList();
    this.strap = StrapLasts.of(card);
    if (card.springs().any()) {
      find();
    }
  }

  public static CornerRide of(Card card) {
    return card.memo().get(CornerRide.class, () -> new CornerRide(card));
  }

  /** Every figure there could be of what was said; none of a corner of which nothing was. */
  public List<RideFinding> findings() {
    return findings;
  }

  public Optional<RideFinding> of(SpringFigure figure) {
    return findings.stream().filter(f -> f.figure() == figure).findFirst();
  }

  /** What an odd book makes impossible is simply not known. */
  private static <T> Optional<T> quietly(Supplier<T> work) {
    return WorkedOut.or(() -> Optional.ofNullable(work.get()), why -> Optional.empty());
  }

  private static <A, B, T> Optional<T> both(
      Optional<A> first, Optional<B> second, BiFunction<A, B, T> work) {
    return first.flatMap(a -> second.flatMap(b -> quietly(() -> work.apply(a, b))));
  }

  // --- what was said

  public Optional<Spring> spring() {
    return card.springs().spring().filter(s -> s.stands().counts()).map(Said::what);
  }

  private Optional<CornerWeight> weight() {
    return card.springs().weight().map(Said::what);
  }

  private Figure kg(TypedAmount amount, String of) {
    return Rectangular.within(amount.si(false), id(amount, of), amount.siWithin())
        .times(AmountUnit.kg(1));
  }

  private Figure rate(TypedAmount amount, String of) {
    return Rectangular.within(amount.si(true), id(amount, of), amount.siWithin());
  }

  /** Another spring's rate, or another weighing, is another doubt. */
  private String id(TypedAmount amount, String of) {
    return of + " " + amount.typed() + " " + card.corner();
  }

  private Figure onGround(CornerWeight w) {
    if (w.by() != CornerWeight.By.LEVER) {
      return w.weight() == null ? null : kg(w.weight(), "weight");
    }
    Figure read = kg(w.read(), "scale");
    Figure net = w.bare() == null ? read : read.minus(kg(w.bare(), "plank"));
    return Propagated.of(
        List.of(net, taped(w.toScale(), "to scale"), taped(w.toWheel(), "to wheel")),
        v -> v[0] * v[1] / v[2]);
  }

  /** As it was read with the tape that lies beside the car. */
  private Figure taped(TypedLength length, String what) {
    Tool starting = Starter.tape();
    Tool tape =
        card.tools().stream()
            .filter(t -> t.tool().equals(starting.tool()))
            .findFirst()
            .orElse(starting);
    String id = what + " " + length.mm() + " " + card.corner();
    return ToolError.ofLengths(tape).read(length.mm(), id, id);
  }

  private Figure sprung(CornerWeight w) {
    if (w.sprung() != null) {
      return kg(w.sprung(), "sprung");
    }
    Figure sprung =
        w.unsprung() == null || weightKg.isEmpty()
            ? null
            : weightKg.get().minus(kg(w.unsprung(), "unsprung"));
    return sprung == null || sprung.value() > 0 ? sprung : null;
  }

  private ShockCurve readShock() {
    List<Node> nodes = Nodes.merged(card, Quantity.SHOCK_LENGTH, card.pairings().get(0));
    return nodes.size() < 2 ? laidOut() : ShockCurve.read(MeasuredCurve.through(nodes));
  }

  /** By the linkage, as far as it goes together and bump shortens the shock; null without one. */
  private ShockCurve laidOut() {
    CornerJoints joints = CornerJoints.of(card);
    boolean mounted = joints.at().keySet().containsAll(List.of(Joint.SU, Joint.SL));
    if (joints.linkage() == null || joints.positionMm() == null || !mounted) {
      return null;
    }
    ShockCurve curve =
        ShockCurve.of(
            joints.linkage(), furthest(joints.linkage(), -1), furthest(joints.linkage(), 1));
    double zero = joints.positionMm().value();
    return new ShockCurve(
        curve.fromMm() + zero, curve.toMm() + zero, z -> curve.here().apply(z - zero));
  }

  private static double furthest(Linkage linkage, int way) {
    double z = 0;
    while (Math.abs(z) < MOST_MM
        && linkage.at(z + way * (STEP_MM + MARGIN_MM), 0) instanceof Pose pose
        && pose.shockRatio() > 0) {
      z += way * STEP_MM;
    }
    return z;
  }

  /** Null while nobody said where it is loose. */
  private Coil coil(Spring s) {
    Optional<Figure> loose =
        s.looseAt() != null
            ? Optional.of(taped(s.looseAt(), "loose at"))
            : shockMm(End.DROOP)
                .filter(o -> s.preload() != null)
                .map(o -> o.plus(taped(s.preload(), "preload")));
    if (loose.isEmpty()) {
      return null;
    }
    Figure main = rate(s.rate(), "rate");
    Figure zero = loose.get().plus(card.springs().pressedMm());
    return s.tender() == null
        ? Coil.single(main, zero)
        : new Coil(main, rate(s.tender(), "tender"), taped(s.crossover(), "crossover"), zero);
  }

  /** The fitted shock, eye to eye: open at droop, closed at bump. */
  public Optional<Figure> shockMm(End end) {
    return card.given(end == End.DROOP ? Dimension.SHOCK_OPEN : Dimension.SHOCK_CLOSED)
        .map(GivenFigures::of);
  }

  /** Wheel position of an end's stop. */
  public Optional<Figure> stop(End end) {
    return travel.at(end).stop().map(StopFound::positionMm);
  }

  /** The wheel position so far from the stop at droop, 0, to that at bump, 1. */
  public Optional<Double> between(double share) {
    return both(
        stop(End.DROOP),
        stop(End.BUMP),
        (low, high) -> low.value() + share * (high.value() - low.value()));
  }

  /** The same, where the shock is known there. */
  private Optional<Figure> known(End end) {
    return stop(end).filter(this::along);
  }

  private boolean along(Figure positionMm) {
    return shock
        .filter(s -> positionMm.value() >= s.fromMm() && positionMm.value() <= s.toMm())
        .isPresent();
  }

  /** How long the shock is there, with the doubt of where that is. */
  public Figure lengthMm(Figure positionMm) {
    ShockCurve.Here here = shock.orElseThrow().at(positionMm.value());
    Figure off = positionMm.plus(-positionMm.value());
    return here.lengthMm().minus(off.times(here.ratio().value()));
  }

  // --- the bump stop

  private StopOnLanding landing(Said<BumpStop> said) {
    BumpStop stop = said.what();
    StopChart chart = StopOnLanding.chart(stop);
    Optional<Figure> touch = touch(said);
    Optional<Drop> drop =
        stop.drop() == null || wheel.isEmpty() || sprungKg.isEmpty()
            ? Optional.empty()
            : both(touch, known(End.DROOP), (t, droop) -> drop(stop, chart, t, droop));
    return new StopOnLanding(
        said,
        chart,
        touch,
        drop,
        drop.flatMap(d -> quietly(() -> d.rest().orElse(null))),
        both(drop, known(End.BUMP), Drop::energyAt));
  }

  private Drop drop(BumpStop stop, StopChart chart, Figure touch, Figure droop) {
    Figure high = Figure.exact(stop.drop().mm());
    Figure damped = Figure.exact(stop.damped() / 100);
    Figure mass = sprungKg.orElseThrow();
    Figure factor = StopOnLanding.factor(stop);
    return new Drop(wheel.orElseThrow(), chart, factor, touch, droop, mass, high, damped);
  }

  private Optional<Figure> touch(Said<BumpStop> said) {
    TypedLength typed = said.what().touch();
    return typed != null && said.stands().counts()
        ? Optional.of(taped(typed, "touch " + said.what().stop()))
        : touchRead();
  }

  /** The wheel position at which stop touch was read. */
  public Optional<Figure> touchRead() {
    return Optional.of(Nodes.at(card, HeightName.STOP_TOUCH, card.pairings().get(0)))
        .filter(read -> !read.isEmpty())
        .map(Nodes::meanPosition);
  }

  /** Another shock at droop, then at bump; empty while no shock lengths are known. */
  public List<ShockTried> tried(double openMm, double closedMm, double mountMm) {
    return shock.stream()
        .flatMap(
            s ->
                Stream.of(End.values())
                    .map(e -> tried(s, e, e == End.DROOP ? openMm : closedMm, mountMm)))
        .toList();
  }

  private ShockTried tried(ShockCurve curve, End end, double lengthMm, double mountMm) {
    return ShockTried.of(card, curve, end, lengthMm, shockMm(end), kept(end).value(), mountMm);
  }

  // --- the figures

  private void find() {
    if (weight().isPresent()) {
      if (weightKg.isPresent() || sprungKg.isEmpty()) {
        add(SpringFigure.CORNER_WEIGHT, weightKg, RideNeed.WEIGHT);
      }
      add(SpringFigure.SPRUNG_WEIGHT, sprungKg, RideNeed.WEIGHT);
    }
    if (card.springs().spring().isPresent()) {
      ofSpring();
    }
    if (card.springs().spring().isPresent() || !stops.isEmpty()) {
      ofShock();
    }
    stops.forEach(this::ofStop);
    strap.ifPresent(this::ofStrap);
  }

  private void ofSpring() {
    RideNeed need = rideNeed();
    add(SpringFigure.WHEEL_RATE, ride.map(WheelSpring.Ride::rateNPerMm), need);
    add(SpringFigure.SITS_AT, ride.map(WheelSpring.Ride::positionMm), need);
    add(SpringFigure.FREQUENCY, ride.map(WheelSpring.Ride::hz), need);
    if (sagMm().isPresent()) {
      add(SpringFigure.SAG, sagMm(), need);
    }
    RideNeed share = ride.isEmpty() ? need : endNeed(End.DROOP, End.BUMP);
    add(SpringFigure.DROOP_SHARE, droopShare(), share);
    if (spring().map(Spring::sitAt).isPresent()) {
      add(SpringFigure.COLLAR, collarMm(), need);
    }
    if (spring().filter(s -> s.free() != null && s.solid() != null).isPresent()) {
      Optional<Figure> left = both(bindsAtMm(), known(End.BUMP), (b, z) -> lengthMm(z).minus(b));
      add(
          SpringFigure.COIL_LEFT,
          null,
          left,
          coil.isEmpty() ? need : shockNeed(End.BUMP),
          left.map(GuardBand::apart));
    }
  }

  /** The first thing that is missing for where the car sits. */
  private RideNeed rideNeed() {
    if (spring().isEmpty()) {
      return RideNeed.SPRING;
    }
    if (coil.isEmpty()) {
      Spring s = spring().get();
      return s.looseAt() == null && s.preload() == null ? RideNeed.LOOSE : RideNeed.SHOCK_OPEN;
    }
    if (shock.isEmpty()) {
      return RideNeed.SHOCK_LENGTHS;
    }
    return sprungKg.isEmpty() ? RideNeed.WEIGHT : RideNeed.RIDE;
  }

  /** The shock's lengths, else the first of these ends of which it is not known where it is. */
  private RideNeed shockNeed(End... ends) {
    return shock.isEmpty() ? RideNeed.SHOCK_LENGTHS : endNeed(ends);
  }

  /** The first of these ends of which it is not known where it is; else shock lengths there. */
  private RideNeed endNeed(End... ends) {
    return Stream.of(ends)
        .filter(e -> stop(e).isEmpty())
        .findFirst()
        .map(e -> e == End.DROOP ? RideNeed.DROOP : RideNeed.BUMP)
        .orElse(RideNeed.SHOCK_LENGTHS);
  }

  public Optional<Figure> sagMm() {
    return both(
        ride,
        wheel,
        (r, w) ->
            w.shock()
                .wheelAt(w.coil().zeroForceMm())
                .map(loose -> r.positionMm().minus(loose))
                .orElse(null));
  }

  /** How far the frame would rise here under the same load, the collar turned on by so much. */
  Optional<Figure> raisedMm(double pressedMm) {
    return both(
        ride,
        wheel,
        (r, w) -> {
          ShockCurve.Here here = w.shock().at(r.positionMm().value());
          Figure spring = w.coil().at(here.lengthMm(), Coil::rateNPerMm);
          return Propagated.of(
              List.of(spring, here.ratio(), r.rateNPerMm()), v -> pressedMm * v[0] * v[1] / v[2]);
        });
  }

  /** The same, since it stood on that spring. */
  Optional<Figure> raisedMm(Coil was) {
    return ride.flatMap(
        now ->
            both(shock, sprungKg, (s, m) -> new WheelSpring(s, was).ride(m).orElse(null))
                .map(then -> then.positionMm().minus(now.positionMm())));
  }

  /** The rate at ride with the tyre's beneath it; empty where nobody said that. */
  public Optional<Figure> onTyreNPerMm() {
    return both(
        ride,
        spring().map(Spring::tyre),
        (r, t) -> WheelSpring.onTyre(r.rateNPerMm(), rate(t, "tyre")));
  }

  private Optional<Figure> droopShare() {
    Optional<Figure> low = stop(End.DROOP);
    Optional<Figure> high =
        stop(End.BUMP).filter(h -> low.isPresent() && h.value() > low.get().value());
    return ride.flatMap(
        r ->
            both(
                low,
                high,
                (l, h) ->
                    Propagated.of(
                        List.of(r.positionMm(), l, h), v -> 100 * (v[0] - v[1]) / (v[2] - v[1]))));
  }

  /** How far to turn the collar so that the car sits where its owner wants it, + presses. */
  public Optional<Figure> collarMm() {
    return both(
        wheel,
        spring().map(Spring::sitAt),
        (w, at) -> sprungKg.map(m -> w.collarToSitAt(at.mm(), m)).orElse(null));
  }

  /** The spring with which it sits where its owner wants it and bounces as fast. */
  public Optional<Coil> wanted() {
    return spring()
        .filter(s -> s.sitAt() != null && s.hz() != null)
        .flatMap(s -> both(wheel, sprungKg, (w, m) -> w.wanted(s.sitAt().mm(), s.hz(), m)));
  }

  /** Shock length at which the main spring's turns touch. */
  public Optional<Figure> bindsAtMm() {
    return both(
        coil,
        spring().filter(s -> s.free() != null && s.solid() != null),
        (c, s) -> c.bindsAtMm(Figure.exact(s.free().mm() - s.solid().mm())));
  }

  private void ofShock() {
    RideNeed need = shockNeed(End.DROOP, End.BUMP);
    Optional<Figure> atRide =
        travel.rideMm().or(() -> ride.map(WheelSpring.Ride::positionMm)).filter(this::along);
    RideNeed rides = shock.isEmpty() ? RideNeed.SHOCK_LENGTHS : RideNeed.RIDE;
    add(SpringFigure.RATIO_AT_DROOP, known(End.DROOP).map(this::ratio), shockNeed(End.DROOP));
    add(SpringFigure.RATIO_AT_RIDE, atRide.map(this::ratio), rides);
    add(SpringFigure.RATIO_AT_BUMP, known(End.BUMP).map(this::ratio), shockNeed(End.BUMP));
    Optional<Figure> used =
        both(known(End.DROOP), known(End.BUMP), (low, high) -> lengthMm(low).minus(lengthMm(high)));
    Figure kept = kept(End.DROOP).plus(kept(End.BUMP));
    add(SpringFigure.STROKE_USED, used, need);
    add(SpringFigure.STROKE_NEEDED, used.map(s -> s.plus(kept)), need);
    left(SpringFigure.LEFT_OPEN, End.DROOP, RideNeed.SHOCK_OPEN);
    left(SpringFigure.LEFT_CLOSED, End.BUMP, RideNeed.SHOCK_CLOSED);
  }

  private void left(SpringFigure figure, End end, RideNeed shockNeeded) {
    Optional<Figure> left =
        both(shockMm(end), known(end), (s, z) -> lengthMm(z).minus(s).times(end.outward()));
    RideNeed need = shockMm(end).isEmpty() ? shockNeeded : shockNeed(end);
    add(figure, null, left, need, left.map(l -> GuardBand.atLeast(l.minus(kept(end)), 0)));
  }

  private Figure ratio(Figure positionMm) {
    return shock.orElseThrow().at(positionMm.value()).ratio();
  }

  /** What is to be kept of the shock at an end; nothing where nobody said. */
  private Figure kept(End end) {
    return card.heldBack(
            end == End.DROOP ? Allowance.SHOCK_OPEN_RESERVE : Allowance.SHOCK_CLOSED_RESERVE)
        .map(GivenFigures::of)
        .orElse(Figure.exact(0));
  }

  private void ofStop(StopOnLanding at) {
    if (at.stop().drop() == null) {
      return;
    }
    RideNeed need =
        at.touch().isEmpty()
            ? RideNeed.TOUCH
            : ride.isEmpty() && (wheel.isEmpty() || sprungKg.isEmpty())
                ? rideNeed()
                : at.drop().isEmpty() ? endNeed(End.DROOP) : RideNeed.LANDING;
    ofStop(at, SpringFigure.STOP_CRUSH, at.rest().map(Drop.Rest::crushMm), need);
    ofStop(at, SpringFigure.STOP_FORCE, at.rest().map(Drop.Rest::stopN), need);
    ofStop(at, SpringFigure.WHEEL_FORCE, at.rest().map(Drop.Rest::wheelN), need);
    RideNeed end = at.drop().isEmpty() ? need : endNeed(End.BUMP);
    ofStop(at, SpringFigure.STOP_MEETS, at.atBump().map(Drop.Energy::leftToStopJ), end);
    ofStop(at, SpringFigure.STOP_TAKES, at.atBump().map(Drop.Energy::stopTakesJ), end);
  }

  private void ofStop(
      StopOnLanding at, SpringFigure figure, Optional<Figure> value, RideNeed need) {
    Optional<Outcome> takes =
        at.atBump()
            .filter(e -> figure == SpringFigure.STOP_TAKES)
            .map(e -> GuardBand.atLeast(e.stopTakesJ().minus(e.leftToStopJ()), 0));
    add(figure, at.stop(), value, need, takes);
  }

  private void ofStrap(StrapLasts lasts) {
    Optional<Figure> growth =
        Optional.of(lasts.growthMm()).filter(g -> lasts.readings().size() > 1);
    add(SpringFigure.STRAP_GROWTH, growth, RideNeed.READINGS);
    Optional<StrapLife.Gone> gone = lasts.gone();
    RideNeed need = lasts.why().orElse(null);
    add(SpringFigure.STRAP_EARLY, gone.map(g -> Figure.exact(g.earlyHours())), need);
    add(SpringFigure.STRAP_LATE, gone.map(g -> Figure.exact(g.lateHours())), need);
  }

  private void add(SpringFigure figure, Optional<Figure> value, RideNeed need) {
    add(figure, null, value, need, Optional.empty());
  }

  private void add(
      SpringFigure figure,
      BumpStop of,
      Optional<Figure> value,
      RideNeed need,
      Optional<Outcome> outcome) {
    boolean bySpring = figure.of() == SpringFigure.Of.SPRING;
    boolean use = figure.unit() == SpringFigure.Unit.USE;
    findings.add(
        new RideFinding(
            figure,
            of == null ? null : of.stop(),
            of == null ? null : of.name(),
            value.orElse(null),
            value.isPresent() ? null : need,
            outcome.orElse(null),
            bySpring && value.isPresent() ? springStands() : null,
            use ? strap.map(StrapLasts::unit).orElse(null) : null,
            figure.of() == SpringFigure.Of.STRAP ? strap.orElseThrow().readings() : List.of()));
  }

  /** Null where it simply holds. */
  private Standing springStands() {
    return card.springs().spring().map(Said::stands).filter(s -> s != Standing.LIVE).orElse(null);
  }
}
