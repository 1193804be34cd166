package spindlebook.geometry;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import spindlebook.card.Capital;
import spindlebook.card.Counted;
import spindlebook.charts.CornerChart;
import spindlebook.drawing.Chart;
import spindlebook.drawing.ChartAxis;
import spindlebook.drawing.ChartDrawing;
import spindlebook.drawing.FigureText;
import spindlebook.drawing.Lengths;
import spindlebook.drawing.Rounded;
import spindlebook.drawing.State;
import spindlebook.entry.Joint;
import spindlebook.fold.Card;
import spindlebook.fold.OfEntry;
import spindlebook.fold.SeenAlignment;
import spindlebook.fold.SeenReading;
import spindlebook.linkage.Calibration.Misfit;
import spindlebook.linkage.Coordinate;
import spindlebook.linkage.CoordinateFigure;
import spindlebook.linkage.CornerReading;
import spindlebook.linkage.Pose;
import spindlebook.linkage.Quantity;
import spindlebook.measured.CornerModel;
import spindlebook.measured.ModelRange;
import spindlebook.page.Link;
import spindlebook.page.Posted;
import spindlebook.uncertainty.Figure;
import spindlebook.units.LengthUnit;

/**
 * Whether the parts agree with the tape: readings on the line that the model makes, what each of
 * them is off, which is probably wrong, and what they do not tell of the joints.
 *
 * @param verdict in a line
 * @param wrong what is probably wrong, each with where to put it right; empty with nothing
 * @param locks at which it was read, straight ahead among them; empty where there is one alone
 * @param chart null where nothing was read of it
 * @param together pairs of which the readings tell no more than how one lies to the other
 * @param untold coordinates that the readings leave as the tape laid them out
 */
public record AgreeView(
    State state,
    String word,
    String verdict,
    List<Wrong> wrong,
    List<Choice> things,
    List<Choice> locks,
    ChartDrawing chart,
    List<Row> rows,
    List<Row> told,
    String untold,
    String together) {
  private static final int STEPS = 24;
  private static final int PAIRS = 4;

  /** Correlated like this, either may be off as long as the other is too; no source. */
  private static final double TOGETHER = 0.7;

  /** What can be drawn, and whether it is. */
  public record Choice(String word, String href, boolean chosen) {}

  /**
   * @param sentence what it says and what the rest says
   */
  public record Wrong(String sentence, Link again, Link entry) {}

  /**
   * @param read as read, or as laid out
   * @param off what is left of it, with its sign
   */
  public record Row(String where, String href, FigureText read, FigureText modelled, String off) {}

  static AgreeView of(Card card, CornerModel model, String asked, String lock) {
    CornerChart chart = new CornerChart(card);
    List<Quantity> read =
        Stream.of(Quantity.values()).filter(q -> readings(model, q).findAny().isPresent()).toList();
    Quantity shown =
        read.stream()
            .filter(q -> Posted.word(q).equals(asked))
            .findFirst()
            .or(() -> wrongQuantity(model))
            .orElse(read.isEmpty() ? Quantity.CAMBER : read.get(0));
    ModelRange range = ModelRange.of(card, model);
    List<Double> racks =
        range.racksMm().stream()
            .filter(rack -> readings(model, shown).anyMatch(r -> r.rackMm() == rack))
            .toList();
    double rack =
        racks.stream()
            .filter(r -> lock(range, r).equals(lock))
            .findFirst()
            .or(
                () ->
                    readings(model, shown)
                        .filter(r -> wrong(model, r.key()))
                        .map(CornerReading::rackMm)
                        .findFirst())
            .orElse(racks.contains(0.0) || racks.isEmpty() ? 0.0 : racks.get(0));
    LengthUnit unit = card.details().unit();
    List<Wrong> wrong =
        model.refused() == null
            ? model.wrong().stream().map(m -> wrong(card, model, m, unit)).toList()
            : notReached(card, model);
    boolean none = read.isEmpty();
    boolean off = model.refused() != null || !wrong.isEmpty();
    return new AgreeView(
        off ? State.IN_DOUBT : none ? State.NOT_MEASURED : State.CLEAR,
        model.refused() != null
            ? "no agreement"
            : off ? "one is wrong" : none ? "nothing read" : "they agree",
        model.refused() != null
            ? wrong.isEmpty()
                ? model.refused()
                : "Nothing is held against the joints until that is right."
            : none
                ? model.joints().positionMm() == null
                    ? "Say at any joint, under “Where the wheel stands”, at which height it stood:"
                        + " without it no reading is held against the joints."
                    : "No camber, toe, strap or shock was read along the travel."
                : agree(model),
        wrong,
        read.stream()
            .map(q -> new Choice(Capital.of(words(q)), "?of=" + Posted.word(q), q == shown))
            .toList(),
        racks.size() < 2
            ? List.of()
            : racks.stream()
                .map(
                    r ->
                        new Choice(
                            lock(range, r),
                            "?of="
                                + Posted.word(shown)
                                + "&lock="
                                + lock(range, r).replace(" ", "+"),
                            r == rack))
                .toList(),
        read.isEmpty() || model.joints().positionMm() == null
            ? null
            : draw(model, chart, range, shown, rack, unit),
        rows(model, shown, unit),
        coordinates(card, model),
        untold(model),
        together(model));
  }

  private static String agree(CornerModel model) {
    long wrong = model.wrong().stream().filter(m -> model.from().containsKey(m.key())).count();
    int agree = model.readings().size() - (int) wrong;
    return Counted.of(agree, "reading")
        + (agree == 1 ? " agrees" : " agree")
        + " with the joints; "
        + Math.round(model.all().redundancy())
        + " more than were needed.";
  }

  private static Optional<Quantity> wrongQuantity(CornerModel model) {
    return model.readings().stream()
        .filter(r -> model.wrong().stream().anyMatch(m -> m.key().equals(r.key())))
        .map(CornerReading::quantity)
        .findFirst();
  }

  private static Stream<CornerReading> readings(CornerModel model, Quantity of) {
    return model.readings().stream().filter(r -> r.quantity() == of);
  }

  static String lock(ModelRange range, double rackMm) {
    return rackMm == 0 ? "straight" : rackMm == range.leftMm().value() ? "full left" : "full right";
  }

  static String words(Quantity quantity) {
    return switch (quantity) {
      case CAMBER -> "camber";
      case TOE -> "toe";
      case CASTER -> "caster";
      case KPI -> "KPI";
      case HALF_TRACK -> "half track";
      case SHOCK -> "shock length";
      case STRAP -> "strap length";
    };
  }

  static boolean angle(Quantity quantity) {
    return quantity.compareTo(Quantity.KPI) <= 0;
  }

  static FigureText text(Quantity quantity, Figure figure, LengthUnit unit) {
    return angle(quantity) ? Rounded.degrees(figure) : new Lengths(unit).figure(figure);
  }

  private static ChartDrawing draw(
      CornerModel model,
      CornerChart chart,
      ModelRange range,
      Quantity shown,
      double rack,
      LengthUnit unit) {
    List<Chart.At> line = new ArrayList<>();
    for (Pose p : range.poses(model.linkage(), STEPS)) {
      if (model.linkage().steered(p, rack) instanceof Pose steered) {
        double value = shown.of(steered);
        line.add(chart.at(model.positionMm(p.heightMm()), value, said(shown, value, unit)));
      }
    }
    List<Chart.Spot> good = new ArrayList<>();
    List<Chart.Spot> bad = new ArrayList<>();
    for (CornerReading r : readings(model, shown).toList()) {
      if (r.rackMm() == rack) {
        Figure position = r.heightMm().plus(model.joints().positionMm());
        (wrong(model, r.key()) ? bad : good).add(chart.spot(position, r.value()));
      }
    }
    List<Chart.Series> series = new ArrayList<>();
    series.add(
        new Chart.Series(
            "what the joints make", "joints", Chart.Look.SQUARE, true, List.of(), line));
    if (!good.isEmpty()) {
      series.add(new Chart.Series("read", "", Chart.Look.SQUARE, false, good, List.of()));
    }
    if (!bad.isEmpty()) {
      series.add(
          new Chart.Series("read, probably wrong", "", Chart.Look.CROSS, false, bad, List.of()));
    }
    String named = words(shown) + (rack == 0 ? "" : " at " + lock(range, rack));
    ChartAxis up =
        angle(shown) ? ChartAxis.degrees(named, plus(shown)) : ChartAxis.length(named, unit, "");
    return chart.drawn(
        "agree",
        Capital.of(named) + ": read, and as the joints make it",
        Counted.of(good.size() + bad.size(), "reading") + ". The figures are in the table below.",
        up,
        series);
  }

  private static String said(Quantity quantity, double value, LengthUnit unit) {
    return angle(quantity)
        ? Rounded.signed(Math.toDegrees(value), 1) + "°"
        : new Lengths(unit).text(value);
  }

  private static String plus(Quantity quantity) {
    return switch (quantity) {
      case CAMBER -> "top outward";
      case TOE -> "front edge inward";
      case CASTER -> "top rearward";
      case KPI -> "top inboard";
      default -> "";
    };
  }

  private static boolean wrong(CornerModel model, String key) {
    return model.wrong().stream().anyMatch(m -> m.key().equals(key));
  }

  private static List<Row> rows(CornerModel model, Quantity shown, LengthUnit unit) {
    return readings(model, shown)
        .sorted(Comparator.comparingDouble(r -> r.heightMm().value()))
        .map(r -> row(model, r, unit))
        .toList();
  }

  private static Row row(CornerModel model, CornerReading r, LengthUnit unit) {
    Optional<Figure> modelled = model.modelled(r.quantity(), r.heightMm().value(), r.rackMm());
    OfEntry from = model.from().get(r.key());
    return new Row(
        where(from),
        "/entries/" + from.key(),
        text(r.quantity(), r.value(), unit),
        modelled.map(m -> text(r.quantity(), m, unit)).orElse(null),
        modelled.map(m -> off(r.quantity(), r.value().value() - m.value(), unit)).orElse(""));
  }

  private static String off(Quantity quantity, double off, LengthUnit unit) {
    return angle(quantity)
        ? Rounded.signed(Math.toDegrees(off), 1) + "°"
        : new Lengths(unit).signedText(off);
  }

  private static String where(OfEntry from) {
    return from instanceof SeenReading r
        ? Capital.of(r.height().words())
            + (r.reading().steering().steered() ? ", " + r.reading().steering().words() : "")
        : "Alignment at ride";
  }

  /** Readings at heights to which the joints as laid out do not let the wheel. */
  private static List<Wrong> notReached(Card card, CornerModel model) {
    return model.readings().stream()
        .filter(r -> model.modelled(r.quantity(), r.heightMm().value(), r.rackMm()).isEmpty())
        .map(r -> wrong(card, model, r, ": the joints as laid out do not get there."))
        .toList();
  }

  private static Wrong wrong(Card card, CornerModel model, CornerReading reading, String why) {
    OfEntry from = model.from().get(reading.key());
    return new Wrong(
        Capital.of(words(reading.quantity())) + ", " + where(from).toLowerCase(Locale.ROOT) + why,
        new Link("Measure it again", again(card, from)),
        new Link("Open the reading", "/entries/" + from.key()));
  }

  private static Wrong wrong(Card card, CornerModel model, Misfit misfit, LengthUnit unit) {
    if (!model.from().containsKey(misfit.key())) {
      Coordinate of =
          model.coordinates().stream()
              .map(CoordinateFigure::coordinate)
              .filter(c -> c.words().equals(misfit.key()))
              .findFirst()
              .orElseThrow();
      boolean along = of instanceof Coordinate.Along;
      Joint joint = along ? ((Coordinate.Along) of).joint() : Joint.W;
      String off =
          along
              ? new Lengths(unit).signedText(misfit.off())
              : Rounded.signed(Math.toDegrees(misfit.off()), 1) + "°";
      return new Wrong(
          Capital.of(joint.words)
              + ", "
              + misfit.key()
              + ": off by "
              + off
              + " from what all readings say.",
          new Link("Measure it again", LinkageView.href(card, joint)),
          null);
    }
    CornerReading reading =
        model.readings().stream()
            .filter(r -> r.key().equals(misfit.key()))
            .findFirst()
            .orElseThrow();
    Optional<Figure> modelled =
        model.modelled(reading.quantity(), reading.heightMm().value(), reading.rackMm());
    String says = modelled.map(m -> text(reading.quantity(), m, unit).words()).orElse("?");
    boolean minus =
        modelled
            .filter(m -> Math.abs(m.plus(reading.value()).value()) <= m.plus(reading.value()).U())
            .isPresent();
    return wrong(
        card,
        model,
        reading,
        ": read "
            + said(reading.quantity(), reading.value().value(), unit)
            + ", all the rest says "
            + says
            + (minus ? ". Was a minus left out?" : "."));
  }

  private static String again(Card card, OfEntry from) {
    if (from instanceof SeenReading r) {
      return "/heights/" + r.height().key() + "?steering=" + Posted.word(r.reading().steering());
    }
    return from instanceof SeenAlignment
        ? "/corners/" + card.corner() + "/alignment#measure"
        : "/entries/" + from.key();
  }

  /** How the joints that agree best lie from those laid out, the furthest first. */
  private static List<Row> coordinates(Card card, CornerModel model) {
    if (model.all() == null) {
      return List.of();
    }
    return model.coordinates().stream()
        .filter(c -> c.coordinate() instanceof Coordinate.Along)
        .map(c -> moved(card, model, c))
        .filter(r -> r != null)
        .limit(8)
        .toList();
  }

  private static Row moved(Card card, CornerModel model, CoordinateFigure c) {
    double laidOut = c.coordinate().of(model.joints().linkage().joints());
    Figure by = c.value().plus(-laidOut);
    Lengths lengths = new Lengths(card.details().unit());
    String href = LinkageView.href(card, ((Coordinate.Along) c.coordinate()).joint());
    return Math.abs(by.value()) < by.u() * 0.5
        ? null
        : new Row(c.coordinate().words(), href, lengths.signedFigure(by), null, "");
  }

  /** Coordinates that the readings tell only together, the closest first. */
  private static String together(CornerModel model) {
    Map<String, Double> pairs = new TreeMap<>();
    List<CoordinateFigure> all = model.all() == null ? List.of() : model.coordinates();
    for (CoordinateFigure one : all) {
      for (CoordinateFigure other : all.subList(0, all.indexOf(one))) {
        double with = Math.abs(other.value().correlation(one.value()));
        if (with > TOGETHER) {
          pairs.put(other.coordinate().words() + " with " + one.coordinate().words(), -with);
        }
      }
    }
    return pairs.entrySet().stream()
        .sorted(Map.Entry.comparingByValue())
        .limit(PAIRS)
        .map(Map.Entry::getKey)
        .collect(Collectors.joining(", "));
  }

  private static String untold(CornerModel model) {
    return model.all() == null
        ? ""
        : model.all().untold().stream().map(Coordinate::words).collect(Collectors.joining(", "));
  }
}
