package spindlebook.travel;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import spindlebook.fold.Card;
import spindlebook.fold.HandBooks;

/**
 * A left front corner on the bench, built reading by reading in wheel positions of millimetres. The
 * mark lies 1000 mm over the floor, so a spindle at 1254 mm is at +254. Tape and shanks have no
 * steps unless {@link #realTools} says so: then the sums of a test can be done by hand.
 */
public final class CornerBench {
  private static final ObjectMapper JSON = new ObjectMapper();

  private final List<String> lines = new ArrayList<>();
  private final String layout = "steered-double-a-arm";
  private int next;
  private String lastMark;
  private boolean oneMark;
  private double markMm = 1000;

  private CornerBench(String graduation, String placing) {
    this(graduation, placing, graduation, placing, "drills");
  }

  private CornerBench(
      String graduation, String placing, String shankSteps, String shankPlacing, String gapTool) {
    line(
        "car",
        "car",
        """
        {"details":{"name":"Dune"},"tools":[\
        {"tool":"tape","name":"tape","use":"tape","graduation":"%s","placingHalfWidth":"%s"},\
        {"tool":"drills","name":"shanks","use":"gaps","graduation":"%s","placingHalfWidth":"%s"}]}\
        """
            .formatted(graduation, placing, shankSteps, shankPlacing));
    line(
        "lf",
        "corner",
        """
        {"car":"car","place":"left-front","layout":"%s","adjusters":[\
        {"adjuster":"upper","kind":"upper-rod-ends","unit":"turns","moreShortens":false,"first":"0 turns"}]}\
        """
            .formatted(layout));
    line(
        "r1",
        "round",
        """
        {"corner":"lf","springIn":false,"bumpStopIn":false,"wheelOn":false,"onTyres":false,\
        "steeringLinked":true,"tape":"tape","gapTool":"%s"}\
        """
            .formatted(gapTool));
  }

  public static CornerBench exact() {
    return new CornerBench("0 mm", "0 mm");
  }

  public static CornerBench realTools() {
    return new CornerBench("1/16 in", "1/32 in");
  }

  /** A tape in sixteenths, shanks in sixty-fourths, gaps with one of the two. */
  static CornerBench shop(String gapTool) {
    return new CornerBench("1/16 in", "1/32 in", "1/64 in", "1/64 in", gapTool);
  }

  /** All heights from here on take the mark as at the first. */
  public CornerBench oneMark() {
    oneMark = true;
    return this;
  }

  /** Every mark from here on is read this far from 1000 mm; the spindles stay where they are. */
  CornerBench marksReadOffBy(double offMm) {
    markMm = 1000 + offMm;
    return this;
  }

  public CornerBench line(String key, String kind, String body) {
    try {
      ObjectNode line = JSON.createObjectNode();
      line.put("key", key).put("kind", kind);
      line.set("body", JSON.readTree(body));
      lines.add(JSON.writeValueAsString(line));
      return this;
    } catch (JsonProcessingException e) {
      throw new AssertionError(body, e);
    }
  }

  public CornerBench height(String key, String name, double positionMm) {
    String mark =
        oneMark && lastMark != null
            ? "\"markAsAt\":\"" + lastMark + "\""
            : "\"mark\":\"" + mm(markMm) + "\"";
    if (lastMark == null) {
      lastMark = key;
    }
    return line(
        key,
        "height",
        "{\"round\":\"r1\",\"name\":\"%s\",\"spindle\":\"%s\",%s}"
            .formatted(name, mm(1000 + positionMm), mark));
  }

  public CornerBench watch(String point, String place, String keep) {
    return line(
        "w" + next++,
        "definition",
        "{\"corner\":\"lf\",\"watchPoint\":{\"point\":\"%s\",\"place\":\"%s\",\"keep\":%s}}"
            .formatted(point, place, keep));
  }

  /** A gap straight ahead. */
  public CornerBench gap(String point, String height, double gapMm) {
    return gap(point, height, "straight", gapMm);
  }

  public CornerBench gap(String point, String height, String steering, double gapMm) {
    return read(
        "{\"height\":\"%s\",\"steering\":\"%s\",\"quantity\":\"watch-point\",\"point\":\"%s\",\"result\":\"number\",\"length\":\"%s\"}"
            .formatted(height, steering, point, mm(gapMm)));
  }

  public CornerBench looked(String point, String height, String result) {
    return read(
        "{\"height\":\"%s\",\"steering\":\"straight\",\"quantity\":\"watch-point\",\"point\":\"%s\",\"result\":\"%s\"}"
            .formatted(height, point, result));
  }

  public CornerBench length(String quantity, String height, double lengthMm) {
    return read(
        "{\"height\":\"%s\",\"steering\":\"straight\",\"quantity\":\"%s\",\"result\":\"number\",\"length\":\"%s\"}"
            .formatted(height, quantity, mm(lengthMm)));
  }

  CornerBench read(String body) {
    return line("g" + next++, "reading", body);
  }

  public CornerBench given(String dimension, double lengthMm) {
    return given(dimension, lengthMm, null);
  }

  public CornerBench given(String dimension, double lengthMm, Double halfWidthMm) {
    String half = halfWidthMm == null ? "" : ",\"halfWidth\":\"" + mm(halfWidthMm) + "\"";
    return line(
        "d" + next++,
        "definition",
        "{\"corner\":\"lf\",\"given\":{\"dimension\":\"%s\",\"length\":\"%s\"%s}}"
            .formatted(dimension, mm(lengthMm), half));
  }

  public CornerBench held(String allowance, double lengthMm) {
    return line(
        "d" + next++,
        "definition",
        "{\"corner\":\"lf\",\"heldBack\":{\"allowance\":\"%s\",\"length\":\"%s\"}}"
            .formatted(allowance, mm(lengthMm)));
  }

  public CornerBench stretch(double percent) {
    return line(
        "d" + next++,
        "definition",
        "{\"corner\":\"lf\",\"heldBack\":{\"allowance\":\"strap-stretch\",\"percent\":%s}}"
            .formatted(percent));
  }

  public CornerBench adjuster(String body) {
    return line("d" + next++, "definition", "{\"corner\":\"lf\",\"adjuster\":%s}".formatted(body));
  }

  public CornerBench adjust(String adjuster, String to) {
    return line(
        "a" + next++,
        "adjustment",
        "{\"corner\":\"lf\",\"adjuster\":\"%s\",\"to\":\"%s\"}".formatted(adjuster, to));
  }

  public Card card() {
    return HandBooks.of(lines).card("lf");
  }

  public TravelFindings travel() {
    return CornerTravel.of(card());
  }

  private static String mm(double mm) {
    return String.format(Locale.ROOT, "%.4f mm", mm);
  }
}
