package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.geometry.euclidean.threed.Rotation;
import org.apache.commons.math3.geometry.euclidean.threed.RotationConvention;
import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Alignment typed at its pages, as a garage takes it. Numbers from alignment.json (computed apart
 * from this program) or worked out beside each check; tools are those a car starts with.
 */
class AlignmentPagesTest {
  private static final double DEGREE = Math.toRadians(1);

  @TempDir Path folder;
  private Shop shop;
  private Marmot marmot;

  @BeforeEach
  void open() {
    shop = new Shop(folder);
    marmot = new Marmot(shop);
  }

  @AfterEach
  void close() {
    shop.close();
  }

  private static String address(String corner) {
    return "/corners/" + corner + "/alignment";
  }

  private Form form(String corner, String way, Map<String, String> fields) {
    Form form = shop.get(address(corner) + "/new?way=" + way).is(200).form(address(corner));
    form = form.with("rolled", "yes");
    for (Map.Entry<String, String> field : fields.entrySet()) {
      form = form.with(field.getKey(), field.getValue());
    }
    return form;
  }

  /** Kept; its key comes back. */
  private String measure(String corner, String way, Map<String, String> fields) {
    Form form = form(corner, way, fields);
    assertEquals(address(corner) + "?saved=yes", form.keep().location());
    return form.key();
  }

  private void target(String corner, Map<String, String> fields) {
    String action = address(corner) + "/targets";
    marmot.send(action, fields);
  }

  private JsonNode figure(String corner, String what) {
    for (JsonNode found : shop.figures(corner).get("alignment")) {
      if (found.get("what").asText().equals(what)) {
        return found;
      }
    }
    throw new AssertionError("no " + what + " in " + shop.figures(corner).get("alignment"));
  }

  private double degrees(String corner, String what) {
    return figure(corner, what).at("/rad/value").asDouble() / DEGREE;
  }

  private String text(String corner) {
    return shop.get(address(corner)).is(200).text();
  }

  private static JsonNode reference() {
    try (InputStream in =
        AlignmentPagesTest.class.getResourceAsStream("/reference/alignment.json")) {
      return new ObjectMapper().readTree(in);
    } catch (IOException trouble) {
      throw new UncheckedIOException(trouble);
    }
  }

  private Map<String, String> gauge(String read) {
    return Map.of("read", read);
  }

  @Test
  void nothing_measured_says_so_and_leads_to_every_way() {
    Page page = shop.get(address(marmot.left)).is(200);
    assertTrue(page.text().contains("Not measured yet."), page.text());
    for (String way :
        List.of("gauge", "plate", "string", "spot", "dial", "tape", "sweep", "joint", "across")) {
      String measure = "/alignment/new?way=" + way;
      assertTrue(page.html().contains(measure + "\""), way);
      String back = shop.get("/corners/" + marmot.left + measure).is(200).html();
      assertTrue(back.contains("<span>Align</span>"), "the way back names its page");
    }
    shop.get(address(marmot.left) + "/new?way=eye").is(404);
    shop.get(address(marmot.left) + "/new").is(404);
    assertTrue(shop.get("/corners/" + marmot.left).html().contains(address(marmot.left)));
  }

  @Test
  void a_gauge_turned_round_gives_camber_free_of_its_zero() {
    measure(marmot.left, "gauge", gauge("-0.3"));
    assertEquals(-0.3, degrees(marmot.left, "camber"), 1e-9);
    assertTrue(text(marmot.left).contains("The gauge's zero is not known"));
    double once = figure(marmot.left, "camber").at("/rad/U").asDouble();
    // The worked example of CamberGauge: -0.30 and 0.70 are -0.50.
    measure(marmot.left, "gauge", Map.of("read", "-0.3", "turned", "0.7"));
    assertEquals(-0.5, degrees(marmot.left, "camber"), 1e-9);
    JsonNode camber = figure(marmot.left, "camber");
    // Graduation and placing 0.1 each, twice, halved: u = sqrt((0.0289² + 0.0577²) / 2) = 0.0456.
    assertEquals(2 * 0.0456, camber.at("/rad/U").asDouble() / DEGREE, 1e-3);
    assertTrue(camber.at("/rad/U").asDouble() < once / 2);
    String text = text(marmot.left);
    assertTrue(text.contains("Top inward."), text);
    assertFalse(text.contains("zero is not known"), text);
    assertTrue(text.contains("the gauge showed +0.200° ± 0.092 on an upright wheel"), text);
    Page across = shop.get(address(marmot.right) + "/new?way=gauge").is(200);
    assertTrue(across.text().contains("Last turned round it showed +0.200°"), across.text());
    // What it shows on an upright wheel, known: taken off.
    measure(marmot.left, "gauge", Map.of("read", "-0.3", "zero", "0.2"));
    assertEquals(-0.5, degrees(marmot.left, "camber"), 1e-9);
  }

  @Test
  void the_owner_s_own_tool_is_counted_with_its_own_steps() {
    String tool = "/cars/" + marmot.car + "/tools/angle-finder";
    marmot.send(tool, Map.of("graduation", "1"));
    measure(marmot.left, "gauge", Map.of("read", "-1", "zero", "0"));
    // 1° steps and ± 0.1° of placing, twice: u = sqrt(2 (1/12 + 0.01/3)) = 0.4163°.
    double expanded = figure(marmot.left, "camber").at("/rad/U").asDouble() / DEGREE;
    assertEquals(2 * Math.sqrt(2 * (1 / 12.0 + 0.01 / 3)), expanded, 1e-9);
    assertTrue(text(marmot.left).contains("Read with angle finder"), text(marmot.left));
  }

  @Test
  void repeats_are_averaged_and_narrow_no_more_than_their_placing() {
    measure(marmot.left, "gauge", Map.of("read", "-0.4", "zero", "0"));
    double once = figure(marmot.left, "camber").at("/rad/U").asDouble();
    measure(marmot.left, "gauge", Map.of("read", "-0.6", "zero", "0"));
    assertEquals(-0.5, degrees(marmot.left, "camber"), 1e-9);
    assertEquals(2, figure(marmot.left, "camber").get("from").size());
    double twice = figure(marmot.left, "camber").at("/rad/U").asDouble();
    assertTrue(twice < once && twice > once / Math.sqrt(2), once + " " + twice);
  }

  @Test
  void toe_s_sign_turns_round_with_the_side_on_which_the_line_runs() {
    // The worked example of ToeReading: 101.6 in front, 98.4 behind, 609.6 apart, string outside.
    Map<String, String> outside =
        Map.of("side", "outboard", "front", "101.6 mm", "rear", "98.4 mm", "spacing", "609.6 mm");
    measure(marmot.left, "string", outside);
    assertEquals(0.3008, degrees(marmot.left, "toe"), 5e-5);
    String text = text(marmot.left);
    assertTrue(text.contains("Toe-in, front edge inward."), text);
    // 3.2 mm across the places it was taken at, 0.126 in.
    assertEquals(3.2, figure(marmot.left, "toe").at("/acrossEdgeMm/value").asDouble(), 1e-9);
    assertTrue(text.contains("+3.2"), text);
    assertTrue(text.contains("+0.126"), text);

    Map<String, String> inside = new LinkedHashMap<>(outside);
    inside.put("side", "inboard");
    measure(marmot.left, "plate", inside);
    assertEquals(-0.3008, degrees(marmot.left, "toe"), 5e-5);
    assertTrue(text(marmot.left).contains("Toe-out, front edge outward."));
  }

  @Test
  void both_wheels_are_said_across_the_edge_that_was_given_for_one() {
    marmot.send("/corners/" + marmot.left + "/given", Map.of("toe-across", "28"));
    Map<String, String> string =
        Map.of("side", "outboard", "front", "4 1/16", "rear", "4", "spacing", "16");
    measure(marmot.left, "string", string);
    measure(marmot.right, "string", string);
    for (String corner : List.of(marmot.left, marmot.right)) {
      // 1/16 in over 16 in is 7/64 in over 28 in: 2.778 mm.
      assertEquals(2.778, figure(corner, "toe").at("/acrossEdgeMm/value").asDouble(), 5e-4);
    }
  }

  @Test
  void a_string_that_leans_is_typed_with_its_distance_to_both_hubs() {
    Map<String, String> string =
        new LinkedHashMap<>(
            Map.of(
                "side", "outboard", "front", "101.6 mm", "rear", "98.4 mm", "spacing", "609.6 mm"));
    string.put("lean-front", "120 mm");
    Page asked = form(marmot.left, "string", string).send().is(422);
    assertTrue(asked.text().contains("Where the line leans needs both distances"), asked.text());
    string.put("lean-rear", "620 mm");
    string.put("lean-apart", "2800 mm");
    asked = form(marmot.left, "string", string).send().is(422);
    assertTrue(asked.text().contains("more than 10 degrees"), asked.text());
    string.put("lean-rear", "126 mm");
    String key = measure(marmot.left, "string", string);
    // 0.3008° from the line, and asin 6/2800 = 0.1228° by which it leans in.
    assertEquals(0.4235, degrees(marmot.left, "toe"), 5e-5);
    assertTrue(text(marmot.left).contains("The line leaned by +0.123° ± 0.038"), text(marmot.left));
    String entry = shop.get("/entries/" + key).is(200).text();
    assertTrue(entry.contains("120 mm in front, 126 mm behind, 2800 mm apart"), entry);
    Form correct =
        shop.get("/alignments/" + key + "/correct").is(200).form("/alignments/" + key + "/correct");
    assertEquals("2800 mm", correct.value("lean-apart"));
    correct.with("lean-wider", "10 mm").with("reason", "hubs are not alike").keep();
    // 0.3008° − asin 4/2800.
    assertEquals(0.3008 - 0.0819, degrees(marmot.left, "toe"), 1e-4);
  }

  @Test
  void a_string_inside_that_leans_asks_on_which_side_of_it_hubs_or_marks_lie() {
    Map<String, String> string =
        new LinkedHashMap<>(
            Map.of(
                "side",
                "inboard",
                "front",
                "126.65 mm",
                "rear",
                "125.35 mm",
                "spacing",
                "609.6 mm",
                "lean-front",
                "126 mm",
                "lean-rear",
                "120 mm",
                "lean-apart",
                "2800 mm"));
    Page asked = form(marmot.left, "string", string).send().is(422);
    assertTrue(asked.text().contains("Tap on which side of the line the two places"), asked.text());
    string.put("lean-places", "outboard");
    String key = measure(marmot.left, "string", string);
    // The rim's edges differ by what the line leans, 0.122°: the wheel stands straight.
    assertEquals(0, degrees(marmot.left, "toe"), 1e-3);
    assertTrue(text(marmot.left).contains("The line leaned by +0.123°"), text(marmot.left));
    String entry = shop.get("/entries/" + key).is(200).text();
    assertTrue(entry.contains("from the line out to the car 126 mm in front"), entry);
    String correct = "/alignments/" + key + "/correct";
    shop.get(correct)
        .form(correct)
        .with("lean-places", "inboard")
        .with("reason", "marks on the frame")
        .keep();
    assertEquals(-0.2450, degrees(marmot.left, "toe"), 1e-3);
    string.put("side", "outboard");
    asked = form(marmot.left, "string", string).send().is(422);
    assertTrue(asked.text().contains("outboard of the wheel: the car lies inboard"), asked.text());
  }

  @Test
  void a_toe_whose_doubt_reaches_beyond_a_right_angle_is_shown_and_breaks_no_page() {
    measure(
        marmot.left,
        "plate",
        Map.of("side", "outboard", "front", "100 mm", "rear", "98 mm", "spacing", "0.1 in"));
    // asin 2/2.54; each place read to ± more than what is left to a right angle.
    assertEquals(51.94, degrees(marmot.left, "toe"), 0.01);
    assertTrue(text(marmot.left).contains("+52° ± "), text(marmot.left));
    shop.get("/corners/" + marmot.left).is(200);
    shop.get("/cars/" + marmot.car + "/drive-check").is(200);
    measure(marmot.left, "spot", Map.of("inward", "10 mm", "distance", "2000 mm"));
  }

  @Test
  void how_a_line_leaned_is_told_under_the_wheel_it_was_read_at() {
    Map<String, String> string =
        new LinkedHashMap<>(
            Map.of(
                "side", "outboard", "front", "101.6 mm", "rear", "98.4 mm", "spacing", "609.6 mm"));
    string.putAll(Map.of("lean-front", "120 mm", "lean-rear", "126 mm", "lean-apart", "2800 mm"));
    measure(marmot.left, "string", string);
    string.put("lean-rear", "116 mm");
    measure(marmot.right, "string", string);
    for (String corner : List.of(marmot.left, marmot.right)) {
      String text = text(corner);
      boolean left = corner.equals(marmot.left);
      String here = text.substring(text.indexOf("This wheel"));
      int other = here.indexOf(left ? "Right front" : "Left front");
      String there = here.substring(other);
      here = here.substring(0, other);
      // asin 6/2800 = +0.123° at the left, asin −4/2800 = −0.082° at the right.
      assertTrue(here.contains("leaned by " + (left ? "+0.123°" : "−0.082°")), here);
      assertTrue(there.contains("leaned by " + (left ? "−0.082°" : "+0.123°")), there);
    }
  }

  @Test
  void both_wheels_make_the_total_and_a_tape_tells_no_wheel() {
    Map<String, String> tape =
        Map.of("front", "1577 mm", "rear", "1583.35 mm", "across", "711.2 mm");
    Page asked = shop.get(address(marmot.left) + "/new?way=tape").is(200);
    assertTrue(asked.text().contains("tells the total only"), asked.text());
    measure(marmot.left, "tape", tape);
    // The worked example of TotalToe: 1/4 in across 28 in is 0.5116 in all.
    assertEquals(0.5116, degrees(marmot.left, "total-toe"), 5e-5);
    assertEquals(0.5116, degrees(marmot.right, "total-toe"), 5e-5);
    assertTrue(text(marmot.right).contains("one wheel may toe in and the other out"));
    assertFalse(shop.figures(marmot.left).get("alignment").toString().contains("\"toe\""));

    measure(marmot.left, "spot", Map.of("inward", "10 mm", "distance", "2000 mm"));
    // One wheel alone is no total: the tape stays.
    assertEquals(0.5116, degrees(marmot.left, "total-toe"), 5e-5);
    measure(marmot.right, "spot", Map.of("inward", "-4 mm", "distance", "2000 mm"));
    double sum = Math.toDegrees(Math.atan2(10, 2000) - Math.atan2(4, 2000));
    assertEquals(sum, degrees(marmot.left, "total-toe"), 1e-9);
    assertEquals(sum, degrees(marmot.right, "total-toe"), 1e-9);
    String text = text(marmot.left);
    assertTrue(text.contains("Right front"), text);
  }

  /** A wheel is as fresh as its last repeat, not as its first. */
  @Test
  void a_tape_does_not_rule_over_wheels_that_were_both_read_since() {
    Map<String, String> left = Map.of("inward", "10 mm", "distance", "2000 mm");
    measure(marmot.left, "spot", left);
    measure(marmot.left, "tape", Map.of("front", "1577 mm", "rear", "1583.35 mm", "across", "28"));
    measure(marmot.left, "spot", left);
    assertEquals(0.5116, degrees(marmot.left, "total-toe"), 5e-5);
    measure(marmot.right, "spot", Map.of("inward", "-4 mm", "distance", "2000 mm"));
    double sum = Math.toDegrees(Math.atan2(10, 2000) - Math.atan2(4, 2000));
    assertEquals(sum, degrees(marmot.left, "total-toe"), 1e-9);
    assertEquals(sum, degrees(marmot.right, "total-toe"), 1e-9);
    // Newer than one of the wheels is enough for a tape.
    measure(marmot.left, "tape", Map.of("front", "1577 mm", "rear", "1583.35 mm", "across", "28"));
    measure(marmot.left, "spot", left);
    assertEquals(0.5116, degrees(marmot.right, "total-toe"), 5e-5);
  }

  @Test
  void the_reference_s_tape_readings_typed_at_the_page_give_its_degrees() {
    int checked = 0;
    for (JsonNode row : reference().at("/toe_units/length_to_deg")) {
      double totalMm = row.get("total_toe_mm").asDouble();
      String key =
          measure(
              marmot.left,
              "tape",
              Map.of(
                  "front", "1500 mm",
                  "rear", fixed(1500 + totalMm) + " mm",
                  "across", fixed(row.get("measuring_diameter_mm").asDouble()) + " mm"));
      double total = degrees(marmot.left, "total-toe");
      assertEquals(row.get("total_toe_deg").asDouble(), total, 1e-8);
      assertEquals(
          totalMm, figure(marmot.left, "total-toe").at("/acrossEdgeMm/value").asDouble(), 1e-8);
      takeBack(key);
      checked++;
    }
    assertEquals(7, checked);
  }

  @Test
  void a_dial_counts_from_where_it_stood_at_zero() {
    // Rear 1 mm outward, front 1 mm inward over 500 mm: asin 2/500 = 0.22919° more toe-in.
    measure(
        marmot.left,
        "dial",
        Map.of("dial-front", "-1 mm", "dial-rear", "1 mm", "spacing", "500 mm", "from", "-0.1"));
    assertEquals(0.12919, degrees(marmot.left, "toe"), 1e-5);
  }

  private Map<String, String> sweep(JsonNode row, String read, String by) {
    JsonNode swept = row.get(read);
    Map<String, String> fields = new LinkedHashMap<>();
    fields.put("by", by);
    fields.put("left-lock", row.get("lock_deg").asText());
    fields.put("right-lock", row.get("lock_deg").asText());
    fields.put("camber-left", fixed(swept.at("/left_lock/camber_deg").asDouble()));
    fields.put("camber-straight", row.get("camber0").asText());
    fields.put("camber-right", fixed(swept.at("/right_lock/camber_deg").asDouble()));
    fields.put("kpi", row.get("kpi").asText());
    return fields;
  }

  private static String fixed(double degrees) {
    return String.format(java.util.Locale.ROOT, "%.9f", degrees);
  }

  @Test
  void the_sweeps_of_the_reference_typed_at_the_page_give_its_caster() {
    List<JsonNode> rows = new ArrayList<>();
    reference().at("/caster_sweep/rows").forEach(rows::add);
    int checked = 0;
    for (JsonNode row : rows) {
      if (row.get("toe0").asDouble() != 0) {
        continue; // Toe is not typed here; it is counted as 0.
      }
      String key = measure(marmot.left, "sweep", sweep(row, "wheel_heading", "wheel-heading"));
      JsonNode caster = figure(marmot.left, "caster");
      double exact = caster.at("/rad/value").asDouble() / DEGREE;
      assertEquals(row.get("caster").asDouble(), exact, 1e-7);
      assertEquals(
          row.at("/wheel_heading/estimates_deg/small_angle").asDouble(),
          caster.at("/smallAngleRad/value").asDouble() / DEGREE,
          1e-7);
      assertEquals(row.get("kpi").asDouble(), degrees(marmot.left, "kpi"), 1e-9);
      takeBack(key);
      checked++;
    }
    assertTrue(checked >= 5, "only " + checked + " rows");
  }

  @Test
  void a_heading_taken_for_a_turn_about_the_kingpin_is_another_caster() {
    JsonNode row = reference().at("/caster_sweep/rows/1");
    String right = measure(marmot.left, "sweep", sweep(row, "axis_rotation", "kingpin-turn"));
    assertEquals(row.get("caster").asDouble(), degrees(marmot.left, "caster"), 1e-7);
    takeBack(right);
    measure(marmot.left, "sweep", sweep(row, "axis_rotation", "wheel-heading"));
    double mixedUp = degrees(marmot.left, "caster");
    assertTrue(Math.abs(mixedUp - row.get("caster").asDouble()) > 0.01, "caster " + mixedUp);
    String text = text(marmot.left);
    assertTrue(text.contains("By the small-angle formula"), text);
    String entry = shop.get("/cars/" + marmot.car + "/book?kind=alignment").is(200).text();
    assertTrue(entry.contains("by the wheel's heading on the turn plates"), entry);
    assertTrue(entry.contains("by the turn about the kingpin"), entry);
  }

  @Test
  void a_sweep_says_what_its_angle_counts_or_is_asked() {
    Map<String, String> fields = new LinkedHashMap<>();
    fields.put("left-lock", "20");
    fields.put("right-lock", "20");
    fields.put("camber-left", "1");
    fields.put("camber-right", "-0.3");
    Page asked = form(marmot.left, "sweep", fields).send().is(422);
    assertTrue(asked.text().contains("Tap what the lock angles count"), asked.text());
    assertEquals("-0.3", asked.form(address(marmot.left)).value("camber-right"));
  }

  @Test
  void scrub_and_trail_come_from_the_joint_the_axis_and_the_loaded_radius() {
    measure(
        marmot.left,
        "joint",
        Map.of("ahead", "8 mm", "inboard", "110 mm", "below", "115 mm", "radius", "380 mm"));
    assertTrue(text(marmot.left).contains("Needs caster and KPI: a sweep."));
    // Cambers of an upright wheel with 4° of caster and 6° of KPI swung ± 20° by heading; the
    // worked example of ScrubTrail says 82.147 and 26.531 mm.
    JsonNode row = rowWith(4, 6);
    measure(marmot.left, "sweep", sweep(row, "wheel_heading", "wheel-heading"));
    assertEquals(82.147, figure(marmot.left, "scrub").at("/mm/value").asDouble(), 2e-3);
    assertEquals(26.531, figure(marmot.left, "trail").at("/mm/value").asDouble(), 2e-3);
    marmot.adjust(marmot.left, "tyre-pressure", "14 psi");
    assertEquals("stale", figure(marmot.left, "scrub").get("stands").asText());
    assertEquals("live", figure(marmot.left, "caster").get("stands").asText());
  }

  @Test
  void the_right_wheel_s_sweep_is_the_left_one_s_with_its_locks_changed_over() {
    JsonNode row = rowWith(4, 6);
    Map<String, String> fields = sweep(row, "wheel_heading", "wheel-heading");
    String atLeft = fields.get("camber-left");
    fields.put("camber-left", fields.get("camber-right"));
    fields.put("camber-right", atLeft);
    measure(marmot.right, "sweep", fields);
    assertEquals(4, degrees(marmot.right, "caster"), 1e-7);
  }

  @Test
  void scrub_and_trail_are_said_along_the_tyre_not_along_the_car() {
    // Toe-in of 2°: a spot of light 5000 tan 2° inward at 5000 mm. Upright, C 4°, K 6°, locks
    // turned
    // about the kingpin by 20°: cambers of an axle (sin 2°, cos 2°, 0) turned by hand.
    double toe = 2 * DEGREE;
    measure(
        marmot.left,
        "spot",
        Map.of("inward", fixed(5000 * Math.tan(toe)) + " mm", "distance", "5000 mm"));
    Vector3D axle = new Vector3D(Math.sin(toe), Math.cos(toe), 0);
    Vector3D kingpin = new Vector3D(-Math.tan(4 * DEGREE), -Math.tan(6 * DEGREE), 1);
    Map<String, String> fields = new LinkedHashMap<>();
    fields.put("by", "kingpin-turn");
    fields.put("left-lock", "20");
    fields.put("right-lock", "20");
    fields.put("camber-left", turned(axle, kingpin, 20));
    fields.put("camber-straight", "0");
    fields.put("camber-right", turned(axle, kingpin, -20));
    fields.put("kpi", "6");
    measure(marmot.left, "sweep", fields);
    assertEquals(4, degrees(marmot.left, "caster"), 1e-6);
    measure(
        marmot.left,
        "joint",
        Map.of("ahead", "8 mm", "inboard", "110 mm", "below", "115 mm", "radius", "380 mm"));
    // In the car's axes 82.147 and 26.531 mm as before; the tyre's are turned by 2°.
    double scrub = 82.147 * Math.cos(toe) - 26.531 * Math.sin(toe);
    double trail = 26.531 * Math.cos(toe) + 82.147 * Math.sin(toe);
    assertEquals(scrub, figure(marmot.left, "scrub").at("/mm/value").asDouble(), 2e-3);
    assertEquals(trail, figure(marmot.left, "trail").at("/mm/value").asDouble(), 2e-3);
  }

  @Test
  void a_gauge_along_the_wheel_gives_kpi_at_either_side_by_the_same_swing() {
    // An upright wheel turned by hand about a kingpin of C 4°, K 6°; pitch + is the front end up.
    // The right wheel reads at its right lock what the left one reads at its left.
    Vector3D kingpin = new Vector3D(-Math.tan(4 * DEGREE), -Math.tan(6 * DEGREE), 1);
    String[] camber = {turned(Vector3D.PLUS_J, kingpin, 20), turned(Vector3D.PLUS_J, kingpin, -20)};
    String[] pitch = {
      turned(Vector3D.MINUS_I, kingpin, 20), turned(Vector3D.MINUS_I, kingpin, -20)
    };
    for (int side = 0; side < 2; side++) {
      Map<String, String> fields = new LinkedHashMap<>();
      fields.put("by", "kingpin-turn");
      fields.put("left-lock", "20");
      fields.put("right-lock", "20");
      fields.put("camber-left", camber[side]);
      fields.put("camber-straight", "0");
      fields.put("camber-right", camber[1 - side]);
      fields.put("pitch-left", pitch[side]);
      fields.put("pitch-straight", "0");
      fields.put("pitch-right", pitch[1 - side]);
      String corner = side == 0 ? marmot.left : marmot.right;
      measure(corner, "sweep", fields);
      assertEquals(4, degrees(corner, "caster"), 1e-6);
      assertEquals(6, degrees(corner, "kpi"), 1e-6);
    }
  }

  private static String turned(Vector3D axle, Vector3D kingpin, double degrees) {
    Rotation turn = new Rotation(kingpin, degrees * DEGREE, RotationConvention.VECTOR_OPERATOR);
    return fixed(-Math.asin(turn.applyTo(axle).getZ()) / DEGREE);
  }

  private static JsonNode rowWith(double caster, double kpi) {
    for (JsonNode row : reference().at("/caster_sweep/rows")) {
      if (row.get("caster").asDouble() == caster
          && row.get("kpi").asDouble() == kpi
          && row.get("camber0").asDouble() == 0
          && row.get("toe0").asDouble() == 0) {
        return row;
      }
    }
    throw new AssertionError("no row with caster " + caster + " and KPI " + kpi);
  }

  @Test
  void track_is_told_at_hub_faces_wheel_centres_and_outside() {
    measure(
        marmot.left,
        "across",
        Map.of(
            "over", "hub-faces", "length", "1600 mm", "offset", "-12 mm", "section", "317.5 mm"));
    // The worked example of Track.
    JsonNode track = figure(marmot.right, "track");
    assertEquals(1624, track.at("/mm/value").asDouble(), 1e-9);
    assertEquals(1600, track.at("/hubFacesMm/value").asDouble(), 1e-9);
    assertEquals(1941.5, track.at("/outsideMm/value").asDouble(), 1e-9);
    marmot.adjust(marmot.right, "wheel", "another");
    assertEquals("stale", figure(marmot.left, "track").get("stands").asText());
  }

  @Test
  void straight_off_the_jack_is_kept_in_doubt_until_somebody_says_it_is_so() {
    Form form = form(marmot.left, "gauge", gauge("-0.3")).with("rolled", "no");
    form.keep();
    assertEquals("in-doubt", figure(marmot.left, "camber").get("stands").asText());
    String text = text(marmot.left);
    assertTrue(text.contains("check this"), text);
    Page entry = shop.get("/entries/" + form.key()).is(200);
    assertTrue(entry.text().contains("straight off the jack"), entry.text());
    String answer = "/entries/" + form.key() + "/answer";
    entry.form(answer).with("answer", "so").keep();
    assertEquals("live", figure(marmot.left, "camber").get("stands").asText());
    assertEquals(0, shop.figures(marmot.left).get("inDoubt").size());
  }

  @Test
  void far_off_what_was_known_with_nothing_changed_since_is_asked_about() {
    measure(marmot.left, "gauge", Map.of("read", "-0.3", "zero", "0"));
    String key = measure(marmot.left, "gauge", Map.of("read", "-3", "zero", "0"));
    assertEquals(-0.3, degrees(marmot.left, "camber"), 1e-9);
    String entry = shop.get("/entries/" + key).is(200).text();
    assertTrue(entry.contains("2.7° off what was known"), entry);
    marmot.adjust(marmot.left, "upper-rod-ends", "2");
    measure(marmot.left, "gauge", Map.of("read", "-3.1", "zero", "0"));
    assertEquals(-3.1, degrees(marmot.left, "camber"), 1e-9);
  }

  @Test
  void a_rod_end_makes_it_stale_and_reading_again_stands_for_it() {
    measure(marmot.left, "gauge", gauge("-0.3"));
    measure(marmot.left, "spot", Map.of("inward", "10 mm", "distance", "2000 mm"));
    measure(marmot.right, "spot", Map.of("inward", "10 mm", "distance", "2000 mm"));
    marmot.adjust(marmot.left, "tie-rod", "1");
    assertEquals("live", figure(marmot.left, "camber").get("stands").asText());
    assertEquals("stale", figure(marmot.left, "toe").get("stands").asText());
    assertEquals("stale", figure(marmot.right, "toe").get("stands").asText());
    assertEquals("stale", figure(marmot.right, "total-toe").get("stands").asText());
    marmot.adjust(marmot.left, "upper-rod-ends", "1");
    assertEquals("stale", figure(marmot.left, "camber").get("stands").asText());
    String text = text(marmot.left);
    assertTrue(text.contains("Since then: upper rod ends"), text);
    measure(marmot.left, "gauge", gauge("-0.8"));
    assertEquals("live", figure(marmot.left, "camber").get("stands").asText());
    assertEquals(-0.8, degrees(marmot.left, "camber"), 1e-9);
    assertEquals(1, figure(marmot.left, "camber").get("from").size());
  }

  @Test
  void a_target_is_kept_missed_or_cannot_be_told_and_says_what_would_settle_it() {
    measure(marmot.left, "gauge", Map.of("read", "-0.5", "zero", "0"));
    target(marmot.left, Map.of("camber-from", "-1", "camber-to", "0"));
    assertEquals("clear", figure(marmot.left, "camber").get("outcome").asText());
    target(marmot.left, Map.of("camber-from", "-0.6", "camber-to", "0"));
    assertEquals("cant-tell", figure(marmot.left, "camber").get("outcome").asText());
    String text = text(marmot.left);
    assertTrue(text.contains("Your target: −0.6° to 0°."), text);
    assertTrue(text.contains("Repeating will not settle it."), text);
    target(marmot.left, Map.of("camber-from", "", "camber-to", "-1"));
    assertEquals("short", figure(marmot.left, "camber").get("outcome").asText());
    target(marmot.left, Map.of("camber-to", ""));
    assertFalse(figure(marmot.left, "camber").has("target"));
    int entries = shop.entries();
    target(marmot.left, Map.of());
    assertEquals(entries, shop.entries(), "nothing was changed, so nothing is written");
  }

  @Test
  void a_target_for_total_toe_is_the_axle_s_and_may_be_a_length_across_the_edge() {
    measure(
        marmot.left,
        "tape",
        Map.of("front", "1577 mm", "rear", "1583.35 mm", "across", "711.2 mm"));
    target(marmot.right, Map.of("total-toe-to", "3/8 in"));
    assertEquals("clear", figure(marmot.left, "total-toe").get("outcome").asText());
    target(marmot.left, Map.of("total-toe-from", "0", "total-toe-to", "1/16 in"));
    assertEquals("short", figure(marmot.right, "total-toe").get("outcome").asText());
    assertEquals("0 in to 1/16 in", figure(marmot.right, "total-toe").get("target").asText());
  }

  @Test
  void a_target_of_toe_typed_as_a_length_stays_one_when_its_other_end_is_emptied() {
    String page = address(marmot.left) + "/targets";
    target(marmot.left, Map.of("toe-from", "-1/16", "toe-to", "1/16 in", "track-from", "60"));
    assertEquals("−1/16 in", shop.get(page).form(page).value("toe-from"));
    assertEquals("60", shop.get(page).form(page).value("track-from"));
    int entries = shop.entries();
    target(marmot.left, Map.of());
    assertEquals(entries, shop.entries(), "nothing was changed, so nothing is written");
    target(marmot.left, Map.of("toe-to", ""));
    assertEquals("at least −1/16 in", figure(marmot.left, "toe").get("target").asText());
  }

  @Test
  void a_target_that_is_missed_is_a_line_of_the_drive_check_and_of_figures() {
    measure(marmot.left, "gauge", Map.of("read", "0.5", "zero", "0"));
    target(marmot.left, Map.of("camber-to", "0"));
    Page check = shop.get("/cars/" + marmot.car + "/drive-check").is(200);
    assertTrue(check.text().contains("Set camber, target at most 0°"), check.text());
    assertTrue(check.html().contains("\"" + address(marmot.left) + "\""));
    measure(marmot.left, "gauge", Map.of("read", "-0.5", "turned", "0.5"));
    String mended = shop.get("/cars/" + marmot.car + "/drive-check").is(200).text();
    assertFalse(mended.contains("Set camber"), mended);
  }

  @Test
  void a_toe_read_as_an_angle_is_not_called_not_measured_beside_a_target_of_length() {
    measure(marmot.left, "spot", Map.of("inward", "1/8", "distance", "120"));
    target(marmot.left, Map.of("toe-from", "-1/16 in", "toe-to", "1/16 in"));
    String text = text(marmot.left);
    assertTrue(text.contains("Give across what toe is read as a length"), text);
    String row = text.substring(text.indexOf("This wheel"), text.indexOf("Toe-in, front edge"));
    assertTrue(row.contains("can't tell"), row);
    assertFalse(row.contains("not measured"), row);
  }

  @Test
  void a_target_with_its_ends_crossed_comes_back_with_one_sentence() {
    Form form =
        shop.get(address(marmot.left) + "/targets")
            .is(200)
            .form(address(marmot.left) + "/targets")
            .with("caster-from", "6")
            .with("caster-to", "4");
    Page page = form.send().is(422);
    assertTrue(page.text().contains("'From' is more than 'to'"), page.text());
    assertEquals("4", page.form(form.action()).value("caster-to"));
  }

  @Test
  void bad_text_comes_back_as_typed_with_one_sentence_and_nothing_is_written() {
    int entries = shop.entries();
    Form bad = form(marmot.left, "gauge", gauge("a bit in"));
    Page page = bad.send().is(422);
    assertEquals("a bit in", page.form(address(marmot.left)).value("read"));
    assertEquals(1, page.html().split("class=\"problem\"", -1).length - 1, page.html());
    Map<String, String> apart =
        Map.of("side", "outboard", "front", "20", "rear", "4", "spacing", "10");
    assertTrue(
        form(marmot.left, "string", apart)
            .send()
            .is(422)
            .text()
            .contains("differ by more than their places lie apart"));
    Page unsaid = form(marmot.left, "gauge", gauge("-1")).with("rolled", "").send().is(422);
    assertTrue(unsaid.text().contains("Tap whether the car was rolled"), unsaid.text());
    assertEquals(entries, shop.entries());
    page.form(address(marmot.left)).with("read", "-1").keep();
    assertEquals(entries + 1, shop.entries());
  }

  @Test
  void sent_twice_it_is_in_the_book_once() {
    Form form = form(marmot.left, "gauge", gauge("-1"));
    form.keep();
    int entries = shop.entries();
    form.keep();
    assertEquals(entries, shop.entries());
  }

  @Test
  void it_is_corrected_with_a_reason_and_survives_a_restart_and_a_rebuild() {
    String key = measure(marmot.left, "gauge", gauge("-0.3"));
    String address = "/alignments/" + key + "/correct";
    assertTrue(shop.get("/entries/" + key).html().contains(address));
    Form correct = shop.get(address).is(200).form(address).with("read", "-0.8");
    assertEquals("-0.8", correct.send().is(422).form(address).value("read"), "it says why");
    correct.with("reason", "read upside down").keep();
    assertEquals(-0.8, degrees(marmot.left, "camber"), 1e-9);
    shop.reopen();
    assertTrue(text(marmot.left).contains("−0.80"), text(marmot.left));
    shop.close();
    App.rebuild(folder, -1, shop.told::add);
    shop.open();
    assertTrue(text(marmot.left).contains("−0.80"));
    String told = shop.get("/cars/" + marmot.car + "/book").is(200).text();
    assertTrue(told.contains("camber by gauge · −0.3° · rolled and bounced"), told);
  }

  @Test
  void a_page_on_paper_says_which_one_doubt_serves_all_that_was_typed() {
    String wheels =
        "/corners/"
            + marmot.left
            + "/wheel?now-tyre=35x12.50R15&now-width=8.5&now-offset=-12mm"
            + "&then-tyre=37x12.50R17&then-width=8.5&then-offset=-12mm";
    String usual = shop.get(wheels).is(200).text();
    assertTrue(
        usual.contains("each length is taken as good to ± 1/16 in, each angle to ± 0.1°."), usual);
    String said = shop.get(wheels + "&good=0.01in&good-angle=0.25").is(200).text();
    assertTrue(said.contains("good to ± 0.01 in, each angle to ± 0.25°."), said);
    String none = shop.get("/corners/" + marmot.left + "/rod-ends").is(200).text();
    assertFalse(none.contains("± is U"), none);
    assertTrue(none.contains("type that of the roughest"), none);
  }

  private void takeBack(String key) {
    String action = "/entries/" + key + "/take-back";
    Page back = marmot.send("/entries/" + key, action, Map.of("reason", "for the test"));
    assertEquals(address(marmot.left), back.location());
  }

  @Test
  void a_correction_of_what_was_taken_back_meanwhile_keeps_what_was_typed() {
    String key = measure(marmot.left, "gauge", gauge("-0.5°"));
    String correct = "/alignments/" + key + "/correct";
    Form open = shop.get(correct).form(correct).with("read", "-0.7°").with("reason", "misread");
    takeBack(key);
    Page told = open.send().is(409);
    assertTrue(told.text().contains("read: -0.7°"), told.text());
    told.forms().get(0).keep();
    open.keep();
    assertEquals(-0.7, degrees(marmot.left, "camber"), 1e-9);
  }

  @Test
  void lengths_that_make_no_angle_and_what_is_read_twice_over_are_one_sentence_each() {
    int entries = shop.entries();
    says("spot", Map.of("inward", "10", "distance", "10"), "The spot falls further aside than");
    Map<String, String> dials = new LinkedHashMap<>(Map.of("spacing", "20 in"));
    says("dial", dials, "Type what the front dial shows, or the rear one.");
    String none = "Front and rear differ by more than their places lie apart: type them again.";
    dials.put("dial-front", "11 in");
    dials.put("dial-rear", "-9 in");
    says("dial", dials, none);
    says("tape", Map.of("front", "80 in", "rear", "20 in", "across", "30 in"), none);
    Map<String, String> sweep =
        new LinkedHashMap<>(Map.of("by", "wheel-heading", "left-lock", "20", "right-lock", "20"));
    sweep.putAll(Map.of("camber-left", "1", "camber-right", "-0.3", "pitch-left", "0.5"));
    says("sweep", sweep, "Pitch is read at left lock, straight and right lock: type all three.");
    sweep.putAll(Map.of("pitch-straight", "0.1", "pitch-right", "-0.4", "kpi", "12"));
    says("sweep", sweep, "Leave KPI empty when pitch was read: the sweep finds it.");
    assertEquals(entries, shop.entries());
  }

  private void says(String way, Map<String, String> fields, String sentence) {
    Page page = form(marmot.left, way, fields).send().is(422);
    assertEquals(1, BadInputTest.problems(page).size(), page.text());
    assertTrue(page.text().contains(sentence), page.text());
  }
}
