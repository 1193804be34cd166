package spindlebook.linkage;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;

/**
 * A corner as comma-separated values, a joint or a setting a line; docs/format-linkage.md says what
 * may stand there. Lengths in millimetres, or in inches where it says so; angles in degrees.
 *
 * @param heightsMm, racksMm where its sheet is asked for
 */
public record CornerText(Joints joints, List<Double> heightsMm, List<Double> racksMm) {
  private static final double INCH_MM = 25.4;
  private static final double FARTHEST_MM = 20_000;
  private static final int MOST_POSES = 100_000;
  private static final Set<String> KNOWN = known();
  private static final List<String> HEADINGS =
      List.of("joint", "point", "name", "key", "id", "note");

  private static Set<String> known() {
    Set<String> known =
        new HashSet<>(
            Set.of(
                "side",
                "units",
                "toeindeg",
                "camberdeg",
                "loadedradius",
                "travel",
                "height",
                "rack"));
    for (Joint joint : Joint.values()) {
      known.add(Reader.key(joint.key));
    }
    return known;
  }

  /** A line's numbers, and where they stood. */
  private record Said(int line, List<String> cells) {}

  /**
   * @throws LinkageRefused in a sentence that names the line
   */
  public static CornerText read(String text) {
    return new Reader(text).corner();
  }

  /** As {@link #read} takes it. */
  public static String write(Joints joints) {
    StringBuilder csv = new StringBuilder("joint,x,y,z\r\n");
    csv.append("side,").append(joints.left() ? "left" : "right").append("\r\n");
    joints
        .at()
        .forEach((joint, p) -> line(csv, joint.key, plain(p.x()), plain(p.y()), plain(p.z())));
    line(csv, "toe_in_deg", plain(Math.toDegrees(joints.toeRad())));
    line(csv, "camber_deg", plain(Math.toDegrees(joints.camberRad())));
    line(csv, "loaded_radius", plain(joints.radiusMm()));
    return csv.toString();
  }

  private static void line(StringBuilder csv, String... cells) {
    csv.append(String.join(",", cells)).append("\r\n");
  }

  private static String plain(double value) {
    return BigDecimal.valueOf(value).toPlainString();
  }

  private static final class Reader {
    private final Map<String, Said> said = new HashMap<>();
    private final Map<Joint, Integer> lines = new EnumMap<>(Joint.class);
    private double unitMm = 1;

    Reader(String text) {
      String[] rows = text.replace("\uFEFF", "").split("\r\n|\r|\n", -1);
      for (int i = 0; i < rows.length; i++) {
        List<String> cells = cells(rows[i]);
        if (cells.isEmpty() || cells.get(0).startsWith("#")) {
          continue;
        }
        String key = key(cells.get(0));
        if (HEADINGS.contains(key)) {
          continue;
        }
        if (!KNOWN.contains(key)) {
          throw refused(i + 1, "it names no joint and no setting; see docs/format-linkage.md");
        }
        Said before = said.put(key, new Said(i + 1, cells.subList(1, cells.size())));
        if (before != null) {
          throw refused(i + 1, "%s was given in line %d already", cells.get(0), before.line);
        }
      }
    }

    /** Without quotes, spaces about them and empty ones at the end. */
    private static List<String> cells(String row) {
      String by = row.contains(";") ? ";" : row.contains("\t") ? "\t" : ",";
      List<String> cells = new ArrayList<>();
      for (String cell : row.split(by, -1)) {
        String bare = cell.strip().replaceAll("^\"|\"$", "").strip().replace('−', '-');
        cells.add(by.equals(";") ? bare.replace(',', '.') : bare);
      }
      while (!cells.isEmpty() && cells.get(cells.size() - 1).isEmpty()) {
        cells.remove(cells.size() - 1);
      }
      return cells;
    }

    private static String key(String cell) {
      String bare = cell.toLowerCase(Locale.ROOT).replaceAll("[ _.-]", "");
      return switch (bare) {
        case "toe", "toein", "toedeg" -> "toeindeg";
        case "camber" -> "camberdeg";
        case "radius", "loadedradiusmm" -> "loadedradius";
        case "dz", "heights" -> "height";
        case "racks" -> "rack";
        case "unit" -> "units";
        default -> bare;
      };
    }

    CornerText corner() {
      units();
      Map<Joint, Vec> at = new EnumMap<>(Joint.class);
      for (Joint joint : Joint.values()) {
        Said place = said.remove(key(joint.key));
        if (place != null) {
          lines.put(joint, place.line);
          at.put(joint, place(joint, place));
        }
      }
      double toe = Math.toRadians(angle("toeindeg", "toe_in_deg"));
      double camber = Math.toRadians(angle("camberdeg", "camber_deg"));
      Said radius = said.remove("loadedradius");
      if (radius == null) {
        throw new LinkageRefused("loaded_radius is missing: the tyre's, in the wheel's plane.");
      }
      double radiusMm = unitMm * one(radius, "loaded_radius");
      boolean left = left(at.get(Joint.W));
      List<Double> heights = heights();
      Said rack = said.remove("rack");
      List<Double> racks =
          rack == null ? List.of(-60.0, 0.0, 60.0) : lengths(rack, numbers(rack, "rack"));
      if ((long) heights.size() * racks.size() > MOST_POSES) {
        throw new LinkageRefused(
            "The sheet would have more than " + MOST_POSES + " rows; ask for fewer heights.");
      }
      Joints joints = within(() -> new Joints(left, at, toe, camber, radiusMm));
      within(() -> new Linkage(joints));
      return new CornerText(joints, heights, racks);
    }

    private void units() {
      Said units = said.remove("units");
      String word = units == null ? "mm" : only(units, "units").toLowerCase(Locale.ROOT);
      switch (word) {
        case "mm" -> unitMm = 1;
        case "in", "inch", "inches" -> unitMm = INCH_MM;
        default -> throw refused(units.line, "units are mm or in, not %s", word);
      }
    }

    private Vec place(Joint joint, Said place) {
      double[] xyz = numbers(place, joint.key);
      if (xyz.length != 3) {
        throw refused(place.line, "%s needs x, y and z; it has %d of them", joint.key, xyz.length);
      }
      Vec p = new Vec(xyz[0], xyz[1], xyz[2]);
      if (joint.direction()) {
        if (!(p.length() > 1e-9)) {
          throw refused(place.line, "%s points nowhere", joint.key);
        }
        return p;
      }
      lengths(place, xyz);
      return p.times(unitMm);
    }

    private boolean left(Vec wheel) {
      Said side = said.remove("side");
      if (side == null) {
        return wheel == null || wheel.y() > 0;
      }
      String word = only(side, "side").toLowerCase(Locale.ROOT);
      return switch (word) {
        case "left", "l", "1", "+1", "1.0" -> true;
        case "right", "r", "-1", "-1.0" -> false;
        default -> throw refused(side.line, "side is left or right, not %s", word);
      };
    }

    private double angle(String key, String name) {
      Said angle = said.remove(key);
      double degrees = angle == null ? 0 : one(angle, name);
      if (Math.abs(degrees) > 45) {
        throw refused(angle.line, "%s is more than 45 degrees", name);
      }
      return degrees;
    }

    private List<Double> heights() {
      Said travel = said.remove("travel");
      Said height = said.remove("height");
      if (travel != null && height != null) {
        throw refused(height.line, "heights stand in line %d already, as travel", travel.line);
      }
      if (height != null) {
        return lengths(height, numbers(height, "height"));
      }
      double[] asked = travel == null ? new double[] {-280, 280, 10} : numbers(travel, "travel");
      int line = travel == null ? 0 : travel.line;
      if (asked.length != 3) {
        throw refused(line, "travel needs from, to and step");
      }
      double steps = (asked[1] - asked[0]) / asked[2];
      if (!(steps >= 0 && steps < MOST_POSES)) {
        throw refused(
            line,
            "travel cannot go from %s to %s in steps of %s",
            (Object[]) travel.cells.toArray(String[]::new));
      }
      double[] heights = new double[(int) Math.floor(steps + 1e-9) + 1];
      Arrays.setAll(heights, i -> asked[0] + i * asked[2]);
      return travel == null ? Arrays.stream(heights).boxed().toList() : lengths(travel, heights);
    }

    /** In millimetres. */
    private List<Double> lengths(Said said, double[] numbers) {
      if (numbers.length == 0) {
        throw refused(said.line, "it has no number");
      }
      for (double number : numbers) {
        if (Math.abs(number * unitMm) > FARTHEST_MM) {
          throw refused(said.line, "%s is farther than a car is long", number);
        }
      }
      return Arrays.stream(numbers).map(n -> n * unitMm).boxed().toList();
    }

    private static double one(Said said, String name) {
      double[] numbers = numbers(said, name);
      if (numbers.length != 1) {
        throw refused(said.line, "%s needs one number; it has %d", name, numbers.length);
      }
      return numbers[0];
    }

    private static String only(Said said, String name) {
      if (said.cells.size() != 1) {
        throw refused(said.line, "%s needs one word", name);
      }
      return said.cells.get(0);
    }

    private static double[] numbers(Said said, String name) {
      return said.cells.stream().mapToDouble(cell -> number(said.line, name, cell)).toArray();
    }

    private static double number(int line, String name, String cell) {
      if (!cell.matches("[-+]?(\\d+\\.?\\d*|\\.\\d+)([eE][-+]?\\d{1,3})?")) {
        throw refused(line, "\"%s\" is no number for %s", cell, name);
      }
      double number = Double.parseDouble(cell);
      if (Double.isInfinite(number)) {
        throw refused(line, "\"%s\" is too large for %s", cell, name);
      }
      return number;
    }

    /** With the line of the joint that it is about. */
    private <T> T within(Supplier<T> made) {
      try {
        return made.get();
      } catch (LinkageRefused refused) {
        for (Joint joint : refused.about()) {
          if (lines.containsKey(joint)) {
            throw new LinkageRefused("Line " + lines.get(joint) + ": " + refused.getMessage());
          }
        }
        throw refused;
      }
    }

    private static LinkageRefused refused(int line, String sentence, Object... words) {
      return new LinkageRefused("Line " + line + ": " + sentence.formatted(words) + ".");
    }
  }
}
