package spindlebook.web;

import static spindlebook.web.BladeDrawing.box;
import static spindlebook.web.BladeDrawing.line;
import static spindlebook.web.BladeDrawing.tenth;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import spindlebook.web.BladeDrawing.Box;
import spindlebook.web.BladeDrawing.Line;
import spindlebook.web.BladeDrawing.Words;

/**
 * A chart with every coordinate worked out, in drawing units, x right and y down; the template only
 * prints it.
 *
 * @param plot the rectangle the curves stand in
 * @param bands where a rule is broken
 */
public record ChartDrawing(
    String id,
    String title,
    String description,
    double width,
    double height,
    Box plot,
    List<Box> bands,
    List<Line> lines,
    List<Words> words,
    List<Drawn> series) {

  /** One curve: its line, ± bars, markers as an SVG path, and its sample for the key. */
  public record Drawn(
      String name, String mark, String line, List<Line> bars, String markers, String sample) {}

  private static final double WIDTH = 360;
  private static final double HEIGHT = 300;
  private static final double TOP = 26;
  private static final double BOTTOM = HEIGHT - 44;
  private static final double SMALL = 13;
  private static final double POST_ROW = 15;
  private static final int TICKS = 7;

  /** A chart needs at least one reading. */
  public static ChartDrawing of(Chart chart) {
    return new Scale(chart).draw();
  }

  private static final class Scale {
    private final Chart chart;
    private final List<Double> across;
    private final List<Double> up;
    private final double left;
    private final double right;

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
    }

    private static List<Double> ticks(ChartAxis axis, List<Double> shown) {
      var all = shown.stream().filter(Double::isFinite).mapToDouble(d -> d).summaryStatistics();
      return axis.ticks(all.getMin(), all.getMax(), TICKS);
    }

    private double x(double at) {
      return left + (right - left) * share(across, at);
    }

    private double y(double at) {
      return BOTTOM - (BOTTOM - TOP) * share(up, at);
    }

    private static double share(List<Double> ticks, double at) {
      double from = ticks.get(0);
      return (at - from) / (ticks.get(ticks.size() - 1) - from);
    }

    ChartDrawing draw() {
      List<Line> lines = new ArrayList<>();
      List<Words> words = new ArrayList<>();
      words.add(new Words(2, 14, chart.up().words(), "at-start"));
      words.add(new Words(tenth(right), HEIGHT - 6, chart.across().words(), "at-end"));
      for (double t : up) {
        lines.add(line(zero(t) ? "chart-zero" : "chart-grid", left, y(t), right, y(t)));
        words.add(new Words(tenth(left - 5), tenth(y(t) + 4.5), chart.up().label(t), "at-end"));
      }
      for (double t : across) {
        lines.add(line("chart-grid", x(t), TOP, x(t), BOTTOM));
        words.add(new Words(tenth(x(t)), BOTTOM + 17, chart.across().label(t), "mid"));
      }
      posts(lines, words);
      return new ChartDrawing(
          chart.id(),
          chart.title(),
          chart.description(),
          WIDTH,
          HEIGHT,
          box(left, TOP, right - left, BOTTOM - TOP),
          bands(),
          lines,
          words,
          chart.series().stream().map(this::drawn).toList());
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
        lines.add(line("chart-post", x, TOP, x, BOTTOM));
        double wide = TextWidth.of(post.word(), SMALL, false) + 8;
        boolean toLeft = x + wide > right;
        Box room = box(toLeft ? x - wide : x, TOP, wide, POST_ROW);
        while (overlaps(taken, room)) {
          room = box(room.x(), room.y() + POST_ROW, wide, POST_ROW);
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

    private List<Box> bands() {
      List<Box> boxes = new ArrayList<>();
      for (Chart.Band band : chart.bands()) {
        double high = Math.max(TOP, Math.min(BOTTOM, y(inside(band.to()))));
        double low = Math.max(TOP, Math.min(BOTTOM, y(inside(band.from()))));
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
        if (s.upPm() > 0) {
          bars.add(line("", x, y(s.up() - s.upPm()), x, y(s.up() + s.upPm())));
        }
        if (s.acrossPm() > 0) {
          bars.add(line("", x(s.across() - s.acrossPm()), y, x(s.across() + s.acrossPm()), y));
        }
        markers.append(marker(series.look(), x, y));
      }
      String mark =
          "look-"
              + series.look().name().toLowerCase(java.util.Locale.ROOT)
              + (series.hollow() ? " look-hollow" : "");
      return new Drawn(
          series.name(),
          mark,
          points.toString(),
          bars,
          markers.toString(),
          marker(series.look(), 22, 8));
    }
  }

  /** Circle, square, triangle or diamond about a place. */
  private static String marker(Chart.Look look, double x, double y) {
    return switch (look) {
      case FIRST -> "M" + at(x - 4, y) + "a4,4 0 1,0 8,0a4,4 0 1,0 -8,0z";
      case SECOND -> "M" + at(x - 3.8, y - 3.8) + "h7.6v7.6h-7.6z";
      case THIRD -> "M" + at(x, y - 4.8) + "l4.6,8.2h-9.2z";
      case FOURTH -> "M" + at(x, y - 5) + "l5,5l-5,5l-5,-5z";
    };
  }

  private static String at(double x, double y) {
    return tenth(x) + "," + tenth(y);
  }
}
