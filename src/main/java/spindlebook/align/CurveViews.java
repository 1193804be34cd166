package spindlebook.align;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import spindlebook.align.CurveView.Pickable;
import spindlebook.alignment.ToeRead;
import spindlebook.card.Days;
import spindlebook.card.Shown;
import spindlebook.corner.CarBook;
import spindlebook.corner.Card;
import spindlebook.corner.Change;
import spindlebook.corner.Quantity;
import spindlebook.corner.SeenReading;
import spindlebook.corner.Standing;
import spindlebook.corner.Steering;
import spindlebook.uncertainty.Figure;
import spindlebook.units.LengthUnit;
import spindlebook.web.Chart;
import spindlebook.web.ChartDrawing;
import spindlebook.web.FigureText;
import spindlebook.web.Lengths;
import spindlebook.web.Posted;

/** Lays one thing's readings out as a curve's page: drawn, compared, and as a table. */
final class CurveViews {
  private static final String OTHER_SIDE = "other-side";
  private static final String BEFORE = "before-";

  private final Card card;
  private final CarBook book;
  private final Lengths lengths;
  private final CornerChart chart;
  private final List<String> notes = new ArrayList<>();

  CurveViews(Card card, CarBook book) {
    this.card = card;
    this.book = book;
    this.lengths = new Lengths(card.details().unit());
    this.chart = new CornerChart(card);
  }

  CurveView view(String thing, String steering, String against) {
    List<Curved> all = Curved.all(card);
    Curved of = all.stream().filter(c -> c.word().equals(thing)).findFirst().orElse(all.get(0));
    List<Steering> swung =
        List.of(Steering.values()).stream().filter(s -> Posted.word(s).equals(steering)).toList();
    List<Steering> steerings = swung.isEmpty() ? List.of(Steering.values()) : swung;
    Optional<Compared> other = compared(of, against);
    Predicate<SeenReading> now = other.map(Compared::here).orElse(r -> true);
    List<CurveRead> here = read(card, of, steerings, now);
    List<CurveRead> there =
        other.map(o -> read(o.card(), o.of(), steerings, r -> true)).orElse(List.of());
    note(of, here, other, there);
    return new CurveView(
        "/corners/" + card.corner() + "/curves",
        all.stream().map(c -> new Pickable(c.word(), c.words(), c.equals(of))).toList(),
        steerings(swung),
        against(against),
        draw(of, here, other, there),
        notes,
        tables(of, steerings, other));
  }

  // --- what it is compared with

  /**
   * @param here which readings of this corner take part
   */
  private record Compared(
      Card card, Curved of, CornerChart chart, String name, Predicate<SeenReading> here) {}

  private Optional<Compared> compared(Curved of, String against) {
    if (against.equals(OTHER_SIDE)) {
      return mirror()
          .flatMap(
              m ->
                  of.on(m)
                      .map(
                          c ->
                              new Compared(
                                  m, c, new CornerChart(m), m.place().words(), r -> true)));
    }
    return changes().stream()
        .filter(c -> against.equals(BEFORE + c.key()))
        .findFirst()
        .flatMap(c -> before(of, c));
  }

  /** The corner as it was known just before the change, against what was read since. */
  private Optional<Compared> before(Curved of, Change change) {
    Card then = book.asOf(change.n() - 1).card(card.corner());
    return of.on(then)
        .map(c -> new Compared(then, c, new CornerChart(then), "before", r -> r.n() > change.n()));
  }

  private Optional<Card> mirror() {
    return book.cornerAt(card.place().mirror()).map(book::card);
  }

  /** Changes that readings of this corner were taken before and after, the last first. */
  private List<Change> changes() {
    return card.changes().stream()
        .filter(c -> c.place() == null || c.place() == card.place())
        .filter(c -> card.readings().stream().anyMatch(r -> r.n() < c.n()))
        .filter(c -> card.readings().stream().anyMatch(r -> r.n() > c.n()))
        .sorted(Comparator.comparingLong(Change::n).reversed())
        .toList();
  }

  private List<Pickable> against(String chosen) {
    List<Pickable> against = new ArrayList<>();
    against.add(new Pickable("", "nothing", chosen.isEmpty()));
    mirror()
        .ifPresent(
            m ->
                against.add(
                    new Pickable(OTHER_SIDE, m.place().words(), chosen.equals(OTHER_SIDE))));
    for (Change c : changes()) {
      String value = BEFORE + c.key();
      against.add(
          new Pickable(
              value,
              "before " + Days.day(c.at()) + ": " + shortened(c.words()),
              value.equals(chosen)));
    }
    return against;
  }

  private static String shortened(String words) {
    return words.length() <= 60 ? words : words.substring(0, 59) + "…";
  }

  private List<Pickable> steerings(List<Steering> swung) {
    List<Pickable> steerings = new ArrayList<>();
    steerings.add(new Pickable("", "every steering", swung.isEmpty()));
    for (Steering s : Steering.values()) {
      if (card.layout().steered() || s == Steering.STRAIGHT) {
        steerings.add(new Pickable(Posted.word(s), s.words(), swung.contains(s)));
      }
    }
    return steerings;
  }

  // --- the drawing

  private static List<CurveRead> read(
      Card card, Curved of, List<Steering> steerings, Predicate<SeenReading> which) {
    return steerings.stream()
        .flatMap(s -> card.pairings().stream().map(p -> CurveRead.of(card, of, s, p, which)))
        .filter(r -> !r.nodes().isEmpty())
        .toList();
  }

  private ChartDrawing draw(
      Curved of, List<CurveRead> here, Optional<Compared> other, List<CurveRead> there) {
    List<CurveRead> both = new ArrayList<>(here);
    both.addAll(there);
    if (both.isEmpty()) {
      return null;
    }
    boolean angle = both.get(0).angle();
    List<Chart.Series> series = new ArrayList<>();
    for (CurveRead read : there) {
      if (read.angle() == angle) {
        String name = read.words() + ", " + other.orElseThrow().name();
        series.add(other.orElseThrow().chart().series(name, read, true));
      }
    }
    for (CurveRead read : here) {
      if (read.angle() == angle) {
        String name = other.isEmpty() ? read.words() : nameHere(read, other.get());
        series.add(chart.series(name, read, false));
      }
    }
    String title = of.words() + " against wheel position, " + card.place().words();
    LengthUnit unit = card.details().unit();
    return ChartDrawing.of(
        new Chart(
            "curve",
            title,
            describe(series),
            chart.across(),
            CornerChart.up(both.get(0), unit),
            series,
            CornerChart.broken(of),
            chart.posts()));
  }

  private String nameHere(CurveRead read, Compared other) {
    String here = other.name().equals("before") ? "after" : card.place().words();
    return read.words() + ", " + here;
  }

  private static String describe(List<Chart.Series> series) {
    List<String> said = new ArrayList<>();
    for (Chart.Series s : series) {
      said.add(
          s.name() + ": " + s.spots().size() + (s.spots().size() == 1 ? " reading" : " readings"));
    }
    return String.join("; ", said) + ". The figures are in the table below.";
  }

  private void note(
      Curved of, List<CurveRead> here, Optional<Compared> other, List<CurveRead> there) {
    notes.add(
        "Positions are "
            + chart.zero().words()
            + ", + towards bump. Bars are ± U, k = 2. Between readings the line is"
            + " shape-preserving and never goes on past the last one.");
    if (of.quantity() == Quantity.TOE && ToeRead.acrossMm(card).isEmpty()) {
      notes.add(
          "Toe read as a length stays one until it is given how far apart its two places are; an"
              + " angle is not drawn beside it.");
    }
    for (CurveRead read : here) {
      if (read.leftOut() > 0) {
        notes.add(
            read.leftOut()
                + " of "
                + read.words()
                + " cannot be drawn beside the others and stand in the table only.");
      }
      if (read.curve().isEmpty()) {
        notes.add("At " + read.words() + " it was read at one place only: no line yet.");
      }
    }
    long gone =
        card.readings().stream()
            .filter(r -> of.reads(r) && r.value() != null && r.stands() != Standing.REPLACED)
            .filter(r -> !r.stands().counts())
            .count();
    if (gone > 0) {
      notes.add(
          (gone == 1 ? "1 reading does" : gone + " readings do")
              + " not count as things are set now and "
              + (gone == 1 ? "is" : "are")
              + " in the table only.");
    }
    if (other.isPresent() && there.isEmpty()) {
      notes.add("Nothing to compare it with was read: " + other.get().name() + ".");
    }
    if (other.isPresent() && !here.isEmpty() && other.get().name().equals("before")) {
      notes.add("Full markers: read after the change. Empty ones: what held just before it.");
    }
  }

  // --- the tables

  private List<CurveView.Table> tables(
      Curved of, List<Steering> steerings, Optional<Compared> other) {
    List<CurveView.Table> tables = new ArrayList<>();
    String here = other.isEmpty() ? "Readings" : "Readings, " + card.place().words();
    tables.add(new CurveView.Table(here, rows(card, chart, of, steerings)));
    other.ifPresent(
        o ->
            tables.add(
                new CurveView.Table(
                    "Readings, " + o.name() + (o.card().n() < card.n() ? ", as they stood" : ""),
                    rows(o.card(), o.chart(), o.of(), steerings))));
    tables.removeIf(t -> t.rows().isEmpty());
    return tables;
  }

  private List<CurveView.Row> rows(
      Card of, CornerChart at, Curved thing, List<Steering> steerings) {
    return of.readings().stream()
        .filter(r -> thing.reads(r) && steerings.contains(r.reading().steering()))
        .filter(r -> r.stands() != Standing.REPLACED)
        .sorted(
            Comparator.comparing((SeenReading r) -> r.reading().steering())
                .thenComparing(
                    r ->
                        r.height().positionMm() == null
                            ? Double.MAX_VALUE
                            : -r.height().positionMm().value()))
        .map(r -> row(at, thing, r))
        .toList();
  }

  private CurveView.Row row(CornerChart drawn, Curved of, SeenReading r) {
    Figure at = r.height().positionMm();
    return new CurveView.Row(
        r.height().words(),
        at == null ? null : lengths.signedFigure(at.plus(-drawn.zero().mm())),
        r.reading().steering().words(),
        value(of, r),
        r.reading().typed(),
        Shown.state(r),
        "/entries/" + r.key());
  }

  private FigureText value(Curved of, SeenReading r) {
    if (r.value() == null) {
      return null;
    }
    boolean sign = of.quantity() == Quantity.TOE || of.quantity() == Quantity.CAMBER;
    if (r.reading().angle() != null) {
      double degree = Math.toRadians(1);
      return sign ? Rounded.signed(r.value(), degree, "°") : Rounded.plain(r.value(), degree, "°");
    }
    return sign ? lengths.signedFigure(r.value()) : lengths.figure(r.value());
  }
}
