package spindlebook.drawing;

import java.util.List;

/**
 * A tape blade with every coordinate worked out, in drawing units, x right and y down, rounded to a
 * tenth; the template only prints it.
 */
public record BladeDrawing(
    String id,
    String mark,
    String title,
    String description,
    double width,
    double height,
    Box tape,
    List<Area> areas,
    List<Line> ticks,
    List<Words> numerals,
    List<Line> lines,
    List<Label> labels) {

  /** Along the page, as it leads a corner's line: droop left, bump right. */
  public static BladeDrawing lying(TapeBlade blade) {
    return new LyingBlade(blade).draw();
  }

  /** Upright, as it fills the corner page: bump at the top, droop at the bottom. */
  public static BladeDrawing standing(TapeBlade blade) {
    return new StandingBlade(blade).draw();
  }

  /** A rectangle by its upper left corner. */
  public record Box(double x, double y, double width, double height) {
    boolean within(Box outer) {
      return x >= outer.x - 0.11
          && y >= outer.y - 0.11
          && x + width <= outer.x + outer.width + 0.11
          && y + height <= outer.y + outer.height + 0.11;
    }

    boolean overlaps(Box other) {
      return x + 0.11 < other.x + other.width
          && other.x + 0.11 < x + width
          && y + 0.11 < other.y + other.height
          && other.y + 0.11 < y + height;
    }
  }

  /** A band of tape. */
  public record Area(Box box, String mark, boolean hatched) {}

  /** A line through the points, in SVG's own notation. */
  public record Line(String points, String mark) {}

  /** One line of text by its baseline; {@code mark} also says how it is anchored. */
  public record Words(double x, double y, String text, String mark) {}

  /**
   * A mark's label.
   *
   * @param box the room set aside for it, which no other label enters
   * @param anchor "start" or "end": on which side of x its text stands
   * @param tag where the word 'nearest' stands; null when it is not the nearest limit
   * @param state the shape in front of the words; null for none
   * @param shape where the shape stands; null for none
   */
  public record Label(
      Box box,
      String mark,
      String anchor,
      FigureText figure,
      double figureX,
      double figureY,
      List<Words> words,
      Box tag,
      State state,
      Box shape) {}

  static double tenth(double units) {
    return Math.round(units * 10) / 10.0;
  }

  static Box box(double x, double y, double width, double height) {
    return new Box(tenth(x), tenth(y), tenth(width), tenth(height));
  }

  static Line line(String mark, double... xy) {
    StringBuilder points = new StringBuilder();
    for (int i = 0; i < xy.length; i += 2) {
      points.append(i == 0 ? "" : " ").append(tenth(xy[i])).append(',').append(tenth(xy[i + 1]));
    }
    return new Line(points.toString(), mark);
  }

  /** How wide a figure comes out at a size, its fraction at two thirds of it. */
  static double figureWidth(FigureText figure, double size) {
    double whole = TextWidth.of(figure.sign() + figure.whole(), size, true);
    return figure.fraction()
        ? whole
            + TextWidth.of(" " + figure.numerator() + "/" + figure.denominator(), size * 0.66, true)
        : whole;
  }
}
