package spindlebook.ride;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Stream;
import spindlebook.curve.MeasuredCurve;
import spindlebook.curve.Node;
import spindlebook.curve.Nodes;
import spindlebook.definition.Allowance;
import spindlebook.definition.BumpStop;
import spindlebook.definition.CornerWeight;
import spindlebook.definition.Dimension;
import spindlebook.definition.HeldBack;
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
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;
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
    this.wheel = shock.flatMap(s -> coil.map(c -> new WheelSpring(s, c)));
    this.ride = wheel.flatMap(w -> sprungKg.flatMap(m -> quietly(() -> w.ride(m).orElse(null))));
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

  // --- what was said

  public Optional<Spring> spring() {
    return card.springs().spring().filter(s -> s.stands().counts()).map(Said::what);
  }

  private Optional<CornerWeight> weight() {
    return card.springs().weight().map(Said::what);
  }

  private static Figure figure(TypedAmount amount, boolean rate, String id) {
    Figure exact = Figure.exact(amount.si(rate));
    return amount.within() == 0
        ? exact
        : exact.withSource(new Source(id, SourceKind.ALLOWANCE), Rectangular.u(amount.siWithin()));
  }

  private Figure kg(TypedAmount amount, String of) {
    return figure(amount, false, of + " " + card.corner()).times(AmountUnit.kg(1));
  }

  private Figure rate(TypedAmount amount, String of) {
    return figure(amount, true, of + " " + card.corner());
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
    return ToolError.ofLengths(tape).read(length.mm(), what + " " + card.corner(), what);
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

  private Coil coil(Spring s) {
    Figure main = rate(s.rate(), "rate");
    Optional<Figure> zero = zeroForce(s);
    if (zero.isEmpty()) {
      return null;
    }
    return s.tender() == null
        ? Coil.single(main, zero.get())
        : new Coil(main, rate(s.tender(), "tender"), taped(s.crossover(), "crossover"), zero.get());
  }

  private Optional<Figure> zeroForce(Spring s) {
    Optional<Figure> loose =
        s.looseAt() != null
            ? Optional.of(taped(s.looseAt(), "loose at"))
            : s.preload() == null
                ? Optional.empty()
                : open().map(o -> o.plus(taped(s.preload(), "preload")));
    return loose.map(z -> z.plus(card.springs().pressedMm()));
  }

  public Optional<Figure> open() {
    return card.given(Dimension.SHOCK_OPEN).map(GivenFigures::of);
  }

  public Optional<Figure> closed() {
    return card.given(Dimension.SHOCK_CLOSED).map(GivenFigures::of);
  }

  /** Wheel position of an end's stop. */
  public Optional<Figure> stop(End end) {
    return travel.at(end).stop().map(StopFound::positionMm);
  }

  /** The same, where the shock is known there. */
  private Optional<Figure> known(End end) {
    return stop(end)
        .filter(
            z -> shock.filter(s -> z.value() >= s.fromMm() && z.value() <= s.toMm()).isPresent());
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
        touch
            .filter(t -> stop.drop() != null && wheel.isPresent() && sprungKg.isPresent())
            .flatMap(
                t ->
                    known(End.DROOP)
                        .map(
                            droop ->
                                new Drop(
                                    wheel.get(),
                                    chart,
                                    StopOnLanding.factor(stop),
                                    t,
                                    droop,
                                    sprungKg.get(),
                                    Figure.exact(stop.drop().mm()),
                                    Figure.exact(stop.damped() / 100))));
    return new StopOnLanding(
        said,
        chart,
        touch,
        drop,
        drop.flatMap(d -> quietly(() -> d.rest().orElse(null))),
        drop.flatMap(d -> known(End.BUMP).flatMap(b -> quietly(() -> d.energyAt(b)))));
  }

  private Optional<Figure> touch(Said<BumpStop> said) {
    TypedLength typed = said.what().touch();
    return typed != null && said.stands().counts()
        ? Optional.of(taped(typed, "touch " + said.what().stop()))
        : touchRead();
  }

  private Optional<Figure> touchRead() {
    return Optional.of(Nodes.at(card, HeightName.STOP_TOUCH, card.pairings().get(0)))
        .filter(read -> !read.isEmpty())
        .map(Nodes::meanPosition);
  }

  /** The wheel position at which stop touch was read. */
  public Optional<Double> touchReadMm() {
    return touchRead().map(Figure::value);
  }

  /** Another shock at droop, then at bump; empty while no shock lengths are known. */
  public List<ShockTried> tried(double openMm, double closedMm, double mountMm) {
    return shock
        .map(
            s ->
                Arrays.stream(End.values())
                    .map(
                        e ->
                            e == End.DROOP
                                ? tried(s, e, openMm, mountMm)
                                : tried(s, e, closedMm, mountMm))
                    .toList())
        .orElse(List.of());
  }

  private ShockTried tried(ShockCurve curve, End end, double lengthMm, double mountMm) {
    Optional<Figure> fitted = end == End.DROOP ? open() : closed();
    return ShockTried.of(
        card, curve, end, Figure.exact(lengthMm), fitted, reserve(atEnd(end)), mountMm);
  }

  private static Allowance atEnd(End end) {
    return end == End.DROOP ? Allowance.SHOCK_OPEN_RESERVE : Allowance.SHOCK_CLOSED_RESERVE;
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
    add(
        SpringFigure.DROOP_SHARE,
        droopShare(),
        ride.isEmpty() ? need : endNeed(End.DROOP, End.BUMP));
    if (spring().map(Spring::sitAt).isPresent()) {
      add(SpringFigure.COLLAR, collarMm(), need);
    }
    if (spring().filter(s -> s.free() != null && s.solid() != null).isPresent()) {
      add(
          SpringFigure.COIL_LEFT,
          coilLeftMm(),
          coil.isEmpty() ? need : shock.isEmpty() ? RideNeed.SHOCK_LENGTHS : endNeed(End.BUMP),
          GuardBand::apart);
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

  /** The first of these ends of which it is not known where it is; else shock lengths there. */
  private RideNeed endNeed(End... ends) {
    return Stream.of(ends)
        .filter(e -> stop(e).isEmpty())
        .findFirst()
        .map(e -> e == End.DROOP ? RideNeed.DROOP : RideNeed.BUMP)
        .orElse(RideNeed.SHOCK_LENGTHS);
  }

  public Optional<Figure> sagMm() {
    return ride.flatMap(
        r ->
            wheel
                .flatMap(w -> quietly(() -> w.shock().wheelAt(w.coil().zeroForceMm()).orElse(null)))
                .map(loose -> r.positionMm().minus(loose)));
  }

  /** How far the frame would rise here under the same load, the collar turned on by so much. */
  Optional<Figure> raisedMm(double pressedMm) {
    return ride.map(
        r -> {
          ShockCurve.Here here = shock.orElseThrow().at(r.positionMm().value());
          Figure spring = coil.orElseThrow().at(here.lengthMm(), Coil::rateNPerMm);
          return Propagated.of(
              List.of(spring, here.ratio(), r.rateNPerMm()), v -> pressedMm * v[0] * v[1] / v[2]);
        });
  }

  private Optional<Figure> droopShare() {
    return ride.flatMap(
        r ->
            stop(End.DROOP)
                .flatMap(
                    low ->
                        stop(End.BUMP)
                            .filter(high -> high.value() > low.value())
                            .map(
                                high ->
                                    Propagated.of(
                                        List.of(r.positionMm(), low, high),
                                        v -> 100 * (v[0] - v[1]) / (v[2] - v[1])))));
  }

  /** How far to turn the collar so that the car sits where its owner wants it, + presses. */
  public Optional<Figure> collarMm() {
    return wheel.flatMap(
        w ->
            spring()
                .map(Spring::sitAt)
                .flatMap(at -> sprungKg.flatMap(m -> quietly(() -> w.collarToSitAt(at.mm(), m)))));
  }

  /** The spring with which it sits where its owner wants it and bounces as fast. */
  public Optional<Coil> wanted() {
    return spring()
        .filter(s -> s.sitAt() != null && s.hz() != null)
        .flatMap(s -> wanted(s.sitAt().mm(), s.hz()));
  }

  public Optional<Coil> wanted(double sitAtMm, double hz) {
    return wheel.flatMap(w -> sprungKg.flatMap(m -> quietly(() -> w.wanted(sitAtMm, hz, m))));
  }

  /** Shock length at which the main spring's turns touch. */
  public Optional<Figure> bindsAtMm() {
    return coil.flatMap(
        c ->
            spring()
                .filter(s -> s.free() != null && s.solid() != null)
                .map(s -> c.bindsAtMm(Figure.exact(s.free().mm() - s.solid().mm()))));
  }

  private Optional<Figure> coilLeftMm() {
    return bindsAtMm().flatMap(b -> known(End.BUMP).map(z -> lengthMm(z).minus(b)));
  }

  private void ofShock() {
    RideNeed droop = shock.isEmpty() ? RideNeed.SHOCK_LENGTHS : endNeed(End.DROOP);
    RideNeed bump = shock.isEmpty() ? RideNeed.SHOCK_LENGTHS : endNeed(End.BUMP);
    RideNeed need = shock.isEmpty() ? RideNeed.SHOCK_LENGTHS : endNeed(End.DROOP, End.BUMP);
    Optional<Figure> atRide =
        travel.rideMm().or(() -> ride.map(WheelSpring.Ride::positionMm)).filter(this::along);
    add(SpringFigure.RATIO_AT_DROOP, known(End.DROOP).map(this::ratio), droop);
    add(
        SpringFigure.RATIO_AT_RIDE,
        atRide.map(this::ratio),
        shock.isEmpty() ? RideNeed.SHOCK_LENGTHS : RideNeed.RIDE);
    add(SpringFigure.RATIO_AT_BUMP, known(End.BUMP).map(this::ratio), bump);
    add(SpringFigure.STROKE_USED, strokeMm(0, 0), need);
    double keptOpen = reserve(Allowance.SHOCK_OPEN_RESERVE);
    double keptClosed = reserve(Allowance.SHOCK_CLOSED_RESERVE);
    add(SpringFigure.STROKE_NEEDED, strokeMm(keptOpen, keptClosed), need);
    add(
        SpringFigure.LEFT_OPEN,
        open().flatMap(o -> known(End.DROOP).map(z -> o.minus(lengthMm(z)))),
        open().isEmpty() ? RideNeed.SHOCK_OPEN : droop,
        left -> GuardBand.atLeast(left, keptOpen));
    add(
        SpringFigure.LEFT_CLOSED,
        closed().flatMap(c -> known(End.BUMP).map(z -> lengthMm(z).minus(c))),
        closed().isEmpty() ? RideNeed.SHOCK_CLOSED : bump,
        left -> GuardBand.atLeast(left, keptClosed));
  }

  private boolean along(Figure positionMm) {
    return shock
        .filter(s -> positionMm.value() >= s.fromMm() && positionMm.value() <= s.toMm())
        .isPresent();
  }

  private Figure ratio(Figure positionMm) {
    return shock.orElseThrow().at(positionMm.value()).ratio();
  }

  /** What the shock uses from stop to stop, and what is to be kept at both ends. */
  private Optional<Figure> strokeMm(double keptOpenMm, double keptClosedMm) {
    return known(End.DROOP)
        .flatMap(
            low ->
                known(End.BUMP)
                    .map(
                        high ->
                            lengthMm(low).minus(lengthMm(high)).plus(keptOpenMm + keptClosedMm)));
  }

  /** What is to be kept of the shock at an end; nothing where nobody said. */
  public double reserve(Allowance allowance) {
    return card.heldBack(allowance).map(HeldBack::length).map(TypedLength::mm).orElse(0.0);
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
    add(
        SpringFigure.STOP_CRUSH,
        at.stop(),
        at.rest().map(Drop.Rest::crushMm),
        need,
        List.of(),
        null);
    add(SpringFigure.STOP_FORCE, at.stop(), at.rest().map(Drop.Rest::stopN), need, List.of(), null);
    add(
        SpringFigure.WHEEL_FORCE,
        at.stop(),
        at.rest().map(Drop.Rest::wheelN),
        need,
        List.of(),
        null);
    RideNeed end = at.drop().isEmpty() ? need : endNeed(End.BUMP);
    add(
        SpringFigure.STOP_MEETS,
        at.stop(),
        at.atBump().map(Drop.Energy::leftToStopJ),
        end,
        List.of(),
        null);
    add(
        SpringFigure.STOP_TAKES,
        at.stop(),
        at.atBump().map(Drop.Energy::stopTakesJ),
        end,
        List.of(),
        at.atBump()
            .map(e -> GuardBand.atLeast(e.stopTakesJ().minus(e.leftToStopJ()), 0))
            .orElse(null));
  }

  private void ofStrap(StrapLasts lasts) {
    Optional<Figure> growth =
        Optional.of(lasts.growthMm()).filter(g -> lasts.readings().size() > 1);
    add(SpringFigure.STRAP_GROWTH, null, growth, RideNeed.READINGS, lasts.readings(), null);
    for (SpringFigure figure : List.of(SpringFigure.STRAP_EARLY, SpringFigure.STRAP_LATE)) {
      Optional<Figure> at =
          lasts
              .life()
              .flatMap(l -> l.forecast())
              .map(g -> figure == SpringFigure.STRAP_EARLY ? g.earlyHours() : g.lateHours())
              .map(Figure::exact);
      add(figure, null, at, lasts.why().orElse(null), lasts.readings(), null);
    }
  }

  private interface Decides {
    Outcome of(Figure value);
  }

  private void add(SpringFigure figure, Optional<Figure> value, RideNeed need) {
    add(figure, value, need, null);
  }

  private void add(SpringFigure figure, Optional<Figure> value, RideNeed need, Decides decides) {
    add(
        figure,
        null,
        value,
        need,
        List.of(),
        value.map(v -> decides == null ? null : decides.of(v)).orElse(null));
  }

  private void add(
      SpringFigure figure,
      BumpStop of,
      Optional<Figure> value,
      RideNeed need,
      List<String> readings,
      Outcome outcome) {
    boolean bySpring =
        figure.ordinal() >= SpringFigure.WHEEL_RATE.ordinal()
            && figure.ordinal() <= SpringFigure.COIL_LEFT.ordinal();
    findings.add(
        new RideFinding(
            figure,
            of == null ? null : of.stop(),
            of == null ? null : of.name(),
            value.orElse(null),
            value.isPresent() ? null : need,
            outcome,
            bySpring && value.isPresent() ? springStands() : null,
            figure.unit() == SpringFigure.Unit.USE
                ? strap.map(StrapLasts::unit).orElse(null)
                : null,
            readings));
  }

  /** Null where it simply holds. */
  private Standing springStands() {
    return card.springs().spring().map(Said::stands).filter(s -> s != Standing.LIVE).orElse(null);
  }
}
