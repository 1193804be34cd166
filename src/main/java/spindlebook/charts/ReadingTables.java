package spindlebook.charts;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import spindlebook.alignment.Toe;
import spindlebook.alignment.ToeRead;
import spindlebook.card.Capital;
import spindlebook.card.Days;
import spindlebook.card.Shown;
import spindlebook.charts.CurveView.Group;
import spindlebook.charts.CurveView.Row;
import spindlebook.charts.CurveView.StateSaid;
import spindlebook.charts.CurveView.Table;
import spindlebook.drawing.FigureText;
import spindlebook.drawing.Lengths;
import spindlebook.drawing.Rounded;
import spindlebook.drawing.State;
import spindlebook.entry.HeightName;
import spindlebook.entry.Quantity;
import spindlebook.entry.Steering;
import spindlebook.fold.Card;
import spindlebook.fold.SeenHeight;
import spindlebook.fold.SeenReading;
import spindlebook.fold.Standing;
import spindlebook.uncertainty.Figure;
import spindlebook.units.LengthUnit;

/** The readings behind a chart, bump above droop, in the chart's unit and as they were read. */
record ReadingTables(CurvePair pair, List<Steering> steerings) {
  private Lengths lengths() {
    return new Lengths(pair.card().details().unit());
  }

  List<Table> tables() {
    List<Table> tables = new ArrayList<>();
    String here = "Readings, " + pair.card().place().words();
    Compared other = pair.other();
    String now = pair.same() ? ", before the change and now: the same" : ", as they stand now";
    add(tables, here + now, pair.card(), pair.chart(), pair.of(), r -> true);
    if (pair.before()) {
      String then =
          ", that held before but not now: " + Compared.shortly(pair.card(), other.change());
      add(tables, here + then, other.card(), other.chart(), other.of(), this::moved);
    } else if (other != null) {
      String there = "Readings, " + other.name() + ", as they stand now";
      add(tables, there, other.card(), other.chart(), other.of(), r -> true);
    }
    return tables;
  }

  /** Of what stood before: whether it stands otherwise now, or not at all. */
  private boolean moved(SeenReading then) {
    return pair.card().reading(then.key()).map(now -> now.stands() != then.stands()).orElse(true);
  }

  private void add(
      List<Table> tables,
      String caption,
      Card card,
      CornerChart at,
      Curved of,
      Predicate<SeenReading> which) {
    Map<String, List<Row>> groups = new LinkedHashMap<>();
    card.readings().stream()
        .filter(r -> of.reads(r) && steerings.contains(r.reading().steering()))
        .filter(r -> r.stands() != Standing.REPLACED && which.test(r))
        .sorted(
            Comparator.comparing((SeenReading r) -> r.reading().steering())
                .thenComparing(r -> r.height().pairing())
                .thenComparing(ReadingTables::fromBump))
        .forEach(
            r ->
                groups
                    .computeIfAbsent(how(card, r), words -> new ArrayList<>())
                    .add(row(card, at, of, r)));
    if (!groups.isEmpty()) {
      // One group alone is named by the caption.
      String alone = groups.size() == 1 ? groups.keySet().iterator().next() : "";
      tables.add(
          new Table(
              caption + (alone.isEmpty() ? "" : "; " + alone),
              at.zero().words(),
              groups.entrySet().stream()
                  .map(
                      g ->
                          new Group(groups.size() == 1 ? "" : Capital.of(g.getKey()), g.getValue()))
                  .toList()));
    }
  }

  private static double fromBump(SeenReading r) {
    Figure at = r.height().positionMm();
    return at == null ? Double.MAX_VALUE : -at.value();
  }

  private static String how(Card card, SeenReading r) {
    boolean axle = card.pairings().get(0) != null;
    return CurveRead.words(card, r.reading().steering(), axle ? r.height().pairing() : null);
  }

  private Row row(Card card, CornerChart drawn, Curved of, SeenReading r) {
    Figure at = r.height().positionMm();
    boolean own = r.height().name() == HeightName.IN_BETWEEN && label(r.height()).isPresent();
    return new Row(
        own
            ? label(r.height()).get()
            : r.height().name().words() + label(r.height()).map(l -> ", " + l).orElse(""),
        own ? "" : then(r.height()),
        at == null ? null : lengths().signedFigure(at.plus(-drawn.zero().mm())),
        values(card, of, r),
        r.reading().typed(),
        Shown.state(r),
        "/entries/" + r.key());
  }

  private static Optional<String> label(SeenHeight height) {
    return Optional.ofNullable(height.height().label()).filter(l -> !l.isBlank());
  }

  /**
   * A height called after a stop that was moved since: the wheel stood there, the stop does not.
   */
  private static String then(SeenHeight height) {
    if (!height.name().onePlace() || height.stop().counts()) {
      return "";
    }
    String day = Days.day(height.at());
    return switch (height.name()) {
      case RIDE -> "ride on " + day + "; it may have moved since";
      case ON_THE_STRAP -> "the strap's place on " + day + ", not today's";
      default -> "the stop's place on " + day + ", not today's";
    };
  }

  private List<FigureText> values(Card card, Curved of, SeenReading r) {
    if (r.value() == null) {
      return List.of();
    }
    return of.quantity() == Quantity.TOE
        ? toe(r, CurvePair.acrossMm(pair.card(), card))
        : List.of(of.text(r.value(), r.reading().angle() != null, lengths()));
  }

  /** As an angle, as the chart has it, and as a length across the wheel's edge. */
  private List<FigureText> toe(SeenReading r, Optional<Figure> acrossMm) {
    Figure read = r.value();
    List<FigureText> toe = new ArrayList<>();
    if (r.reading().angle() != null) {
      toe.add(Rounded.degrees(read));
      LengthUnit unit = lengths().unit();
      acrossMm.ifPresent(
          a -> toe.add(Rounded.signed(new Toe(read).mm(a.value()), unit.mm(), unit.word())));
    } else {
      acrossMm.flatMap(a -> ToeRead.rad(r, a)).ifPresent(rad -> toe.add(Rounded.degrees(rad)));
      toe.add(lengths().signedFigure(read));
    }
    return toe;
  }

  /** What stands over the readings' column. */
  String head() {
    String plus = pair.of().plus();
    return "reading" + (plus.isEmpty() ? "" : ", + " + plus);
  }

  // --- the marks

  /** What each mark that stands in the tables means; one that all share is said here alone. */
  static List<StateSaid> states(List<Table> tables) {
    return tables.stream()
        .flatMap(t -> t.groups().stream())
        .flatMap(g -> g.rows().stream())
        .map(Row::state)
        .distinct()
        .sorted()
        .map(s -> new StateSaid(s, meaning(s)))
        .toList();
  }

  private static String meaning(State state) {
    return switch (state) {
      case CLEAR -> "keeps its rule, its ± counted";
      case SHORT -> "breaks its rule, its ± counted";
      case CANT_TELL -> "too near its rule for its ±";
      case STALE -> "something that moves it was changed since; does not count";
      case PUT_BACK -> "counts, but was not read since the setting was put back";
      case WORKED_OUT -> "counts, moved by as much as was set; not read since";
      case IN_DOUBT -> "waits for an answer; does not count";
      case NOT_MEASURED -> "no figure, or no wheel position";
      case LIVE -> "still true as the car is set; no rule to keep";
    };
  }
}
