package spindlebook.drawing;

import static spindlebook.drawing.TapeFace.tenth;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * A chart with every coordinate worked out, in drawing units, x right and y down; the template only
 * prints it.
 *
 * @param plot the rectangle the curves stand in
 * @param bands where a rule is broken
 * @param rules what the rules behind the bands demand
 * @param barWords what the bars are, and where none show; empty when no reading has a ±
 * @param barShown whether any reading's ± is long enough to be drawn
 * @param postWords what the upright lines are; empty without one
 */
public record ChartDrawing(
    String id,
    String title,
    String description,
    double width,
    double height,
    Box plot,
    List<Box> bands,
    List<String> rules,
    List<Line> lines,
    List<Words> words,
    List<Drawn> series,
    String barWords,
    boolean barShown,
    String postWords) {

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

  /** One curve: its line, ± bars, marks as an SVG path, and its sample for the key. */
  public record Drawn(
      String name, String mark, String line, List<Line> bars, String markers, String sample) {}

  private static final double WIDTH = 360;
  private static final double PLOT = 230;
  private static final double SMALL = 13;
  private static final double ROW = 15;
  private static final double CAP = 3;
  private static final int TICKS = 7;

  /** A chart needs at least one reading. */
  public static ChartDrawing of(Chart chart) {
    return new Scale(chart).draw();
  }

  private static final class Scale {
    private final Chart chart;
    private final List<Double> across;
    private final List<Double> up;
    private final List<String> upWords;
    private final List<String> acrossWords;
    private final double left;
    private final double right;
    private final double top;
    private final double bottom;
    private boolean barShown;
    private boolean barTooShort;

    Scale(Chart chart) {
      this.chart = chart;
      List<Chart.Spot> spots = chart.series().stream().flatMap(s -> s.spots().stream()).toList();
      List<Double> acrossShown = new ArrayList<>();
      List<Double> upShown = new ArrayList<>();
      for (Chart.Spot s : spots) {
        acrossShown.addAll(List.of(s.across() - s.acrossPm(), s.across() + s.acrossPm()));
        upShown.addAll(List.of(s.up() - s.upPm(), s.up() + s.upPm()));
      }
      chart.posts().forEach(p -> acrossShown.add(p.at()));
      chart.series().forEach(s -> s.line().forEach(at -> upShown.add(at.up())));
      chart.series().forEach(s -> s.line().forEach(at -> acrossShown.add(at.across())));
      chart.bands().forEach(b -> upShown.addAll(List.of(b.from(), b.to())));
      this.across = ticks(chart.across(), acrossShown);
      this.up = ticks(chart.up(), upShown);
      double widest =
          up.stream()
              .mapToDouble(t -> TextWidth.of(chart.up().label(t), SMALL, false))
              .max()
              .orElse(0);
      this.left = Math.ceil(widest) + 9;
      String last = chart.across().label(across.get(across.size() - 1));
      this.right = WIDTH - Math.ceil(TextWidth.of(last, SMALL, false) / 2) - 4;
      this.upWords = TextWidth.wrap(chart.up().words(), SMALL, false, WIDTH - 4, 2);
      this.acrossWords = TextWidth.wrap(chart.across().words(), SMALL, false, right - 2, 2);
      this.top = 11 + ROW * upWords.size();
      this.bottom = top + PLOT;
    }

    private static List<Double> ticks(ChartAxis axis, List<Double> shown) {
      var all = shown.stream().filter(Double::isFinite).mapToDouble(d -> d).summaryStatistics();
      return axis.ticks(all.getMin(), all.getMax(), TICKS);
    }

    private double x(double at) {
      return left + (right - left) * share(across, at);
    }

    private double y(double at) {
      return bottom - (bottom - top) * share(up, at);
    }

    private static double share(List<Double> ticks, double at) {
      double from = ticks.get(0);
      return (at - from) / (ticks.get(ticks.size() - 1) - from);
    }

    ChartDrawing draw() {
      List<Line> lines = new ArrayList<>();
      List<Words> words = new ArrayList<>();
      for (int i = 0; i < upWords.size(); i++) {
        words.add(new Words(2, tenth(14 + ROW * i), upWords.get(i), "at-start"));
      }
      double under = bottom + 23 + ROW;
      for (int i = 0; i < acrossWords.size(); i++) {
        words.add(new Words(tenth(right), tenth(under + ROW * i), acrossWords.get(i), "at-end"));
      }
      for (double t : up) {
        lines.add(line(zero(t) ? "chart-zero" : "chart-grid", left, y(t), right, y(t)));
        words.add(new Words(tenth(left - 5), tenth(y(t) + 4.5), chart.up().label(t), "at-end"));
      }
      for (double t : across) {
        lines.add(line("chart-grid", x(t), top, x(t), bottom));
        words.add(new Words(tenth(x(t)), tenth(bottom + 17), chart.across().label(t), "mid"));
      }
      posts(lines, words);
      rules(lines, words);
      List<Drawn> series = chart.series().stream().map(this::drawn).toList();
      return new ChartDrawing(
          chart.id(),
          chart.title(),
          chart.description(),
          WIDTH,
          under + ROW * (acrossWords.size() - 1) + 6,
          box(left, top, right - left, bottom - top),
          bands(),
          chart.bands().stream().map(Chart.Band::rule).distinct().toList(),
          lines,
          words,
          series,
          barWords(),
          barShown,
          chart.postWords());
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

    /** Each word beside its line, a row further down where it would run into the one before. */
    private void posts(List<Line> lines, List<Words> words) {
      List<Box> taken = new ArrayList<>();
      for (Chart.Post post :
          chart.posts().stream().sorted(Comparator.comparingDouble(Chart.Post::at)).toList()) {
        double x = x(post.at());
        lines.add(line("chart-post", x, top, x, bottom));
        double wide = TextWidth.of(post.word(), SMALL, false) + 8;
        boolean toLeft = x + wide > right;
        Box room = box(toLeft ? x - wide : x, top, wide, ROW);
        while (overlaps(taken, room)) {
          room = box(room.x(), room.y() + ROW, wide, ROW);
        }
        taken.add(room);
        words.add(
            new Words(
                tenth(toLeft ? x - 4 : x + 4),
                tenth(room.y() + 12),
                post.word(),
                toLeft ? "at-end" : "at-start"));
      }
    }

    private static boolean overlaps(List<Box> taken, Box room) {
      return taken.stream().anyMatch(t -> t.overlaps(room));
    }

    /** Each rule's edge, and in words beside it on the side that is kept, clear of the readings. */
    private void rules(List<Line> lines, List<Words> words) {
      for (Chart.Band band : chart.bands()) {
        boolean least = Double.isInfinite(band.from());
        double edge = y(least ? band.to() : band.from());
        lines.add(line("chart-rule", left, edge, right, edge));
        String text = "rule: " + band.rule();
        double wide = TextWidth.of(text, SMALL, false) + 8;
        double above = least ? edge - ROW : edge + 1;
        boolean toRight = free(box(right - wide, above, wide, ROW));
        words.add(
            new Words(
                tenth(toRight ? right - 4 : left + 4),
                tenth(above + 11),
                text,
                toRight ? "at-end" : "at-start"));
      }
    }

    private boolean free(Box room) {
      return chart.series().stream()
          .flatMap(s -> s.line().stream())
          .map(at -> box(x(at.across()) - 2, y(at.up()) - 2, 4, 4))
          .noneMatch(room::overlaps);
    }

    private List<Box> bands() {
      List<Box> boxes = new ArrayList<>();
      for (Chart.Band band : chart.bands()) {
        double high = Math.max(top, Math.min(bottom, y(inside(band.to()))));
        double low = Math.max(top, Math.min(bottom, y(inside(band.from()))));
        if (low > high) {
          boxes.add(box(left, high, right - left, low - high));
        }
      }
      return boxes;
    }

    private double inside(double at) {
      return Math.max(up.get(0), Math.min(up.get(up.size() - 1), at));
    }

    private Drawn drawn(Chart.Series series) {
      StringBuilder points = new StringBuilder();
      for (Chart.At at : series.line()) {
        points.append(points.length() == 0 ? "" : " ");
        points.append(tenth(x(at.across()))).append(',').append(tenth(y(at.up())));
      }
      List<Line> bars = new ArrayList<>();
      StringBuilder markers = new StringBuilder();
      for (Chart.Spot s : series.spots()) {
        double x = x(s.across());
        double y = y(s.up());
        double half = ChartMark.half(series.hollow());
        double high = y - y(s.up() + s.upPm());
        if (seen(high, half)) {
          bars.add(
              line(
                  "", x - CAP, y - high, x + CAP, y - high, x, y - high, x, y + high, x - CAP,
                  y + high, x + CAP, y + high));
        }
        double wide = x(s.across() + s.acrossPm()) - x;
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
          series.look().mark() + (series.hollow() ? " look-hollow" : ""),
          points.toString(),
          bars,
          markers.toString(),
          ChartMark.path(series.look(), series.hollow(), 22, 9));
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
