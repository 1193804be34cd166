package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
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
    return shop.get("/corners/" + marmot.left + "/bump-steer").is(200);
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
    assertTrue(text.contains("Slope at ride + turns in going up −0.100"), text);
    assertTrue(text.contains("Toe at ride + is toe-in +0.10"), text);
    assertTrue(text.contains("1.14"), text);
    assertTrue(text.contains("Most toe-in at −5 5/8 in, least at +5 13/16 in."), text);
    // The stop is solid further up than toe was read: nothing is guessed there.
    assertTrue(
        text.contains("At least that much: toe was read from −5 5/8 in to +5 13/16 in only."),
        text);
  }

  @Test
  void the_middle_is_as_long_as_the_owner_asks() {
    toeAsAngles();
    String address = "/corners/" + marmot.left + "/bump-steer?middle=";
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
    assertTrue(behind.contains("Outer end too high (or inner end too low) : plain."), behind);
    assertTrue(behind.contains("Measure at ride how high both ends of the tie rod"), behind);
    rack("ahead-of-axle");
    assertTrue(page().text().contains("Outer end too low (or inner end too high) : plain."));
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
  void toe_at_lock_is_left_out_and_said_to_be() {
    toeAsAngles();
    marmot.read(marmot.low, "full-left", TOE, "2°");
    assertTrue(page().text().contains("1 reading of toe at lock left out here"), page().text());
    assertTrue(page().text().contains("Slope at ride + turns in going up −0.100"));
  }

  @Test
  void curves_are_drawn_with_a_table_beneath_and_compared_with_what_held_before() {
    Page gap = shop.get("/corners/" + marmot.left + "/curves?of=p-tie-rod-upper-arm").is(200);
    assertEquals(3, count(gap, "<polyline class=\"chart-line\" points=\"[^0]"));
    assertTrue(gap.html().contains("class=\"chart-band\""));
    assertTrue(gap.text().contains("+5 13/16 in"), gap.text());
    toeAsAngles();
    marmot.adjust(marmot.left, "upper-rod-ends", "4");
    marmot.read(marmot.low, "straight", TOE, "0.5°");
    Page now = shop.get("/corners/" + marmot.left + "/curves?of=toe").is(200);
    assertTrue(now.text().contains("4 readings do not count as things are set now"), now.text());
    String before =
        java.util.regex.Pattern.compile("value=\"(before-[^\"]+)\"")
            .matcher(now.html())
            .results()
            .findFirst()
            .orElseThrow()
            .group(1);
    Page compared =
        shop.get("/corners/" + marmot.left + "/curves?of=toe&against=" + before).is(200);
    assertTrue(compared.text().contains("straight, before"), compared.text());
    assertTrue(compared.text().contains("straight, after"), compared.text());
    assertTrue(compared.html().contains("look-hollow"));
    assertTrue(compared.text().contains("Readings, left front"), compared.text());
    assertTrue(compared.text().contains("Readings, before, as they stood"), compared.text());
  }

  private static long count(Page page, String pattern) {
    return java.util.regex.Pattern.compile(pattern).matcher(page.html()).results().count();
  }
}
