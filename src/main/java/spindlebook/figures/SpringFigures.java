package spindlebook.figures;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.fold.SeenHeight;
import spindlebook.ride.CornerRide;
import spindlebook.ride.RideFinding;
import spindlebook.ride.RideForetold;
import spindlebook.ride.RideNeed;
import spindlebook.ride.StopOnLanding;
import spindlebook.ride.StrapLasts;
import spindlebook.spring.Coil;
import spindlebook.spring.ShockCurve;
import spindlebook.spring.StrapFit;
import spindlebook.spring.StrapLife;
import spindlebook.spring.WheelSpring;
import spindlebook.travel.End;
import spindlebook.uncertainty.Figure;

/**
 * A corner's springs, stops and straps as JSON; nothing where nothing was said of them. Rates in
 * N/mm, forces in N, energy in J, masses in kg; of a shock mm eye to eye, + where it is pressed
 * together.
 */
record SpringFigures(Card card, CornerRide of) {
  /** One more reading is foretold every so many hours. */
  private static final int EVERY = 10;

  private static final int MOST_NEXT = 100;

  static void corner(Node corner, CarBook book, Card card) {
    if (card.springs().any()) {
      corner.put(
          "springs",
          new SpringFigures(card, CornerRide.of(card))
              .all()
              .put("rideForetoldMm", RideForetold.of(book, card)));
    }
  }

  private Node all() {
    Node all = new Node().put("findings", of.findings().stream().map(this::finding).toList());
    return all.part(() -> of.coil.ifPresent(c -> all.put("coil", coil(c))))
        .part(() -> of.shock.ifPresent(s -> all.put("along", along(s))))
        .part(() -> of.ride.ifPresent(r -> all.put("ride", ride(r))))
        .put("stops", of.stops.stream().map(SpringFigures::stop).toList())
        .part(() -> of.strap.ifPresent(s -> all.put("strap", strap(s))));
  }

  private Node finding(RideFinding f) {
    return new Node()
        .put("what", f.figure())
        .put("of", f.of())
        .put("unit", f.figure().unit())
        .put("is", f.value())
        .put("needs", f.need() == null ? null : f.need().words())
        .put("outcome", f.outcome())
        .put("stands", f.stands());
  }

  private Node coil(Coil coil) {
    Node node =
        new Node()
            .put("rateNPerMm", coil.mainNPerMm())
            .put("looseAtMm", coil.zeroForceMm())
            .put("bindsAtMm", of.bindsAtMm());
    if (coil.tenderNPerMm().value() > 0) {
      node.put("seriesNPerMm", coil.seriesNPerMm()).put("crossover", crossover(coil));
    }
    return node.put("wanted", of.wanted().map(this::wanted));
  }

  private Node crossover(Coil coil) {
    Figure at = coil.crossoverMm();
    return new Node()
        .put("shockMm", at)
        .put("compressionMm", coil.zeroForceMm().value() - at.value())
        .put("fromOpenMm", of.shockMm(End.DROOP).map(o -> o.minus(at)))
        .put("forceN", coil.at(at, Coil::forceN))
        .put("energyJ", coil.at(at, Coil::energyJ))
        .put("positionMm", of.shock.flatMap(s -> s.wheelAt(at)))
        .put("atWheel", of.wheel.flatMap(w -> w.shock().wheelAt(at).map(z -> crossed(w, z))));
  }

  /** Force, and the rate a hair before and after. */
  private static Node crossed(WheelSpring wheel, Figure at) {
    double z = at.value();
    return new Node()
        .put("forceN", wheel.forceN(z))
        .put("rateBelowNPerMm", wheel.rateNPerMm(z - 1e-6).value())
        .put("rateAboveNPerMm", wheel.rateNPerMm(z + 1e-6).value());
  }

  private Node wanted(Coil coil) {
    return new Node()
        .put("rateNPerMm", coil.mainNPerMm())
        .put("looseAtMm", coil.zeroForceMm())
        .put("preloadMm", of.shockMm(End.DROOP).map(o -> coil.zeroForceMm().minus(o)));
  }

  /** At every height whose wheel position is known, as far as the shock is. */
  private List<Node> along(ShockCurve shock) {
    return card.heights().stream()
        .map(SeenHeight::positionMm)
        .filter(z -> z != null && z.value() >= shock.fromMm() && z.value() <= shock.toMm())
        .mapToDouble(Figure::value)
        .sorted()
        .distinct()
        .mapToObj(z -> at(shock, z))
        .toList();
  }

  private Node at(ShockCurve shock, double z) {
    ShockCurve.Here here = shock.at(z);
    Node node =
        new Node()
            .put("positionMm", z)
            .put("shockMm", here.lengthMm())
            .put("ratio", here.ratio())
            .put("bendPerMm", here.bendPerMm());
    of.wheel.ifPresent(w -> at(node, w, here, z));
    return node;
  }

  private static void at(Node node, WheelSpring wheel, ShockCurve.Here here, double z) {
    Coil coil = wheel.coil();
    Figure force = coil.at(here.lengthMm(), Coil::forceN);
    Figure rate = coil.at(here.lengthMm(), Coil::rateNPerMm);
    node.put("compressionMm", coil.zeroForceMm().minus(here.lengthMm()))
        .put("springN", force)
        .put("springNPerMm", rate)
        .put("energyJ", coil.at(here.lengthMm(), Coil::energyJ))
        .put("wheelN", wheel.forceN(z))
        .put("wheelNPerMm", wheel.rateNPerMm(z))
        .put("byRatioNPerMm", wheel.byRatioNPerMm(z))
        .put("slopeTermNPerMm", force.value() * here.bendPerMm().value());
    double tender = coil.tenderNPerMm().value();
    if (tender > 0) {
      boolean loose = force.value() == 0;
      boolean both = rate.value() < coil.mainNPerMm().value();
      node.put("tenderMm", Math.min(force.value() / tender, coil.gapMm().value()))
          .put("mainMm", force.value() / coil.mainNPerMm().value())
          .put("acts", loose ? "loose" : both ? "both" : "main only");
    }
  }

  private Node ride(WheelSpring.Ride ride) {
    Figure kg = of.sprungKg.orElseThrow();
    WheelSpring wheel = of.wheel.orElseThrow();
    double byRatio = wheel.byRatioNPerMm(ride.positionMm().value());
    Optional<Figure> onTyre = of.onTyreNPerMm();
    return new Node()
        .put("sprungKg", kg)
        .put("positionMm", ride.positionMm())
        .put("compressionMm", ride.compressionMm())
        .put("looseAtMm", wheel.shock().wheelAt(wheel.coil().zeroForceMm()))
        .put("sagMm", of.sagMm())
        .put("rateNPerMm", ride.rateNPerMm())
        .put("byRatioNPerMm", byRatio)
        .put("hz", ride.hz())
        .put("byRatioHz", WheelSpring.hz(Figure.exact(byRatio), kg).value())
        .put("bySagHz", of.sagMm().map(s -> WheelSpring.bySagHz(s.value())))
        .put("onTyreNPerMm", onTyre)
        .put("onTyreHz", onTyre.map(k -> WheelSpring.hz(k, kg)))
        .put("collarMm", of.collarMm());
  }

  private static Node stop(StopOnLanding at) {
    Node node =
        new Node()
            .put("stop", at.stop().stop())
            .put("fitted", at.stop().fitted())
            .put("stands", at.said().stands())
            .put("touchMm", at.touch());
    at.rest()
        .ifPresent(
            r ->
                node.put("restsAtMm", r.positionMm())
                    .put("crushMm", r.crushMm())
                    .put("stopN", r.stopN())
                    .put("wheelN", r.wheelN()));
    at.atBump()
        .ifPresent(
            e ->
                node.put("broughtJ", e.broughtJ())
                    .put("coilJ", e.broughtJ().minus(e.leftToStopJ()))
                    .put("leftToStopJ", e.leftToStopJ())
                    .put("stopTakesJ", e.stopTakesJ())
                    .put("bottoms", e.leftToStopJ().value() > e.stopTakesJ().value()));
    return node;
  }

  private static Node strap(StrapLasts lasts) {
    Optional<StrapLife.Gone> gone = lasts.gone();
    return new Node()
        .put("unit", lasts.unit())
        .put("pullN", lasts.strap().read().get(0).pullN())
        .put(
            "read",
            lasts.strap().read().stream()
                .map(
                    r -> new Node().put("key", r.key()).put("use", r.use()).put("mm", r.lengthMm()))
                .toList())
        .put("growthMm", lasts.growthMm())
        .put("goneAtMm", lasts.goneAtMm())
        .put("needs", lasts.why().map(RideNeed::words))
        .put("likeliest", lasts.life().flatMap(StrapLife::likeliest).map(StrapFit::shape))
        .put("early", gone.map(StrapLife.Gone::earlyHours))
        .put("middle", gone.map(StrapLife.Gone::middleHours))
        .put("late", gone.map(StrapLife.Gone::lateHours))
        .put(
            "fits",
            lasts.life().map(life -> life.fits().stream().map(f -> fit(f, lasts)).toList()));
  }

  private static Node fit(StrapFit fit, StrapLasts lasts) {
    double[] p = fit.found().parameters();
    StrapFit.Reached gone = fit.reaches(lasts.goneAtMm().orElseThrow());
    double to = 3 * Math.max(EVERY, lasts.used());
    // So many at most, however much it was used.
    double every = EVERY * Math.ceil(Math.max(1, to / EVERY / MOST_NEXT));
    return new Node()
        .put("shape", fit.shape())
        .put("parameters", Arrays.stream(p).boxed().toList())
        .put("se", IntStream.range(0, p.length).mapToObj(i -> fit.found().se(i)).toList())
        .put("s", fit.found().sd())
        .put("rss", fit.found().rss())
        .put("dof", fit.found().dof())
        .put("byChance", fit.lackOfFit())
        .put("early", gone.early())
        .put("middle", gone.centre())
        .put("late", gone.late())
        .put(
            "next",
            IntStream.rangeClosed(0, (int) (to / every))
                .mapToDouble(i -> i * every)
                .mapToObj(
                    t ->
                        new Node()
                            .put("use", t)
                            .put("mm", fit.at(t))
                            .put("within", fit.nextWithin(t)))
                .toList());
  }
}
