package spindlebook.charts;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spindlebook.alignment.BumpShape;
import spindlebook.alignment.BumpSteer;
import spindlebook.alignment.ShapeMeaning;
import spindlebook.alignment.ToeRead;
import spindlebook.alignment.Window;
import spindlebook.card.Capital;
import spindlebook.card.Counted;
import spindlebook.card.NeedAddress;
import spindlebook.curve.Node;
import spindlebook.definition.Dimension;
import spindlebook.drawing.Chart;
import spindlebook.drawing.FigureText;
import spindlebook.drawing.State;
import spindlebook.entry.Steering;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.linkage.CornerJoints;
import spindlebook.page.Field;
import spindlebook.page.Link;
import spindlebook.travel.StopFound;
import spindlebook.uncertainty.Figure;
import spindlebook.units.TapeText;

/** How much toe wanders along the travel, and what its shape says of the tie rod: bump steer. */
public final class BumpSteerView {

  /**
   * @param length the same across the wheel's edge; null where that distance was not given
   * @param state against the owner's limit; null without one
   * @param words what was read of it, and what would settle it
   */
  public record Range(
      String name, FigureText angle, FigureText length, State state, String words) {}

  public record Fact(String name, FigureText figure, String words) {}

  /**
   * @param sureness how sure that is, and by what
   * @param effect what it does to toe; may be empty
   */
  public record Meaning(String fault, String sureness, String effect) {}

  /**
   * A shim under the outer tie-rod end, as it was tried.
   *
   * @param more how much more would level toe; null while that cannot be told
   * @param href the change in the book; null before one
   */
  public record Shim(FigureText more, String words, String href) {}

  private final Card card;
  private final CornerChart chart;
  private final ToeWords words;
  private final CurveRead read;
  private final List<Node> places;
  private final Optional<Figure> acrossMm;
  private final Optional<Window> usable;
  private final String typedMiddle;

  /** What must be read or given first, each with where. */
  public final List<Link> needs = new ArrayList<>();

  /** Toe's range over the usable travel, and over its middle. */
  public final List<Range> ranges = new ArrayList<>();

  /** Slope and bow at ride; empty while something is needed for them. */
  public final List<Fact> facts = new ArrayList<>();

  /** What the shape says of the tie rod. */
  public final List<Meaning> meaning = new ArrayList<>();

  /** Readings that would tell its cases apart, or more. */
  public final List<String> next = new ArrayList<>();

  /** Null on a wheel that is not steered. */
  public final Shim shim;

  public final Field middle;

  private String window = "";
  private String middleProblem = "";

  BumpSteerView(CornerChart chart, Card card, CarBook book, String typedMiddle) {
    this.card = card;
    this.chart = chart;
    this.words = new ToeWords(card, chart);
    this.acrossMm = ToeRead.acrossMm(card);
    this.read = CurveRead.of(card, Curved.TOE, Steering.STRAIGHT, card.pairings().get(0), acrossMm);
    this.places = Node.merge(read.nodes());
    this.usable = usable();
    this.typedMiddle = typedMiddle;
    String round = "/corners/" + card.corner() + "/rounds/new";
    if (!read.angle() && !read.nodes().isEmpty()) {
      need("Toe was read as a length: give how far apart its two places are", across());
    } else if (places.size() < 2) {
      need("Read toe straight ahead at two heights or more; five tell slope and bow apart", round);
    } else {
      BumpSteer steer = new BumpSteer(read.nodes());
      Window whole = usable.orElse(steer.read());
      window = windowWords(whole);
      ranges(steer, whole);
      shape(steer, whole, round);
    }
    this.shim = card.layout().steered() ? new ShimTrial(card, book).shim(words) : null;
    this.middle =
        Field.of("middle", "Length of the middle")
            .typed(typedMiddle)
            .hint("Left empty: half of the whole stretch, about its own middle.")
            .problem(middleProblem)
            .unit(words.unit().word());
  }

  /** Which stretch of travel the figures are of, one sentence. */
  public String window() {
    return window;
  }

  private void need(String what, String where) {
    needs.add(new Link(what, where));
  }

  private String across() {
    return NeedAddress.given(card.corner(), Dimension.TOE_ACROSS);
  }

  // --- the drawing

  /** As drawn, but open where a reading lies outside the usable travel. */
  List<Chart.Series> told(Chart.Series drawn, CurveRead of) {
    List<Node> out = of.nodes().stream().filter(n -> !counts(n)).toList();
    if (out.isEmpty() || of.steering() != Steering.STRAIGHT) {
      return List.of(drawn);
    }
    List<Node> in = of.nodes().stream().filter(this::counts).toList();
    return List.of(
        new Chart.Series(
            drawn.name(), drawn.brief(), drawn.look(), false, chart.spots(in), drawn.line()),
        new Chart.Series(
            ToeShape.leftOut(words, out, usable.orElseThrow()),
            "",
            drawn.look(),
            true,
            chart.spots(out),
            List.of()));
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
      need("Your limit of toe is a length: give how far apart its two places are", across());
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

  private void shape(BumpSteer steer, Window whole, String round) {
    if (!chart.rideRead()) {
      need("Read ride height: slope and bow are counted there", round);
      return;
    }
    Optional<BumpShape> found = steer.shape(whole, chart.zero().mm());
    if (found.isEmpty()) {
      need("Read toe at three places or more on that stretch, above and below ride", round);
      return;
    }
    ToeShape shape = new ToeShape(words, found.get());
    facts.addAll(shape.facts(places, read.nodes().size()));
    if (!card.layout().steered()) {
      return;
    }
    if (CornerJoints.rack(card) == null) {
      needs.add(
          new Link(
              "Say whether the rack lies ahead of or behind the axle: the shape's meaning turns"
                  + " round with it",
              "/cars/" + card.car() + "/details"));
      return;
    }
    ShapeMeaning says = ShapeMeaning.of(found.get(), CornerJoints.rack(card));
    meaning.addAll(shape.meaning(says));
    next.addAll(ToeShape.next(says));
  }

  public String rack() {
    return CornerJoints.rack(card) == null || !card.layout().steered()
        ? ""
        : Capital.of("rack " + CornerJoints.rack(card).words() + ".");
  }
}
