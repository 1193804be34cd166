package spindlebook.geometry;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
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
    List<double[]> taken = new ArrayList<>();
    for (Vec p : places(at).values()) {
      double[] d = scale.at(p);
      taken.add(new double[] {d[0] - 5, d[1] - 5, d[0] + 5, d[1] + 5});
      dots.append("M" + tenth(d[0] - 4) + "," + tenth(d[1]) + "a4,4 0 1,0 8,0a4,4 0 1,0 -8,0z");
    }
    List<Words> words = new ArrayList<>();
    if (named) {
      places(at).forEach((joint, p) -> name(joint, scale, p, taken, words));
    }
    return new CornerSketch(
        title, scale.width(), tenth(scale.height()), lines, dots.toString(), words);
  }

  /** To the right, the left, above or below, where nothing is yet; else the table names it. */
  private static void name(
      Joint joint, Scale scale, Vec p, List<double[]> taken, List<Words> words) {
    double[] d = scale.at(p);
    double wide = TextWidth.of(joint.key, LETTERS, false);
    double[][] starts = {
      {d[0] + 7, d[1] + 5},
      {d[0] - 7 - wide, d[1] + 5},
      {d[0] - wide / 2, d[1] - 8},
      {d[0] - wide / 2, d[1] + 19}
    };
    for (double[] s : starts) {
      double[] box = {s[0], s[1] - 11, s[0] + wide, s[1] + 1};
      boolean inside =
          box[0] >= 0 && box[2] <= scale.width() && box[1] >= 0 && box[3] <= scale.height();
      boolean free =
          taken.stream()
              .noneMatch(t -> box[0] < t[2] && t[0] < box[2] && box[1] < t[3] && t[1] < box[3]);
      if (inside && free) {
        taken.add(box);
        words.add(new Words(tenth(s[0]), tenth(s[1]), joint.key, "joint-name"));
        return;
      }
    }
  }

  static Wheel wheel(Pose pose) {
    return new Wheel(pose.hub(), pose.spin(), pose.linkage().joints().radiusMm());
  }
}
