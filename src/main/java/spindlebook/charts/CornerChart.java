package spindlebook.charts;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import spindlebook.card.TravelWords;
import spindlebook.card.Zero;
import spindlebook.corner.CornerFace;
import spindlebook.curve.MeasuredCurve;
import spindlebook.curve.Node;
import spindlebook.definition.Keep;
import spindlebook.drawing.Chart;
import spindlebook.drawing.Chart.Look;
import spindlebook.drawing.ChartAxis;
import spindlebook.drawing.ChartDrawing;
import spindlebook.drawing.FigureText;
import spindlebook.drawing.Lengths;
import spindlebook.drawing.TapeFace;
import spindlebook.entry.Pairing;
import spindlebook.fold.Card;
import spindlebook.travel.CornerTravel;
import spindlebook.travel.EndFindings;
import spindlebook.travel.TravelFindings;
import spindlebook.travel.WorkedOut;
import spindlebook.uncertainty.Figure;
import spindlebook.units.LengthUnit;

/**
 * A corner's curves as the lines, markers and bands of a chart; positions from its own zero, or
 * from what another curve in the same chart is counted from.
 */
public final class CornerChart {
  private static final int STEPS = 20;

  private final Card card;
  private final TravelFindings travel;
  private final Zero zero;

  public CornerChart(Card card) {
    this(card, CornerTravel.of(card));
  }

  private CornerChart(Card card, TravelFindings travel) {
    this(card, travel, Zero.of(card, travel));
  }

  private CornerChart(Card card, TravelFindings travel, Zero zero) {
    this.card = card;
    this.travel = travel;
    this.zero = zero;
  }

  CornerChart countedFrom(Zero other) {
    return new CornerChart(card, travel, other);
  }

  public Zero zero() {
    return zero;
  }

  /** Whether this corner has a ride to count from, whatever the chart counts from. */
  boolean rideRead() {
    return Zero.of(card, travel).ofRide();
  }

  public TravelFindings travel() {
    return travel;
  }

  /**
   * @param from "from ride"
   */
  ChartAxis along(String from) {
    return ChartAxis.length("wheel position " + from, unit(), "towards bump");
  }

  static ChartAxis value(CurveRead read, LengthUnit unit) {
    Curved of = read.of();
    return read.angle()
        ? ChartAxis.degrees(of.words(), of.plus())
        : ChartAxis.length(of.words(), unit, of.plus());
  }

  private LengthUnit unit() {
    return card.details().unit();
  }

  Chart.Series series(String name, CurveRead read, boolean hollow) {
    return new Chart.Series(
        name,
        brief(read),
        look(read),
        hollow,
        spots(read.nodes()),
        read.curve()
            .map(c -> WorkedOut.or(() -> line(c, read), why -> List.<Chart.At>of()))
            .orElse(List.of()));
  }

  /** "L". */
  private String brief(CurveRead read) {
    return switch (read.steering()) {
      case FULL_LEFT -> "L";
      case FULL_RIGHT -> "R";
      case PART_LEFT -> "part L";
      case PART_RIGHT -> "part R";
      case STRAIGHT ->
          read.pairing() != null
              ? read.pairing().words()
              : card.layout().steered() ? "straight" : "";
    };
  }

  /** The corner's own tape, where the chart counts from what the tape does; else null. */
  TapeFace tape() {
    TravelWords words = new TravelWords(card, travel);
    return zero.equals(words.zero())
        ? CornerFace.of(card, travel, words, true, 1, 1).orElse(null)
        : null;
  }

  List<Chart.Spot> spots(List<Node> nodes) {
    return nodes.stream().map(n -> spot(n.positionMm(), n.value())).toList();
  }

  public Chart.Spot spot(Figure positionMm, Figure value) {
    return new Chart.Spot(zero.from(positionMm), positionMm.U(), value.value(), value.U());
  }

  /**
   * @param words the value as it is read out
   */
  public Chart.At at(double positionMm, double value, String words) {
    double at = zero.from(positionMm);
    return new Chart.At(at, value, new Lengths(unit()).signedText(at) + "|" + words);
  }

  public Chart.Post post(String word, Figure positionMm) {
    return new Chart.Post(word, zero.from(positionMm));
  }

  /** All of it beside the corner's tape, ride and stops across. */
  public ChartDrawing drawn(
      String id, String title, String description, ChartAxis value, List<Chart.Series> series) {
    return drawn(id, title, description, value, series, List.of(), posts(), postWords());
  }

  /** The same with outlines that are shaded, and other lines across. */
  public ChartDrawing drawn(
      String id,
      String title,
      String description,
      ChartAxis value,
      List<Chart.Series> series,
      List<List<Chart.At>> shaded,
      List<Chart.Post> posts,
      String postWords) {
    return ChartDrawing.of(
        new Chart(
            id,
            title,
            description,
            along(zero.words()),
            value,
            series,
            List.of(),
            shaded,
            posts,
            postWords,
            tape()));
  }

  /** From reading to reading, so that the line goes through each of them. */
  private List<Chart.At> line(MeasuredCurve curve, CurveRead read) {
    List<Double> places = curve.nodes().stream().map(n -> n.positionMm().value()).toList();
    double length = curve.toMm() - curve.fromMm();
    List<Chart.At> line = new ArrayList<>();
    line.add(at(curve, read, places.get(0)));
    for (int i = 1; i < places.size(); i++) {
      double from = places.get(i - 1);
      double to = places.get(i);
      long steps = Math.max(1, Math.round(STEPS * (to - from) / length));
      for (int k = 1; k <= steps; k++) {
        double share = (double) k / steps;
        line.add(at(curve, read, (1 - share) * from + share * to));
      }
    }
    return line;
  }

  private Chart.At at(MeasuredCurve curve, CurveRead read, double positionMm) {
    Figure value = curve.at(positionMm);
    FigureText said = read.of().text(value, read.angle(), new Lengths(unit()));
    return at(positionMm, value.value(), said.words());
  }

  private static Look look(CurveRead read) {
    return switch (read.steering()) {
      case STRAIGHT -> read.pairing() == Pairing.CROSSED ? Look.CROSS : Look.SQUARE;
      case FULL_LEFT -> Look.LEFT_POINT;
      case FULL_RIGHT -> Look.RIGHT_POINT;
      case PART_LEFT -> Look.LEFT_HALF;
      case PART_RIGHT -> Look.RIGHT_HALF;
    };
  }

  /** Where the owner's rule for a watch point is broken. */
  List<Chart.Band> broken(Curved of) {
    List<Chart.Band> bands = new ArrayList<>();
    if (of.point() == null) {
      return bands;
    }
    Keep keep = of.point().keep();
    Lengths lengths = new TravelWords(card, travel).lengths();
    String rule = keep.inWords(mm -> lengths.text(mm.mm()));
    if (keep.least() != null) {
      bands.add(new Chart.Band(Double.NEGATIVE_INFINITY, keep.least().mm(), rule));
    }
    if (keep.most() != null) {
      bands.add(new Chart.Band(keep.most().mm(), Double.POSITIVE_INFINITY, rule));
    }
    if (keep.mostAngle() != null) {
      bands.add(new Chart.Band(keep.mostAngle().rad(), Double.POSITIVE_INFINITY, rule));
    }
    return bands;
  }

  /** Ride and the stops as they are set: what heights are called after may have moved since. */
  public List<Chart.Post> posts() {
    List<Chart.Post> posts = new ArrayList<>();
    stops(travel.droop()).forEach((of, mm) -> posts.add(post("strap as set" + of, mm)));
    travel.rideMm().ifPresent(p -> posts.add(post("ride", p)));
    stops(travel.bump()).forEach((of, mm) -> posts.add(post("stop solid" + of, mm)));
    return posts;
  }

  /** What the upright lines are; empty without one. */
  public String postWords() {
    List<String> said = new ArrayList<>();
    stops(travel.droop())
        .forEach(
            (of, mm) ->
                said.add("where the strap, as it is set now, ends the travel" + of + at(mm)));
    travel.rideMm().ifPresent(p -> said.add("ride"));
    stops(travel.bump())
        .forEach((of, mm) -> said.add("where the bump stop is solid" + of + at(mm)));
    return said.isEmpty()
        ? ""
        : "lines across, "
            + card.place().words()
            + ": "
            + String.join("; ", said)
            + (travel.droop().stop().isPresent() && travel.bump().stop().isPresent()
                ? "; outside the stops is no usable travel"
                : "");
  }

  private String at(Figure mm) {
    return ", " + new Lengths(unit()).signedText(zero.from(mm));
  }

  /** Where an end's stops are, by what tells a crossed one from one of both together. */
  private static Map<String, Figure> stops(EndFindings end) {
    Map<String, Figure> stops = new LinkedHashMap<>();
    for (EndFindings.Reach reach : end.reaches()) {
      String crossed = reach.pairing() == Pairing.CROSSED ? ", crossed" : "";
      reach.stop().ifPresent(s -> stops.put(crossed, s.positionMm()));
    }
    return stops;
  }
}
