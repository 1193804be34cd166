package spindlebook.align;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spindlebook.align.BumpSteerView.Fact;
import spindlebook.align.BumpSteerView.Meaning;
import spindlebook.align.BumpSteerView.Need;
import spindlebook.alignment.AgainstTarget;
import spindlebook.alignment.BumpShape;
import spindlebook.alignment.BumpSteer;
import spindlebook.alignment.FaultSeen;
import spindlebook.alignment.ShapeMeaning;
import spindlebook.alignment.TellsApart;
import spindlebook.alignment.ToeRange;
import spindlebook.alignment.ToeRead;
import spindlebook.alignment.Window;
import spindlebook.corner.CarBook;
import spindlebook.corner.Card;
import spindlebook.corner.Dimension;
import spindlebook.corner.Steering;
import spindlebook.travel.Node;
import spindlebook.travel.StopFound;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;
import spindlebook.units.LengthUnit;
import spindlebook.units.TapeText;
import spindlebook.web.Chart;
import spindlebook.web.ChartDrawing;
import spindlebook.web.Field;
import spindlebook.web.FigureText;
import spindlebook.web.Lengths;
import spindlebook.web.State;

/** Lays toe against wheel position out as the bump steer page. */
final class BumpSteerViews {
  private static final double DEGREE = Math.toRadians(1);
  private static final double PER_MM = 100;

  private final Card card;
  private final CarBook book;
  private final Lengths lengths;
  private final CornerChart chart;
  private final CurveRead read;
  private final Optional<Figure> acrossMm;
  private final String typedMiddle;
  private final List<Need> needs = new ArrayList<>();
  private String middleProblem = "";

  BumpSteerViews(Card card, CarBook book, String typedMiddle) {
    this.card = card;
    this.book = book;
    this.lengths = new Lengths(card.details().unit());
    this.chart = new CornerChart(card);
    this.read = CurveRead.of(card, Curved.TOE, Steering.STRAIGHT, r -> true);
    this.acrossMm = ToeRead.acrossMm(card);
    this.typedMiddle = typedMiddle;
  }

  BumpSteerView view() {
    List<BumpSteerView.Range> ranges = new ArrayList<>();
    List<Fact> shape = new ArrayList<>();
    List<Meaning> meaning = new ArrayList<>();
    List<String> next = new ArrayList<>();
    String window = "";
    if (!read.angle() && !read.nodes().isEmpty()) {
      needs.add(
          new Need(
              "Toe was read as a length: give how far apart its two places are",
              "/corners/" + card.corner() + "/given"));
    } else if (Node.merge(read.nodes()).size() < 2) {
      needs.add(
          new Need(
              "Read toe straight ahead at two heights or more; five tell slope and bend apart",
              "/corners/" + card.corner() + "/rounds/new"));
    } else {
      BumpSteer steer = new BumpSteer(read.nodes());
      Window whole = usable().orElse(steer.read());
      window = windowWords(whole);
      ranges.add(
          range(
              "Over " + (usable().isPresent() ? "the usable travel" : "all that was read"),
              steer,
              whole));
      Window middle = middle(whole);
      ranges.add(range("Over the middle " + lengths.text(middle.lengthMm()), steer, middle));
      shape(steer, whole, shape, meaning, next);
    }
    return new BumpSteerView(
        "/corners/" + card.corner() + "/bump-steer",
        draw(),
        window,
        ranges,
        shape,
        rack(),
        meaning,
        next,
        card.layout().steered() ? shim() : null,
        needs,
        Field.of("middle", "How long a middle to count")
            .typed(typedMiddle)
            .hint("Empty: half of it.")
            .problem(middleProblem)
            .unit(card.details().unit().word()),
        "/corners/" + card.corner() + "/curves?of=toe");
  }

  private ChartDrawing draw() {
    if (read.nodes().isEmpty()) {
      return null;
    }
    Chart.Series series = chart.series("toe, straight ahead", read, false);
    int n = series.spots().size();
    return ChartDrawing.of(
        new Chart(
            "bump-steer",
            "Toe of this wheel against wheel position, " + card.place().words(),
            n + (n == 1 ? " reading" : " readings") + " straight ahead; + is toe-in.",
            chart.across(),
            CornerChart.up(read, card.details().unit()),
            List.of(series),
            List.of(),
            chart.posts()));
  }

  // --- the stretch of travel

  /** From stop to stop as they are set; empty while one of them is not known. */
  private Optional<Window> usable() {
    Optional<Double> droop = at(chart.travel().droop().stop());
    Optional<Double> bump = at(chart.travel().bump().stop());
    return droop.isPresent() && bump.isPresent() && droop.get() < bump.get()
        ? Optional.of(new Window(droop.get(), bump.get()))
        : Optional.empty();
  }

  private static Optional<Double> at(Optional<StopFound> stop) {
    return stop.map(s -> s.positionMm().value());
  }

  private String windowWords(Window w) {
    String stretch =
        usable().isPresent()
            ? "The usable travel as set, stop to stop"
            : "A stop is not known yet, so this is the stretch that was read";
    return stretch
        + ": "
        + place(w.fromMm())
        + " to "
        + place(w.toMm())
        + " "
        + fromZero()
        + "."
        + leftOut();
  }

  private String leftOut() {
    long n =
        card.readings().stream()
            .filter(Curved.TOE::reads)
            .filter(r -> r.counts() && r.reading().steering() != Steering.STRAIGHT)
            .count();
    return n == 0
        ? ""
        : " Straight ahead only: "
            + n
            + (n == 1 ? " reading" : " readings")
            + " of toe at lock left out here, drawn with the curves.";
  }

  private String fromZero() {
    return chart.zero().words();
  }

  private String place(double positionMm) {
    return lengths.signed(chart.zero().from(positionMm)).replace('-', '−')
        + " "
        + card.details().unit().word();
  }

  private Window middle(Window whole) {
    double length = whole.lengthMm() / 2;
    if (!typedMiddle.isBlank()) {
      double typed =
          TapeText.plain(typedMiddle, card.details().unit()).map(l -> l.mm()).orElse(-1.0);
      if (typed > 0) {
        length = Math.min(typed, whole.lengthMm());
      } else {
        middleProblem = "Type a length above nothing, such as 8 in or 200 mm.";
      }
    }
    return Window.about((whole.fromMm() + whole.toMm()) / 2, length);
  }

  // --- range

  private BumpSteerView.Range range(String name, BumpSteer steer, Window asked) {
    Optional<ToeRange> found = steer.range(asked);
    if (found.isEmpty()) {
      return new BumpSteerView.Range(
          name, null, null, State.NOT_MEASURED, "Toe was not read there.");
    }
    ToeRange range = found.get();
    Optional<AgainstTarget> limit = limit(range);
    return new BumpSteerView.Range(
        name,
        Rounded.plain(range.rad(), DEGREE, "°"),
        acrossMm.map(a -> across(range.rad().times(a.value()))).orElse(null),
        limit.map(l -> state(l, range)).orElse(null),
        words(range, limit));
  }

  /** To hundredths of an inch: a sixteenth is too coarse for toe. */
  private FigureText across(Figure mm) {
    LengthUnit unit = card.details().unit();
    return Rounded.plain(mm, unit.mm(), unit.word());
  }

  private Optional<AgainstTarget> limit(ToeRange range) {
    return card.given(Dimension.TOE_RANGE)
        .flatMap(g -> acrossMm.map(a -> range.atMost(g.length().mm() / a.value())));
  }

  /** What was not read may be worse, never better: only 'short' is told of a part. */
  private static State state(AgainstTarget limit, ToeRange range) {
    return switch (limit.decision()) {
      case SHORT -> State.SHORT;
      case CANT_TELL -> State.CANT_TELL;
      case CLEAR -> range.readThroughout() ? State.CLEAR : State.CANT_TELL;
    };
  }

  private String words(ToeRange range, Optional<AgainstTarget> limit) {
    StringBuilder words = new StringBuilder();
    words
        .append("Most toe-in at ")
        .append(place(range.mostInAtMm()))
        .append(", least at ")
        .append(place(range.mostOutAtMm()))
        .append('.');
    if (!range.readThroughout()) {
      words
          .append(" At least that much: toe was read from ")
          .append(place(range.read().fromMm()))
          .append(" to ")
          .append(place(range.read().toMm()))
          .append(" only.");
    }
    limit.ifPresent(
        l -> {
          words.append(" Your limit: ").append(limitWords(l));
          if (state(l, range) == State.CANT_TELL) {
            words.append(' ').append(settles(l, range));
          }
        });
    return words.toString();
  }

  /** As it was given, across the wheel, and the angle that is. */
  private String limitWords(AgainstTarget limit) {
    String given =
        card.given(Dimension.TOE_RANGE).map(g -> lengths.text(g.length().mm())).orElse("");
    return given + " across the wheel, " + Rounded.number(limit.upper() / DEGREE, 2) + "°.";
  }

  private static String settles(AgainstTarget limit, ToeRange range) {
    if (!range.readThroughout()) {
      return "Read toe at the ends that are missing.";
    }
    return SettledBy.words(limit.settles());
  }

  // --- shape

  private void shape(
      BumpSteer steer, Window whole, List<Fact> facts, List<Meaning> meaning, List<String> next) {
    if (chart.travel().rideMm().isEmpty() && chart.zero().words().contains("frame mark")) {
      needs.add(
          new Need(
              "Read ride height: slope and bend are counted there",
              "/corners/" + card.corner() + "/rounds/new"));
      return;
    }
    Optional<BumpShape> found = steer.shape(whole, chart.zero().mm());
    if (found.isEmpty()) {
      needs.add(
          new Need(
              "Read toe at three places or more on that stretch, above and below ride",
              "/corners/" + card.corner() + "/rounds/new"));
      return;
    }
    BumpShape shape = found.get();
    facts(shape, facts);
    if (!card.layout().steered()) {
      return;
    }
    if (card.details().rack() == null) {
      needs.add(
          new Need(
              "Say whether the rack lies ahead of or behind the axle: the shape's meaning turns"
                  + " round with it",
              "/cars/" + card.car() + "/details"));
      return;
    }
    ShapeMeaning says = ShapeMeaning.of(shape, card.details().rack());
    List<FaultSeen> said = says.said();
    for (FaultSeen fault : said) {
      meaning.add(meaning(fault));
    }
    if (said.isEmpty()) {
      meaning.add(
          new Meaning(
              "No fault of the tie rod shows",
              "can't tell more",
              "slope and bend are within what these readings' ± let see"));
    }
    for (TellsApart tells : says.next()) {
      next.add(spindlebook.card.Capital.of(tells.words()) + ".");
    }
  }

  private static Meaning meaning(FaultSeen fault) {
    return new Meaning(
        spindlebook.card.Capital.of(fault.fault().words()),
        fault.sureness().words(),
        "moves toe by " + effect(fault) + " between ride and the end of that stretch further off");
  }

  /** With the ± of the slope or bend that it comes from. */
  private static String effect(FaultSeen fault) {
    double uRad = Math.abs(fault.figure().u() / fault.figure().value()) * fault.effectRad();
    Source shape = new Source("shape", SourceKind.INTERPOLATION);
    FigureText text =
        Rounded.plain(Figure.of(Math.abs(fault.effectRad()), shape, uRad), DEGREE, "°");
    return text.whole() + "° ± " + text.plusMinus().whole();
  }

  private void facts(BumpShape shape, List<Fact> facts) {
    facts.add(
        new Fact("Toe at ride", Rounded.signed(shape.toeAtRideRad(), DEGREE, "°"), "+ is toe-in"));
    facts.add(new Fact("Slope at ride", slopeText(shape.slope()), "+ turns in going up"));
    facts.add(
        new Fact(
            "Bend",
            Rounded.signed(
                shape.curvature(), DEGREE / (perMm() * perMm()), "° per " + travel() + "²"),
            "+ turns in at both ends"));
    facts.add(
        new Fact(
            "Fitted to",
            FigureText.of(shape.readings() + " places", ""),
            "a curve of degree "
                + shape.degree()
                + " from "
                + place(shape.window().fromMm())
                + " to "
                + place(shape.window().toMm())));
  }

  private BumpSteerView.Shim shim() {
    Optional<ShimTrial.Tried> last = new ShimTrial(card, book).last();
    if (last.isEmpty()) {
      return new BumpSteerView.Shim(
          null,
          "None was tried. Change the shim under the outer tie-rod end in the book, by a known"
              + " thickness, set toe at ride again and read toe along the travel: this page then"
              + " says how much more levels it.",
          null);
    }
    ShimTrial.Tried tried = last.get();
    return new BumpSteerView.Shim(
        tried.moreMm().map(lengths::signedFigure).orElse(null), shimWords(tried), tried.entry());
  }

  private String shimWords(ShimTrial.Tried tried) {
    String by = lengths.signed(tried.upMm()).replace('-', '−') + " " + card.details().unit().word();
    if (tried.before() == null || tried.after() == null) {
      return by
          + " was tried. To say how much more, toe at three places or more and ride height are"
          + " needed "
          + (tried.before() == null ? "from before it; they were not read then." : "since it.");
    }
    String slopes =
        by + " took the slope from " + slope(tried.before()) + " to " + slope(tried.after()) + ".";
    return tried.moreMm().isEmpty()
        ? slopes + " That change is within its ±: try a thicker one, or read toe again."
        : slopes
            + " + is more shim, − is less. Taken as a straight line; set toe at ride again, then"
            + " read.";
  }

  private String slope(Figure radPerMm) {
    FigureText text = slopeText(radPerMm);
    return text.sign() + text.whole() + " ± " + text.plusMinus().whole() + text.unit();
  }

  private FigureText slopeText(Figure radPerMm) {
    return Rounded.signed(radPerMm, DEGREE / perMm(), "° per " + travel());
  }

  private double perMm() {
    return inch() ? LengthUnit.INCH.mm() : PER_MM;
  }

  private String travel() {
    return inch() ? "in" : "100 mm";
  }

  private boolean inch() {
    return card.details().unit() == LengthUnit.INCH;
  }

  private String rack() {
    return card.details().rack() == null || !card.layout().steered()
        ? ""
        : "Rack " + card.details().rack().words() + ".";
  }
}
