package spindlebook.geometry;

import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import spindlebook.drawing.ChartDrawing.Line;
import spindlebook.drawing.ChartDrawing.Words;
import spindlebook.drawing.TextWidth;
import spindlebook.entry.Joint;
import spindlebook.linkage.Pose;
import spindlebook.linkage.Vec;

/**
 * A corner's links in one view, of the joints that are there; drawing units, x right and y down.
 *
 * @param lines each with the class of what it is
 * @param dots the joints, as one path
 */
public record CornerSketch(
    String title, double width, double height, List<Line> lines, String dots, List<Words> words) {
  private static final double MARGIN = 14;
  private static final double LETTERS = 14;
  private static final double HIGH = 11;

  /** Where a name may stand from its joint: right of it, left, above, below, then between. */
  private static final double[][] AROUND = {
    {1, 0}, {-1, 0}, {0, -1}, {0, 1}, {1, -1}, {-1, -1}, {1, 1}, {-1, 1},
    {1, -0.5}, {-1, -0.5}, {1, 0.5}, {-1, 0.5}, {0.5, -1}, {-0.5, -1}, {0.5, 1}, {-0.5, 1}
  };

  /** How far off, the nearer the better. */
  private static final List<Double> OFF = List.of(6.0, 10.0, 15.0);

  /** From where one looks: from ahead, from outboard, from above. */
  enum View {
    FRONT,
    SIDE,
    TOP;

    /** Across and down, mm. */
    double[] of(Vec p, boolean left) {
      return switch (this) {
        case FRONT -> new double[] {p.y(), -p.z()};
        case SIDE -> new double[] {left ? -p.x() : p.x(), -p.z()};
        case TOP -> new double[] {-p.y(), -p.x()};
      };
    }
  }

  /**
   * A wheel to draw: where it stands, how it is turned, how large it is, mm.
   *
   * @param spin of unit length, outboard
   */
  record Wheel(Vec centre, Vec spin, double radiusMm) {
    private static final double WIDE = 0.3;

    /** Its outline as a tyre's: round from outboard, a box from ahead and above. */
    private List<Vec> outline(View view) {
      Vec up = new Vec(0, 0, 1).plus(-spin.z(), spin).unit();
      Vec ahead = up.cross(spin);
      List<Vec> outline = new ArrayList<>();
      if (view == View.SIDE) {
        for (int i = 0; i <= 24; i++) {
          double turn = 2 * Math.PI * i / 24;
          outline.add(
              centre.plus(radiusMm * Math.cos(turn), ahead).plus(radiusMm * Math.sin(turn), up));
        }
        return outline;
      }
      Vec along = view == View.FRONT ? up : ahead;
      for (int[] corner : new int[][] {{1, 1}, {1, -1}, {-1, -1}, {-1, 1}, {1, 1}}) {
        outline.add(
            centre.plus(corner[0] * radiusMm, along).plus(corner[1] * WIDE * radiusMm, spin));
      }
      return outline;
    }
  }

  /** What millimetres become in a drawing. */
  record Scale(
      View view, boolean left, double mm, double x, double y, double width, double height) {
    /** So that all of these lie within so wide and so high a drawing. */
    static Scale around(View view, boolean left, List<Vec> points, double width, double most) {
      double[][] flat = points.stream().map(p -> view.of(p, left)).toArray(double[][]::new);
      double west = Stream.of(flat).mapToDouble(p -> p[0]).min().orElse(0);
      double east = Stream.of(flat).mapToDouble(p -> p[0]).max().orElse(1);
      double north = Stream.of(flat).mapToDouble(p -> p[1]).min().orElse(0);
      double south = Stream.of(flat).mapToDouble(p -> p[1]).max().orElse(1);
      double mm =
          Math.min(
              (width - 2 * MARGIN) / Math.max(1, east - west),
              (most - 2 * MARGIN) / Math.max(1, south - north));
      double height = Math.min(most, mm * (south - north) + 2 * MARGIN);
      double middle = (width - mm * (east - west)) / 2;
      return new Scale(view, left, mm, middle - mm * west, MARGIN - mm * north, width, height);
    }

    double[] at(Vec p) {
      double[] flat = view.of(p, left);
      return new double[] {x + mm * flat[0], y + mm * flat[1]};
    }

    String points(Stream<Vec> through) {
      StringBuilder points = new StringBuilder();
      through
          .map(this::at)
          .forEach(p -> points.append(tenth(p[0])).append(',').append(tenth(p[1])).append(' '));
      return points.toString().strip();
    }
  }

  static double tenth(double drawn) {
    return Math.rint(drawn * 10) / 10 + 0.0;
  }

  /** Which joints each link runs through, and its class. */
  static final Map<String, List<Joint>> LINKS = new LinkedHashMap<>();

  static {
    LINKS.put("arm-lower", List.of(Joint.LF, Joint.L, Joint.LR));
    LINKS.put("arm-upper", List.of(Joint.UF, Joint.U, Joint.UR));
    LINKS.put("kingpin", List.of(Joint.L, Joint.U));
    LINKS.put("hub", List.of(Joint.W, Joint.TO));
    LINKS.put("tie", List.of(Joint.TI, Joint.TO));
    LINKS.put("shock", List.of(Joint.SU, Joint.SL));
    LINKS.put("strap", List.of(Joint.KU, Joint.KL));
  }

  private static Map<Joint, Vec> places(Map<Joint, Vec> at) {
    Map<Joint, Vec> places = new LinkedHashMap<>(at);
    places.keySet().removeIf(Joint::direction);
    return places;
  }

  /** Points that a drawing of these has to hold. */
  static List<Vec> extent(Map<Joint, Vec> at, Wheel wheel, View view) {
    List<Vec> all = new ArrayList<>(places(at).values());
    if (wheel != null) {
      all.addAll(wheel.outline(view));
    }
    return all;
  }

  /**
   * @param wheel null where nobody knows where it stands
   * @param named whether the joints have their names beside them
   */
  static CornerSketch of(
      String title, Map<Joint, Vec> at, Wheel wheel, Scale scale, boolean named) {
    List<Line> lines = new ArrayList<>();
    if (wheel != null) {
      lines.add(new Line(scale.points(wheel.outline(scale.view()).stream()), "wheel"));
    }
    double floor = scale.at(new Vec(0, 0, 0))[1];
    if (wheel != null && scale.view() != View.TOP && floor < scale.height()) {
      lines.add(new Line("0," + tenth(floor) + " " + scale.width() + "," + tenth(floor), "floor"));
    }
    LINKS.forEach(
        (mark, joints) -> {
          List<Vec> there = joints.stream().filter(at::containsKey).map(at::get).toList();
          if (there.size() > 1) {
            lines.add(new Line(scale.points(there.stream()), mark));
          }
        });
    StringBuilder dots = new StringBuilder();
    List<Rectangle2D> taken = new ArrayList<>();
    List<double[]> all = places(at).values().stream().map(scale::at).toList();
    for (double[] d : all) {
      taken.add(new Rectangle2D.Double(d[0] - 5, d[1] - 5, 10, 10));
      dots.append("M" + tenth(d[0] - 4) + "," + tenth(d[1]) + "a4,4 0 1,0 8,0a4,4 0 1,0 -8,0z");
    }
    List<Words> words = new ArrayList<>();
    if (named) {
      List<Line2D> bars = lines.stream().flatMap(CornerSketch::bars).toList();
      places(at).forEach((joint, p) -> name(joint, scale, p, all, bars, taken, words));
    }
    return new CornerSketch(
        title, scale.width(), tenth(scale.height()), lines, dots.toString(), words);
  }

  /** A line's straight pieces. */
  static Stream<Line2D> bars(Line line) {
    double[] xy = Stream.of(line.points().split("[ ,]")).mapToDouble(Double::parseDouble).toArray();
    return IntStream.range(1, xy.length / 2)
        .mapToObj(i -> new Line2D.Double(xy[2 * i - 2], xy[2 * i - 1], xy[2 * i], xy[2 * i + 1]));
  }

  /** What a name covers, its capitals as high as they are. */
  static Rectangle2D box(Words name) {
    double wide = TextWidth.of(name.text(), LETTERS, false);
    return new Rectangle2D.Double(name.x() - 0.5, name.y() - HIGH - 0.5, wide + 1, HIGH + 1);
  }

  /** How far a name is from a joint. */
  static double off(Rectangle2D name, double[] joint) {
    return Math.hypot(
        Math.max(0, Math.abs(joint[0] - name.getCenterX()) - name.getWidth() / 2),
        Math.max(0, Math.abs(joint[1] - name.getCenterY()) - name.getHeight() / 2));
  }

  /**
   * Around its joint where nothing is yet, nearest to that joint of all, where the fewest bars run
   * through it, the first of several; where no place is free the table names it.
   */
  private static void name(
      Joint joint,
      Scale scale,
      Vec p,
      List<double[]> all,
      List<Line2D> bars,
      List<Rectangle2D> taken,
      List<Words> words) {
    double[] d = scale.at(p);
    double wide = TextWidth.of(joint.key, LETTERS, false);
    Rectangle2D paper = new Rectangle2D.Double(0, 0, scale.width(), scale.height());
    OFF.stream()
        .flatMap(
            off ->
                Stream.of(AROUND)
                    .map(
                        to ->
                            new Words(
                                tenth(d[0] + to[0] * (off + wide / 2) - wide / 2),
                                tenth(d[1] + to[1] * (off + HIGH / 2) + HIGH / 2),
                                joint.key,
                                "joint-name")))
        .filter(name -> paper.contains(box(name)))
        .filter(name -> taken.stream().noneMatch(box(name)::intersects))
        .min(
            Comparator.<Words>comparingLong(
                    name ->
                        all.stream().filter(o -> off(box(name), o) <= off(box(name), d)).count())
                .thenComparingLong(name -> bars.stream().filter(box(name)::intersectsLine).count()))
        .ifPresent(
            name -> {
              taken.add(box(name));
              words.add(name);
            });
  }

  static Wheel wheel(Pose pose) {
    return new Wheel(pose.hub(), pose.spin(), pose.linkage().joints().radiusMm());
  }
}
