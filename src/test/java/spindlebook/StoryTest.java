package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The whole job on one corner, by its pages. What is expected is worked out here by hand, in inches
 * and by {@link HandSums}; no outside source but the inch.
 */
class StoryTest {
  private static final double IN = 25.4;

  // Wheel positions in inches: spindle less mark.
  private static final double STRAP_OFF = 11 + 7 / 8.0 - (31 + 5 / 8.0);
  private static final double S = 15 + 3 / 16.0 - (31 + 5 / 8.0);
  private static final double LOW = 18 + 7 / 8.0 - (31 + 5 / 8.0);
  private static final double HIGH = 22 + 3 / 16.0 - (31 + 5 / 8.0);
  private static final double TOUCH = 26 + 5 / 8.0 - (31 + 5 / 8.0);
  private static final double PAST = 30 + 3 / 16.0 - (31 + 5 / 8.0);
  private static final double RIDE = 20 + 3 / 4.0 - (31 + 9 / 16.0);

  private static final double[] STRAP_AT = {STRAP_OFF, S, LOW, HIGH};
  private static final double[] STRAP = {20, 18 + 11 / 16.0, 17 + 1 / 8.0, 15 + 1 / 2.0};

  // A touch is no number: the curve at full right begins where the strap stops the wheel.
  private static final double[] RIGHT_AT = {S, LOW, HIGH, TOUCH, PAST};
  private static final double[] RIGHT = {
    5 / 32.0, 11 / 16.0, 1 + 1 / 8.0, 1 + 3 / 8.0, 1 + 7 / 16.0
  };
  private static final double LIMIT = HandSums.where(RIGHT_AT, RIGHT, 1 / 4.0, S, LOW);

  // 8 % of 18 3/8 less what it has grown under load already, carried to the wheel.
  private static final double E_STRAP = 0.08 * (18 + 3 / 8.0) - (18 + 11 / 16.0 - (18 + 3 / 8.0));
  private static final double E = E_STRAP / -HandSums.slopeAtNode(STRAP_AT, STRAP, 1);

  // Set to end at the limit it is another length, and stretches by 8 % of that.
  private static final double NEEDED =
      HandSums.stretchedTo(LIMIT, STRAP_AT, STRAP, S, E_STRAP, 0.08, HIGH);

  private static final double SOLID = TOUCH + 1.5 / ratioAtTouch();
  private static final double GROUND = 15 + 3 / 4.0 - (15 + 5 / 16.0) - 2;

  @TempDir Path folder;
  private Shop shop;
  private Marmot marmot;

  @BeforeEach
  void measure() {
    shop = new Shop(folder);
    marmot = new Marmot(shop).prepared().measured().measuredOn();
  }

  @AfterEach
  void close() {
    shop.close();
  }

  private static double ratioAtTouch() {
    double[] at = {LOW, HIGH, TOUCH};
    double[] gap = {4 + 7 / 16.0, 2 + 5 / 8.0, 0};
    return -HandSums.slopeAtNode(at, gap, 2);
  }

  @Test
  void travel_as_set_and_as_it_could_be_with_what_rules() {
    JsonNode corner = shop.figures(marmot.left);
    JsonNode droop = corner.get("droop");
    mm(S, droop, "stopMm");
    mm(E, droop, "heldBackMm");
    mm(LIMIT, droop.get("limits").get(0), "positionMm");
    assertEquals("tie rod to upper arm, full right", droop.at("/limits/0/what").asText());
    mm(NEEDED, droop, "neededStopMm");
    mm(S - E - LIMIT, droop, "marginMm");
    mm(RIDE, corner, "rideMm");
    JsonNode bump = corner.get("bump");
    mm(SOLID, bump, "stopMm");
    assertTrue(bump.get("stopComputed").asBoolean());
    mm(GROUND - 3 / 8.0, bump, "neededStopMm");
    mm(GROUND - 3 / 8.0 - SOLID, bump, "marginMm");
    mm(SOLID - S, corner.get("asSet"), "mm");
    mm(RIDE - S, corner.get("asSet"), "droopMm");
    mm(SOLID - RIDE, corner.get("asSet"), "bumpMm");
    mm(GROUND - 3 / 8.0 - NEEDED, corner.get("asItCouldBe"), "mm");
    mm(RIDE - NEEDED, corner.get("asItCouldBe"), "droopMm");
    mm(GROUND - 3 / 8.0 - RIDE, corner.get("asItCouldBe"), "bumpMm");
    assertEquals("short", droop.get("outcome").asText());
    assertEquals("clear", bump.get("outcome").asText());

    String page = shop.get("/corners/" + marmot.left).is(200).text();
    // 13.869 in, 11.376 in; droop 5 5/8 and 2.501; bump 8.244 and 8.875; short by 3.456.
    for (String shown :
        new String[] {
          "13 7/8 in ± 1/4",
          "11 3/8 in ± 5/16",
          "droop 5 5/8 in ± 1/8",
          "bump 8 1/4 in ± 1/4",
          "droop 2 1/2 in ± 5/16",
          "bump 8 7/8 in ± 1/8",
          "3 7/16 in ± 5/16 past it"
        }) {
      assertTrue(page.contains(shown), () -> shown + " is not on: " + page);
    }
    // The gap on the strap at full right, not rounded up to 3/16.
    assertTrue(shop.get("/corners/" + marmot.left + "/gaps").text().contains("5/32"));
  }

  @Test
  void the_map_of_gaps_begins_with_the_rule_that_is_broken_and_says_from_where_on() {
    Page gaps = shop.get("/corners/" + marmot.left + "/gaps").is(200);
    String first = gaps.html().split("class=\"map-row\"")[1];
    assertTrue(first.contains("Tie rod</b><small>to upper arm"), first);
    assertTrue(first.startsWith(" open"), first);
    assertTrue(gaps.text().contains("too close past −"), gaps.text());
    assertTrue(gaps.text().contains(", full right at least 1/4 in"), gaps.text());
  }

  @Test
  void how_sure_it_is_follows_from_what_each_height_shares() {
    // One height: spindle and mark, each graduation 1/16 (g²/12) and placing 1/32 (a²/3); what the
    // tape itself reads long or short is in both and cancels.
    double each = 1 / 16.0 * (1 / 16.0) / 12 + 1 / 32.0 * (1 / 32.0) / 3;
    double two = 2 * Math.sqrt(2 * each);
    JsonNode corner = shop.figures(marmot.left);
    assertEquals(two * IN, corner.at("/droop/stopMm/U").asDouble(), 1e-9);
    assertEquals(two * IN, corner.at("/rideMm/U").asDouble(), 1e-9);
    // The heights of the round share one mark: from one to another it cancels, two spindles stay.
    assertEquals(two * IN, corner.at("/rawMm/U").asDouble(), 1e-9);
    mm(PAST - STRAP_OFF, corner, "rawMm");
    // Ride has a mark of its own: four readings.
    assertEquals(2 * Math.sqrt(4 * each) * IN, corner.at("/asSet/droopMm/U").asDouble(), 1e-9);
  }

  @Test
  void two_pull_backs_do_not_add_and_stretch_does() {
    JsonNode before = shop.figures(marmot.left).get("droop");
    long broken = 0;
    for (JsonNode limit : before.get("limits")) {
      broken += limit.get("outcome").asText().equals("short") ? 1 : 0;
    }
    assertEquals(3, broken, "tie rod at full right and straight, and the shock's reserve");
    // The shock's reserve given up: one pull-back less, and nothing is won by it.
    marmot.send("/corners/" + marmot.left + "/given", Map.of("shock-open-reserve", "0"));
    JsonNode one = shop.figures(marmot.left).get("droop");
    mm(NEEDED, one, "neededStopMm");
    // The higher one cured: the next rules, and stretch is still on top of it.
    String point = "/corners/" + marmot.left + "/watch-points/tie-rod-upper-arm";
    marmot.send(point, Map.of("least", "5/32"));
    double[] at = {STRAP_OFF, S, LOW, HIGH, TOUCH, PAST};
    double[] gap = {1 / 8.0, 5 / 16.0, 3 / 4.0, 1 + 3 / 16.0, 1 + 7 / 16.0, 1 + 1 / 2.0};
    double next = HandSums.where(at, gap, 5 / 32.0, STRAP_OFF, S);
    JsonNode other = shop.figures(marmot.left).get("droop");
    for (JsonNode limit : other.get("limits")) {
      if (limit.get("what").asText().equals("tie rod to upper arm, straight")) {
        mm(next, limit, "positionMm");
      }
    }
    marmot.send("/corners/" + marmot.left + "/given", Map.of("strap-stretch", "0"));
    JsonNode without = shop.figures(marmot.left).get("droop");
    // At full right the rule is met where the strap stops today.
    assertEquals(
        (HandSums.stretchedTo(S, STRAP_AT, STRAP, S, E_STRAP, 0.08, HIGH) - S) * IN,
        other.at("/neededStopMm/value").asDouble() - without.at("/neededStopMm/value").asDouble(),
        1e-6);
  }

  @Test
  void the_cure_is_prepared_kept_read_again_and_told_in_the_book() {
    // On the strap's own curve from S to L + e and the margin's ±; eighths, to the shorter side.
    JsonNode droop = shop.figures(marmot.left).get("droop");
    double expanded = droop.at("/marginMm/U").asDouble() / IN;
    double wanted =
        HandSums.value(STRAP_AT, STRAP, S) - HandSums.value(STRAP_AT, STRAP, LIMIT + E + expanded);
    double eighths = Math.ceil(wanted * 8) / 8;
    assertEquals(1.625, eighths);
    JsonNode cure = droop.get("cure");
    assertEquals(wanted * IN, cure.get("wantedMm").asDouble(), 1e-6);
    assertEquals(eighths * IN, cure.get("setMm").asDouble(), 1e-9);

    Page corner = shop.get("/corners/" + marmot.left);
    String action = "/corners/" + marmot.left + "/adjustments/limit-strap";
    assertTrue(corner.html().contains(action + "?to=16+3%2F4+in"), "18 3/8 less 1 5/8");
    Page form = shop.get(action + "?to=16+3%2F4+in").is(200);
    Form filled = form.form(action + "/would-move").with("why", "tie rod at full right");
    assertEquals("16 3/4 in", filled.value("to"));
    Page wouldMove = filled.send().is(200);
    assertEquals(
        List.of(
            "measure again where 'on the strap (full droop)' lies",
            "measure again strap, mount to mount"),
        wouldMove.each("li"));
    int entries = shop.entries();
    assertTrue(wouldMove.text().contains("18 3/8 in → 16 3/4 in"), wouldMove.text());
    Page kept = wouldMove.form(action).keep();
    assertEquals(entries + 1, shop.entries(), "looking at what it would move writes nothing");
    Page again = shop.browser.follow(kept).is(200);
    assertTrue(
        again
            .text()
            .contains(
                "To read again: the height 'on the strap (full droop)';"
                    + " strap, mount to mount at 'on the strap (full droop)', straight."),
        again.text());

    JsonNode stale = shop.figures(marmot.left);
    assertEquals(2, count(stale, "stale"), "the strap's stop and the strap read on it, no gap");
    assertEquals("needs", stale.at("/droop/outcome").asText());

    String before = shop.get("/corners/" + marmot.left).text();
    shop.reopen();
    assertEquals(before, shop.get("/corners/" + marmot.left).text(), "closed and opened again");
    assertEquals(List.of(), shop.told);

    readAgain();
    String book = shop.get("/cars/" + marmot.car + "/book").is(200).text();
    for (String told :
        new String[] {
          "limit strap from 18 3/8 in to 16 3/4 in: tie rod at full right",
          "on the strap (full droop) · spindle 19 in · 482.6 mm · mark as before",
          "strap, mount to mount · 17 1/16 in · 433.4 mm",
          "ride height · spindle 20 3/4 in · 527.1 mm · mark 31 9/16 in · 801.7 mm"
        }) {
      assertTrue(book.contains(told), () -> told + " is not in: " + book);
    }
  }

  @Test
  void a_setting_never_said_is_previewed_from_what_it_was_said_to_be() {
    String action = "/corners/" + marmot.right + "/adjustments/bump-stop-spacer";
    Page preview =
        shop.get(action)
            .form(action + "/would-move")
            .with("from", "1/2")
            .with("to", "7/8")
            .send()
            .is(200);
    assertTrue(preview.text().contains("1/2 in → 7/8 in"), preview.text());
    String given = shop.get("/corners/" + marmot.left + "/given").text();
    assertTrue(given.contains("A full bump read solid counts before it."), given);
    String strap = shop.get("/corners/" + marmot.left + "/adjustments/limit-strap").text();
    assertTrue(
        strap.contains(
            "Limit strap 1 5/8 in shorter, to 16 3/4 in, stops the wheel 3 13/16 in sooner and"
                + " fixes it"),
        strap);
  }

  /** The strap's stop read at −12 5/8, and the strap on it: 5/16 longer than it was made. */
  private void readAgain() {
    String action = "/corners/" + marmot.left + "/rounds";
    Form start = shop.get(action + "/new?again=1").is(200).form(action);
    assertEquals("1", start.value("again"));
    start.keep();
    Page plan = shop.get("/rounds/" + start.key()).is(200);
    assertEquals(2, plan.each("li").size(), plan.text());
    String stop = marmot.heightAsAt(start.key(), "on-the-strap", "19", marmot.strapOff);
    marmot.read(stop, "straight", Marmot.STRAP, "17 1/16");
    assertTrue(
        shop.get("/rounds/" + start.key()).each("li").stream().allMatch(l -> l.endsWith("read")));

    double s = 19 - (31 + 5 / 8.0);
    double[] at = {STRAP_OFF, LOW, s, HIGH};
    double[] strap = {20, 17 + 1 / 8.0, 17 + 1 / 16.0, 15 + 1 / 2.0};
    double eStrap = 0.08 * (16 + 3 / 4.0) - (17 + 1 / 16.0 - (16 + 3 / 4.0));
    double e = eStrap / -HandSums.slopeAtNode(at, strap, 2);
    JsonNode corner = shop.figures(marmot.left);
    assertEquals(0, count(corner, "stale"));
    mm(s, corner.get("droop"), "stopMm");
    mm(e, corner.get("droop"), "heldBackMm");
    mm(s - e - LIMIT, corner.get("droop"), "marginMm");
    assertNotEquals("short", corner.at("/droop/outcome").asText());
  }

  @Test
  void a_strap_change_leaves_gaps_alive_a_rod_end_change_does_not_and_can_be_put_back() {
    int all = shop.figures(marmot.left).get("readings").size();
    marmot.adjust(marmot.left, "limit-strap", "17 1/2");
    for (JsonNode reading : shop.figures(marmot.left).get("readings")) {
      boolean strapOnStop =
          reading.get("what").asText().startsWith("strap")
              && reading.get("height").asText().equals(marmot.onStrap);
      assertEquals(strapOnStop ? "stale" : "live", reading.get("stands").asText());
    }
    marmot.adjust(marmot.left, "limit-strap", "18 3/8");
    marmot.adjust(marmot.left, "upper-rod-ends", "4");
    JsonNode bent = shop.figures(marmot.left);
    for (JsonNode reading : bent.get("readings")) {
      assertEquals("stale", reading.get("stands").asText());
      assertTrue(reading.get("because").toString().contains("upper rod ends from 3 turns to 4"));
    }
    assertEquals("needs", bent.get("outcome").asText());
    marmot.adjust(marmot.left, "upper-rod-ends", "3");
    JsonNode back = shop.figures(marmot.left);
    int putBack = 0;
    for (JsonNode reading : back.get("readings")) {
      putBack += reading.get("stands").asText().equals("put-back") ? 1 : 0;
    }
    assertEquals(all, putBack);
    mm(S - E - LIMIT, back.get("droop"), "marginMm");
    assertTrue(back.at("/droop/stopNotConfirmed").asBoolean());
    assertTrue(shop.get("/corners/" + marmot.left).text().contains("set back, check it"));
  }

  @Test
  void correcting_a_height_moves_its_readings_and_the_first_text_stays_in_the_book() {
    String address = "/heights/" + marmot.low + "/correct";
    Map<String, String> right = Map.of("spindle", "18 5/8", "reason", "read from the wrong mark");
    marmot.send(address, right);
    double low = LOW - 1 / 4.0;
    double[] at = {S, low, HIGH, TOUCH, PAST};
    JsonNode droop = shop.figures(marmot.left).get("droop");
    mm(HandSums.where(at, RIGHT, 1 / 4.0, S, low), droop.get("limits").get(0), "positionMm");
    String book = shop.get("/cars/" + marmot.car + "/book").text();
    assertTrue(book.contains("read from the wrong mark (was"), book);
    assertTrue(book.contains("spindle 18 7/8 in"), book);
  }

  @Test
  void again_is_the_mean_instead_is_the_last_and_taken_back_is_gone() {
    String second = marmot.read(marmot.low, "straight", Marmot.STOP_GAP, "4 5/16");
    double mean = (4 + 7 / 16.0 + 4 + 5 / 16.0) / 2;
    mm(solidWith(mean), shop.figures(marmot.left).get("bump"), "stopMm");

    Page saved = shop.get("/heights/" + marmot.low + "?saved=" + second).is(200);
    assertTrue(saved.text().contains("counts again, with the one before"), saved.text());
    Page instead = saved.form("/entries/" + second + "/counts").keep();
    mm(solidWith(4 + 5 / 16.0), shop.figures(marmot.left).get("bump"), "stopMm");
    Page over = shop.browser.follow(instead).is(200);
    assertTrue(over.text().contains("counts instead of the one before"), over.text());
    over.form("/entries/" + second + "/counts").keep();
    mm(solidWith(mean), shop.figures(marmot.left).get("bump"), "stopMm");

    over.form("/entries/" + second + "/take-back").keep();
    mm(SOLID, shop.figures(marmot.left).get("bump"), "stopMm");
    String entry = shop.get("/entries/" + second).is(200).text();
    assertTrue(entry.contains("withdrawn"), entry);
  }

  private static double solidWith(double gapAtLow) {
    double[] at = {LOW, HIGH, TOUCH};
    double[] gap = {gapAtLow, 2 + 5 / 8.0, 0};
    return TOUCH + 1.5 / -HandSums.slopeAtNode(at, gap, 2);
  }

  private static int count(JsonNode corner, String standing) {
    int count = 0;
    for (JsonNode height : corner.get("heights")) {
      count += height.get("stop").asText().equals(standing) ? 1 : 0;
    }
    for (JsonNode reading : corner.get("readings")) {
      count += reading.get("stands").asText().equals(standing) ? 1 : 0;
    }
    return count;
  }

  private static void mm(double inches, JsonNode node, String name) {
    assertEquals(inches * IN, node.at("/" + name + "/value").asDouble(), 1e-6, name);
  }
}
