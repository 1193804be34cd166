package spindlebook.align;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spindlebook.align.BumpSteerView.Fact;
import spindlebook.align.BumpSteerView.Meaning;
import spindlebook.align.BumpSteerView.Need;
import spindlebook.align.BumpSteerView.Range;
import spindlebook.alignment.BumpShape;
import spindlebook.alignment.BumpSteer;
import spindlebook.alignment.ShapeMeaning;
import spindlebook.alignment.ToeRead;
import spindlebook.alignment.Window;
import spindlebook.card.Capital;
import spindlebook.card.Counted;
import spindlebook.curve.Node;
import spindlebook.drawing.Chart;
import spindlebook.drawing.ChartDrawing;
import spindlebook.entry.Steering;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.page.Field;
import spindlebook.travel.StopFound;
import spindlebook.uncertainty.Figure;
import spindlebook.units.TapeText;

/** Lays toe against wheel position out as the bump steer page. */
final class BumpSteerViews {
  private final Card card;
  private final CarBook book;
  private final CornerChart chart;
  private final ToeWords words;
  private final CurveRead read;
  private final List<Node> places;
  private final Optional<Figure> acrossMm;
  private final Optional<Window> usable;
  private final String typedMiddle;
  private final List<Need> needs = new ArrayList<>();
  private final List<Range> ranges = new ArrayList<>();
  private final List<Fact> facts = new ArrayList<>();
  private final List<Meaning> meaning = new ArrayList<>();
  private final List<String> next = new ArrayList<>();
  private String window = "";
  private String middleProblem = "";

  BumpSteerViews(Card card, CarBook book, String typedMiddle) {
    this.card = card;
    this.book = book;
    this.chart = new CornerChart(card);
    this.words = new ToeWords(card, chart);
    this.read = CurveRead.of(card, Curved.TOE, Steering.STRAIGHT);
    this.places = Node.merge(read.nodes());
    this.acrossMm = ToeRead.acrossMm(card);
    this.usable = usable();
    this.typedMiddle = typedMiddle;
  }

  BumpSteerView view() {
    if (!read.angle() && !read.nodes().isEmpty()) {
      need("Toe was read as a length: give how far apart its two places are", "/given");
    } else if (places.size() < 2) {
      need(
          "Read toe straight ahead at two heights or more; five tell slope and bow apart",
          "/rounds/new");
    } else {
      BumpSteer steer = new BumpSteer(read.nodes());
      Window whole = usable.orElse(steer.read());
      window = windowWords(whole);
      ranges(steer, whole);
      shape(steer, whole);
    }
    return new BumpSteerView(
        "/corners/" + card.corner() + "/bump-steer",
        needs,
        rack(),
        meaning,
        next,
        draw(),
        window,
        ranges,
        facts,
        card.layout().steered() ? new ShimTrial(card, book).shim(words) : null,
        Field.of("middle", "Length of the middle")
            .typed(typedMiddle)
            .hint("Left empty: half of the whole stretch, about its own middle.")
            .problem(middleProblem)
            .unit(words.unit().word()),
        "/corners/" + card.corner() + "/curves?of=toe");
  }

  private void need(String what, String where) {
    needs.add(new Need(what, "/corners/" + card.corner() + where));
  }

  // --- the drawing

  private ChartDrawing draw() {
    if (read.nodes().isEmpty()) {
      return null;
    }
    Chart.Series drawn = chart.series("", read, false);
    List<Node> out = read.nodes().stream().filter(n -> !counts(n)).toList();
    List<Node> in = read.nodes().stream().filter(this::counts).toList();
    List<Chart.Series> series = new ArrayList<>();
    series.add(
        new Chart.Series(
            "toe, straight ahead", drawn.look(), false, chart.spots(in), drawn.line()));
    if (!out.isEmpty()) {
      series.add(
          new Chart.Series(
              ToeShape.leftOut(words, out, usable.orElseThrow()),
              drawn.look(),
              true,
              chart.spots(out),
              List.of()));
    }
    return ChartDrawing.of(
        new Chart(
            "bump-steer",
            "Toe of this wheel against wheel position, " + card.place().words(),
            Counted.of(read.nodes().size(), "reading")
                + " straight ahead, "
                + out.size()
                + " of them outside the usable travel; + is front edge inward.",
            chart.across(),
            CornerChart.up(read, words.unit()),
            series,
            List.of(),
            chart.posts(),
            chart.postWords()));
  }

  private boolean counts(Node node) {
    return usable.map(w -> w.holds(node.positionMm().value())).orElse(true);
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
        usable.isPresent()
            ? "The usable travel as set, stop to stop"
            : "A stop is not known yet, so this is the stretch that was read";
    return stretch
        + ": "
        + words.place(w.fromMm())
        + " to "
        + words.place(w.toMm())
        + " "
        + chart.zero().words()
        + "."
        + atLock()
        + ToeWords.acrossBorrowed(card);
  }

  private String atLock() {
    long n =
        card.readings().stream()
            .filter(Curved.TOE::reads)
            .filter(r -> r.counts() && r.reading().steering() != Steering.STRAIGHT)
            .count();
    return n == 0
        ? ""
        : " Straight ahead only: "
            + Counted.of(n, "reading")
            + " of toe at lock left out here, drawn with the curves.";
  }

  private void ranges(BumpSteer steer, Window whole) {
    ToeRanges toe = new ToeRanges(words, acrossMm);
    if (toe.needsAcross()) {
      need("Your limit of toe is a length: give how far apart its two places are", "/given");
    }
    String over = usable.isPresent() ? "the usable travel" : "all that was read";
    ranges.add(toe.range("Over " + over, steer, whole));
    Window middle = middle(whole);
    String length = words.lengths().text(middle.lengthMm());
    ranges.add(toe.range("Over the middle " + length, steer, middle));
  }

  private Window middle(Window whole) {
    double length = whole.lengthMm() / 2;
    if (!typedMiddle.isBlank()) {
      double typed = TapeText.plain(typedMiddle, words.unit()).map(l -> l.mm()).orElse(-1.0);
      if (typed > 0) {
        length = Math.min(typed, whole.lengthMm());
      } else {
        middleProblem = "Type a length above nothing, such as 8 in or 200 mm.";
      }
    }
    return Window.about((whole.fromMm() + whole.toMm()) / 2, length);
  }

  // --- the shape

  private void shape(BumpSteer steer, Window whole) {
    if (!chart.rideRead()) {
      need("Read ride height: slope and bow are counted there", "/rounds/new");
      return;
    }
    Optional<BumpShape> found = steer.shape(whole, chart.zero().mm());
    if (found.isEmpty()) {
      need("Read toe at three places or more on that stretch, above and below ride", "/rounds/new");
      return;
    }
    ToeShape shape = new ToeShape(words, found.get());
    facts.addAll(shape.facts(places, read.nodes().size()));
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
    ShapeMeaning says = ShapeMeaning.of(found.get(), card.details().rack());
    meaning.addAll(shape.meaning(says));
    next.addAll(ToeShape.next(says));
  }

  private String rack() {
    return card.details().rack() == null || !card.layout().steered()
        ? ""
        : Capital.of("rack " + card.details().rack().words() + ".");
  }
}
