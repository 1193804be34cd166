package spindlebook.suspension;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import spindlebook.advice.DeepestBump;
import spindlebook.card.Capital;
import spindlebook.card.RideText;
import spindlebook.card.Zero;
import spindlebook.charts.CornerChart;
import spindlebook.curve.Nodes;
import spindlebook.definition.BumpStop;
import spindlebook.drawing.Chart;
import spindlebook.drawing.ChartAxis;
import spindlebook.drawing.ChartDrawing;
import spindlebook.drawing.FigureText;
import spindlebook.drawing.Lengths;
import spindlebook.drawing.State;
import spindlebook.entry.Quantity;
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
import spindlebook.sheet.FigureRow;
import spindlebook.spring.Coil;
import spindlebook.spring.ShockCurve;
import spindlebook.spring.StopChart;
import spindlebook.spring.StrapLife;
import spindlebook.spring.StrapShape;
import spindlebook.travel.End;
import spindlebook.uncertainty.Figure;

/** The page of what carries a corner, what ends its motion softly, and how its strap lasts. */
public final class SpringView {
  /**
   * @param more those that few look at, folded away
   * @param needs what is missing first, and the page that asks for it; null where nothing is
   * @param fold what its chart is folded under; empty where it stands open
   */
  public record Block(
      String title,
      List<FigureRow> rows,
      List<FigureRow> more,
      Link needs,
      String fold,
      ChartDrawing chart) {}

  private static final int MOST_SPOTS = 12;

  private static final String WANTED = "Spring for the split and bounce you want";
  private static final List<String> FORETOLD =
      List.of(
          "Worked out from all four springs. − is higher.",
          "Measure ride: until then it is not sure.");

  private final CarBook book;
  private final Card card;
  private final CornerRide ride;
  private final CornerChart chart;
  private final Zero zero;
  private final RideText text;
  private final Lengths lengths;

  SpringView(CarBook book, Card card) {
    this.book = book;
    this.card = card;
    this.ride = CornerRide.of(card);
    this.chart = new CornerChart(card);
    this.zero = chart.zero();
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

  public Card card() {
    return card;
  }

  /** The bump stops that were typed. */
  public List<Link> stops() {
    return ride.stops.stream()
        .map(StopOnLanding::stop)
        .map(s -> new Link(Capital.of(s.name()), address() + "/stops/" + s.stop()))
        .toList();
  }

  // --- the blocks

  private Block carries() {
    List<RideFinding> of = of(SpringFigure.Of.WEIGHT, SpringFigure.Of.SPRING);
    List<FigureRow> rows = new ArrayList<>();
    RideForetold.of(book, card)
        .map(at -> lengths.signedFigure(at.plus(-zero.mm())))
        .map(at -> row("Ride since springs were changed", at, State.STALE, null, FORETOLD))
        .ifPresent(rows::add);
    rows.addAll(rows(of, false));
    ride.wanted()
        .map(w -> new FigureRow(WANTED, text.of(SpringFigure.Unit.RATE, w.mainNPerMm()), loose(w)))
        .ifPresent(rows::add);
    return new Block("What carries it", rows, rows(of, true), needs(of), "", null);
  }

  private String loose(Coil wanted) {
    Figure at = wanted.zeroForceMm();
    return ride.shockMm(End.DROOP)
        .map(open -> "One spring, preload " + lengths.signedFigure(at.minus(open)).words() + ".")
        .orElse("One spring, just loose with the shock " + lengths.figure(at).words() + ".");
  }

  private Block endsSoftly() {
    List<RideFinding> of = ride.findings().stream().filter(f -> fitted(f.of())).toList();
    List<FigureRow> rows = new ArrayList<>(rows(of, false));
    took().ifPresent(rows::add);
    List<FigureRow> more = new ArrayList<>(rows(of, true));
    ride.findings().stream()
        .filter(f -> f.of() != null && f.value() != null && !fitted(f.of()))
        .forEach(f -> more.add(row(f)));
    Link needs =
        ride.stops.isEmpty() && any()
            ? new Link("a bump stop by its chart", address() + "/stops/new")
            : needs(of);
    boolean drawn = ride.stops.stream().anyMatch(s -> s.touch().isPresent());
    return new Block("What ends it softly", rows, more, needs, "", drawn ? chart() : null);
  }

  private List<RideFinding> of(SpringFigure.Of... kinds) {
    return ride.findings().stream().filter(f -> List.of(kinds).contains(f.figure().of())).toList();
  }

  private Block shock() {
    List<RideFinding> of = of(SpringFigure.Of.SHOCK);
    ChartDrawing ratio = ride.shock.map(this::ratio).orElse(null);
    return new Block(
        "Shock and its stroke",
        rows(of, false),
        rows(of, true),
        needs(of),
        "Motion ratio by position",
        ratio);
  }

  private Block strap() {
    List<FigureRow> rows = new ArrayList<>();
    ride.strap.ifPresent(
        s -> {
          ride.of(SpringFigure.STRAP_GROWTH)
              .filter(f -> f.value() != null)
              .ifPresent(f -> rows.add(row(f, shape(s))));
          rows.add(forecast(s));
        });
    Link needs =
        rows.isEmpty() && any()
            ? new Link("the strap's length under one pull, after each drive", telltales())
            : null;
    ChartDrawing drawn =
        ride.strap.flatMap(s -> StrapChart.of(s, card.details().unit())).orElse(null);
    return new Block(
        "How long the strap lasts", rows, List.of(), needs, "Length against use", drawn);
  }

  private String telltales() {
    return "/corners/" + card.corner() + "/telltales";
  }

  private FigureRow forecast(StrapLasts strap) {
    Optional<StrapLife.Gone> gone = strap.gone();
    boolean perhaps = gone.filter(g -> g.earlyHours() <= strap.used()).isPresent();
    String why = strap.why().map(RideNeed::words).orElse("more readings");
    return row(
        gone.isEmpty() ? "Used up after: needs " + why : "Used up after",
        gone.map(
                g ->
                    Math.round(Math.floor(g.earlyHours()))
                        + " to "
                        + Math.round(Math.ceil(g.lateHours())))
            .map(span -> FigureText.of(span, strap.unit().words()))
            .orElse(FigureText.of("no forecast", "")),
        perhaps ? State.SHORT : null,
        perhaps ? "may be used up" : null,
        List.of(
            "Used " + strap.unit().said(Math.rint(strap.used() * 10) / 10) + " so far.",
            gone.isEmpty()
                ? "What was read does not tell it."
                : "All its stretch is used up at "
                    + lengths.text(strap.goneAtMm().orElseThrow())
                    + ": between these, 19 times in 20.",
            "Sunlight and years weaken a strap, and its length does not show it. Look at its"
                + " stitching and its date."));
  }

  /** Which way it grows, and how well that fits. */
  private static List<String> shape(StrapLasts strap) {
    List<String> words = new ArrayList<>();
    words.add(strap.strap().read().size() + " readings under one pull.");
    strap.life().stream()
        .flatMap(l -> l.likeliest().stream())
        .forEach(
            fit -> {
              words.add("It " + says(fit.shape()) + ".");
              fit.lackOfFit()
                  .ifPresent(
                      p ->
                          words.add(
                              "Its readings scatter "
                                  + (p < 0.05 ? "" : "no ")
                                  + "more than the tape does."));
            });
    return words;
  }

  static String says(StrapShape shape) {
    return switch (shape) {
      case STRAIGHT -> "grows at one pace";
      case LOG -> "grows ever more slowly, without an end";
      case SETTLING -> "has taken a set and stays";
      case SETTLING_AND_CREEP -> "took a set and creeps on";
    };
  }

  // --- rows

  private List<FigureRow> rows(List<RideFinding> of, boolean few) {
    return of.stream()
        .filter(f -> f.value() != null && few(f.figure()) == few)
        .map(this::row)
        .toList();
  }

  private static FigureRow row(
      String name, FigureText figure, State state, String word, List<String> words) {
    return new FigureRow(name, List.of(figure), state, word, words, List.of(), null);
  }

  private static boolean few(SpringFigure figure) {
    return switch (figure) {
      case CORNER_WEIGHT, SPRUNG_WEIGHT, SAG, RATIO_AT_DROOP, RATIO_AT_BUMP -> true;
      case STROKE_USED, STROKE_NEEDED, STOP_CRUSH, WHEEL_FORCE, STOP_MEETS -> true;
      default -> false;
    };
  }

  private FigureRow row(RideFinding f) {
    String words = words(f);
    return row(f, words.isEmpty() ? List.of() : List.of(words));
  }

  private FigureRow row(RideFinding f, List<String> words) {
    return FigureRow.of(
        Findings.of(f), Capital.of(name(f)), List.of(figure(f)), words, List.of(), null);
  }

  private String name(RideFinding f) {
    return switch (f.figure()) {
      case SITS_AT -> "by the spring it sits, " + zero.words();
      case DROOP_SHARE -> "droop share, by the spring";
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

  private String words(RideFinding f) {
    return switch (f.figure()) {
      case WHEEL_RATE ->
          "The spring through the shock's leverage, and how that changes along the travel.";
      case SITS_AT ->
          chart.travel().rideMm().isPresent()
              ? "Ride was read: where the two differ, weight or preload are not as typed."
              : "Ride was not read since the spring was set: measure it.";
      case FREQUENCY -> "By the true rate, not by the sag; no damping, no friction.";
      case COLLAR -> "+ presses the spring further together.";
      case COIL_LEFT -> "Shock length at full bump, less where its turns touch.";
      case LEFT_OPEN, LEFT_CLOSED -> "Stops set as they are. Below what you hold back it says so.";
      case STOP_FORCE, WHEEL_FORCE, STOP_CRUSH -> drop(f);
      case STOP_MEETS -> "What is left of the landing after the spring.";
      case STOP_TAKES ->
          ride.findings().stream()
              .filter(m -> m.figure() == SpringFigure.STOP_MEETS && f.of().equals(m.of()))
              .filter(m -> m.value() != null)
              .map(m -> "By its chart. The landing leaves it " + figure(m).words() + ".")
              .findFirst()
              .orElse("By its chart.");
      default -> "";
    };
  }

  private String drop(RideFinding f) {
    BumpStop stop =
        ride.stops.stream()
            .map(StopOnLanding::stop)
            .filter(s -> s.stop().equals(f.of()))
            .findFirst()
            .orElseThrow();
    return "Dropped "
        + stop.drop().words()
        + ", the shock takes "
        + Math.round(stop.damped())
        + " %. Charts are pressed slowly: a landing pushes harder.";
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
      case READINGS, MAY_NEVER, TOO_FAR -> telltales();
      case SHOCK_LENGTHS, DROOP, BUMP, RIDE, TOUCH -> corner + "/rounds/new";
      case LANDING -> address() + "/stops/" + ride.stops.get(0).stop().stop();
    };
  }

  // --- the bump stops in one picture

  private ChartDrawing chart() {
    List<Chart.Series> series = new ArrayList<>();
    List<List<Chart.At>> shaded = new ArrayList<>();
    Chart.Look[] looks = Chart.Look.values();
    List<Chart.Post> posts = new ArrayList<>();
    for (StopOnLanding at : ride.stops.stream().filter(s -> s.touch().isPresent()).toList()) {
      BumpStop stop = at.stop();
      double touch = at.touch().orElseThrow().value();
      series.add(
          new Chart.Series(
              stop.name() + (stop.fitted() ? ", fitted" : ""),
              stop.kind().words(),
              looks[series.size() % looks.length],
              false,
              spots(at.chart(), touch),
              line(at.chart(), touch, at.chart().mostMm())));
      if (stop.fitted() && shaded.isEmpty() && at.rest().isPresent()) {
        double crush = Math.min(at.rest().get().crushMm().value(), at.chart().mostMm());
        posts.add(chart.post("lands", at.rest().get().positionMm()));
        if (crush > 0) {
          List<Chart.At> area = new ArrayList<>(line(at.chart(), touch, crush));
          area.add(new Chart.At(area.get(area.size() - 1).travel(), 0, ""));
          area.add(new Chart.At(area.get(0).travel(), 0, ""));
          shaded.add(area);
        }
      }
    }
    ride.stop(End.BUMP).ifPresent(b -> posts.add(chart.post("stop solid", b)));
    String energy = shaded.isEmpty() ? "" : "; shaded, the energy of the landing";
    return chart.drawn(
        "stops",
        "Bump stops" + energy,
        "How hard each bump stop pushes at the wheel, against wheel position.",
        text.axis("push at the wheel"),
        series,
        shaded,
        posts,
        shaded.isEmpty() ? "" : "where it lands; shaded, the energy the stop takes");
  }

  // --- the motion ratio along the travel

  private ChartDrawing ratio(ShockCurve shock) {
    List<Chart.At> line =
        Chart.line(
            shock.fromMm(),
            shock.toMm(),
            z -> {
              Figure ratio = shock.at(z).ratio();
              return chart.at(z, ratio.value(), text.of(SpringFigure.Unit.RATIO, ratio).words());
            });
    List<Chart.Spot> spots =
        Nodes.merged(card, Quantity.SHOCK_LENGTH, card.pairings().get(0)).stream()
            .map(n -> n.positionMm().value())
            .filter(z -> z >= shock.fromMm() && z <= shock.toMm())
            .map(z -> chart.spot(Figure.exact(z), shock.at(z).ratio()))
            .toList();
    return chart.drawn(
        "ratio",
        "Motion ratio by wheel position",
        "How much of the shock an inch of wheel takes, against wheel position.",
        new ChartAxis("motion ratio, shock for wheel", 1, false, false),
        List.of(new Chart.Series("motion ratio", "", Chart.Look.SQUARE, false, spots, line)));
  }

  /** The chart's points; of many the first and the last. */
  private List<Chart.Spot> spots(StopChart of, double touch) {
    int last = of.crushMm().length - 1;
    return IntStream.rangeClosed(0, last)
        .filter(i -> last < MOST_SPOTS || i == 0 || i == last)
        .mapToObj(
            i -> chart.spot(Figure.exact(touch + of.crushMm()[i]), Figure.exact(of.forceN()[i])))
        .toList();
  }

  private List<Chart.At> line(StopChart of, double touch, double most) {
    return Chart.line(
        0,
        most,
        crush -> {
          double push = of.forceN(crush);
          return chart.at(touch + crush, push, words(SpringFigure.Unit.FORCE, push));
        });
  }

  private String words(SpringFigure.Unit unit, double value) {
    return text.of(unit, Figure.exact(value)).words();
  }

  /** What the ring on the shock's shaft says that the stop took on the last drive. */
  private Optional<FigureRow> took() {
    return book.telltales().stream()
        .filter(t -> t.content().corner().equals(card.corner()))
        .filter(t -> t.content().what() == TelltaleKind.SHOCK_RING)
        .reduce((earlier, later) -> later)
        .map(t -> DeepestBump.of(card, chart.travel(), t))
        .filter(DeepestBump.At.class::isInstance)
        .map(DeepestBump.At.class::cast)
        .flatMap(
            at ->
                ride.stops.stream()
                    .filter(s -> s.stop().fitted())
                    .findFirst()
                    .flatMap(s -> s.touch().map(t -> took(at, s.chart(), t))));
  }

  private FigureRow took(DeepestBump.At at, StopChart chart, Figure touch) {
    Figure crush = at.positionMm().minus(touch);
    double mm = Math.max(0, Math.min(crush.value(), chart.mostMm()));
    boolean more = at.beyond() || crush.value() > chart.mostMm();
    return new FigureRow(
        "Bump stop pressed, last drive",
        lengths.figure(crush.value() < 0 ? Figure.exact(0) : crush),
        (more ? "At least: " : "It took ")
            + words(SpringFigure.Unit.ENERGY, chart.energyJ(mm))
            + " and pushed with "
            + words(SpringFigure.Unit.FORCE, chart.forceN(mm))
            + " at the wheel, by its chart.");
  }
}
