package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A wheel tried on paper; every number worked out by hand beside its check. */
class WheelPagesTest {
  private static final Map<String, String> WHEELS =
      Map.of(
          "now-tyre",
          "35x12.50R15",
          "now-width",
          "8",
          "now-backspacing",
          "4 1/2",
          "then-tyre",
          "35x12.50R17",
          "then-width",
          "9",
          "then-backspacing",
          "4 1/2");

  private static final double INCH = 25.4;

  /** A wider wheel on a spacer, all that can be typed of both; inches unless it says mm. */
  private static final Map<String, String> ALL =
      Map.ofEntries(
          Map.entry("now-tyre", "35x12.50R15"),
          Map.entry("now-width", "8"),
          Map.entry("now-backspacing", "3 3/4"),
          Map.entry("now-spokes", "1"),
          Map.entry("now-loaded", "16 1/2"),
          Map.entry("then-tyre", "315/70R17"),
          Map.entry("then-width", "8 1/2"),
          Map.entry("then-offset", "-6 mm"),
          Map.entry("then-lip", "5/8"),
          Map.entry("then-spacer", "1/4"),
          Map.entry("then-spokes", "1 1/4"),
          Map.entry("then-loaded", "16 1/8"),
          Map.entry("barrel", "3/8"),
          Map.entry("spokes", "5/8"),
          Map.entry("inner-lip", "1"),
          Map.entry("tyre-inboard", "2 1/2"),
          Map.entry("tyre-outboard", "1 1/2"),
          Map.entry("tread", "2"));

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

  private Page wheel(Map<String, String> typed) {
    String query =
        typed.entrySet().stream()
            .map(e -> e.getKey() + "=" + URLEncoder.encode(e.getValue(), StandardCharsets.UTF_8))
            .collect(Collectors.joining("&"));
    return shop.get("/corners/" + marmot.left + "/wheel?" + query);
  }

  private static Map<String, String> with(Map<String, String> typed, String... more) {
    Map<String, String> all = new HashMap<>(typed);
    for (int i = 0; i < more.length; i += 2) {
      all.put(more[i], more[i + 1]);
    }
    return all;
  }

  private static void says(String text, String... lines) {
    for (String line : lines) {
      assertTrue(text.contains(line), () -> line + " in " + text);
    }
  }

  @Test
  void a_wheel_by_hand_from_both_ends() {
    String text = wheel(with(ALL, "camber", "-1", "kpi", "9")).is(200).text();
    // E 3.75 − (8 + 1)/2 = −0.75; b −0.2362 + (8.5 + 1.25)/2 = 4.639. On the spacer E −0.4862.
    says(
        text,
        "−19 mm ± 8; backspacing − (rim's width + 2 lips) / 2; lip 1/2 in ± 5/16, assumed −3/4 in",
        "Backspacing offset + (rim's width + 2 lips) / 2; lip 5/8 in ± 1/8 4 5/8 in ± 1/8",
        "Offset −6 mm ± 2; as typed −1/4 in ± 1/8");
    // ΔE + 0.2638: track − 0.5275; U 2 · 2 · √(3 (1/16)² + (1/4)²)/√3 = 0.629.
    says(text, "change of offset · cos camber −1/2 in ± 11/16");
    // ΔR −0.375: (cos 1° tan 9° − sin 1°) · 0.375 = + 0.0528; U 0.014, which ± 1/16 would hide.
    says(text, "change of loaded radius, and no more than that +1/16 in ± 1/32");
    // −0.2638 (cos 1° + tan 9° sin 1°) = −0.2645; together −0.2116.
    says(text, "(cos camber − tan KPI · sin camber) −1/4 in ± 3/8");
    says(text, "Scrub, both together + kingpin meets the ground further inboard −3/16 in ± 3/8");
    // b 4.639 − 0.25 − 3.75 = 0.639; w − b: 9.75 − 4.389 − (9 − 3.75) = 0.111.
    says(text, "Inner lip + goes further inboard +5/8 in ± 3/16");
    says(text, "Outer lip + goes further outboard +1/8 in ± 5/8");
    // Barrel 3/8 + 1; spokes 5/8 + 1/4 + 1/4; lip 1 − 0.639.
    says(text, "drop centre as placed are assumed 1 3/8 in ± 1/8", "was 5/8 in 1 1/8 in ± 3/16");
    says(text, "was 1 in 3/8 in ± 3/16");
    // Section 12.5 to 315/25.4 = 12.402: half −0.049, ± 3 %. Free radius 17.5 to 17.181.
    says(text, "was 2 1/2 in 2 5/16 in", "was 1 1/2 in 1 13/16 in", "was 2 in 2 5/16 in ± 7/8");
  }

  @Test
  void scrub_needs_the_kingpin_s_lean_typed_or_measured() {
    String text = wheel(ALL).is(200).text();
    says(text, "Upright to ± 1.5° is assumed");
    says(text, "Scrub needs KPI: type it below, or measure it", "Empty: no scrub is told.");
    assertFalse(text.contains("Scrub, both together"), text);
    measure("gauge", "read", "-1", "zero", "0");
    measure(
        "sweep",
        "by",
        "kingpin-turn",
        "left-lock",
        "20",
        "right-lock",
        "20",
        "camber-left",
        "1.9",
        "camber-straight",
        "-1",
        "camber-right",
        "-1.9",
        "kpi",
        "9");
    String known = wheel(ALL).is(200).text();
    says(known, "Empty: −1.00° ± ", "as measured.", "Empty: +9.0");
    says(known, "and no more than that +1/16 in", "further inboard −3/16 in");
    says(known, "Camber −1.00° ± ", "is taken, as measured.", "KPI +9.0");
  }

  private void measure(String way, String... fields) {
    String address = "/corners/" + marmot.left + "/alignment";
    Form form = shop.get(address + "/new?way=" + way).is(200).form(address).with("rolled", "yes");
    for (int i = 0; i < fields.length; i += 2) {
      form = form.with(fields[i], fields[i + 1]);
    }
    form.keep();
  }

  @Test
  void track_as_measured_is_told_as_it_will_be() {
    measure("across", "over", "hub-faces", "length", "1600 mm", "offset", "-12 mm");
    // 1624 mm, 63.937 in, less 0.527: 63.410 in.
    says(
        wheel(ALL).is(200).text(),
        // A tape's graduation, placing and class, each ± 1/32 in: U = 2 √3 (1/32)/√3.
        "Track, wheel centres was 63 15/16 in ± 1/16, as measured 63 7/16 in ± ");
  }

  @Test
  void the_same_tyre_on_another_wheel_is_as_far_off_its_name_both_times() {
    Map<String, String> kept =
        with(WHEELS, "then-tyre", " 35X12.50 r15", "then-backspacing", "4", "tread", "2");
    // Only the gap itself is unsure: 2 (1/16)/√3 = 0.072 in.
    String text = wheel(kept).is(200).text();
    says(text, "was 2 in 2 in ± 1/8", "Both tyres have one name: taken as the same tyre");
    // Another name is another tyre: 2 · 0.03 · 17.5/√3 · √2 = 0.857 in more.
    String other = wheel(with(kept, "then-tyre", "35x12.50R17")).is(200).text();
    says(other, "was 2 in 2 in ± 7/8");
    assertFalse(other.contains("the same tyre"), other);
  }

  @Test
  void a_taller_tyre_takes_scrub_away_by_the_formula_and_no_more() {
    Map<String, String> taller =
        with(
            WHEELS,
            "then-tyre",
            "37x12.50R15",
            "then-width",
            "8",
            "now-loaded",
            "16",
            "then-loaded",
            "17");
    String text = wheel(with(taller, "kpi", "12", "camber", "0")).is(200).text();
    // −tan 12° · 1 in = −0.2126; the wheel itself is the same one.
    says(text, "and no more than that −3/16 in", "(cos camber − tan KPI · sin camber) 0 in");
    says(text, "further inboard −3/16 in");
  }

  @Test
  void what_is_compared_is_typed_for_both_wheels_or_for_neither() {
    for (String what : new String[] {"spokes", "loaded"}) {
      String value = what.equals("spokes") ? "1" : "16";
      Page page = wheel(with(WHEELS, "now-" + what, value)).is(422);
      says(page.text(), "Type it for both wheels, or for neither");
      assertTrue(page.html().contains("value=\"" + value + "\""));
    }
  }

  @Test
  void what_no_wheel_has_is_said_in_one_sentence_and_kept_as_typed() {
    String[][] nasty = {
      {"now-tyre", "", "is no tyre size"},
      {"then-tyre", "<i>35</i>", "is no tyre size"},
      {"then-tyre", "99x99R99", "is no tyre size"},
      {"now-width", "", "Type the rim's width, such as 8.5 in."},
      {"now-width", "0", "Type the rim's width, from 2 in to 20 in."},
      {"then-width", "wide", "cannot be read"},
      {"then-width", "999", "Type the rim's width, from 2 in to 20 in."},
      {"now-backspacing", "-1", "is below nothing"},
      {"now-backspacing", "40", "No wheel has that much"},
      {"now-offset", "-12", "Type one of the two: offset, or backspacing."},
      {"then-backspacing", "", "Type one of the two: offset, or backspacing."},
      {"now-lip", "3", "No lip is that wide"},
      {"then-spacer", "-1/4", "is below nothing"},
      {"then-spacer", "12", "No spacer is that thick"},
      {"camber", "80", "more than 30°"},
      {"kpi", "up", "cannot be read"},
      {"barrel", "81/4", "more than one way"},
      {"tread", "-1", "is below nothing"},
      {"tread", "200", "no gap at a wheel"},
      {"squashed", "0", "Type the squashed radius"},
      {"squashed", "999", "Type the squashed radius"},
      {"wanted", "abc", "cannot be read"},
      {"ratio", "0", "Type a number between 0.05 and 3"},
      {"ratio", "NaN", "Type a number between 0.05 and 3"},
      {"good", "1", "Lengths that rough say nothing"}
    };
    for (String[] one : nasty) {
      Map<String, String> typed = with(WHEELS, "squashed", "14", one[0], one[1]);
      Page page = wheel(typed).is(422);
      says(page.text(), one[2]);
      String where = one[0] + " '" + one[1] + "'";
      assertEquals(1, page.html().split("class=\"problem\"", -1).length - 1, where);
      assertTrue(page.html().contains("value=\"" + one[1].replace("<", "&lt;") + "\""), where);
    }
    Map<String, String> offset = with(WHEELS, "now-backspacing", "", "now-offset", "-12");
    says(wheel(offset).is(422).text(), "type mm behind it if mm are meant, such as −12 mm");
    says(wheel(Map.of("now-width", "8")).is(422).text(), "is no tyre size");
    says(wheel(Map.of("wanted", "2")).is(422).text(), "none is given for this corner");
  }

  @Test
  void the_spacer_is_what_a_hand_works_out_from_the_stop_and_the_squashed_tyre() {
    marmot.prepared().measured().measuredOn();
    JsonNode stop = shop.figures(marmot.left).at("/bump/stopMm");
    double z = stop.get("value").asDouble();
    // g = R − z − d, d 15 5/16 in; spacer 0.6 (w − g), then all of its ±: R good to 1/16 in, the
    // ratio to 5 %, both rectangular; in whole eighths.
    double g = 20 * INCH - z - (15 + 5 / 16.0) * INCH;
    double wanted = 14 * INCH;
    double uR = INCH / 16 / Math.sqrt(3);
    double uz = stop.get("U").asDouble() / 2;
    double uRatio = 0.03 / Math.sqrt(3) * (wanted - g);
    double most = 0.6 * (wanted - g) + 2 * Math.sqrt(0.36 * (uR * uR + uz * uz) + uRatio * uRatio);
    long eighths = (long) Math.ceil(most / INCH * 8 - 1e-9);
    assertTrue(eighths > 8, "so thick that it says something: " + eighths);
    String text = wheel(Map.of("squashed", "20", "wanted", "14", "ratio", "0.6")).is(200).text();
    String inches = spindlebook.units.TapeFormat.inches(eighths * INCH / 8, 8);
    says(text, "Add " + inches + " in of bump-stop spacer", "14 in is kept");
    says(text, "= frame to ground level ground and frame");
  }

  @Test
  void a_book_in_millimetres_is_answered_in_millimetres() {
    marmot.send("/cars/" + marmot.car + "/details", Map.of("unit", "mm"));
    Map<String, String> mm =
        with(WHEELS, "now-width", "203.2", "then-width", "228.6", "now-backspacing", "114.3");
    String text = wheel(with(mm, "then-backspacing", "114.3")).is(200).text();
    // As the inches of the worked example: offset 0 to −12.7, track + 25.4 mm. Both lips are
    // assumed
    // alike, so U is that of the two backspacings, each to ± 1 mm: 2 · 2 · √2/√3 = 3.27.
    says(
        text,
        "change of offset · cos camber +25.5 mm ± 3.5",
        "lip 12.5 mm ± 7.5, assumed −12.5 mm");
  }

  @Test
  void the_frame_at_full_bump_is_held_against_what_is_wanted() {
    marmot.prepared().measured().measuredOn();
    String high = wheel(Map.of("squashed", "30", "wanted", "2", "ratio", "0.6")).is(200).text();
    says(high, "No more spacer is needed");
    assertTrue(high.matches(".*= frame to ground level ground and frame [^.]* clear .*"), high);
    String low = wheel(Map.of("squashed", "4", "wanted", "2", "ratio", "0.6")).is(200).text();
    says(low, "the frame meets the ground before the stop is solid");
    String nothingWanted = wheel(Map.of("squashed", "4", "ratio", "0.6")).is(200).text();
    String[] afterThat = nothingWanted.split("before the stop is solid", 2);
    assertTrue(afterThat[1].matches("[^.]* not enough .*"), "its words and its mark say the same");
  }

  @Test
  void a_wheel_tried_gives_track_and_the_gaps_that_were_measured() {
    Map<String, String> typed = new HashMap<>(WHEELS);
    typed.put("barrel", "1/2");
    typed.put("inner-lip", "3/4");
    String text = wheel(typed).is(200).text();
    // Two backspacings to ± 1/16: 2 · 2 · √2/√3/16 = 0.204. A lip typed for one wheel alone: with
    // 1/4
    // in of the other's, assumed, U is 2 · 2 · √(3/16² + 1/4²)/√3 = 0.629.
    assertTrue(text.contains("change of offset · cos camber +1 in ± 1/4"), text);
    assertTrue(text.contains("Both lips are taken as alike"), text);
    String one = wheel(with(typed, "now-lip", "1/2")).is(200).text();
    assertTrue(one.contains("change of offset · cos camber +1 in ± 11/16"), one);
    assertTrue(text.contains("drop centre as placed are assumed 1 1/2 in ± 1/8"), text);
    assertTrue(text.contains("Inner lip to the nearest part was 3/4 in 3/4 in"), text);
  }

  @Test
  void a_loaded_radius_that_the_corner_has_is_not_asked_for_again() {
    Map<String, String> typed = with(WHEELS, "then-loaded", "16 in", "kpi", "9", "camber", "0");
    assertTrue(wheel(typed).is(422).text().contains("Type it for both wheels, or for neither"));
    marmot.send("/corners/" + marmot.left + "/given", Map.of("tyre-loaded-radius", "16 1/2 in"));
    String text = wheel(typed).is(200).text();
    // Half an inch less of it: tan 9° · 1/2 = 0.079.
    assertTrue(text.contains("Loaded radius as given for this corner 16 1/2 in"), text);
    assertTrue(text.contains("and no more than that +3/32 in ± 1/32"), text);
  }

  @Test
  void the_size_on_a_tyre_is_a_diameter() {
    Map<String, String> typed = new HashMap<>(WHEELS);
    typed.put("then-tyre", "315/70R17");
    // 872.8 mm.
    String text = wheel(typed).is(200).text();
    assertTrue(text.contains("34 3/8 in"), text);
    typed.put("then-tyre", "big");
    assertTrue(wheel(typed).is(422).text().contains("is no tyre size"));
  }

  @Test
  void the_frame_at_full_bump_needs_its_readings_and_gives_a_spacer() {
    Map<String, String> typed = Map.of("squashed", "15 3/4", "wanted", "8", "ratio", "0.6");
    assertTrue(wheel(typed).is(200).text().contains("needs to know where the stop is solid"));
    marmot.prepared().measured().measuredOn();
    String text = wheel(typed).is(200).text();
    assertTrue(text.contains("= frame to ground"), text);
    assertTrue(text.contains("of bump-stop spacer"), text);
  }

  @Test
  void a_gap_that_its_plus_minus_closes_is_not_called_free() {
    Map<String, String> typed = new HashMap<>(WHEELS);
    typed.put("inner-lip", "1/16");
    String text = wheel(typed).is(200).text();
    assertTrue(text.contains("within its ± it may touch"), text);
    assertTrue(text.contains("can’t tell"), text);
  }

  @Test
  void spokes_count_once_both_are_typed() {
    Map<String, String> typed = new HashMap<>(WHEELS);
    typed.put("spokes", "1/2");
    assertTrue(wheel(typed).is(200).text().contains("on both wheels are assumed"));
    typed.put("now-spokes", "1");
    typed.put("then-spokes", "1 1/4");
    String text = wheel(typed).is(200).text();
    assertTrue(text.contains("nearest part was 1/2 in 3/4 in"), text);
  }
}
