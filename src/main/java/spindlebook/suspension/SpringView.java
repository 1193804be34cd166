package spindlebook.suspension;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import spindlebook.advice.DeepestBump;
import spindlebook.card.Capital;
import spindlebook.card.RideText;
import spindlebook.card.Shown;
import spindlebook.card.TravelWords;
import spindlebook.card.Zero;
import spindlebook.corner.CornerFace;
import spindlebook.drawing.Chart;
import spindlebook.drawing.ChartAxis;
import spindlebook.drawing.ChartDrawing;
import spindlebook.drawing.FigureText;
import spindlebook.drawing.Lengths;
import spindlebook.drawing.State;
import spindlebook.entry.SpringFigure;
import spindlebook.entry.TelltaleKind;
import spindlebook.finding.Findings;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.page.Link;
import spindlebook.ride.CornerRide;
import spindlebook.ride.RideFinding;
import spindlebook.ride.RideForetold;
import spindlebook.ride.RideNeed;
import spindlebook.ride.StopOnLanding;
import spindlebook.ride.StrapLasts;
import spindlebook.spring.StrapShape;
import spindlebook.travel.CornerTravel;
import spindlebook.travel.End;
import spindlebook.travel.TravelFindings;
import spindlebook.uncertainty.Figure;
import spindlebook.units.AmountUnit;

/** The page of what carries a corner, what ends its motion softly, and how its strap lasts. */
public final class SpringView {
  /**
   * @param more those that few look at, folded away
   * @param needs what is missing first, and the page that asks for it; null where nothing is
   */
  public record Block(
      String title, List<Row> rows, List<Row> more, Link needs, ChartDrawing chart) {}

  /**
   * @param state of what was decided, {@code word} in the words of what it is about; null without
   * @param words beneath it
   */
  public record Row(String name, FigureText figure, State state, String word, List<String> words) {}

  private static final int STEPS = 24;
  private static final Set<SpringFigure> FEW =
      Set.of(
          SpringFigure.CORNER_WEIGHT,
          SpringFigure.SPRUNG_WEIGHT,
          SpringFigure.SAG,
          SpringFigure.RATIO_AT_DROOP,
          SpringFigure.RATIO_AT_BUMP,
          SpringFigure.STROKE_USED,
          SpringFigure.STROKE_NEEDED,
          SpringFigure.STOP_CRUSH,
          SpringFigure.WHEEL_FORCE,
          SpringFigure.STOP_MEETS);
  private static final Set<SpringFigure> OF_SHOCK =
      Set.of(
          SpringFigure.RATIO_AT_DROOP,
          SpringFigure.RATIO_AT_RIDE,
          SpringFigure.RATIO_AT_BUMP,
          SpringFigure.STROKE_USED,
          SpringFigure.STROKE_NEEDED,
          SpringFigure.LEFT_OPEN,
          SpringFigure.LEFT_CLOSED);

  private final CarBook book;
  private final Card card;
  private final CornerRide ride;
  private final TravelFindings travel;
  private final Zero zero;
  private final RideText text;
  private final Lengths lengths;

  SpringView(CarBook book, Card card) {
    this.book = book;
    this.card = card;
    this.ride = CornerRide.of(card);
    this.travel = CornerTravel.of(card);
    this.zero = Zero.of(card, travel);
    this.text =
        new RideText(card.details().unit(), ride.strap.map(s -> s.unit().words()).orElse("hours"));
    this.lengths = new Lengths(card.details().unit());
  }

  private String address() {
    return "/corners/" + card.corner() + "/spring";
  }

  public List<Block> blocks() {
    return Stream.of(carries(), endsSoftly(), shock(), strap())
        .filter(b -> !b.rows().isEmpty() || b.needs() != null)
        .toList();
  }

  /** Whether anything was said yet. */
  public boolean any() {
    return card.springs().any();
  }

  /** What may be tried, and what lies near by. */
  public List<Link> ways() {
    return List.of(
        new Link("Try another shock or split", address() + "/try"),
        new Link("Measure the strap", "/corners/" + card.corner() + "/telltales"),
        new Link("Parts", "/cars/" + card.car() + "/parts"));
  }

  /** What is asked. */
  public List<Link> typed() {
    List<Link> ways = new ArrayList<>();
    ways.add(new Link("Spring", address() + "/rate"));
    ways.add(new Link("Corner weight", address() + "/weight"));
    ride.stops.forEach(
        s ->
            ways.add(
                new Link(Capital.of(s.stop().name()), address() + "/stops/" + s.stop().stop())));
    ways.add(new Link("Another bump stop", address() + "/stops/new"));
    return ways;
  }

  // --- the blocks

  private Block carries() {
    List<RideFinding> of =
        ride.findings().stream()
            .filter(f -> f.figure().ordinal() <= SpringFigure.COIL_LEFT.ordinal())
            .toList();
    Block block = block("What carries it", of);
    List<Row> rows = new ArrayList<>(block.rows());
    RideForetold.of(book, card)
        .ifPresent(
            at ->
                rows.add(
                    0,
                    new Row(
                        "Ride since a collar was turned",
                        lengths.signedFigure(at.plus(-zero.mm())),
                        State.STALE,
                        null,
                        List.of(
                            Capital.of(zero.words())
                                + ": what the frame on its four springs makes of it, − higher.",
                            "Measure ride, and the book counts from that."))));
    return new Block(block.title(), rows, block.more(), block.needs(), null);
  }

  private Block endsSoftly() {
    List<RideFinding> of = ride.findings().stream().filter(f -> fitted(f.of())).toList();
    List<Row> rows = new ArrayList<>(rows(of, false));
    took().ifPresent(rows::add);
    List<Row> more = new ArrayList<>(rows(of, true));
    ride.findings().stream()
        .filter(f -> f.of() != null && f.value() != null && !fitted(f.of()))
        .forEach(f -> more.add(row(f, words(f))));
    return new Block(
        "What ends it softly",
        rows,
        more,
        ride.stops.isEmpty() && any()
            ? new Link("a bump stop by its chart", address() + "/stops/new")
            : needs(of),
        ride.stops.stream().anyMatch(s -> s.touch().isPresent()) ? chart() : null);
  }

  private Block shock() {
    List<RideFinding> of =
        ride.findings().stream().filter(f -> OF_SHOCK.contains(f.figure())).toList();
    return block("Shock and its stroke", of);
  }

  private Block block(String title, List<RideFinding> of) {
    return new Block(title, rows(of, false), rows(of, true), needs(of), null);
  }

  private Block strap() {
    List<Row> rows = new ArrayList<>();
    Link needs = null;
    if (ride.strap.isPresent()) {
      StrapLasts strap = ride.strap.get();
      rows.add(row(ride.of(SpringFigure.STRAP_GROWTH).orElseThrow(), shape(strap)));
      rows.add(forecast(strap));
    } else if (any()) {
      needs =
          new Link(
              "the strap's length under one pull, after each drive",
              "/corners/" + card.corner() + "/telltales");
    }
    return new Block("How long the strap lasts", rows, List.of(), needs, null);
  }

  private Row forecast(StrapLasts strap) {
    String used = "Used " + strap.unit().said(Math.rint(strap.used() * 10) / 10) + " so far.";
    String looked =
        "Sunlight and years weaken a strap and no length tells: look at its stitching, and at its"
            + " date.";
    return strap
        .life()
        .flatMap(l -> l.forecast())
        .map(
            g ->
                new Row(
                    "Used up after",
                    FigureText.of(
                        Math.round(Math.floor(g.earlyHours()))
                            + " to "
                            + Math.round(Math.ceil(g.lateHours())),
                        strap.unit().words()),
                    g.earlyHours() <= strap.used() ? State.SHORT : null,
                    g.earlyHours() <= strap.used() ? "may be used up" : null,
                    List.of(
                        used,
                        "It is used up at "
                            + lengths.text(strap.goneAtMm().orElseThrow())
                            + ", all its stretch come; 19 times in 20 between these.",
                        looked)))
        .orElseGet(
            () ->
                new Row(
                    "Used up after",
                    FigureText.of("no forecast", ""),
                    null,
                    null,
                    List.of(
                        used,
                        "Needs " + strap.why().map(RideNeed::words).orElse("more readings") + ".",
                        looked)));
  }

  /** Which way it grows, and how well that fits. */
  private static List<String> shape(StrapLasts strap) {
    List<String> words = new ArrayList<>();
    words.add(strap.strap().read().size() + " readings under one pull.");
    strap
        .life()
        .flatMap(l -> l.fits().stream().findFirst())
        .ifPresent(
            fit -> {
              words.add("It " + says(fit.shape()) + ".");
              fit.lackOfFit()
                  .ifPresent(
                      p ->
                          words.add(
                              p < 0.05
                                  ? "They scatter about that more than the tape explains."
                                  : "They scatter about that as the tape lets expect."));
            });
    return words;
  }

  private static String says(StrapShape shape) {
    return switch (shape) {
      case STRAIGHT -> "grows at one pace";
      case LOG -> "grows ever more slowly, without an end";
      case SETTLING -> "has taken a set and stays";
      case SETTLING_AND_CREEP -> "took a set and creeps on";
    };
  }

  // --- rows

  private List<Row> rows(List<RideFinding> of, boolean few) {
    return of.stream()
        .filter(f -> f.value() != null && FEW.contains(f.figure()) == few)
        .map(f -> row(f, words(f)))
        .toList();
  }

  private Row row(RideFinding f, List<String> words) {
    String word = Findings.of(f).word();
    State state =
        f.stands() != null
            ? Shown.state(f.stands())
            : f.outcome() == null ? null : Shown.state(f.outcome());
    return new Row(Capital.of(name(f)), figure(f), state, word.isEmpty() ? null : word, words);
  }

  private String name(RideFinding f) {
    return switch (f.figure()) {
      case SITS_AT -> "on this spring it sits, " + zero.words();
      case DROOP_SHARE -> "droop of the travel, by the spring";
      default -> f.of() == null || fitted(f.of()) ? f.figure().words() : f.words();
    };
  }

  private boolean fitted(String stop) {
    return ride.stops.stream().anyMatch(s -> s.stop().fitted() && s.stop().stop().equals(stop));
  }

  private FigureText figure(RideFinding f) {
    if (f.figure() == SpringFigure.SITS_AT) {
      return lengths.signedFigure(f.value().plus(-zero.mm()));
    }
    return f.figure().unit() == SpringFigure.Unit.LENGTH && f.figure() != SpringFigure.COLLAR
        ? lengths.figure(f.value())
        : text.of(f.figure().unit(), f.value());
  }

  private List<String> words(RideFinding f) {
    return switch (f.figure()) {
      case WHEEL_RATE ->
          List.of(
              "The spring through the shock's leverage, and how that changes along the travel.");
      case SITS_AT ->
          List.of(
              travel.rideMm().isPresent()
                  ? "Ride was read: where the two differ, weight or preload are not as typed."
                  : "Ride was not read since the spring was set: measure it.");
      case FREQUENCY -> List.of("By the true rate, not by the sag; no damping, no friction.");
      case COLLAR -> List.of("+ presses the spring further together.");
      case COIL_LEFT -> List.of("Shock length at full bump, less where its turns touch.");
      case LEFT_OPEN, LEFT_CLOSED ->
          List.of("Stops set as they are. Below what you hold back it says so.");
      case STOP_FORCE, WHEEL_FORCE, STOP_CRUSH -> List.of(drop(f));
      case STOP_MEETS, STOP_TAKES ->
          List.of("What the spring leaves of the landing, against what the chart takes.");
      default -> List.of();
    };
  }

  private String drop(RideFinding f) {
    return ride.stops.stream()
        .filter(s -> s.stop().stop().equals(f.of()))
        .findFirst()
        .map(
            s ->
                "Dropped "
                    + s.stop().drop().words()
                    + ", the shock takes "
                    + Math.round(s.stop().damped())
                    + " %. A chart of slow crush is too soft for a fast one.")
        .orElse("");
  }

  /** The first that is missing of some figures, and where to say it. */
  private Link needs(List<RideFinding> of) {
    return of.stream()
        .filter(f -> f.need() != null)
        .map(RideFinding::need)
        .findFirst()
        .map(n -> new Link(n.words(), href(n)))
        .orElse(null);
  }

  private String href(RideNeed need) {
    String corner = "/corners/" + card.corner();
    return switch (need) {
      case SPRING, LOOSE -> address() + "/rate";
      case WEIGHT -> address() + "/weight";
      case SHOCK_OPEN, SHOCK_CLOSED, STRAP_NEW -> corner + "/given";
      case DRIVES -> "/cars/" + card.car() + "/use";
      case READINGS, MAY_NEVER, TOO_FAR -> corner + "/telltales";
      case SHOCK_LENGTHS, DROOP, BUMP, RIDE, TOUCH -> corner + "/rounds/new";
      case LANDING -> address() + "/stops/" + ride.stops.get(0).stop().stop();
    };
  }

  // --- the bump stops in one picture

  private ChartDrawing chart() {
    TravelWords words = new TravelWords(card, travel);
    AmountUnit unit =
        card.details().unit() == spindlebook.units.LengthUnit.INCH
            ? AmountUnit.POUND
            : AmountUnit.NEWTON;
    List<Chart.Series> series = new ArrayList<>();
    List<List<Chart.At>> shaded = new ArrayList<>();
    Chart.Look[] looks = Chart.Look.values();
    List<Chart.Post> posts = new ArrayList<>();
    for (StopOnLanding stop : ride.stops) {
      if (stop.touch().isPresent()) {
        double touch = stop.touch().get().value();
        series.add(
            new Chart.Series(
                stop.stop().name() + (stop.stop().fitted() ? ", fitted" : ""),
                stop.stop().kind().words(),
                looks[series.size() % looks.length],
                false,
                spots(stop, touch),
                line(stop, touch, stop.chart().mostMm())));
        if (stop.stop().fitted() && shaded.isEmpty()) {
          stop.rest()
              .map(r -> Math.min(r.crushMm().value(), stop.chart().mostMm()))
              .filter(crush -> crush > 0)
              .ifPresent(crush -> shaded.add(line(stop, touch, crush)));
          stop.rest().ifPresent(r -> posts.add(post("lands", r.positionMm())));
        }
      }
    }
    ride.stop(End.BUMP).ifPresent(b -> posts.add(post("stop solid", b)));
    return ChartDrawing.of(
        new Chart(
            "stops",
            shaded.isEmpty() ? "Bump stops" : "Bump stops; shaded, the energy of the landing",
            "How hard each bump stop pushes at the wheel, against wheel position.",
            ChartAxis.length(
                "wheel position " + zero.words(), card.details().unit(), "towards bump"),
            new ChartAxis("push at the wheel, " + unit.word(), 1 / unit.of(1), false, false),
            series,
            List.of(),
            shaded,
            posts,
            shaded.isEmpty() ? "" : "where it lands; shaded, the energy the stop takes",
            CornerFace.of(card, travel, words, true, 1, 1)
                .filter(tape -> zero.equals(words.zero()))
                .orElse(null)));
  }

  private Chart.Post post(String word, Figure positionMm) {
    return new Chart.Post(word, zero.from(positionMm.value()));
  }

  private List<Chart.Spot> spots(StopOnLanding stop, double touch) {
    List<Chart.Spot> spots = new ArrayList<>();
    for (int i = 0; i < stop.chart().crushMm().length; i++) {
      spots.add(
          new Chart.Spot(
              zero.from(touch + stop.chart().crushMm()[i]), 0, stop.chart().forceN()[i], 0));
    }
    return spots.size() > 12 ? List.of(spots.get(0), spots.get(spots.size() - 1)) : spots;
  }

  private List<Chart.At> line(StopOnLanding stop, double touch, double most) {
    List<Chart.At> line = new ArrayList<>();
    for (int i = 0; i <= STEPS; i++) {
      double crush = most * i / STEPS;
      double at = zero.from(touch + crush);
      double push = stop.chart().forceN(crush);
      line.add(
          new Chart.At(
              at,
              push,
              lengths.signedText(at)
                  + "|"
                  + text.of(SpringFigure.Unit.FORCE, Figure.exact(push)).words()));
    }
    return line;
  }

  /** What the ring on the shock's shaft says that the stop took on the last drive. */
  private Optional<Row> took() {
    return book.telltales().stream()
        .filter(t -> t.content().corner().equals(card.corner()))
        .filter(t -> t.content().what() == TelltaleKind.SHOCK_RING)
        .reduce((earlier, later) -> later)
        .flatMap(
            t ->
                DeepestBump.of(card, travel, t) instanceof DeepestBump.At at
                    ? Optional.of(at)
                    : Optional.empty())
        .flatMap(
            at ->
                ride.stops.stream()
                    .filter(s -> s.stop().fitted())
                    .findFirst()
                    .map(s -> took(at, s)))
        .filter(r -> r != null);
  }

  private Row took(DeepestBump.At at, StopOnLanding stop) {
    if (stop.touch().isEmpty()) {
      return null;
    }
    Figure crush = at.positionMm().minus(stop.touch().get());
    double mm = Math.max(0, Math.min(crush.value(), stop.chart().mostMm()));
    boolean more = at.beyond() || crush.value() > stop.chart().mostMm();
    return new Row(
        "Bump stop pressed, last drive",
        lengths.figure(crush.value() < 0 ? Figure.exact(0) : crush),
        null,
        null,
        List.of(
            (more ? "At least: " : "It took ")
                + text.of(SpringFigure.Unit.ENERGY, Figure.exact(stop.chart().energyJ(mm))).words()
                + " and pushed with "
                + text.of(SpringFigure.Unit.FORCE, Figure.exact(stop.chart().forceN(mm))).words()
                + " at the wheel, by its chart."));
  }
}
