package spindlebook;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Alignment of two points of the book beside each other. Numbers worked out beside each check. */
class ComparedAlignmentTest {
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

  private void measure(String corner, String way, Map<String, String> fields) {
    String action = "/corners/" + corner + "/alignment";
    Map<String, String> all = new LinkedHashMap<>(fields);
    all.put("rolled", "yes");
    marmot.send(action + "/new?way=" + way, action, all);
  }

  private static Map<String, String> sweep(String left, String right) {
    return Map.of(
        "by",
        "wheel-heading",
        "left-lock",
        "20",
        "right-lock",
        "20",
        "camber-left",
        left,
        "camber-right",
        right,
        "camber-straight",
        "0",
        "kpi",
        "6");
  }

  private static Map<String, String> joint(String ahead) {
    return Map.of("ahead", ahead, "inboard", "110 mm", "below", "115 mm", "radius", "380 mm");
  }

  /** Each figure once: a page says it for the eye and for the ear. */
  private String compared(String query) {
    String text = shop.get("/cars/" + marmot.car + "/compare" + query).is(200).text();
    String number = "[+−]?[\\d.]+";
    return text.replaceAll(
        "(" + number + "(?:°| in) ± [\\d.]+) " + number + " (?:°|in) ± [\\d.]+", "$1");
  }

  @Test
  void camber_then_and_now_with_its_difference_and_what_is_alike_folded() {
    measure(marmot.left, "gauge", Map.of("read", "-0.5", "zero", "0"));
    measure(marmot.left, "spot", Map.of("inward", "10 mm", "distance", "2000 mm"));
    int then = shop.entries();
    marmot.adjust(marmot.left, "upper-rod-ends", "1");
    String stale = compared("?one=" + then);
    assertTrue(stale.contains("not compared: measure again, now"), stale);
    measure(marmot.left, "gauge", Map.of("read", "-1.5", "zero", "0"));
    String text = compared("?one=" + then);
    // Two readings and their zeros, each to 0.1° (u = 0.0289°) and placed to ± 0.1° (0.0577°):
    // U = 2 √(4 (0.0289² + 0.0577²)) = 0.2582°: nothing of them is one error.
    assertTrue(text.contains("−0.50° ± 0.19 −1.50° ± 0.19 −1.00° ± 0.26 ≠ differs"), text);
    measure(marmot.left, "spot", Map.of("inward", "10 mm", "distance", "2000 mm"));
    String again = compared("?one=" + then);
    assertTrue(again.contains("Alignment: 1 alike"), again);
  }

  @Test
  void caster_kpi_scrub_and_trail_are_there_and_what_both_rest_on_cancels() {
    measure(marmot.left, "gauge", Map.of("read", "0", "zero", "0"));
    measure(marmot.left, "spot", Map.of("inward", "0 mm", "distance", "2000 mm"));
    measure(marmot.left, "sweep", sweep("-1", "1.8"));
    measure(marmot.left, "joint", joint("8 mm"));
    int then = shop.entries();
    marmot.adjust(marmot.left, "tyre-pressure", "14 psi");
    measure(marmot.left, "joint", joint("28 mm"));
    String text = compared("?one=" + then);
    for (String name : new String[] {"Camber", "Toe of this wheel", "Caster", "KPI", "Scrub"}) {
      assertTrue(text.contains(name), name + " in " + text);
    }
    // Ahead by 20 mm more is 20 mm of trail; the sweep is one and the same, so only the joints'
    // own four lengths are in the difference: less than either trail's ±.
    int at = text.indexOf("Trail");
    String trail = text.substring(at, text.indexOf("differs", at));
    String[] plusMinus = trail.split("± ");
    double either = Double.parseDouble(plusMinus[1].split(" ")[0]);
    double apart = Double.parseDouble(plusMinus[3].split(" ")[0]);
    assertTrue(trail.contains("+0.7") || trail.contains("+0.8"), trail);
    assertTrue(apart < either, trail);
    assertTrue(text.contains("Alignment: "), text);
  }

  @Test
  void left_against_right_one_gauge_s_unknown_zero_cancels_and_the_axle_s_is_not_told_twice() {
    measure(marmot.left, "gauge", Map.of("read", "-0.5"));
    measure(marmot.right, "gauge", Map.of("read", "-1.2"));
    measure(
        marmot.left, "tape", Map.of("front", "1577 mm", "rear", "1583.35 mm", "across", "711 mm"));
    String text = compared("?beside=other-side");
    // Each ± 0.27° by the zero of the gauge, the same in both: U = 2 √(2 (0.0289² + 0.0577²)).
    assertTrue(text.contains("−0.50° ± 0.27 −1.20° ± 0.27 −0.70° ± 0.19 ≠ differs"), text);
    assertFalse(text.contains("Total toe"), text);
  }

  @Test
  void two_cars_share_no_gauge() {
    measure(marmot.left, "gauge", Map.of("read", "-0.5"));
    Page made = shop.get("/cars/new").is(200).form("/cars").with("name", "Vole").keep();
    String vole = made.location().substring("/cars/".length());
    measure(vole + "-lf", "gauge", Map.of("read", "-0.7"));
    String text = compared("?beside=" + vole);
    // U = 2 √2 · 0.1323° = 0.3742°.
    assertTrue(text.contains("−0.20° ± 0.38 = within ±"), text);
  }

  @Test
  void a_target_that_is_decided_otherwise_and_a_target_that_changed_differ() {
    measure(marmot.left, "gauge", Map.of("read", "-0.5", "turned", "0.5"));
    String targets = "/corners/" + marmot.left + "/alignment/targets";
    marmot.send(targets, Map.of("camber-from", "-1", "camber-to", "0"));
    int then = shop.entries();
    marmot.send(targets, Map.of("camber-from", "-0.4"));
    String text = compared("?one=" + then);
    assertTrue(text.contains("≠ decided otherwise"), text);
    assertTrue(text.contains("−1° to 0° −0.4° to 0° ≠ differs"), text);
  }

  @Test
  void toe_is_told_across_the_edge_as_well_where_it_is_known_across_what() {
    marmot.send("/corners/" + marmot.left + "/given", Map.of("toe-across", "28"));
    measure(marmot.left, "spot", Map.of("inward", "10 mm", "distance", "2000 mm"));
    measure(marmot.right, "spot", Map.of("inward", "-4 mm", "distance", "2000 mm"));
    String text = compared("?beside=other-side");
    // 28 in · sin(atan 10/2000) = 0.140 in, and −0.056 in.
    assertTrue(text.contains("+0.140 in ± "), text);
    assertTrue(text.contains("−0.056 in ± "), text);
  }
}
