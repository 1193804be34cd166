package spindlebook.drawing;

import static spindlebook.drawing.TapeFace.tenth;

import java.util.Locale;

/** The mark of a reading in a chart, as an SVG path about its place. */
final class ChartMark {
  /** From its middle to its edge, drawing units. */
  private static final double FULL = 4.2;

  /** Large enough that a full one at the same place lies inside it and both are seen. */
  private static final double HOLLOW = 7;

  private ChartMark() {}

  static double half(boolean hollow) {
    return hollow ? HOLLOW : FULL;
  }

  static String path(Chart.Look look, boolean hollow, double x, double y) {
    double r = half(hollow);
    return switch (look) {
      case SQUARE -> from(x - .85 * r, y - .85 * r) + p("h%sv%sh%sz", 1.7 * r, 1.7 * r, -1.7 * r);
      case LEFT_POINT -> from(x - 1.2 * r, y) + p("l%s,%sv%sz", 2.1 * r, -1.2 * r, 2.4 * r);
      case RIGHT_POINT -> from(x + 1.2 * r, y) + p("l%s,%sv%sz", -2.1 * r, -1.2 * r, 2.4 * r);
      case LEFT_HALF ->
          from(x + .5 * r, y - 1.1 * r) + p("a%s,%s 0 0,0 0,%sz", r, 1.1 * r, 2.2 * r);
      case RIGHT_HALF ->
          from(x - .5 * r, y - 1.1 * r) + p("a%s,%s 0 0,1 0,%sz", r, 1.1 * r, 2.2 * r);
      case CROSS -> cross(x, y, r, .36 * r);
    };
  }

  /** An upright cross of arms {@code r} long and {@code 2 w} thick. */
  private static String cross(double x, double y, double r, double w) {
    double arm = r - w;
    return from(x - w, y - r)
        + p("h%sv%sh%sv%s", 2 * w, arm, arm, 2 * w)
        + p("h%sv%sh%sv%s", -arm, arm, -2 * w, -arm)
        + p("h%sv%sh%sz", -arm, -2 * w, arm);
  }

  private static String from(double x, double y) {
    return "M" + tenth(x) + "," + tenth(y);
  }

  private static String p(String path, Object... units) {
    Object[] tenths = new Object[units.length];
    for (int i = 0; i < units.length; i++) {
      tenths[i] = tenth((Double) units[i]);
    }
    return String.format(Locale.ROOT, path, tenths);
  }
}
