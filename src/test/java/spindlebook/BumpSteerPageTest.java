package spindlebook;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Toe typed at Marmot's heights so that it turns out 0.1° an inch going up, 0.1° in at ride.
 *
 * <p>By hand: spindle less mark is −19.75, −16.4375, −12.75, −9.4375 and −5 in from hanging to
 * touch, −10.8125 in at ride; from ride −8.9375, −5.625, −1.9375, +1.375, +5.8125 in. Toe is 0.1 −
 * 0.1 z. From the strap to touch that is 0.1 · 11.4375 = 1.144°, over the middle 8 in 0.8°.
 */
class BumpSteerPageTest {
  private static final String TOE = "q-toe";

  @TempDir Path folder;
  private Shop shop;
  private Marmot marmot;

  @BeforeEach
  void open() {
    shop = new Shop(folder);
    marmot = new Marmot(shop).prepared().measured().measuredOn();
  }

  @AfterEach
  void close() {
    shop.close();
  }

  private void toe(String... values) {
    List<String> heights =
        List.of(marmot.strapOff, marmot.onStrap, marmot.low, marmot.high, marmot.touch);
    for (int i = 0; i < values.length; i++) {
      marmot.read(heights.get(i), "straight", TOE, values[i]);
    }
  }

  private void toeAsAngles() {
    toe("0.99375°", "0.6625°", "0.29375°", "-0.0375°", "-0.48125°");
  }

  private Page page() {
    return shop.get("/corners/" + marmot.left + "/curves?of=toe").is(200);
  }

  private void rack(String side) {
    String details = "/cars/" + marmot.car + "/details";
    marmot.send(details, Map.of("rack", side));
  }

  @Test
  void without_toe_it_says_what_to_read() {
    Page page = page();
    assertTrue(page.text().contains("Read toe straight ahead at two heights or more"), page.text());
    assertFalse(page.html().contains("<svg class=\"chart\""));
  }

  @Test
  void slope_and_range_come_out_as_by_hand() {
    toeAsAngles();
    String text = page().text();
    assertTrue(text.contains("− turns the front edge outward, + inward −0.100"), text);
    assertTrue(
        text.contains(
            "Toe at ride + front edge inward; by the curve fitted, so not quite as read +0.10"),
        text);
    assertTrue(text.contains("1.14"), text);
    assertTrue(
        text.contains("Front edge furthest inward at −5 5/8 in, furthest outward at +5 13/16 in."),
        text);
    // The stop is solid further up than toe was read: nothing is guessed there.
    assertTrue(text.contains("At least that much: toe was not read above +5 13/16 in."), text);
  }

  @Test
  void a_bend_is_per_length_squared_also_where_the_length_is_100_mm() {
    toeAsAngles();
    assertTrue(page().text().contains("° per in²"), page().text());
    marmot.send("/cars/" + marmot.car + "/details", java.util.Map.of("unit", "mm"));
    String text = page().text();
    assertTrue(text.contains("° per (100 mm)²"), text);
    assertFalse(text.contains("100 mm²"), text);
  }

  @Test
  void the_middle_is_as_long_as_the_owner_asks() {
    toeAsAngles();
    String corner = "/corners/" + marmot.left;
    String address = corner + "/curves?of=toe&middle=";
    Page once = shop.get(corner + "/bump-steer?middle=8").is(302);
    assertTrue(once.location().endsWith(address + "8"), once.location());
    shop.get("/corners/no-such/bump-steer").is(404);
    String text = shop.get(address + "8").is(200).text();
    assertTrue(text.contains("Over the middle 8 in"), text);
    assertTrue(text.contains(" 0.80"), text);
    assertTrue(shop.get(address + "nonsense").is(200).text().contains("Type a length above"));
  }

  @Test
  void a_slope_means_the_opposite_for_a_rack_on_the_other_side_of_the_axle() {
    toeAsAngles();
    assertTrue(page().text().contains("Say whether the rack lies ahead of or behind the axle"));
    rack("behind-axle");
    String behind = page().text();
    assertTrue(
        behind.contains("Tie rod: outer end too high (or inner end too low) How sure: plain."),
        behind);
    assertTrue(behind.contains("Measure at ride how high both ends of the tie rod"), behind);
    rack("ahead-of-axle");
    assertTrue(
        page()
            .text()
            .contains("Tie rod: outer end too low (or inner end too high) How sure: plain."));
  }

  @Test
  void toe_read_as_a_length_needs_the_distance_it_was_read_across() {
    // 1/4 in across 25 in is asin 0.01 = 0.573°; 3/16 in 0.430°.
    toe("1/4", "1/4", "1/16", "0", "-3/16");
    assertTrue(page().text().contains("give how far apart its two places are"), page().text());
    marmot.send("/corners/" + marmot.left + "/given", Map.of("toe-across", "25"));
    String text = page().text();
    // 7/16 in across 25 in: 0.573 + 0.430 = 1.003°.
    assertTrue(text.contains(" 1.0"), text);
    assertTrue(text.contains("0.43"), text);
  }

  @Test
  void range_is_held_against_the_owners_limit_as_a_gap_is() {
    toeAsAngles();
    String given = "/corners/" + marmot.left + "/given";
    marmot.send(given, Map.of("toe-across", "25", "toe-range", "1/8"));
    assertTrue(page().html().contains("state is-short"), page().text());
    // 1 in across 25 in is 2.3°, twice what was read; but bump was not read to the stop.
    marmot.send(given, Map.of("toe-range", "1"));
    String text = page().text();
    assertTrue(text.contains("Read toe at the ends that are missing."), text);
  }

  @Test
  void a_limit_that_is_a_length_asks_how_far_apart_its_places_are() {
    toeAsAngles();
    String given = "/corners/" + marmot.left + "/given";
    marmot.send(given, Map.of("toe-range", "1/8"));
    Page page = page();
    String needed = "Your limit of toe is a length: give how far apart its two places are";
    assertTrue(
        page.html()
            .contains("<a href=\"" + given + "?for=toe-across#f-toe-across\">" + needed + "</a>"),
        page.html());
    assertTrue(
        page.text()
            .contains(
                "Your limit: at most 1/8 in across the wheel; what angle that is needs how far"),
        page.text());
    assertTrue(page.html().contains("state is-cant-tell"), page.text());
    marmot.send(given, Map.of("toe-across", "25"));
    assertFalse(page().text().contains("Your limit of toe is a length"), page().text());
    assertTrue(page().text().contains("Over your limit: at most 1/8 in"), page().text());
  }

  @Test
  void a_shim_tried_says_how_much_more_levels_toe() {
    marmot.adjust(marmot.left, "tie-rod-shim", "1/8");
    toeAsAngles();
    assertTrue(page().text().contains("None was tried."), page().text());
    marmot.adjust(marmot.left, "tie-rod-shim", "1/4");
    marmot.adjust(marmot.left, "tie-rod-shim", "3/8");
    assertTrue(page().text().contains("+1/4 in was tried. To say how much more"), page().text());
    // Half the slope is left after a quarter of an inch: another quarter takes it away.
    toe("0.496875°", "0.33125°", "0.146875°", "-0.01875°", "-0.240625°");
    Page page = page();
    assertTrue(page.text().contains("Still to add +1/4 in"), page.text());
    assertTrue(page.text().contains("took the slope from −0.100"), page.text());
    assertTrue(page.text().contains("to −0.050"), page.text());
  }

  @Test
  void toe_before_a_shim_counts_across_what_was_given_after_it() {
    marmot.adjust(marmot.left, "tie-rod-shim", "1/8");
    toe("1/2", "5/16", "1/8", "0", "-3/16");
    marmot.adjust(marmot.left, "tie-rod-shim", "3/8");
    toe("1/4", "5/32", "1/16", "0", "-3/32");
    marmot.send("/corners/" + marmot.left + "/given", Map.of("toe-across", "25"));
    assertTrue(page().text().contains("+1/4 in took the slope from −0.09"), page().text());
  }

  @Test
  void toe_at_lock_is_left_out_and_said_to_be() {
    toeAsAngles();
    marmot.read(marmot.low, "full-left", TOE, "2°");
    assertTrue(page().text().contains("1 reading of toe at lock left out here"), page().text());
    assertTrue(page().text().contains("− turns the front edge outward, + inward −0.100"));
  }

  @Test
  void the_fault_comes_before_the_chart_and_how_sure_and_what_tells_its_cases_apart_after_it() {
    toeAsAngles();
    rack("behind-axle");
    String html = page().html();
    int fault = html.indexOf("Tie rod: outer end too high");
    int chart = html.indexOf("<svg class=\"chart\"");
    int sure = html.indexOf("How sure: plain");
    int next = html.indexOf("Measure at ride how high both ends of the tie rod");
    assertTrue(0 < fault && fault < chart && chart < sure && sure < next, "" + fault + chart);
    assertTrue(next < html.indexOf("Read toe at five places or more"), "what tells cases apart");
  }

  @Test
  void a_mark_that_does_not_count_is_open_and_says_why() {
    toeAsAngles();
    Page page = page();
    // Of five places the lowest was read with the strap off: from ride −8.9375, strap at −5.625.
    assertTrue(page.text().contains("4 of 5"), page.text());
    assertTrue(
        page.text()
            .contains(
                "−8 15/16 in lies below the strap as set: outside the usable travel; it carries"),
        page.text());
    assertTrue(page.html().contains("look-square look-hollow"));
  }

  @Test
  void the_bow_is_told_in_degrees_at_the_far_end() {
    // Toe is 0.1° − 0.1° z + 0.01° z² at z from ride: +5.8125 in is the far end of what counts,
    // there the bow is 0.01 · 33.8 = 0.338°.
    toe("1.7925°", "0.9789°", "0.3313°", "-0.0186°", "-0.1434°");
    String text = page().text();
    assertTrue(text.contains("leaves that slope at +5 13/16 in"), text);
    assertTrue(text.contains("+0.34° ± "), text);
  }
}
