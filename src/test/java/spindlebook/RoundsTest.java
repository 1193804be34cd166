package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Starting a round for what is needed, zeroing it, and moving it to the other side. */
class RoundsTest {
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
    assertEquals(List.of(), shop.told);
    shop.close();
  }

  @Test
  void what_was_zeroed_is_ticked_once_and_the_round_says_what_was_not() {
    String round =
        marmot.startRound(marmot.left, Map.of("zeroed-floor", "1", "zeroed-frame-mark", "1"));
    String text = shop.get("/rounds/" + round).is(200).text();
    assertTrue(
        text.contains(
            "Not zeroed, or not said: rack centred, steering link, no play, spring and stop,"
                + " angle finder."),
        text);
    assertTrue(
        shop.lines().get(shop.entries()).contains("\"zeroed\":[\"floor\",\"frame-mark\"]"),
        shop.lines().get(shop.entries()));
    String none = marmot.startRound(marmot.left, Map.of());
    assertTrue(shop.get("/rounds/" + none).text().contains("not said: floor level, frame mark"));
  }

  @Test
  void one_tap_says_that_all_gaps_of_a_round_were_taped_and_one_takes_it_back() {
    String round = marmot.startRound(marmot.left, Map.of());
    String height = marmot.height(round, "on-the-strap", "15 3/16", "31 5/8");
    marmot.read(height, "straight", Marmot.TIE_ROD, "3/8");
    String page = "/rounds/" + round;
    Page shanks = shop.get(page).is(200);
    assertTrue(shanks.text().contains("drill shanks below 1/2 in, from there tape, sixteenths"));
    // By hand, u² = step² / 12 + half width² / 3 (and the tape's class): 1/64, 1/64 and 1/16, 1/32,
    // 1/32.
    assertEquals(0.5126, uOfGap(), 1e-3);
    Page taped = shanks.form(page + "/gap-tool").send();
    assertEquals(page, taped.location());
    assertTrue(shop.get(page).text().contains("· tape, sixteenths · tape, sixteenths"));
    assertEquals(1.5875, uOfGap(), 1e-3);
    shop.get(page).form(page + "/gap-tool").keep();
    assertEquals(0.5126, uOfGap(), 1e-3);
  }

  @Test
  void the_other_gap_tool_retired_meanwhile_leaves_the_round_as_it_is() {
    String page = "/rounds/" + marmot.startRound(marmot.left, Map.of());
    shop.get(page).form(page + "/gap-tool").keep();
    Form back = shop.get(page).form(page + "/gap-tool");
    String drills = "/cars/" + marmot.car + "/tools/drills";
    shop.get(drills).form(drills + "/retire").keep();
    assertEquals(page, back.send().is(303).location());
    assertTrue(shop.get(page).text().contains("· tape, sixteenths · tape, sixteenths"));
  }

  /** In between, and where a hard landing ends, another height's value stood as the last time's. */
  @Test
  void what_was_read_at_another_height_of_the_round_is_not_the_last_time() {
    String round = marmot.startRound(marmot.left, Map.of());
    for (String name : List.of("in-between", "stop-out", "on-the-strap")) {
      String one = marmot.height(round, name, "20 3/16", "31 5/8");
      marmot.read(one, "straight", Marmot.TIE_ROD, "3/8");
      String other = marmot.height(round, name, "22", "31 5/8");
      String page = shop.get("/heights/" + other).is(200).text();
      assertFalse(page.contains("last time"), page);
    }
    String later = marmot.startRound(marmot.left, Map.of());
    String strap = marmot.height(later, "on-the-strap", "20 3/16", "31 5/8");
    assertTrue(shop.get("/heights/" + strap).is(200).text().contains("last time 3/8 in"));
  }

  private double uOfGap() {
    return shop.figures(marmot.left).at("/readings/0/mm/U").asDouble();
  }

  @Test
  void ticks_come_back_with_a_form_that_is_wrong() {
    String action = "/corners/" + marmot.left + "/rounds";
    Page page =
        shop.get(action + "/new")
            .form(action)
            .with("zeroed-play", "1")
            .with("rake", "steep")
            .send()
            .is(422);
    Form again = page.form(action);
    assertEquals("1", again.value("zeroed-play"));
    assertFalse(again.values().containsKey("zeroed-floor"));
  }

  @Test
  void one_height_and_one_reading_are_told_in_the_singular() {
    String round = marmot.startRound(marmot.left, Map.of());
    String height = marmot.height(round, "on-the-strap", "15 3/16", "31 5/8");
    marmot.read(height, "straight", Marmot.STRAP, "18 11/16");
    String text = shop.get("/corners/" + marmot.left + "/rounds").text();
    assertTrue(text.contains("1 height, 1 reading"), text);
  }

  @Test
  void a_thing_still_needed_leads_to_a_round_that_asks_exactly_for_it() {
    marmot.prepared().measured();
    Page corner = shop.get("/corners/" + marmot.left + "/limits");
    String need =
        Pattern.compile("href=\"(/corners/[^\"]*/rounds/new\\?need=[^\"]*)\"")
            .matcher(corner.html())
            .results()
            .map(m -> Page.decoded(m.group(1)))
            .filter(l -> l.indexOf("need=") == l.lastIndexOf("need="))
            .findFirst()
            .orElseThrow(() -> new AssertionError(corner.text()));
    String action = "/corners/" + marmot.left + "/rounds";
    Page page = shop.get(need).is(200);
    assertTrue(
        page.text()
            .contains(
                "To read: upper rod end to its housing at 'stop out, past solid, −2 in from"
                    + " level with the frame mark or beyond', straight."),
        page.text());
    Form start = page.form(action);
    assertEquals("out", start.value("bumpStop"));
    assertEquals("/rounds/" + start.key() + "/guide", start.keep().location());
    Page plan = shop.get("/rounds/" + start.key()).is(200);
    assertEquals(1, plan.each("li").size(), plan.text());
    assertTrue(plan.text().contains("Next: stop out, past solid"), plan.text());
  }

  @Test
  void a_round_for_ride_height_alone_is_offered_on_its_tyres_with_the_spring_in() {
    String action = "/corners/" + marmot.left + "/rounds";
    String many = "need=in-between~full-left~toe&".repeat(400);
    assertTrue(shop.get(action + "/new?" + many).is(200).text().contains("toe"), "12 KB of needs");
    Page page = shop.get(action + "/new?need=ride~straight").is(200);
    assertTrue(page.text().contains("To read: the height 'ride height'."), page.text());
    Form start = page.form(action);
    assertEquals("in", start.value("spring"));
    assertEquals("tyres", start.value("on"));
    start.keep();
    assertTrue(shop.get("/rounds/" + start.key()).text().contains("Next: ride height"));
    Form height =
        shop.get("/rounds/" + start.key() + "/heights/new")
            .form("/rounds/" + start.key() + "/heights");
    assertEquals("ride", height.value("name"));
  }

  @Test
  void what_names_nothing_of_the_corner_is_not_asked_for() {
    String action = "/corners/" + marmot.left + "/rounds/new";
    for (String odd :
        List.of(
            "need=",
            "need=moon~straight",
            "need=ride",
            "need=ride~straight~watch-point~nothing",
            "need=~~~~",
            "need=ride~straight~speed")) {
      Page page = shop.get(action + "?" + odd).is(200);
      assertTrue(page.text().contains("Start a round"), () -> odd + ": " + page.text());
    }
  }

  @Test
  void the_corner_lists_what_a_round_would_read_again_and_counts_it_alike() {
    marmot.prepared().measured();
    marmot.read(marmot.low, "straight", Marmot.STOP_GAP, "4 5/16");
    marmot.adjust(marmot.left, "upper-rod-ends", "4");
    String again = "/corners/" + marmot.left + "/rounds/new?again=1";
    Matcher inAll = Pattern.compile("To read again: (\\d+) in all").matcher(shop.get(again).text());
    assertTrue(inAll.find());
    String corner = shop.get("/corners/" + marmot.left).text();
    assertTrue(corner.contains(inAll.group(1) + " to measure again"), corner);
    String gaps = shop.get("/corners/" + marmot.left + "/gaps").text();
    assertTrue(gaps.contains("Measure again: " + inAll.group(1) + " "), gaps);
    String car = shop.get("/cars/" + marmot.car).text();
    assertTrue(car.contains(1 + Integer.parseInt(inAll.group(1)) + " to measure "), car);
  }

  @Test
  void raw_travel_is_told_from_the_strap_and_apart_with_the_strap_off() {
    marmot.prepared().measured();
    String text = shop.get("/rounds/" + marmot.round).text();
    // 26 5/8 less 15 3/16, and less 11 7/8: one mark for all.
    assertTrue(text.contains("Raw travel in this round so far: 11 7/16 in."), text);
    assertTrue(text.contains("With strap off or stop out: 14 3/4 in."), text);
  }

  @Test
  void a_round_moved_to_a_corner_that_watches_less_loses_nothing_says_so_and_goes_back() {
    marmot.prepared().measured();
    marmot.adjust(marmot.left, "upper-rod-ends", "4");
    String point = "/corners/" + marmot.right + "/watch-points/tie-rod-upper-arm";
    shop.get(point).is(200).form(point + "/retire").keep();
    JsonNode before = shop.figures(marmot.left);
    int readings = before.get("readings").size();
    String action = "/rounds/" + marmot.round + "/other-side";
    Form form = shop.get("/rounds/" + marmot.round).form(action);
    Page moved = shop.browser.follow(form.keep()).is(200);
    assertTrue(
        moved.text().contains("with 5 heights and " + readings + " readings."), moved.text());
    assertTrue(moved.text().contains("15 readings are of places that are not watched here"));
    assertTrue(
        moved.text().contains("tie rod to upper arm · strap off, hanging · full right · touches"),
        moved.text());
    assertEquals(0, shop.figures(marmot.left).get("readings").size());
    JsonNode there = shop.figures(marmot.right);
    assertEquals(readings, there.get("readings").size());
    String height = shop.get("/heights/" + marmot.strapOff + "?steering=full-right").text();
    assertTrue(height.contains("Tie rod to upper arm: touches"), height);
    String entry = there.at("/readings/0/key").asText();
    marmot.send(
        "/readings/" + entry + "/correct", Map.of("value", "1/2", "reason", "read it once more"));

    form.keep();
    assertEquals(readings, shop.figures(marmot.right).get("readings").size(), "pressed twice");
    Page back = shop.browser.follow(moved.form(action).keep()).is(200);
    assertTrue(back.text().contains("This round is now the left front's"), back.text());
    assertEquals(readings, shop.figures(marmot.left).get("readings").size());
    assertEquals(0, shop.figures(marmot.right).get("readings").size());
    String stale = " readings are to measure again here.";
    assertTrue(back.text().contains(stale), back.text());
  }
}
