package spindlebook.corner;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import spindlebook.drivecheck.CheckWords;
import spindlebook.fold.CarBook;
import spindlebook.fold.HandBooks;
import spindlebook.measured.AlignedCheck;

/**
 * What the car's page says of why its worst corner is worst: the book that meets its rules, with
 * one thing otherwise.
 */
class CornerLinesTest {
  private final List<String> lines = meetsRules();

  private static List<String> meetsRules() {
    try (InputStream in =
        CornerLinesTest.class.getResourceAsStream("/spindlebook/drivecheck/meets-rules.jsonl")) {
      return new ArrayList<>(
          new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().toList());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private CornerLinesTest with(String... more) {
    for (String line : more) {
      lines.add(line.replace('\'', '"'));
    }
    return this;
  }

  /** The gap of a height read otherwise. */
  private CornerLinesTest gap(String height, String length) {
    lines.replaceAll(
        l ->
            l.contains("\"height\":\"" + height + "\"") && l.contains("watch-point")
                ? l.replaceAll("\"length\":\"[^\"]*\"", "\"length\":\"" + length + "\"")
                : l);
    return this;
  }

  /** The watch point an angle that may be 20° at most, and the gaps angles in degrees. */
  private CornerLinesTest angles(int... degrees) {
    int[] next = {0};
    lines.replaceAll(
        l ->
            l.contains("\"watch-point\"")
                ? l.replaceAll("\"length\":\"[^\"]*\"", "\"angle\":\"" + degrees[next[0]++] + "°\"")
                : l.replace(
                    "\"place\":\"lower-arm-frame\",\"name\":\"arm to"
                        + " frame\",\"keep\":{\"least\":\"1/4 in\"}",
                    "\"place\":\"cv-angle\",\"name\":\"CV"
                        + " joint\",\"keep\":{\"mostAngle\":\"20°\"}"));
    return this;
  }

  private String sentence() {
    return CornerLines.of(AlignedCheck.of(HandBooks.of(lines))).lines().get(0).sentence();
  }

  private static String adjust(String to) {
    return "{'kind':'adjustment','body':{'corner':'lr','adjuster':'strap','to':'" + to + "'}}";
  }

  private static CornerLinesTest book() {
    return new CornerLinesTest();
  }

  @Test
  void a_corner_that_meets_its_rules_has_nothing_to_say() {
    assertEquals("", book().sentence());
    assertEquals("", book().angles(10, 10, 10, 10, 10).sentence());
  }

  /** A gap gets too close, an angle too much, wherever it does. */
  @Test
  void what_is_past_its_rule_is_too_close_or_of_an_angle_too_much() {
    assertEquals("Arm to frame: too close.", past("1/8 in", "1/8 in", "1 in", "2 in", "2 in"));
    assertEquals(
        "Arm to frame: too close in mid-travel.",
        past("1/4 in", "1/2 in", "1/8 in", "2 in", "2 in"));
    assertEquals(
        "Arm to frame: too close at every height read.",
        past("1/8 in", "1/8 in", "1/8 in", "1/8 in", "1/8 in"));
    assertEquals("CV joint: too much.", book().angles(25, 22, 10, 10, 10).sentence());
    assertEquals("CV joint: too much in mid-travel.", book().angles(10, 10, 25, 10, 10).sentence());
    assertEquals(
        "CV joint: too much at every height read.", book().angles(25, 25, 25, 25, 25).sentence());
    // The corner's page and the drive check say the same of it.
    assertTrue(
        book().angles(10, 10, 25, 10, 10).told().contains("CV joint is too much in mid-travel, "),
        book().angles(10, 10, 25, 10, 10).told());
    assertTrue(
        book().angles(25, 25, 25, 25, 25).told().contains("too much at every height read; no stop"),
        book().angles(25, 25, 25, 25, 25).told());
  }

  private static String past(String... gaps) {
    String[] heights = {"off", "strap", "ride", "full", "past"};
    CornerLinesTest book = book();
    for (int i = 0; i < heights.length; i++) {
      book.gap(heights[i], gaps[i]);
    }
    return book.sentence();
  }

  /** In mid-travel and at an end, within what drills to 1/8 in and a hand to 1/8 tell. */
  @Test
  void what_is_too_close_to_call_says_where_and_within_what() {
    lines.set(
        0,
        lines
            .get(0)
            .replace(
                "\"use\":\"gaps\",\"graduation\":\"0 in\",\"placingHalfWidth\":\"0 in\"",
                "\"use\":\"gaps\",\"graduation\":\"1/8 in\",\"placingHalfWidth\":\"1/8 in\""));
    gap("off", "3/4 in").gap("strap", "3/4 in");
    assertEquals("Arm to frame: can’t tell in mid-travel.", gap("ride", "5/16 in").sentence());
    gap("off", "0 in").gap("strap", "7/16 in").gap("ride", "1 in");
    String end = sentence();
    assertTrue(end.matches("Arm to frame: can’t tell within ± .* in at droop\\."), end);
  }

  @Test
  void what_was_not_read_as_far_as_the_wheel_goes_is_counted() {
    lines.replaceAll(
        l ->
            l.replace(
                "\"watchPoints\":[",
                "\"watchPoints\":[{\"point\":\"hose\",\"place\":\"hose-slack\",\"name\":\"hose\","
                    + "\"keep\":{\"least\":\"1/4 in\"}},"));
    // Solid at +1 and 1/2 held back: both gaps and the shock, 16 in there of its 10 1/2, are read
    // as far as +1 1/2, but a tape of 1/8 in cannot tell.
    lines.replaceAll(l -> l.replace("\"spindle\":\"22 in\"", "\"spindle\":\"21 1/2 in\""));
    lines.set(0, lines.get(0).replaceFirst("\"graduation\":\"0 in\"", "\"graduation\":\"1/8 in\""));
    for (String height : List.of("off", "ride", "past")) {
      with(
          "{'kind':'reading','body':{'height':'%s','steering':'straight','quantity':'watch-point',"
                  .formatted(height)
              + "'point':'hose','result':'number','length':'1 in'}}");
    }
    assertEquals("3 limits not read as far as the wheel may go at bump.", sentence());
  }

  @Test
  void what_is_missing_to_be_measured_again_or_set_back_says_what_and_how_much() {
    assertEquals(
        "Needs the height 'on the strap (full droop)' again (limit strap to hole 4).",
        book().with(adjust("hole 4")).sentence());
    // The length read on the strap, and the height.
    assertEquals(
        "Set back, check: 2 readings.", book().with(adjust("hole 4"), adjust("hole 3")).sentence());
    // A tyre moves its gaps and no wheel position: one gap, which both ends miss.
    CornerLinesTest tyre = book();
    tyre.lines.replaceAll(
        l ->
            l.replace("\"lower-arm-frame\"", "\"tyre-frame\"")
                .replace(
                    "\"adjusters\":[",
                    "\"adjusters\":[{\"adjuster\":\"tyre\",\"kind\":\"tyre\",\"name\":\"tyre\","
                        + "\"unit\":\"words\",\"moreShortens\":false,\"first\":\"37\"},"));
    tyre.with(adjust("39").replace("strap", "tyre"));
    assertEquals("Needs arm to frame (tyre to 39).", tyre.sentence());
  }

  @Test
  void full_bump_read_twice_in_two_ways_is_said_to_disagree() {
    lines.replaceAll(
        l ->
            l.replace(
                "\"given\":[", "\"given\":[{\"dimension\":\"stop-crush\",\"length\":\"1 in\"},"));
    with(
        "{'kind':'height','key':'touch','body':{'round':'r','name':'stop-touch','spindle':'19 in',"
            + "'markAsAt':'off'}}",
        "{'kind':'reading','body':{'height':'ride','steering':'straight','quantity':'stop-gap',"
            + "'result':'number','length':'3 in'}}");
    assertEquals("Full bump as read and as worked out disagree.", sentence());
  }

  private String told() {
    CarBook book = HandBooks.of(lines);
    return CheckWords.of(book, AlignedCheck.of(book)).get(0).words();
  }
}
