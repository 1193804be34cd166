package spindlebook.drawing;

import static spindlebook.drawing.TapeFace.tenth;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/**
 * A chart with every coordinate worked out, in drawing units, x right and y down; the template only
 * prints it.
 *
 * @param plot the rectangle the curves stand in
 * @param bands where a rule is broken
 * @param shaded by their outlines
 * @param rules what the rules behind the bands demand
 * @param barWords what the bars are, and where none show; empty when no reading has a ±
 * @param barShown whether any reading's ± is long enough to be drawn
 * @param postWords what the lines across are; empty without one
 * @param travelWords what runs up the page
 * @param valueWords what runs across it
 * @param tape the tape beside the plot, as tall as it; null for numbers instead
 */
public record ChartDrawing(
    String id,
    String title,
    String description,
    double width,
    double height,
    Box plot,
    List<Box> bands,
    List<Line> shaded,
    List<String> rules,
    List<Line> lines,
    List<Words> words,
    List<Drawn> series,
    String barWords,
    boolean barShown,
    String postWords,
    String travelWords,
    String valueWords,
    TapeFace tape) {

  /** A rectangle by its upper left corner. */
  public record Box(double x, double y, double width, double height) {
    boolean overlaps(Box other) {
      return x + 0.11 < other.x + other.width
          && other.x + 0.11 < x + width
          && y + 0.11 < other.y + other.height
          && other.y + 0.11 < y + height;
    }
  }

  /** A line through the points, in SVG's own notation. */
  public record Line(String points, String mark) {}

  /** One line of text by its baseline; {@code mark} also says how it is anchored. */
  public record Words(double x, double y, String text, String mark) {}

  private static Box box(double x, double y, double width, double height) {
    return new Box(tenth(x), tenth(y), tenth(width), tenth(height));
  }

  private static Line line(String mark, double... xy) {
    StringBuilder points = new StringBuilder();
    for (int i = 0; i < xy.length; i += 2) {
      points.append(i == 0 ? "" : " ").append(tenth(xy[i])).append(',').append(tenth(xy[i + 1]));
    }
    return new Line(points.toString(), mark);
  }

  /**
   * One curve: its line, ± bars, marks as an SVG path, and its sample for the key.
   *
   * @param reads what it says along its line, for a finger: "y|position|value" a place; null where
   *     no tape stands beside it
   */
  public record Drawn(
      String name,
      String brief,
      String mark,
      String line,
      List<Line> bars,
      String markers,
      String sample,
      String reads) {}

  private static final double WIDTH = 360;
  private static final double PLOT = 285;
  private static final double TAPE = 42;
  private static final double SMALL = 13;
  private static final double ROW = 15;
  private static final double CAP = 3;
  private static final int TICKS = 7;

  /** How wide the tape is drawn. */
  public double tapeWide() {
    return TAPE;
  }

  /** A chart needs at least one reading. */
  public static ChartDrawing of(Chart chart) {
    return new Scale(chart).draw();
  }

  private static final class Scale {
    private final Chart chart;
    private final List<Double> travel;
    private final List<Double> value;
    private final double left;
    private final double right;
    private final double top;
    private final double bottom;
    private final List<Box> taken = new ArrayList<>();
    private boolean barShown;
    private boolean barTooShort;

    Scale(Chart chart) {
      this.chart = chart;
      List<Chart.Spot> spots = chart.series().stream().flatMap(s -> s.spots().stream()).toList();
      List<Double> travelShown = new ArrayList<>();
      List<Double> valueShown = new ArrayList<>();
      for (Chart.Spot s : spots) {
        travelShown.addAll(List.of(s.travel() - s.travelPm(), s.travel() + s.travelPm()));
        valueShown.addAll(List.of(s.value() - s.valuePm(), s.value() + s.valuePm()));
      }
      chart.posts().forEach(p -> travelShown.add(p.at()));
      Stream.concat(chart.series().stream().map(Chart.Series::line), chart.shaded().stream())
          .flatMap(List::stream)
          .forEach(
              at -> {
                travelShown.add(at.travel());
                valueShown.add(at.value());
              });
      chart.bands().forEach(b -> valueShown.addAll(List.of(b.from(), b.to())));
      this.travel = chart.tape() == null ? ticks(chart.travel(), travelShown) : around(travelShown);
      this.value = ticks(chart.value(), valueShown);
      double widest =
          travel.stream()
              .mapToDouble(t -> TextWidth.of(chart.travel().label(t), SMALL, false))
              .max()
              .orElse(0);
      this.left = chart.tape() == null ? Math.ceil(widest) + 9 : TAPE + 12;
      String last = chart.value().label(value.get(value.size() - 1));
      this.right = WIDTH - Math.ceil(TextWidth.of(last, SMALL, false) / 2) - 4;
      this.top = ROW;
      this.bottom = top + PLOT;
    }

    private static List<Double> around(List<Double> shown) {
      var all = shown.stream().mapToDouble(d -> d).summaryStatistics();
      double border = Math.max(1, all.getMax() - all.getMin()) / 8;
      return List.of(all.getMin() - border, all.getMax() + border);
    }

    private static List<Double> ticks(ChartAxis axis, List<Double> shown) {
      var all = shown.stream().filter(Double::isFinite).mapToDouble(d -> d).summaryStatistics();
      return axis.ticks(all.getMin(), all.getMax(), TICKS);
    }

    private double x(double at) {
      return left + (right - left) * share(value, at);
    }

    private double y(double at) {
      return bottom - (bottom - top) * share(travel, at);
    }

    private static double share(List<Double> ticks, double at) {
      double from = ticks.get(0);
      return (at - from) / (last(ticks) - from);
    }

    private static double last(List<Double> ticks) {
      return ticks.get(ticks.size() - 1);
    }

    ChartDrawing draw() {
      List<Line> lines = new ArrayList<>();
      List<Words> words = new ArrayList<>();
      for (double t : value) {
        lines.add(line(zero(t) ? "chart-zero" : "chart-grid", x(t), top, x(t), bottom));
        words.add(new Words(tenth(x(t)), tenth(bottom + 17), chart.value().label(t), "mid"));
      }
      if (chart.tape() == null) {
        for (double t : travel) {
          lines.add(line("chart-grid", left, y(t), right, y(t)));
          words.add(
              new Words(tenth(left - 5), tenth(y(t) + 4.5), chart.travel().label(t), "at-end"));
        }
      }
      posts(lines, words);
      rules(lines, words);
      ends(words);
      List<Drawn> series = chart.series().stream().map(this::drawn).toList();
      return new ChartDrawing(
          chart.id(),
          chart.title(),
          chart.description(),
          WIDTH,
          bottom + 24,
          box(left, top, right - left, bottom - top),
          bands(),
          chart.shaded().stream().map(this::shaded).toList(),
          chart.bands().stream().map(Chart.Band::rule).distinct().toList(),
          lines,
          words,
          series,
          barWords(),
          barShown,
          chart.postWords(),
          chart.travel().words(),
          chart.value().words(),
          chart.tape() == null
              ? null
              : chart.tape().over(travel.get(0), last(travel), bottom - top, TAPE));
    }

    private String barWords() {
      String far = "how far a reading may be off, 19 times in 20 (k = 2)";
      if (!barShown) {
        return barTooShort ? "no bars: " + far + ", is less than a mark is wide" : "";
      }
      return "bars: " + far + (barTooShort ? "; none where that is less than a mark is wide" : "");
    }

    private static boolean zero(double tick) {
      return Math.abs(tick) < 1e-12;
    }

    /**
     * Each word beside its line, over or under it, where it runs into nothing, another line too.
     */
    private void posts(List<Line> lines, List<Words> words) {
      for (Chart.Post post :
          chart.posts().stream().sorted(Comparator.comparingDouble(Chart.Post::at)).toList()) {
        double y = y(post.at());
        lines.add(line("chart-post", left, y, right, y));
        double wide = TextWidth.of(post.word(), SMALL, false) + 8;
        List<Box> rooms =
            List.of(
                box(right - wide, y - ROW, wide, ROW),
                box(right - wide, y + 1, wide, ROW),
                box(left, y - ROW, wide, ROW),
                box(left, y + 1, wide, ROW));
        Box room =
            rooms.stream().filter(r -> free(r) && clear(r, post)).findFirst().orElse(rooms.get(0));
        taken.add(room);
        words.add(new Words(tenth(room.x() + 4), tenth(room.y() + 11), post.word(), "at-start"));
      }
    }

    private boolean clear(Box room, Chart.Post of) {
      return room.y() >= top
          && chart.posts().stream()
              .filter(p -> !p.equals(of))
              .noneMatch(p -> y(p.at()) > room.y() && y(p.at()) < room.y() + ROW);
    }

    private boolean overlaps(Box room) {
      return taken.stream().anyMatch(t -> t.overlaps(room));
    }

    /** Each rule's edge, and in words beside it on the side that is kept, clear of the readings. */
    private void rules(List<Line> lines, List<Words> words) {
      for (Chart.Band band : chart.bands()) {
        boolean least = Double.isInfinite(band.from());
        double edge = x(least ? band.to() : band.from());
        lines.add(line("chart-rule", edge, top, edge, bottom));
        String text = "rule: " + band.rule();
        double wide = TextWidth.of(text, SMALL, false) + 8;
        double x = Math.min(right - wide, least ? edge : Math.max(left, edge - wide));
        Box room = box(x, top + 2, wide, ROW);
        while (!free(room) && room.y() + 2 * ROW < bottom) {
          room = box(x, room.y() + ROW, wide, ROW);
        }
        taken.add(room);
        words.add(new Words(tenth(x + 4), tenth(room.y() + 11), text, "at-start"));
      }
    }

    private boolean free(Box room) {
      return !overlaps(room)
          && chart.series().stream()
              .flatMap(s -> s.line().stream())
              .map(at -> box(x(at.value()) - 2, y(at.travel()) - 2, 4, 4))
              .noneMatch(room::overlaps);
    }

    /**
     * A curve's name over its upper end and under its lower one, a row on where one stands: the
     * shortest first, for a long one can give way further.
     */
    private void ends(List<Words> words) {
      List<Chart.Series> named =
          chart.series().stream()
              .filter(s -> !s.line().isEmpty() && !s.hollow())
              .sorted(Comparator.comparingInt(s -> s.brief().length()))
              .toList();
      for (Chart.Series series : named) {
        Chart.At low = series.line().get(0);
        Chart.At high = series.line().get(series.line().size() - 1);
        end(words, series.brief(), x(high.value()), y(high.travel()) - 8 - ROW, -ROW);
        end(words, series.brief(), x(low.value()), y(low.travel()) + 6, ROW);
      }
    }

    private void end(List<Words> words, String name, double at, double from, double step) {
      double wide = TextWidth.of(name, SMALL, true) + 4;
      Box room = null;
      // Beside it first, then a row on; what finds no room is in the key.
      for (int i = 0; (room == null || overlaps(room)) && i < 15; i++) {
        double aside = new double[] {0, .5, -.5, 1, -1}[i % 5] * (wide + 4);
        double x = Math.max(left, Math.min(right - wide, at - wide / 2 + aside));
        room = box(x, from + step * (i / 5), wide, ROW);
      }
      if (name.isEmpty() || overlaps(room) || room.y() < 0 || room.y() + ROW > bottom + 4) {
        return;
      }
      taken.add(room);
      words.add(new Words(tenth(room.x() + 2), tenth(room.y() + 12), name, "at-start chart-end"));
    }

    private List<Box> bands() {
      List<Box> boxes = new ArrayList<>();
      for (Chart.Band band : chart.bands()) {
        double from = x(inside(band.from()));
        double to = x(inside(band.to()));
        if (from < to) {
          boxes.add(box(from, top, to - from, bottom - top));
        }
      }
      return boxes;
    }

    private Line shaded(List<Chart.At> line) {
      return line(
          "chart-shaded",
          line.stream()
              .flatMapToDouble(at -> DoubleStream.of(x(at.value()), y(at.travel())))
              .toArray());
    }

    private double inside(double at) {
      return Math.max(value.get(0), Math.min(last(value), at));
    }

    private Drawn drawn(Chart.Series series) {
      StringBuilder points = new StringBuilder();
      StringBuilder reads = new StringBuilder();
      for (Chart.At at : series.line()) {
        double y = tenth(y(at.travel()));
        points.append(points.length() == 0 ? "" : " ");
        points.append(tenth(x(at.value()))).append(',').append(y);
        if (chart.tape() != null) {
          reads.append(reads.length() == 0 ? "" : ";").append(y).append('|').append(at.says());
        }
      }
      List<Line> bars = new ArrayList<>();
      StringBuilder markers = new StringBuilder();
      for (Chart.Spot s : series.spots()) {
        double x = x(s.value());
        double y = y(s.travel());
        double half = ChartMark.half(series.hollow());
        double high = y - y(s.travel() + s.travelPm());
        if (seen(high, half)) {
          bars.add(
              line(
                  "", x - CAP, y - high, x + CAP, y - high, x, y - high, x, y + high, x - CAP,
                  y + high, x + CAP, y + high));
        }
        double wide = x(s.value() + s.valuePm()) - x;
        if (seen(wide, half)) {
          bars.add(
              line(
                  "", x - wide, y - CAP, x - wide, y + CAP, x - wide, y, x + wide, y, x + wide,
                  y - CAP, x + wide, y + CAP));
        }
        markers.append(ChartMark.path(series.look(), series.hollow(), x, y));
      }
      return new Drawn(
          series.name(),
          series.brief(),
          series.look().mark() + (series.hollow() ? " look-hollow" : ""),
          points.toString(),
          bars,
          markers.toString(),
          ChartMark.path(series.look(), series.hollow(), 22, 9),
          reads.length() == 0 ? null : reads.toString());
    }

    /** Whether a bar reaches out of its mark; the key says of those that do not. */
    private boolean seen(double bar, double half) {
      boolean seen = bar > half + 0.5;
      barShown |= seen;
      barTooShort |= !seen && bar > 0;
      return seen;
    }
  }
}
