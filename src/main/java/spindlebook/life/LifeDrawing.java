package spindlebook.life;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import spindlebook.card.Days;
import spindlebook.definition.Setting;
import spindlebook.drawing.Lengths;
import spindlebook.drawing.TapeFace.Area;
import spindlebook.drawing.TapeSheet.Line;
import spindlebook.drawing.TextWidth;
import spindlebook.fold.Change;
import spindlebook.fold.SeenSignOff;
import spindlebook.fold.SeenUse;
import spindlebook.life.LifeSheet.Day;
import spindlebook.life.LifeSheet.Words;
import spindlebook.travel.End;
import spindlebook.travel.Life;
import spindlebook.travel.Life.Known;
import spindlebook.units.LengthUnit;

/**
 * Lays out a corner's life. A margin's band is as tall as its ±: above nought it keeps its limit,
 * below it is past it, across nobody can tell; hatched where it was not current.
 */
final class LifeDrawing {
  private static final double FROM = 22;
  private static final double NOW = 86;
  private static final double TO = 99;
  private static final double LETTER = 1.8;
  private static final double SMALL = 15;
  private static final int STRETCHES = 5;

  private final LifeView view;
  private final Lengths lengths;
  private final Instant first;
  private final Instant last;
  private final List<Area> areas = new ArrayList<>();
  private final List<Line> lines = new ArrayList<>();
  private final List<Words> words = new ArrayList<>();
  private double y = 26;

  private LifeDrawing(LifeView view) {
    this.view = view;
    lengths = view.words().lengths();
    List<Life.Point> points = view.life().points();
    last = view.last();
    Instant known =
        points.stream()
            .filter(p -> p.ends().droop().marginMm() != null || p.ends().bump().marginMm() != null)
            .findFirst()
            .orElse(points.get(0))
            .at();
    Instant anHour = last.minus(Duration.ofHours(1));
    first = known.isBefore(anHour) ? known : anHour;
  }

  static LifeSheet of(LifeView view) {
    return new LifeDrawing(view).sheet();
  }

  private LifeSheet sheet() {
    double stepMm = stepMm();
    double perMm = Math.min(26 / stepMm, 170 / (span(End.BUMP, stepMm) + span(End.DROOP, stepMm)));
    end(End.BUMP, stepMm, perMm);
    end(End.DROOP, stepMm, perMm);
    view.settings().forEach(this::setting);
    drives();
    double foot = y;
    grid(foot);
    view.signOffs().forEach(s -> flag(s, foot));
    hits(foot);
    line("l-now", NOW, 12, NOW, foot);
    text("is-end b", NOW - 1, 22, "now");
    if (view.tried() != null) {
      text("", NOW + 1, 22, "tried");
    }
    return new LifeSheet(view.title(), foot + 24, areas, lines, words, days());
  }

  private void text(String mark, double x, double y, String text) {
    words.add(new Words(mark, x, y, text));
  }

  private void line(String mark, double x1, double y1, double x2, double y2) {
    lines.add(new Line(mark, null, x1, y1, x2, y2));
  }

  private void area(String mark, String fill, double x, double y, double width, double height) {
    areas.add(new Area(mark, fill, x, y, width, height));
  }

  private double x(Instant at) {
    double all = Duration.between(first, last).toMillis();
    double share = Duration.between(first, at).toMillis() / all;
    return FROM + (NOW - FROM) * Math.max(0, Math.min(1, share));
  }

  // --- the two ends

  private static boolean same(Known one, Known other) {
    return one.shown() ? other.shown() && one.near(other) : !other.shown();
  }

  private DoubleStream edges(End end) {
    Stream<Known> known = view.life().points().stream().map(p -> p.ends().at(end));
    Stream<Known> tried =
        Stream.ofNullable(view.tried()).filter(t -> t.end() == end).map(LifeView.Tried::known);
    return Stream.concat(known, tried)
        .filter(Known::shown)
        .flatMapToDouble(
            k -> DoubleStream.of(k.marginMm() - k.expandedMm(), k.marginMm() + k.expandedMm()));
  }

  private double low(End end) {
    return Math.min(0, edges(end).min().orElse(0));
  }

  private double high(End end, double stepMm) {
    return Math.max(low(end) < 0 ? 0 : stepMm, edges(end).max().orElse(0));
  }

  private double span(End end, double stepMm) {
    return high(end, stepMm) - low(end);
  }

  private double stepMm() {
    double stepMm = lengths.unit() == LengthUnit.INCH ? 12.7 : 10;
    while (span(End.BUMP, stepMm) + span(End.DROOP, stepMm) > 8 * stepMm) {
      stepMm *= 2;
    }
    return stepMm;
  }

  private void end(End end, double stepMm, double perMm) {
    text("b t2", 0, y + 16, end == End.BUMP ? "Bump" : "Droop");
    double top = y + 26;
    double high = high(end, stepMm);
    double low = low(end);
    double zero = top + high * perMm;
    for (int i = (int) (low / stepMm); i * stepMm <= high; i++) {
      double at = zero - i * stepMm * perMm;
      line(i == 0 ? "l-zero" : "l-grid", FROM - 1, at, TO, at);
      text("is-end", FROM - 2, at + 5, lengths.signed(i * stepMm).replace('-', '−'));
    }
    double bottom = zero - low * perMm;
    List<double[]> taken = new ArrayList<>();
    taken.add(new double[] {FROM, TO, zero - 1, zero + 1});
    List<Runnable> labels = new ArrayList<>();
    List<Life.Point> points = view.life().points();
    Known labelled = null;
    Known now = points.get(points.size() - 1).ends().at(end);
    Known before = null;
    for (int i = 0; i < points.size(); i++) {
      Known known = points.get(i).ends().at(end);
      double from = x(points.get(i).at());
      while (i + 1 < points.size() && same(points.get(i + 1).ends().at(end), known)) {
        i++;
      }
      double to = i + 1 < points.size() ? x(points.get(i + 1).at()) : NOW;
      if (known.shown()) {
        double[] band = band(known, from, to, zero, perMm);
        taken.add(band);
        // What is known now stands above the drawing.
        if (!known.near(now) && (labelled == null || !known.near(labelled))) {
          labels.add(() -> label(known, band, taken));
          labelled = known;
        }
        before = known;
      } else if (before != null) {
        double[] was = edges(before, zero, perMm);
        double wide = Math.max(to - from, 1.2);
        area("f-paper", null, from, was[0], wide, was[1] - was[0]);
        area("f-not-current", "url(#life-h)", from, was[0], wide, was[1] - was[0]);
      }
    }
    if (before == null) {
      area("f-off", null, FROM, zero - 20, NOW - FROM, 20);
      text("b", FROM + 2, zero - 5, "? not measured");
    }
    labels.forEach(Runnable::run);
    if (view.tried() != null && view.tried().end() == end) {
      double[] at = edges(view.tried().known(), zero, perMm);
      area("f-tried", null, NOW + .8, at[0], TO - NOW - 1.6, at[1] - at[0]);
    }
    y = bottom + (low < 0 ? 22 : 6);
  }

  private static double[] edges(Known known, double zero, double perMm) {
    double high = zero - (known.marginMm() + known.expandedMm()) * perMm;
    double low = zero - (known.marginMm() - known.expandedMm()) * perMm;
    return new double[] {high, Math.max(low, high + 4)};
  }

  /** Left, right, upper and lower edge. */
  private double[] band(Known known, double from, double to, double zero, double perMm) {
    double[] at = edges(known, zero, perMm);
    double wide = Math.max(to - from, .6);
    if (at[0] < zero) {
      area("f-usable", null, from, at[0], wide, Math.min(at[1], zero) - at[0]);
    }
    double below = Math.max(at[0], zero);
    if (at[1] > below) {
      area("f-paper", null, from, below, wide, at[1] - below);
      area("f-past-a-limit f-edge", "url(#life-b)", from, below, wide, at[1] - below);
    }
    if (known.atLeast()) {
      text("is-end", to - .5, at[0] - 2, "▲");
    }
    return new double[] {from, to, at[0], at[1]};
  }

  /** How much, where there is room beneath its band, or above. */
  private void label(Known known, double[] band, List<double[]> taken) {
    String text = view.margin(known);
    double wide = text.length() * LETTER;
    double from = Math.min(band[0], NOW - wide);
    for (double top : new double[] {band[3] + 2, band[2] - SMALL - 2}) {
      double[] box = {from, from + wide, top, top + SMALL};
      boolean free =
          from >= FROM - 1
              && taken.stream()
                  .noneMatch(t -> t[0] < box[1] && box[0] < t[1] && t[2] < box[3] && box[2] < t[3]);
      if (free) {
        taken.add(box);
        text("b", from, top + 12, text);
        return;
      }
    }
  }

  // --- beneath them, on the same axis

  private void setting(LifeView.SetOverTime set) {
    double base = y + 28;
    List<String> name = TextWidth.wrap(set.name(), 14, false, 84, 2);
    for (int i = 0; i < name.size(); i++) {
      text("", 0, base + 4 - (name.size() - 1 - i) * SMALL, name.get(i));
    }
    List<Setting> values = new ArrayList<>();
    values.add(set.first());
    List<double[]> begin = new ArrayList<>();
    begin.add(new double[] {FROM, base});
    for (LifeView.Turn turn : set.turns()) {
      double[] from = begin.get(begin.size() - 1);
      boolean same = turn.to().same(values.get(values.size() - 1));
      double next = same ? from[1] : from[1] == base ? base + 7 : base;
      double x = x(turn.at());
      line("l-set", from[0], from[1], x, from[1]);
      line("l-set", x, from[1], x, next);
      values.add(turn.to());
      begin.add(new double[] {x, next});
    }
    double[] last = begin.get(begin.size() - 1);
    line("l-set", last[0], last[1], NOW, last[1]);
    // From the last one back, which is never left out.
    double free = NOW + .5;
    for (int i = values.size() - 1; i >= 0; i--) {
      String text = values.get(i) == null ? "?" : values.get(i).inWords();
      double wide = text.length() * LETTER;
      double x = begin.get(i)[0] + .5;
      x = i == values.size() - 1 ? Math.min(x, free - wide) : x;
      if (x + wide <= free) {
        text("b", Math.max(x, FROM), begin.get(i)[1] - 6, text);
        free = x - .5;
      }
    }
    if (view.tried() != null && view.tried().of(set)) {
      line("l-set l-tried", NOW, last[1] - 6, TO, last[1] - 6);
      text("is-end b", TO, last[1] + 12, view.tried().to().inWords());
    }
    y = base + 8;
  }

  private void drives() {
    double base = y + 28;
    text("", 0, base, "drives");
    line("l-zero", FROM - 1, base, TO, base);
    double free = 0;
    for (int i = 0; i < view.uses().size(); i++) {
      SeenUse use = view.uses().get(i);
      if (!use.at().isBefore(first)) {
        double x = x(use.at());
        area("f-ink", null, x - .5, base - 16, 1.2, 16);
        String number = Integer.toString(i + 1);
        double wide = number.length() * LETTER;
        boolean left = x + 2 + wide > NOW;
        double from = left ? x - 1 - wide : x + 1.2;
        if (from > free) {
          text("b", from, base - 3, number);
          free = from + wide;
        }
      }
    }
    y = base;
  }

  private void hits(double foot) {
    for (Change hit : view.hits()) {
      if (!hit.at().isBefore(first)) {
        double x = x(hit.at());
        line("l-hit", x, 26, x, foot);
        text("b is-short", x - 1.6, foot - 18, "✕ hit");
      }
    }
  }

  private void flag(SeenSignOff signed, double foot) {
    if (signed.at().isBefore(first)) {
      return;
    }
    double x = x(signed.at());
    String text = view.signed(signed);
    double wide = text.length() * LETTER + 3.5;
    double from = x + wide > NOW - 8 ? x - wide : x;
    line("l-pole", x, 0, x, foot);
    area("f-ink", null, from, 0, wide, 18);
    text("b on-ink", from + 1, 14, text);
  }

  // --- time

  private static final List<Predicate<LocalDate>> MARKED =
      List.of(
          d -> true,
          d -> d.toEpochDay() % 2 == 0,
          d -> d.getDayOfMonth() % 7 == 1 && d.getDayOfMonth() < 28,
          d -> d.getDayOfMonth() == 1 || d.getDayOfMonth() == 15,
          d -> d.getDayOfMonth() == 1,
          d -> d.getDayOfMonth() == 1 && d.getMonthValue() % 3 == 1,
          d -> d.getDayOfYear() == 1,
          d -> d.getDayOfYear() == 1 && d.getYear() % 5 == 0,
          d -> d.getDayOfYear() == 1 && d.getYear() % 25 == 0);

  private void grid(double foot) {
    ZoneId zone = ZoneId.systemDefault();
    LocalDate from = first.atZone(zone).toLocalDate().plusDays(1);
    LocalDate to = last.atZone(zone).toLocalDate().plusDays(1);
    List<LocalDate> marks =
        MARKED.stream()
            .map(m -> from.datesUntil(to.isBefore(from) ? from : to).filter(m).limit(5).toList())
            .filter(days -> days.size() < 5)
            .findFirst()
            .orElse(List.of());
    for (LocalDate day : marks) {
      double x = x(day.atStartOfDay(zone).toInstant());
      line("l-grid", x, 30, x, foot + 20);
      String pattern =
          day.getDayOfYear() == 1 ? "uuuu" : day.getDayOfMonth() == 1 ? "MMM" : "d MMM";
      DateTimeFormatter said = DateTimeFormatter.ofPattern(pattern, Locale.ENGLISH);
      text("", x + .8, foot + 16, said.format(day));
    }
    if (marks.isEmpty()) {
      text("", FROM, foot + 16, Days.day(first));
    }
  }

  /** Each as wide as a thumb; it leads to the last change in it. */
  private List<Day> days() {
    List<Day> days = new ArrayList<>();
    double wide = (NOW - FROM) / STRETCHES;
    for (int i = 0; i < STRETCHES; i++) {
      double from = FROM + i * wide;
      boolean end = i == STRETCHES - 1;
      view.life().points().stream()
          .filter(p -> !p.at().isBefore(first))
          .filter(p -> x(p.at()) >= from && (end || x(p.at()) < from + wide))
          .reduce((earlier, later) -> later)
          .ifPresent(
              p -> days.add(new Day(from, wide, view.address(p.n()), "As of " + Days.day(p.at()))));
    }
    return days;
  }
}
