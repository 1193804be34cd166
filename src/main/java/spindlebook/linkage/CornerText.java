package spindlebook.linkage;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import spindlebook.entry.Joint;

/**
 * A corner as comma-separated values, a joint or a setting a line; docs/format-linkage.md says what
 * may stand there. Lengths in millimetres, or in inches where it says so; angles in degrees.
 *
 * @param heightsMm, racksMm where its sheet is asked for
 */
public record CornerText(Joints joints, List<Double> heightsMm, List<Double> racksMm) {
  private static final double INCH_MM = 25.4;
  private static final double FARTHEST_MM = 20_000;
  private static final double STEEPEST_DEG = 45;
  private static final int MOST_HEIGHTS = 20_000;
  private static final int MOST_ROWS = 60_000;
  private static final Set<String> HEADINGS =
      Set.of("joint", "point", "name", "key", "id", "note", "title");
  private static final Set<String> KNOWN =
      Stream.concat(
              Stream.of("side", "units", "toeindeg", "camberdeg", "loadedradius", "travel", "dz"),
              Stream.concat(Stream.of("rack"), Arrays.stream(Joint.values()).map(j -> key(j.key))))
          .collect(Collectors.toSet());
  private static final Map<String, Double> SIDES =
      Map.of("left", 1.0, "l", 1.0, "1", 1.0, "+1", 1.0, "right", -1.0, "r", -1.0, "-1", -1.0);
  private static final Map<String, Double> UNITS =
      Map.of("mm", 1.0, "in", INCH_MM, "inch", INCH_MM, "inches", INCH_MM);

  /**
   * @throws LinkageRefused in a sentence that names the line
   */
  public static CornerText read(String text) {
    Map<String, Said> said = lines(text);
    double unit = said.containsKey("units") ? said.get("units").one(UNITS, "mm or in") : 1;
    double farthest = FARTHEST_MM / unit;
    Map<Joint, Vec> at = new EnumMap<>(Joint.class);
    for (Joint joint : Joint.values()) {
      Said place = said.get(key(joint.key));
      if (place != null) {
        double[] p = place.numbers(3, farthest);
        at.put(joint, new Vec(p[0], p[1], p[2]).times(joint.direction() ? 1 : unit));
      }
    }
    Said side = said.get("side");
    Said radius = said.get("loadedradius");
    boolean left =
        side == null
            ? !at.containsKey(Joint.W) || at.get(Joint.W).y() > 0
            : side.one(SIDES, "left or right") > 0;
    List<Double> heights = heights(said, farthest);
    List<Double> racks =
        said.containsKey("rack")
            ? DoubleStream.of(said.get("rack").numbers(0, farthest))
                .map(r -> r * unit)
                .boxed()
                .toList()
            : List.of(-60.0, 0.0, 60.0);
    if ((long) heights.size() * racks.size() > MOST_ROWS) {
      throw said.get("rack")
          .refused("that makes more than %d rows: ask for fewer heights or racks.", MOST_ROWS);
    }
    try {
      Joints joints =
          new Joints(
              left,
              at,
              angle(said.get("toeindeg")),
              angle(said.get("camberdeg")),
              radius == null ? Double.NaN : radius.numbers(1, farthest)[0] * unit);
      joints = new Linkage(joints).joints();
      boolean asked = said.containsKey("travel") || said.containsKey("dz");
      return new CornerText(
          joints, heights.stream().map(h -> asked ? h * unit : h).toList(), racks);
    } catch (LinkageRefused refused) {
      for (Joint joint : refused.about()) {
        if (at.containsKey(joint)) {
          throw said.get(key(joint.key)).refused(refused.getMessage());
        }
      }
      throw refused;
    }
  }

  private static Map<String, Said> lines(String text) {
    Map<String, Said> said = new HashMap<>();
    String[] rows = text.replace("\uFEFF", "").split("\r\n|\r|\n", -1);
    for (int i = 0; i < rows.length; i++) {
      List<String> cells = cells(rows[i]);
      if (cells.isEmpty() || cells.get(0).startsWith("#")) {
        continue;
      }
      Said now = new Said(i + 1, cells.get(0), cells.subList(1, cells.size()));
      String key = key(now.name);
      if (HEADINGS.contains(key) || now.name.matches("(?i)(name|note)\\b.*")) {
        continue;
      }
      if (!KNOWN.contains(key)) {
        throw now.refused(
            "\"%s\" is no joint and no setting; see docs/format-linkage.md.", now.name);
      }
      Said before = said.put(key, now);
      if (before != null) {
        throw now.refused("%s was given in line %d already.", now.name, before.line);
      }
    }
    return said;
  }

  /** Without quotes, spaces about them and empty ones at the end. */
  private static List<String> cells(String row) {
    String by = row.contains(";") ? ";" : row.contains("\t") ? "\t" : ",";
    List<String> cells = new ArrayList<>();
    for (String cell : row.split(by, -1)) {
      String bare = cell.replaceAll("[\\h\"]+", " ").strip().replaceAll("^[−–]", "-");
      cells.add(by.equals(";") ? bare.replace(',', '.') : bare);
    }
    while (!cells.isEmpty() && cells.get(cells.size() - 1).isEmpty()) {
      cells.remove(cells.size() - 1);
    }
    return cells;
  }

  private static String key(String cell) {
    return cell.toLowerCase(Locale.ROOT).replaceAll("[ _.-]", "");
  }

  private static double angle(Said said) {
    return said == null ? 0 : Math.toRadians(said.numbers(1, STEEPEST_DEG)[0]);
  }

  private static List<Double> heights(Map<String, Said> said, double farthest) {
    Said travel = said.get("travel");
    Said one = said.get("dz");
    if (one != null) {
      if (travel != null) {
        throw one.refused("heights are given in line %d already.", travel.line);
      }
      return DoubleStream.of(one.numbers(0, farthest)).boxed().toList();
    }
    double[] asked = travel == null ? new double[] {-280, 280, 10} : travel.numbers(3, farthest);
    double steps = (asked[1] - asked[0]) / asked[2];
    if (!(steps >= 0 && steps < MOST_HEIGHTS)) {
      throw travel.refused(
          "travel is from, to, step: a step from one towards the other, at most %d of them.",
          MOST_HEIGHTS);
    }
    return DoubleStream.iterate(0, i -> i <= steps + 1e-9, i -> i + 1)
        .map(i -> asked[0] + i * asked[2])
        .boxed()
        .toList();
  }

  /** As {@link #read} takes it. */
  public static String write(Joints joints) {
    StringBuilder csv = new StringBuilder("joint,x,y,z\r\n");
    csv.append("side,").append(joints.left() ? "left" : "right").append("\r\n");
    joints.at().forEach((joint, p) -> line(csv, joint.key, p.x(), p.y(), p.z()));
    line(csv, "toe_in_deg", Math.toDegrees(joints.toeRad()));
    line(csv, "camber_deg", Math.toDegrees(joints.camberRad()));
    line(csv, "loaded_radius", joints.radiusMm());
    return csv.toString();
  }

  private static void line(StringBuilder csv, String name, double... values) {
    csv.append(name);
    for (double value : values) {
      csv.append(',').append(BigDecimal.valueOf(value).toPlainString());
    }
    csv.append("\r\n");
  }

  private record Said(int line, String name, List<String> cells) {

    /**
     * @param count how many there must be; 0: any
     */
    double[] numbers(int count, double most) {
      if (cells.isEmpty() || (count > 0 && cells.size() != count)) {
        String needed = count == 0 ? "some" : "" + count;
        throw refused("%s needs numbers: %s, not %d.", name, needed, cells.size());
      }
      return cells.stream().mapToDouble(cell -> number(cell, most)).toArray();
    }

    private double number(String cell, double most) {
      if (!cell.matches("[-+]?(\\d+\\.?\\d*|\\.\\d+)([eE][-+]?\\d{1,3})?")) {
        throw refused("\"%s\" is no number for %s: plain decimals only, such as 12.5.", cell, name);
      }
      double number = Double.parseDouble(cell);
      if (Math.abs(number) > most) {
        throw refused("%s is too much for %s.", cell, name);
      }
      return number;
    }

    double one(Map<String, Double> words, String expected) {
      String word = String.join(" ", cells).toLowerCase(Locale.ROOT);
      if (!words.containsKey(word)) {
        throw refused("%s must be %s, not \"%s\".", name, expected, word);
      }
      return words.get(word);
    }

    LinkageRefused refused(String sentence, Object... words) {
      return new LinkageRefused("Line " + line + ": " + sentence.formatted(words));
    }
  }
}
