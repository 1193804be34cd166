package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spindlebook.card.Capital;

/**
 * A corner whose sums can be done in the head. Frame mark 30 in above the floor at every height,
 * ride at spindle 22: positions from ride are spindle − 22.
 *
 * <pre>
 *   tie rod to upper arm, least 1/4:  full right 1/4 + (x + 6)/8,  full left 1/4 + (x + 9)/8,
 *                                     straight 1 1/2 everywhere
 *   shock 20 − x, open 29 1/2 less 1/2 held back: 29, at x = −9;  closed 14 1/2 and 1/2: 15, at +5
 *   strap stops at −8, no stretch;  stop solid at +6, no impact;  frame on the ground at +10
 * </pre>
 *
 * Droop: tie rod full right −6, strap −8, tie rod full left and shock both −9. By hand.
 */
class LimitsPagesTest {
  private static final double[] GAPS_AT = {-10, -8, -4, 0, 4, 6};

  @TempDir Path folder;
  private Shop shop;
  private Marmot marmot;

  @BeforeEach
  void open() {
    shop = new Shop(folder);
    marmot = new Marmot(shop);
    marmot.send(
        "/corners/" + marmot.left + "/given",
        Map.of(
            "mark-to-lowest-frame", "8",
            "tyre-squashed-radius", "18",
            "ground-clearance", "2",
            "strap-stretch", "0",
            "impact-reserve", "0"));
    retire(List.of("upper-rod-end", "shock-upper-arm"));
    retire(Marmot.NOT_WATCHED);
  }

  @AfterEach
  void close() {
    shop.close();
  }

  private void retire(List<String> points) {
    for (String point : points) {
      String address = "/corners/" + marmot.left + "/watch-points/" + point;
      shop.get(address).is(200).form(address + "/retire").keep();
    }
  }

  private void measured() {
    String round = marmot.startRound(marmot.left, Map.of("spring", "in", "bumpStop", "in"));
    for (double x : GAPS_AT) {
      String height = marmot.height(round, name(x), in(x + 22), "30");
      tieRod(height, x);
      marmot.read(height, "straight", Marmot.SHOCK, in(20 - x));
      if (x <= 0) {
        marmot.read(height, "straight", Marmot.STRAP, in(16 - x / 2));
      }
    }
    // Given afterwards: as it is read past them, the shock of this sum would be asked about.
    shock();
  }

  private void shock() {
    marmot.send(
        "/corners/" + marmot.left + "/given",
        Map.of("shock-open", "29 1/2", "shock-closed", "14 1/2"));
  }

  private void tieRod(String height, double x) {
    marmot.readTieRod(
        height,
        x < -9 ? "1/8" : in(0.25 + (x + 9) / 8),
        "1 1/2",
        x < -8 ? "touches" : x == -8 ? "0" : in(0.25 + (x + 6) / 8));
  }

  private static String name(double x) {
    return x == -10
        ? "strap-off"
        : x == -8 ? "on-the-strap" : x == 0 ? "ride" : x == 6 ? "full-bump" : "in-between";
  }

  private static String in(double inches) {
    return inches + " in";
  }

  private Page page() {
    return shop.get("/corners/" + marmot.left + "/limits").is(200);
  }

  private static void says(Page page, String... sentences) {
    String text = page.text();
    for (String sentence : sentences) {
      assertTrue(text.contains(sentence), sentence + " is not on: " + text);
    }
  }

  @Test
  void the_ladder_of_droop_is_the_one_worked_by_hand() {
    measured();
    Page page = page();
    says(
        page,
        "1 Tie rod to upper arm, full right −6 in ±",
        "Fix it: 2 in more travel; next is the strap, stretched.",
        "Fix: room made where it acts, or less lock:",
        "2 The strap, stretched −8 in ±",
        "Let it out: 1 in more travel; next is ",
        "Fix it alone: nothing. At the same place, 0 in ±");
    String text = page.text();
    assertTrue(
        Pattern.compile("[34] Shock's reserve at its open end −9 in ±").matcher(text).find(), text);
    assertTrue(
        Pattern.compile("[34] Tie rod to upper arm, full left −9 in ±").matcher(text).find(), text);
    // Straight, the gap was read at −10 only as far: 1 in beyond −9 whatever comes then.
    assertTrue(text.contains("Fix both: at least 1 in more travel; further out it needs"), text);
    assertFalse(text.toLowerCase(java.util.Locale.ROOT).contains("safe"), text);
    // Positions, names and numbers stand on the tape too.
    assertTrue(page.html().contains("id=\"ladder-droop-h\""), page.html());
    assertTrue(page.html().contains("id=\"ladder-bump-h\""), page.html());
  }

  @Test
  void what_acts_at_a_lock_stands_apart_with_the_steering_stop() {
    measured();
    Page page = page();
    says(
        page,
        "At full lock only",
        "Droop: tie rod to upper arm, full right. Less lock: up to 2 in more travel; next is the"
            + " strap,");
    assertTrue(
        page.html().contains("/corners/" + marmot.left + "/adjustments/steering-stop"),
        page.html());
    // Full left acts only after the strap: less lock on that side wins nothing yet.
    says(page, "Less lock: nothing yet, first comes tie rod to upper arm, full right.");
  }

  @Test
  void every_rung_leads_to_its_readings_and_cures() {
    measured();
    Page page = page();
    Pattern link = Pattern.compile("href=\"(/(?:entries|corners)/[^\"]+)\"");
    List<String> links =
        link.matcher(page.html()).results().map(m -> Page.decoded(m.group(1))).distinct().toList();
    assertTrue(links.stream().anyMatch(l -> l.contains("/curves?of=p-tie-rod-upper-arm")));
    assertTrue(links.stream().filter(l -> l.startsWith("/entries/")).count() > 10, "" + links);
    for (String address : links) {
      shop.get(address).is(200);
    }
  }

  @Test
  void a_stale_limit_withholds_the_wins_and_is_read_next() {
    measured();
    marmot.adjust(marmot.left, "tie-rod", "2");
    Page page = page();
    says(
        page,
        "Missing, or measure again: 3",
        "needs 3 gaps to measure.",
        "Read next, and why Read tie rod to upper arm");
    Page car = shop.get("/cars/" + marmot.car).is(200);
    says(car, "Droop: needs 3 gaps to measure.");
    // The round it leads to asks for exactly that gap.
    String next =
        Page.decoded(
            Pattern.compile("href=\"(/corners/[^\"]*rounds/new\\?need[^\"]*)\"")
                .matcher(page.html())
                .results()
                .findFirst()
                .orElseThrow()
                .group(1));
    says(shop.get(next).is(200), "tie rod to upper arm");
  }

  @Test
  void a_gap_between_two_readings_is_planned_from_the_one_that_keeps_its_rule() {
    String round = marmot.startRound(marmot.left, Map.of("spring", "in", "bumpStop", "in"));
    for (double x : new double[] {-8, 0}) {
      String height = marmot.height(round, name(x), in(x + 22), "30");
      marmot.readTieRod(height, "1 1/2", "1 1/2", x < 0 ? "1/16" : "1 1/2");
      marmot.read(height, "straight", Marmot.SHOCK, in(20 - x));
    }
    shock();
    says(page(), "planned from here; past its rule at −8 in", "what", "up to");
  }

  @Test
  void the_drive_check_names_the_fix_again_where_a_second_limit_goes_by_it() {
    String round = marmot.startRound(marmot.left, Map.of("spring", "in", "bumpStop", "in"));
    for (double x : new double[] {-8, -4, 0}) {
      String height = marmot.height(round, name(x), in(x + 22), "30");
      String gap = x < -4 ? "1/16" : in(1.5 + x / 8);
      marmot.readTieRod(height, gap, "1 1/2", gap);
      marmot.read(height, "straight", Marmot.STRAP, in(16 - x / 2));
    }
    Page check = shop.get("/cars/" + marmot.car + "/drive-check").is(200);
    says(check, "Shorten strap", "Shorten strap also for tie rod to upper arm");
    assertFalse(check.text().contains("Same for"));
  }

  @Test
  void too_little_room_in_mid_travel_is_cured_by_no_stop_but_by_less_lock() {
    tieRodAtFullRightInTheMiddle("1/8");
    says(
        page(),
        "In mid-travel: 1 No strap and no bump stop fixes these.",
        "Tie rod to upper arm, full right is too close in mid-travel",
        "or less lock: the steering stop.",
        "In mid-travel one place, above, at this lock only.");
  }

  /**
   * By JCGM 100 4.3.7, in inches: a step of g has u = g/√12, a placing of ± a has a/√3. At least
   * 1/4 in, placing 1/64 (u = 0.0090).
   */
  @Test
  void too_close_to_call_says_how_often_to_read_it_and_to_which_graduation() {
    // Steps of 1/64 (u = 0.0045), 1/64 to spare: U = 0.0202; without steps 0.0180; read twice
    // 2 √(0.0045² + 0.0090²/2) = 0.01562.
    tieRodAtFullRightInTheMiddle("17/64");
    says(
        page(),
        "can’t tell Tie rod to upper arm, full right is too close to call in mid-travel,"
            + " at −4 in from ride. Read it 2 times in all.");
  }

  @Test
  void steps_that_are_too_coarse_are_told_with_those_that_are_fine_enough() {
    marmot.send(
        "/cars/" + marmot.car + "/tools/drills",
        Map.of("graduation", "1/16", "shared", "", "placing", "1/64"));
    // Steps of 1/16 (u = 0.0180), 1/32 to spare: U = 0.0403, however often read more than 0.0360;
    // steps of 1/32: 0.0255.
    tieRodAtFullRightInTheMiddle("9/32");
    says(page(), "Read it with a finer tool: one that reads to 1/32 in or finer, not 1/16 in.");
  }

  /** Shared ± 1/32 (u = 0.018) by itself is more than the 1/64 to spare, however often read. */
  @Test
  void what_every_reading_shares_is_not_settled_by_repeating_and_says_so() {
    marmot.send(
        "/cars/" + marmot.car + "/tools/drills",
        Map.of("graduation", "1/64", "shared", "1/32", "placing", "1/64"));
    tieRodAtFullRightInTheMiddle("17/64");
    Page page = page();
    says(page, "Reading it again will not settle it");
    assertTrue(page.text().matches("(?s).*Reading (these )?will not settle: .*"), page.text());
    assertFalse(page.text().contains("Nothing to read next"), page.text());
  }

  private void tieRodAtFullRightInTheMiddle(String gap) {
    String round = marmot.startRound(marmot.left, Map.of("spring", "in", "bumpStop", "in"));
    for (double x : GAPS_AT) {
      String height = marmot.height(round, name(x), in(x + 22), "30");
      marmot.readTieRod(height, "1 1/2", "1 1/2", x == -4 ? gap : "1 1/2");
    }
  }

  @Test
  void the_rungs_stand_in_the_order_that_figures_tells() {
    try (Shop other = new Shop(folder.resolve("other"))) {
      Marmot story = new Marmot(other).prepared().measured().measuredOn();
      String text = other.get("/corners/" + story.left + "/limits").is(200).text();
      int told = 0;
      for (String end : List.of("droop", "bump")) {
        int number = 0;
        for (JsonNode rung : other.figures(story.left).get("ladders").get(end).get("rungs")) {
          if (rung.get("state").asText().matches("acts|bracket|everywhere")) {
            number++;
            told++;
            String row = number + " " + Capital.of(name(rung, end));
            assertTrue(text.contains(row), row + " is not on: " + text);
          }
        }
      }
      assertTrue(told >= 5, "rungs: " + told);
    }
  }

  private static String name(JsonNode rung, String end) {
    boolean stop = rung.get("acts").asText().equals("stop");
    String ofStop = end.equals("droop") ? "the strap, stretched" : "the bump stop, with impact";
    return stop ? ofStop : rung.get("what").asText();
  }

  @Test
  void the_demo_cars_left_front_is_limited_by_its_tie_rod_and_its_right_front_cant_tell() {
    Path demo = folder.resolve("demo");
    DemoBook.copyTo(demo);
    try (Shop shown = new Shop(demo)) {
      says(
          shown.get("/corners/marmot-lf/limits").is(200),
          "Droop past it",
          "1 Tie rod to upper arm, full right −8 3/8 in ±",
          "too close Reached 11/16 in of wheel travel before the strap stops the wheel",
          "Limit strap 5/8 in shorter",
          "2 The strap, stretched −9 1/16 in ±",
          // At the bump stop each was read to 1/8 in past where the wheel gets, which is not sure.
          "20 can’t tell past",
          "The wheel may go past the last reading",
          "19 clear, read to");
      says(
          shown.get("/corners/marmot-rf/limits").is(200),
          "can’t tell Too close to call within ±",
          "Fix it alone: nothing.");
      Page looked = shown.looker().get("/corners/marmot-lf/limits").is(200);
      says(looked, "Read next");
    }
  }

  @Test
  void a_corner_with_nothing_watched_or_never_measured_says_so() {
    retire(List.of("tie-rod-upper-arm"));
    Page nothingYet = page();
    says(
        nothingYet,
        "No limit known yet.",
        "Read next",
        "How much room there is waits for where the stop lets the wheel go.");
    Page right = shop.get("/corners/" + marmot.right + "/limits").is(200);
    says(right, "Missing, or measure again:");
    assertFalse(right.html().contains("<svg class=\"sheet-drawing"), right.html());
    assertEquals(404, shop.get("/corners/none/limits").status());
  }

  @Test
  void the_corner_leads_to_its_limits_and_its_print() {
    String html = shop.get("/corners/" + marmot.left).is(200).html();
    assertTrue(html.contains("<a href=\"/corners/" + marmot.left + "/limits\">Limits</a>"), html);
    assertTrue(
        html.contains("<a href=\"/corners/" + marmot.left + "/print\">Print this corner</a>"),
        html);
  }
}
