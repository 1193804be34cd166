package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What fresh readers of the curves misread once is said where they looked. */
class CurvesPageTest {
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

  private Page curve(String query) {
    return shop.get("/corners/" + marmot.left + "/curves?" + query).is(200);
  }

  private Page before(String query) {
    String last = first(curve(query), "value=\"(before-[^\"]+)\"");
    return curve(query + "&against=" + last);
  }

  private void toe() {
    toeAt(marmot, marmot.onStrap, marmot.low, marmot.high);
  }

  @Test
  void a_gap_is_drawn_for_each_lock_with_a_table_beneath() {
    Page gap = curve("of=p-tie-rod-upper-arm");
    assertEquals(3, count(gap, "<polyline class=\"chart-line\" points=\"[^0]"));
    assertTrue(gap.html().contains("class=\"chart-band\""));
    assertTrue(gap.text().contains("+5 13/16 in"), gap.text());
  }

  @Test
  void with_all_of_today_stale_it_says_so_in_page_and_description_and_where_to_read_again() {
    toe();
    marmot.adjust(marmot.left, "tie-rod", "2");
    // Something read since, so that there is a before and an after; toe was not.
    marmot.read(marmot.low, "straight", "q-camber", "1°");
    Page page = before("of=toe");
    String said = "No reading of today stands: all 3 no longer hold: tie-rod length changed on";
    assertTrue(page.text().contains(said), page.text());
    assertTrue(page.text().contains("what is drawn is what held before"), page.text());
    assertTrue(first(page, "<desc[^>]*>([^<]*)<").contains(said), page.html());
    assertTrue(page.text().contains("before: straight ahead"), page.text());
    assertFalse(page.text().contains("now: straight ahead"), page.text());
    String again = Page.decoded(first(page, "href=\"([^\"]*need=[^\"]*)\""));
    String round = shop.get(again).is(200).text();
    assertTrue(round.contains("toe of this wheel"), round);
    assertFalse(round.contains("tie rod to upper arm"), "only what this page is about: " + round);
  }

  @Test
  void with_some_stale_it_says_how_many_and_why() {
    toe();
    marmot.adjust(marmot.left, "upper-rod-ends", "4");
    marmot.read(marmot.low, "straight", TOE, "1/16");
    Page page = before("of=toe");
    assertTrue(
        page.text().contains("2 of 3 readings no longer hold: upper rod ends changed on"),
        page.text());
    assertTrue(page.text().contains("before: straight ahead"), page.text());
    assertTrue(page.text().contains("now: straight ahead"), page.text());
    assertTrue(
        page.text().contains("Full: what holds now, 1 of 1 reading taken since"), page.text());
    assertTrue(page.html().contains("look-hollow"));
    assertTrue(page.text().contains("Readings, left front, as they stand now"), page.text());
    assertTrue(
        page.text().contains("Readings, left front, that held before but not now: upper rod"));
  }

  @Test
  void a_change_that_moves_none_of_the_readings_leaves_one_curve_and_says_so() {
    marmot.adjust(marmot.left, "bump-stop-spacer", "3/4");
    marmot.read(marmot.low, "straight", "q-camber", "1°");
    Page page = before("of=p-tie-rod-upper-arm");
    assertTrue(page.text().contains("before and now are one curve, drawn once"), page.text());
    assertTrue(page.text().contains("before and now: full right lock"), page.text());
    assertFalse(page.html().contains("look-hollow"), "the same drawn twice");
    assertEquals(1, count(page, "<caption>"));
  }

  @Test
  void toe_is_in_degrees_and_across_the_edge_in_chart_and_table_with_its_sign_said() {
    marmot.send("/corners/" + marmot.left + "/given", Map.of("toe-across", "25"));
    toe();
    Page page = curve("of=toe");
    String text = page.text();
    assertTrue(text.contains("toe of this wheel, degrees, + front edge inward"), text);
    assertTrue(text.contains("reading, + front edge inward"), text);
    // 1/4 in across 25 in is asin 0.01 = 0.573°.
    assertTrue(text.contains("+0.57° ± "), text);
    assertTrue(text.contains("+1/4 in ± "), text);
    marmot.read(marmot.low, "straight", "q-camber", "1°");
    assertTrue(curve("of=camber").text().contains("reading, + top outward"));
  }

  @Test
  void a_mark_in_the_table_has_its_word_and_its_meaning_and_no_line_has_the_same() {
    Page page = curve("of=p-tie-rod-upper-arm");
    assertTrue(page.text().contains("clear keeps its rule, its ± counted"), page.text());
    assertTrue(page.text().contains("too close breaks its rule, its ± counted"), page.text());
    assertEquals(0, count(page, "<span class=\"vh\">clear"));
    // Of one and the same it is said once.
    assertTrue(
        curve("of=shock-length").text().contains("Every reading here: good still true"),
        curve("of=shock-length").text());
  }

  @Test
  void a_place_of_a_stop_that_was_moved_is_said_to_be_then() {
    assertTrue(curve("of=p-tie-rod-upper-arm").text().contains("strap as set"));
    assertFalse(curve("of=p-tie-rod-upper-arm").text().contains("not today's"));
    marmot.adjust(marmot.left, "limit-strap", "18");
    String text = curve("of=p-tie-rod-upper-arm").text();
    assertTrue(text.contains("on the strap (full droop) the strap's place on"), text);
    assertFalse(text.contains("bump stop touches the stop's place on"), text);
  }

  @Test
  void the_rule_has_its_number_and_a_lock_is_no_side_of_the_car() {
    String text = curve("of=p-tie-rod-upper-arm").text();
    assertTrue(text.contains("rule: at least 1/4 in"), text);
    assertTrue(text.contains("hatched: breaks the rule, at least 1/4 in"), text);
    assertTrue(text.contains("full right lock"), text);
    assertTrue(
        curve("of=p-tie-rod-upper-arm&steering=full-left").text().contains("; full left lock"));
  }

  @Test
  void two_sides_are_told_apart_and_a_lock_is_said_to_be_another_one_for_each() {
    String rounds = marmot.startRound(marmot.right, Map.of());
    String low = marmot.height(rounds, "in-between", "18 7/8", "31 5/8");
    marmot.readTieRod(low, "15/16", "3/4", "11/16");
    Page page = curve("of=p-tie-rod-upper-arm&against=other-side");
    assertTrue(page.text().contains("right front: full left lock"), page.text());
    assertTrue(page.text().contains("left front: full left lock"), page.text());
    assertTrue(
        page.text()
            .contains("full left is inner lock for left front and outer lock for right front"),
        page.text());
    // Three in the chart, and their three samples in the key.
    assertEquals(6, count(page, "<g class=\"look-[a-z-]+ look-hollow\">"));
  }

  @Test
  void bars_are_said_in_plain_words() {
    String text = curve("of=p-tie-rod-upper-arm").text();
    assertTrue(text.contains("how far a reading may be off, 19 times in 20 (k = 2)"), text);
    assertFalse(text.contains("± U"), text);
  }

  @Test
  void a_height_in_between_goes_by_the_owners_own_words() {
    String third =
        marmot
            .heightForm(marmot.round, "in-between", "20")
            .with("markAsAt", marmot.strapOff)
            .with("label", "a third down")
            .keep()
            .location();
    String height = third.replaceAll(".*heights/([^?]+).*", "$1");
    marmot.read(height, "straight", TOE, "1/8");
    String text = curve("of=toe").text();
    assertTrue(text.contains("a third down −13/16 in"), text);
    assertFalse(text.contains("in between"), text);
  }

  @Test
  void a_change_to_compare_with_is_short_in_the_list_and_whole_on_the_page() {
    marmot.adjust(marmot.left, "upper-rod-ends", "4");
    marmot.read(marmot.low, "straight", "q-camber", "1°");
    Page page = before("of=p-tie-rod-upper-arm");
    String choice = first(page, "value=\"before-[^>]*>([^<]*)<");
    assertTrue(choice.startsWith("before: upper rod ends, "), choice);
    assertTrue(choice.length() < 40, choice);
    assertTrue(page.text().contains("upper rod ends from 3 turns to 4 turns"), page.text());
  }

  @Test
  void the_demos_fullest_curves_come_in_one_flight_of_packets()
      throws IOException, InterruptedException {
    Path demo = folder.resolve("demo");
    DemoBook.copyTo(demo);
    try (Shop other = new Shop(demo)) {
      String gap = "/corners/marmot-lf/curves?of=p-tie-rod-upper-arm&against=";
      List<Page> pages =
          List.of(other.get(gap + "other-side"), other.get(gap + "before-lf-strap-1"));
      List<String> weighed = new FirstScreenTest().weighed(other, pages);
      assertEquals(List.of(), weighed.stream().filter(FirstScreenTest::heavy).toList());
    }
  }

  /** A place of the pale line is the same place of the full one, wherever ride was read. */
  @Test
  void before_and_now_of_one_corner_are_counted_from_todays_ride() {
    try (Shop other = new Shop(folder.resolve("no-ride"))) {
      Marmot car = new Marmot(other).prepared().measured();
      toeAt(car, car.onStrap, car.low, car.high);
      car.adjust(car.left, "upper-rod-ends", "4");
      String standing = car.startRound(car.left, Map.of("spring", "in", "on", "tyres"));
      car.height(standing, "ride", "20 3/4", "31 9/16");
      toeAt(car, car.onStrap, car.low, car.high);
      String address = "/corners/" + car.left + "/curves?of=toe";
      String last = first(other.get(address), "value=\"(before-[^\"]+)\"");
      Page page = other.get(address + "&against=" + last).is(200);
      assertEquals(line(page, " look-hollow"), line(page, ""));
      assertTrue(page.text().contains("wheel position from ride, in, + towards bump"), page.text());
      assertEquals(2, count(page, ">position from ride, \\+ towards bump<"));
      assertFalse(page.text().contains("frame mark"), page.text());
    }
  }

  @Test
  void a_reading_that_still_holds_is_drawn_at_one_place_though_ride_was_read_anew() {
    toe();
    marmot.adjust(marmot.left, "preload", "2");
    String standing = marmot.startRound(marmot.left, Map.of("spring", "in", "on", "tyres"));
    marmot.height(standing, "ride", "22 3/4", "31 9/16");
    marmot.read(marmot.low, "straight", TOE, "1/8");
    Page page = before("of=toe");
    assertTrue(page.text().contains("1 of 4 readings taken since"), page.text());
    assertEquals(line(page, " look-hollow"), line(page, ""));
  }

  @Test
  void two_sides_are_counted_each_from_its_own_ride_or_both_from_the_frame_mark() {
    toe();
    String round = marmot.startRound(marmot.right, Map.of());
    toeAt(
        marmot,
        marmot.height(round, "on-the-strap", "15 3/16", "31 5/8"),
        marmot.height(round, "in-between", "18 7/8", "31 5/8"),
        marmot.height(round, "in-between", "22 3/16", "31 5/8"));
    String sides = "of=toe&against=other-side";
    Page level = curve(sides);
    assertEquals(line(level, " look-hollow"), line(level, ""));
    String text = level.text();
    assertTrue(text.contains("wheel position from level with the frame mark, in"), text);
    assertTrue(text.contains("Ride was never read at right front: both sides are counted"), text);
    assertEquals(2, count(level, ">position from level with the frame mark, \\+ towards bump<"));
    // Alone it is from ride, as ever.
    assertTrue(curve("of=toe").text().contains("wheel position from ride, in"));

    String standing = marmot.startRound(marmot.right, Map.of("spring", "in", "on", "tyres"));
    marmot.height(standing, "ride", "21 3/4", "31 9/16");
    Page own = curve(sides);
    assertTrue(own.text().contains("wheel position from each side's own ride, in"), own.text());
    assertEquals(2, count(own, ">position from ride, \\+ towards bump<"));
    // On the strap: spindle less mark −16.4375 in, ride −10.8125 at the left, −9.8125 in at the
    // right.
    assertTrue(own.text().contains("on the strap (full droop) −5 5/8 in"), own.text());
    assertTrue(own.text().contains("on the strap (full droop) −6 5/8 in"), own.text());
    assertFalse(own.text().contains("frame mark"), own.text());
  }

  @Test
  void a_side_whose_toe_is_a_length_does_not_take_the_place_of_angles_and_is_said_to_be_left_out() {
    marmot.read(marmot.onStrap, "straight", TOE, "0.5°");
    marmot.read(marmot.low, "straight", TOE, "0.2°");
    String standing = marmot.startRound(marmot.right, Map.of("spring", "in", "on", "tyres"));
    String ride = marmot.height(standing, "ride", "20 3/4", "31 9/16");
    marmot.read(ride, "straight", TOE, "1/16");
    Page page = curve("of=toe&against=other-side");
    assertFalse(line(page, "").isEmpty());
    assertFalse(page.html().contains("look-hollow"), page.html());
    assertTrue(page.text().contains("toe of this wheel, degrees"), page.text());
    assertTrue(
        page.html()
            .contains(
                "Right front: toe read as a length cannot be drawn beside angles."
                    + " <a href=\"/corners/"
                    + marmot.right
                    + "/given?for=toe-across#f-toe-across\">"),
        page.html());
    marmot.send("/corners/" + marmot.right + "/given", Map.of("toe-across", "28"));
    assertTrue(curve("of=toe&against=other-side").html().contains("look-hollow"));
  }

  /** What a length is across was no less true before it was written down. */
  @Test
  void toe_before_a_change_counts_across_what_was_given_after_it() {
    toe();
    marmot.adjust(marmot.left, "upper-rod-ends", "4");
    toe();
    marmot.send("/corners/" + marmot.left + "/given", Map.of("toe-across", "28"));
    Page page = before("of=toe");
    assertEquals(line(page, " look-hollow"), line(page, ""));
    assertTrue(page.text().contains("toe of this wheel, degrees"), page.text());
  }

  private static void toeAt(Marmot car, String onStrap, String low, String high) {
    car.read(onStrap, "straight", TOE, "1/4");
    car.read(low, "straight", TOE, "1/8");
    car.read(high, "straight", TOE, "-1/16");
  }

  /** The points of the one line drawn so. */
  private static String line(Page page, String hollow) {
    return first(
        page,
        "<g class=\"look-square"
            + hollow
            + "\"[^>]*>\\s*<polyline class=\"chart-line\" points=\"([^\"]{9,})\"");
  }

  private static String first(Page page, String pattern) {
    return Pattern.compile(pattern)
        .matcher(page.html())
        .results()
        .findFirst()
        .orElseThrow(() -> new AssertionError(pattern + " in " + page.html()))
        .group(1);
  }

  private static long count(Page page, String pattern) {
    return Pattern.compile(pattern).matcher(page.html()).results().count();
  }
}
