package spindlebook.charts;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import spindlebook.alignment.ToeRead;
import spindlebook.card.Capital;
import spindlebook.card.Counted;
import spindlebook.card.Zero;
import spindlebook.drawing.Chart;
import spindlebook.drawing.ChartDrawing;
import spindlebook.entry.Steering;
import spindlebook.fold.Card;
import spindlebook.fold.SeenReading;
import spindlebook.uncertainty.Figure;
import spindlebook.units.LengthUnit;

/**
 * A thing's curves as of now, and those it is compared with, to be drawn. Both are counted from
 * what makes a place of one the same place of the other: of one corner from today's zero, of two
 * sides each from its own ride, or both from the frame mark where ride was not read at both.
 *
 * @param other null for a curve alone
 * @param here what counts now
 * @param there what counts, or counted, of the other; empty for a curve alone
 */
record CurvePair(
    Card card,
    CornerChart chart,
    Curved of,
    Compared other,
    List<CurveRead> here,
    List<CurveRead> there) {

  static CurvePair read(Card card, Curved of, List<Steering> steerings, Optional<Compared> other) {
    CornerChart own = new CornerChart(card);
    boolean level =
        other.map(o -> o.sideRead() && !(own.rideRead() && o.chart().rideRead())).orElse(false);
    CornerChart chart = level ? own.countedFrom(Zero.FRAME_MARK) : own;
    return new CurvePair(
        card,
        chart,
        of,
        other.map(o -> level || o.before() ? o.countedFrom(chart.zero()) : o).orElse(null),
        reads(card, of, steerings, acrossMm(card, card)),
        other
            .map(o -> reads(o.card(), o.of(), steerings, acrossMm(card, o.card())))
            .orElse(List.of()));
  }

  /** What toe read as a length counts across: of one corner what is given today, also before. */
  static Optional<Figure> acrossMm(Card today, Card at) {
    return ToeRead.acrossMm(at.corner().equals(today.corner()) ? today : at);
  }

  private static List<CurveRead> reads(
      Card card, Curved of, List<Steering> steerings, Optional<Figure> across) {
    return steerings.stream()
        .flatMap(s -> card.pairings().stream().map(p -> CurveRead.of(card, of, s, p, across)))
        .filter(r -> !r.nodes().isEmpty())
        .toList();
  }

  boolean before() {
    return other != null && other.before();
  }

  private boolean sides() {
    return other != null && other.sideRead();
  }

  /** "from ride": what the chart counts from; of two sides a ride each. */
  private String from() {
    return sides() && chart.zero().ofRide() ? "from each side's own ride" : chart.zero().words();
  }

  /** Where ride was never read, for want of which both sides are counted from the frame mark. */
  List<String> withoutRide() {
    List<String> without = new ArrayList<>();
    if (sides() && !chart.rideRead()) {
      without.add(card.place().words());
    }
    if (sides() && !other.chart().rideRead()) {
      without.add(other.name());
    }
    return without;
  }

  /** Whether the change moved none of the readings and none was taken since: one curve, not two. */
  boolean same() {
    return before() && !here.isEmpty() && points(here).equals(points(there));
  }

  private static List<List<Object>> points(List<CurveRead> reads) {
    List<List<Object>> points = new ArrayList<>();
    for (CurveRead read : reads) {
      for (int i = 0; i < read.nodes().size(); i++) {
        points.add(
            List.of(
                read.readings().get(i).key(),
                read.nodes().get(i).positionMm().value(),
                read.nodes().get(i).value().value()));
      }
    }
    return points;
  }

  /** Readings that count now and were taken after the change. */
  long since() {
    return drawnHere().filter(r -> r.n() > other.change().n()).count();
  }

  Stream<SeenReading> drawnHere() {
    return here.stream().flatMap(r -> r.readings().stream());
  }

  /** Says whether the chart is of angles or of lengths: one of this corner's, where it has any. */
  private Optional<CurveRead> first() {
    return Stream.concat(here.stream(), there.stream()).findFirst();
  }

  /** Whether it is drawn: no lengths where the chart has angles, nor the reverse. */
  boolean alike(CurveRead read) {
    return read.angle() == first().orElseThrow().angle();
  }

  /**
   * Null with nothing to draw.
   *
   * @param steer of toe alone; else null
   */
  ChartDrawing draw(String told, BumpSteerView steer) {
    Optional<CurveRead> first = first();
    if (first.isEmpty()) {
      return null;
    }
    List<CurveRead> pale = same() ? List.of() : there;
    List<Chart.Series> series = new ArrayList<>();
    pale.stream()
        .filter(this::alike)
        .forEach(r -> series.add(other.chart().series(name(other.name(), r), r, true)));
    here.stream()
        .filter(this::alike)
        .forEach(
            r -> {
              Chart.Series drawn = chart.series(name(nameHere(), r), r, false);
              series.addAll(steer == null ? List.of(drawn) : steer.told(drawn, r));
            });
    LengthUnit unit = card.details().unit();
    return ChartDrawing.of(
        new Chart(
            "curve",
            title(),
            told + describe(series),
            chart.along(from()),
            CornerChart.value(first.get(), unit),
            series,
            chart.broken(of),
            List.of(),
            chart.posts(),
            chart.postWords(),
            other == null ? chart.tape() : null));
  }

  private String title() {
    String title = Capital.of(of.words()) + " against wheel position, " + card.place().words();
    if (other == null) {
      return title;
    }
    return title
        + (before()
            ? (same() ? ", the same before and after: " : ", before and after: ")
                + Compared.shortly(card, other.change())
            : " and " + other.name());
  }

  private String nameHere() {
    if (other == null) {
      return "";
    }
    return !before() ? card.place().words() : same() ? "before and now" : "now";
  }

  private String name(String side, CurveRead read) {
    String words = read.words(card);
    if (side.isEmpty() || words.isEmpty()) {
      return side + words + (side.isEmpty() && words.isEmpty() ? of.words() : "");
    }
    return side + ": " + words;
  }

  private static String describe(List<Chart.Series> series) {
    return series.stream()
        .map(s -> s.name() + ", " + Counted.of(s.spots().size(), "reading"))
        .collect(Collectors.joining("; ", "", ". The figures are in the table below."));
  }
}
