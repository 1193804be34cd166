package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A solid rear axle measured whole by its pages, level and crossed, in one sitting. Expected values
 * are worked out here by hand, in inches; the marks are at 30. No outside source but the inch.
 */
class SolidAxlePagesTest {
  private static final double IN = 25.4;
  private static final String LINK = "p-link-frame";
  private static final String OTHER_LINK = "o-p-link-frame";

  @TempDir Path folder;
  private Shop shop;
  private Marmot marmot;
  private String left;
  private String right;
  private String round;
  private String strap;

  @BeforeEach
  void start() {
    shop = new Shop(folder);
    marmot = new Marmot(shop);
    String corners = "/cars/" + marmot.car + "/corners";
    shop.get(corners + "/new")
        .is(200)
        .form(corners)
        .with("end", "rear")
        .with("layout", "solid-axle-end")
        .keep();
    left = marmot.car + "-lr";
    right = marmot.car + "-rr";
    for (String end : List.of(left, right)) {
      for (String point :
          List.of(
              "axle-frame",
              "u-joint-angle",
              "axle-tank",
              "shock-axle",
              "tyre-frame",
              "hose-slack")) {
        String address = "/corners/" + end + "/watch-points/" + point;
        shop.get(address).is(200).form(address + "/retire").keep();
      }
      marmot.send("/corners/" + end + "/given", Map.of("strap-stretch", "0 %"));
      marmot.adjust(end, "limit-strap", "20");
    }
    round = marmot.startRound(left, Map.of());
  }

  @AfterEach
  void close() {
    shop.close();
  }

  /** Both ends' spindles at these wheel positions. */
  private Form height(String name, String pairing, String other, double here, double there) {
    return shop.get("/rounds/" + round + "/heights/new")
        .is(200)
        .form("/rounds/" + round + "/heights")
        .with("name", name)
        .with("pairing", pairing)
        .with("otherName", other)
        .with("spindle", String.valueOf(30 + here))
        .with("otherSpindle", String.valueOf(30 + there))
        .with("mark", "30")
        .with("otherMark", "30");
  }

  private String keep(Form form) {
    form.keep();
    return form.key();
  }

  private String together(String name, double here, String link, String otherLink) {
    return read(keep(height(name, "both-together", "", here, here)), link, otherLink);
  }

  private String crossed(
      String name, String other, double here, double there, String link, String otherLink) {
    return read(keep(height(name, "crossed", other, here, there)), link, otherLink);
  }

  private String read(String height, String link, String otherLink) {
    marmot.read(height, "straight", LINK, link);
    marmot.read(height, "straight", OTHER_LINK, otherLink);
    return height;
  }

  /**
   * Level, the link keeps its 1/4 to the strap at −10, on both sides. Crossed it closes by 1/16 an
   * inch of wheel on the left and meets 1/4 at −9, while the strap lets that wheel to −11; on the
   * right it stays 1/8 further off and meets it at −11, where the strap is.
   */
  private void measure() {
    strap = together("on-the-strap", -10, "3/8", "3/8");
    together("in-between", -6, "3/4", "3/4");
    together("in-between", -2, "1 1/8", "1 1/8");
    together("stop-touch", 2, "1 1/2", "1 1/2");
    crossed("on-the-strap", "stop-touch", -11, 3, "1/8", "1 1/8");
    crossed("in-between", "in-between", -7, -3, "3/8", "3/4");
    crossed("in-between", "in-between", -3, -7, "5/8", "1/2");
    crossed("stop-touch", "on-the-strap", 3, -11, "1", "1/4");
  }

  @Test
  void the_worse_of_level_and_crossed_rules_and_every_page_says_which() {
    measure();
    JsonNode droop = shop.figures(left).get("droop");
    JsonNode rules = droop.at("/limits/0");
    assertEquals("link to frame, crossed", rules.get("what").asText());
    assertEquals("crossed", rules.get("pairing").asText());
    assertTrue(rules.get("rules").asBoolean());
    mm(-9, rules, "positionMm");
    mm(-11, droop, "stopMm");
    mm(-2, droop, "marginMm");
    assertEquals("short", droop.get("outcome").asText());
    mm(-10, droop.at("/stops/0"), "stopMm");
    mm(-11, droop.at("/stops/1"), "stopMm");
    assertEquals(
        List.of("crossed", "both together"),
        shop.figures(left).at("/ladders/droop/rungs").findValuesAsText("condition").stream()
            .distinct()
            .limit(2)
            .toList());
    String page =
        shop.get("/corners/" + left).is(200).text()
            + shop.get("/corners/" + left + "/limits").is(200).text()
            + shop.get("/corners/" + left + "/gaps").is(200).text();
    for (String said :
        List.of(
            "end of a solid axle",
            "link to frame, crossed is reached 2 in",
            "strap stops the wheel at, both together",
            "strap stops the wheel at, crossed",
            "on the strap (full droop), crossed",
            "×: crossed")) {
      assertTrue(page.contains(said), () -> said + " is not on: " + page);
    }
    String map = shop.get("/corners/" + left + "/gaps").html();
    assertTrue(map.contains(">strap×</text>"), "a head as wide as its column");
  }

  @Test
  void the_other_end_has_its_own_curve_from_the_same_sitting() {
    measure();
    JsonNode droop = shop.figures(right).get("droop");
    mm(-10, droop.at("/stops/0"), "stopMm");
    mm(-11, droop.at("/stops/1"), "stopMm");
    for (JsonNode limit : droop.get("limits")) {
      if (limit.path("pairing").asText().equals("crossed")
          && limit.get("what").asText().startsWith("link")) {
        mm(-11, limit, "positionMm");
      }
    }
    assertEquals(8, shop.figures(right).get("readings").size());
    String page = shop.get("/corners/" + right).is(200).text();
    assertTrue(page.contains("link to frame"), page);
    String list = shop.get("/corners/" + right + "/rounds").is(200).text();
    assertTrue(list.contains("8 heights, 8 readings"), list);
  }

  @Test
  void a_height_s_page_shows_both_ends_and_keeps_what_is_read_at_each() {
    measure();
    Page page = shop.get("/heights/" + strap).is(200);
    for (String said :
        List.of(
            "Left rear −10 in spindle less mark; right rear −10 in spindle less mark.",
            "Right rear: link to frame",
            "3/8 in")) {
      assertTrue(page.text().contains(said), () -> said + " is not on: " + page.text());
    }
    Page rounds = shop.get("/rounds/" + round).is(200);
    assertTrue(rounds.text().contains("right rear +3 in"), rounds.text());
    assertTrue(rounds.html().contains("/rounds/" + round + "/guide"), "step by step");
  }

  /** An axle has camber and toe built in, and no rack. */
  @Test
  void an_axle_is_walked_step_by_step_without_a_script_too() {
    Page page = shop.get("/rounds/" + round + "/guide").is(200);
    String action = "/rounds/" + round + "/guide";
    Form height = page.form(action);
    for (String box : List.of("spindle", "otherSpindle", "mark", "otherMark")) {
      assertEquals("", height.value(box), page.text());
    }
    assertTrue(page.text().contains("Right rear, spindle above the floor"), page.text());
    page =
        shop.browser.follow(
            height
                .with("spindle", "20")
                .with("otherSpindle", "20 1/2")
                .with("mark", "30")
                .with("otherMark", "30")
                .keep());
    JsonNode said = body("height");
    assertEquals("both-together", said.get("pairing").asText());
    assertEquals("20 1/2", said.at("/otherEnd/spindle/typed").asText());
    assertFalse(said.get("otherEnd").has("name"), said.toString());
    List<String> rows = new ArrayList<>();
    while (!page.form(action).value("what").equals("height")) {
      rows.add(page.form(action).value("row"));
      page = shop.browser.follow(page.form(action).with("value", "3/8").keep()).is(200);
      if (page.form(action).value("what").equals("others")) {
        rows.add(page.text());
        page = shop.browser.follow(page.form(action).keep());
      }
    }
    String others = rows.remove(rows.size() - 1);
    assertTrue(others.contains("Right rear: link to frame, straight"), others);
    assertFalse(rows.toString().contains("camber"), rows.toString());
    assertFalse(rows.toString().contains("toe"), rows.toString());
    assertEquals("on-the-strap", page.form(action).value("name"), "the next height");
    String crossed = action + "?at=on-the-strap-2/straight/height";
    Form last = shop.get(crossed).is(200).form(action);
    assertEquals("crossed", last.value("pairing"));
    assertEquals("full-bump", last.value("otherName"));
    String start = shop.get("/corners/" + left + "/rounds/new").is(200).text();
    assertFalse(start.contains("rack"), start);
    for (String at : List.of("/corners/" + left + "/rounds/new", "/rounds/" + round)) {
      assertFalse(shop.get(at).text().toLowerCase(Locale.ROOT).contains("steering"), at);
    }
  }

  @Test
  void the_end_of_a_crossed_round_says_what_is_off_at_either_end() {
    keep(height("stop-out", "crossed", "strap-off", 5, -12));
    String end = shop.get("/rounds/" + round + "/guide?at=end").is(200).text();
    assertTrue(
        end.contains(
            "Left rear: put the bump stop back in; right rear: put the limit strap back on;"
                + " spring back in before driving. Lower first, then reach in. Take the weight"),
        end);
  }

  @Test
  void nobody_is_told_to_swing_an_axle_lock_to_lock() {
    keep(height("strap-off", "both-together", "", -12, -12));
    String at = "/rounds/" + round;
    String look = shop.get(at + "/guide?at=strap-off-1/straight/others").is(200).text();
    assertTrue(look.contains("Look at each. One that is not well clear is read alone:"), look);
    for (String page : List.of(at + "/sheet", at + "/paper")) {
      assertFalse(shop.get(page).is(200).text().contains("lock"), page);
    }
  }

  @Test
  void a_sheet_has_a_block_for_each_height_that_an_axle_s_round_lacks() {
    String action = "/rounds/" + round + "/sheet";
    Form sheet = shop.get(action).is(200).form(action);
    assertEquals("on-the-strap", sheet.value("h9-name"));
    assertEquals("full-bump", sheet.value("h10-name"));
    assertEquals("crossed", sheet.value("h10-pairing"));
    assertEquals("on-the-strap", sheet.value("h10-otherName"));
    assertEquals("", sheet.value("h11-name"));
    // Others go on meanwhile: what the sheet was shown with is read all the same.
    Form last =
        sheet
            .with("h10-spindle", "33")
            .with("h10-otherSpindle", "19")
            .with("h10-mark", "30")
            .with("h10-otherMark", "30")
            .with("h10-straight-" + LINK, "1/8");
    measure();
    int entries = shop.entries();
    last.keep();
    assertEquals(entries + 2, shop.entries());
  }

  @Test
  void an_axle_is_typed_from_paper_on_one_page() {
    String action = "/rounds/" + round + "/sheet";
    Form sheet =
        shop.get(action)
            .is(200)
            .form(action)
            .with("h0-name", "on-the-strap")
            .with("h0-spindle", "20")
            .with("h0-otherSpindle", "20")
            .with("h0-mark", "30")
            .with("h0-otherMark", "30")
            .with("h0-straight-" + LINK, "3/8")
            .with("h0-straight-" + OTHER_LINK, "1/4")
            .with("h4-pairing", "crossed")
            .with("h4-name", "on-the-strap")
            .with("h4-otherName", "stop-touch")
            .with("h4-spindle", "19")
            .with("h4-otherSpindle", "33")
            .with("h4-mark", "same")
            .with("h4-straight-" + LINK, "1/8");
    assertEquals("crossed", sheet.value("h7-pairing"), "as the round goes on");
    assertEquals("strap-off", sheet.value("h7-otherName"));
    int entries = shop.entries();
    sheet.keep();
    assertEquals(entries + 5, shop.entries());
    JsonNode crossed = shop.figures(right).get("heights").get(1);
    assertEquals("crossed", crossed.get("pairing").asText());
    assertEquals("stop-touch", crossed.get("name").asText());
    mm(3, crossed, "positionMm");
    mm(-10, shop.figures(right).get("heights").get(0), "positionMm");
    assertEquals(1, shop.figures(right).get("readings").size());
    sheet.keep();
    assertEquals(entries + 5, shop.entries(), "pressed twice");
  }

  private Page sent(String key, String height, String row, String value) {
    return shop.browser.post(
        "/rounds/" + round + "/sent",
        Map.of(
            "what",
            "reading",
            "key",
            key,
            "after",
            "0",
            "height",
            height,
            "steering",
            "straight",
            "row",
            row,
            "value",
            value));
  }

  @Test
  void a_phone_s_reading_of_a_place_retired_meanwhile_stays_at_the_end_it_was_read_at() {
    String height = keep(height("on-the-strap", "both-together", "", -10, -10));
    String point = "/corners/" + right + "/watch-points/link-frame";
    shop.get(point).form(point + "/retire").keep();
    sent("late", height, OTHER_LINK, "3/8").is(200);
    assertEquals("link-frame", body("reading").get("point").asText());
    assertTrue(body("reading").path("atOtherEnd").asBoolean(), body("reading").toString());
    assertEquals(1, shop.figures(right).get("readings").size());
    assertEquals(0, shop.figures(left).get("readings").size());
  }

  @Test
  void what_is_in_doubt_at_the_other_end_is_asked_step_by_step_too() throws IOException {
    String height = keep(height("on-the-strap", "both-together", "", -10, -10));
    sent("thumb", height, OTHER_LINK, "about a thumb").is(200);
    Page guide = shop.get("/rounds/" + round + "/guide").is(200);
    Matcher plan = Pattern.compile("data-plan=\"([^\"]*)\"").matcher(guide.html());
    assertTrue(plan.find(), guide.text());
    JsonNode doubts = new ObjectMapper().readTree(Page.decoded(plan.group(1))).get("doubts");
    assertEquals(List.of("thumb"), doubts.findValuesAsText("key"));
    assertEquals("right rear: link to frame, about a thumb", doubts.at("/0/words").asText());
    String doubt = doubts.at("/0/doubt").asText();
    String page = shop.get("/heights/" + height + "?saved=thumb").is(200).text();
    assertTrue(page.contains(doubt), page);
  }

  @Test
  void a_height_of_an_axle_that_is_in_doubt_says_so_once_it_is_kept() {
    keep(height("stop-touch", "both-together", "", 2, 2));
    String below = keep(height("on-the-strap", "both-together", "", 5, 5));
    String page = shop.get("/heights/" + below + "?saved=" + below).is(200).text();
    assertTrue(page.contains("came out above"), page);
    String guide = shop.get("/rounds/" + round + "/guide?saved=" + below).is(200).text();
    assertTrue(guide.contains("Check this: not counted yet."), guide);
  }

  @Test
  void a_far_end_typed_anew_on_a_sheet_sent_again_is_kept_beside_the_first_in_doubt() {
    String action = "/rounds/" + round + "/sheet";
    Form sheet =
        shop.get(action)
            .is(200)
            .form(action)
            .with("h0-otherSpindle", "20")
            .with("h0-otherMark", "30");
    sheet.keep();
    int entries = shop.entries();
    sheet.with("h0-otherSpindle", "21").keep();
    assertEquals(entries + 1, shop.entries());
    assertEquals("21", body("height").at("/otherEnd/spindle/typed").asText());
  }

  @Test
  void camber_is_asked_at_an_end_of_an_axle_whose_spindle_is_read_outboard_of_its_wheel() {
    shop.get("/corners/" + right + "/given")
        .is(200)
        .form("/corners/" + right + "/given")
        .with("read-point-outboard", "2")
        .keep();
    String height = keep(height("on-the-strap", "crossed", "stop-touch", -10, 2));
    String rows = shop.get("/heights/" + height).is(200).html();
    assertTrue(rows.contains("v-o-q-camber"), "it tilts with the axle");
    assertFalse(rows.contains("v-q-camber"), "there nothing needs it");
    assertFalse(rows.contains("q-toe"), "an axle's toe does not move");
    assertTrue(shop.get("/rounds/" + round + "/sheet").html().contains("h0-straight-o-q-camber"));
  }

  @Test
  void camber_and_toe_read_at_an_axle_are_listed_and_sent_back_as_anything_else() {
    String height = keep(height("on-the-strap", "both-together", "", -10, -10));
    Form link = shop.get("/heights/" + height).is(200).formWithId(LINK);
    Page back = link.with("row", "q-camber").with("v-q-camber", "a little in").send().is(422);
    assertTrue(back.html().contains("a little in"), "as typed");
    link.with("row", "q-camber").with("v-q-camber", "-1.25").keep();
    Page page = shop.get("/heights/" + height).is(200);
    assertTrue(page.html().contains("v-q-camber"), page.text());
    assertTrue(page.html().contains("/entries/" + link.key()), page.text());
    assertFalse(page.html().contains("q-toe"), "not asked, not read");
    String sheet = "/rounds/" + round + "/sheet";
    int entries = shop.entries();
    shop.get(sheet)
        .form(sheet)
        .with("h0-spindle", "19")
        .with("h0-straight-q-camber", "-1.5")
        .keep();
    assertEquals(entries + 2, shop.entries(), "from a sheet printed with it");
  }

  /** What the last entry of a kind says. */
  private JsonNode body(String kind) {
    try {
      JsonNode last = null;
      for (String line : shop.lines().subList(1, shop.lines().size())) {
        JsonNode entry = new ObjectMapper().readTree(line);
        last = entry.get("kind").asText().equals(kind) ? entry.get("body") : last;
      }
      return last;
    } catch (IOException unread) {
      throw new AssertionError(unread);
    }
  }

  @Test
  void one_end_alone_is_kept_and_the_other_is_not_known() {
    Form form = height("ride", "both-together", "", -5, 0).with("otherSpindle", "");
    String ride = keep(form);
    JsonNode here = height(left, ride);
    assertEquals(-5 * IN, here.at("/positionMm/value").asDouble(), 1e-6);
    assertFalse(height(right, ride).has("positionMm"));
    assertTrue(shop.get("/heights/" + ride).text().contains("right rear not known"));
    int entries = shop.entries();
    Page refused =
        height("ride", "both-together", "", -5, 0)
            .with("spindle", "")
            .with("otherSpindle", "")
            .send()
            .is(422);
    assertTrue(refused.text().contains("of one end at least"), refused.text());
    Page unread = height("ride", "both-together", "", -5, 0).with("otherSpindle", "a bit").send();
    assertTrue(unread.is(422).html().contains("a bit"), "as typed");
    assertEquals(entries, shop.entries());
    // Corrected: the other end was read after all.
    String address = "/heights/" + ride + "/correct";
    shop.get(address)
        .is(200)
        .form(address)
        .with("otherSpindle", "24")
        .with("reason", "found the note")
        .keep();
    assertEquals(-6 * IN, height(right, ride).at("/positionMm/value").asDouble(), 1e-6);
    assertEquals(-5 * IN, height(left, ride).at("/positionMm/value").asDouble(), 1e-6);
  }

  @Test
  void a_mark_that_did_not_move_is_taken_for_both_ends() {
    String first =
        keep(height("on-the-strap", "both-together", "", -10, -10).with("otherMark", "29"));
    String next =
        keep(
            height("in-between", "both-together", "", -6, -6)
                .with("mark", "")
                .with("otherMark", "")
                .with("markAsAt", first));
    assertEquals(-6 * IN, height(left, next).at("/positionMm/value").asDouble(), 1e-6);
    assertEquals(-5 * IN, height(right, next).at("/positionMm/value").asDouble(), 1e-6);
  }

  @Test
  void these_were_the_other_side_changes_the_ends_over() {
    measure();
    JsonNode before = shop.figures(left).get("droop");
    String action = "/rounds/" + round + "/other-side";
    Page page = shop.get("/rounds/" + round).is(200);
    assertTrue(page.text().contains("These were the right rear: change the ends over"));
    page.form(action).keep();
    assertTrue(shop.get("/rounds/" + round + "?moved=1").text().contains("The ends are swapped"));
    JsonNode after = shop.figures(right).get("droop");
    assertEquals(before.get("limits"), after.get("limits"));
    assertEquals(before.get("marginMm"), after.get("marginMm"));
  }

  @Test
  void a_strap_makes_its_own_end_stale_and_what_stood_crossed_on_it() {
    measure();
    marmot.adjust(right, "limit-strap", "19");
    for (JsonNode height : shop.figures(left).get("heights")) {
      boolean againstIt =
          height.get("pairing").asText().equals("crossed")
              && height.get("name").asText().equals("stop-touch");
      assertEquals(againstIt ? "stale" : "live", height.get("stop").asText(), height.toString());
    }
    for (JsonNode height : shop.figures(right).get("heights")) {
      boolean onIt = height.get("name").asText().equals("on-the-strap");
      assertEquals(onIt ? "stale" : "live", height.get("stop").asText(), height.toString());
    }
    for (JsonNode reading : shop.figures(right).get("readings")) {
      assertEquals("live", reading.get("stands").asText(), "a gap is true where it was read");
    }
    String page = shop.get("/corners/" + right + "/gaps").is(200).text();
    assertTrue(page.contains("on the strap (full droop), crossed"), page);
    String check = shop.get("/cars/" + marmot.car + "/drive-check?at=" + left).is(200).text();
    assertTrue(check.contains("bump stop touches, crossed"), check);
  }

  @Test
  void a_blank_sheet_has_boxes_for_both_ends_and_both_pairings() {
    String paper = shop.get("/corners/" + left + "/paper").is(200).text();
    for (String said :
        List.of(
            "Left rear: Spindle",
            "Right rear: Spindle",
            "On the strap (full droop), both together",
            "Left rear: on the strap (full droop), crossed; right rear: full bump, stop solid",
            "Right rear: link to frame")) {
      assertTrue(paper.contains(said), () -> said + " is not on: " + paper);
    }
  }

  @Test
  void a_sheet_is_typed_in_the_order_in_which_it_was_written() {
    String paper = shop.get("/corners/" + left + "/paper").is(200).html();
    String form = shop.get("/rounds/" + round + "/sheet").is(200).html();
    List<Integer> written = new ArrayList<>();
    List<Integer> typed = new ArrayList<>();
    for (String box : List.of("Spindle", "Frame mark")) {
      for (String end : List.of("Left rear", "Right rear")) {
        written.add(paper.indexOf(end + ": " + box));
        typed.add(form.indexOf(end + ", " + box.toLowerCase(Locale.ROOT) + " above the floor"));
      }
    }
    assertEquals(written.stream().sorted().toList(), written);
    assertEquals(typed.stream().sorted().toList(), typed);
  }

  @Test
  void beside_a_box_stands_the_other_end_s_value_of_this_height_alone() {
    String action = "/rounds/" + round + "/sheet";
    Form sheet = shop.get(action).is(200).form(action);
    for (String[] height : new String[][] {{"h2-", "16"}, {"h3-", "21"}}) {
      sheet =
          sheet
              .with(height[0] + "spindle", height[1])
              .with(height[0] + "mark", "34")
              .with(height[0] + "otherSpindle", height[1])
              .with(height[0] + "otherMark", "34");
    }
    sheet =
        sheet
            .with("h2-straight-o-q-strap-length", "16 3/8")
            .with("h2-straight-p-u-joint-angle", "12");
    sheet.keep();
    String first = shop.get("/heights/" + sheet.key() + "-h2").is(200).text();
    assertTrue(first.contains("right rear 16 3/8"), first);
    String second = shop.get("/heights/" + sheet.key() + "-h3").is(200).text();
    assertFalse(second.contains("right rear 16 3/8"), "of another height: " + second);
    assertFalse(second.contains("right rear 12"), "an axle's middle has no other side: " + second);
  }

  @Test
  void a_crossed_height_of_a_sheet_is_called_crossed() {
    String form = shop.get("/rounds/" + round + "/sheet").is(200).text();
    assertTrue(form.contains("Height 8 · stop out, past solid, crossed"), form);
  }

  @Test
  void what_is_missing_crossed_is_asked_for_crossed() {
    together("on-the-strap", -10, "3/8", "3/8");
    together("stop-touch", 2, "1 1/2", "1 1/2");
    String page = shop.get("/corners/" + left).is(200).text();
    assertTrue(page.contains("crossed"), page);
    Page asked =
        shop.get(
                "/corners/"
                    + left
                    + "/rounds/new?need=on-the-strap~straight~~~~crossed"
                    + "&need=on-the-strap~straight~watch-point~link-frame~~crossed")
            .is(200);
    assertTrue(asked.text().contains("link to frame at 'on the strap (full droop), crossed'"));
    Form form = asked.form("/corners/" + left + "/rounds");
    form.keep();
    round = form.key();
    Page plan = shop.get("/rounds/" + round).is(200);
    assertTrue(plan.html().contains("pairing=crossed&amp;otherName=full-bump"), plan.html());
    crossed("on-the-strap", "stop-touch", -11, 3, "1/8", "1");
    assertTrue(
        shop.get("/rounds/" + round).text().contains("read"), "both of what it set out to read");
    assertFalse(
        shop.get("/rounds/" + round).html().contains("heights/new?name=on-the-strap&"),
        "nothing is left of its plan");
  }

  @Test
  void a_solid_axle_is_rear_only_and_starts_with_both_ends() {
    Page page = shop.get("/cars/new").is(200);
    Page refused =
        page.form("/cars")
            .with("name", "Other")
            .with("front", "later")
            .with("rear", "solid-axle-end")
            .keep();
    String car = refused.location();
    String said = shop.get(car + "/settings").is(200).text();
    assertTrue(said.contains("panhard rod"), said);
    String corners = car + "/corners";
    Page front =
        shop.get(corners + "/new")
            .is(200)
            .form(corners)
            .with("end", "front")
            .with("layout", "solid-axle-end")
            .send()
            .is(422);
    assertTrue(front.text().contains("at the rear only"), front.text());
  }

  @Test
  void every_page_of_an_axle_s_end_opens() {
    measure();
    for (String end : List.of(left, right)) {
      for (String page :
          List.of(
              "",
              "/curves",
              "/curves?of=p-link-frame",
              "/curves?of=p-link-frame&against=other-side",
              "/curves?of=toe",
              "/rod-ends",
              "/wheel",
              "/watch-points",
              "/watch-points/link-frame",
              "/given",
              "/fasteners",
              "/telltales",
              "/photos",
              "/rounds",
              "/rounds/new",
              "/paper",
              "/adjustments",
              "/adjustments/limit-strap",
              "/print")) {
        shop.get("/corners/" + end + page).is(200);
      }
    }
    for (String page :
        List.of("", "/drive-check", "/sides?axle=rear", "/re-check", "/book", "/settings")) {
      shop.get("/cars/" + marmot.car + page).is(200);
    }
    Page curve = shop.get("/corners/" + left + "/curves").is(200);
    assertTrue(
        curve.text().contains("both together, 4 readings; crossed, 4 readings"), curve.text());
    assertTrue(curve.html().contains("look-square"), "level by its own line");
    assertTrue(curve.html().contains("look-cross"), "crossed by another pattern");
    String sides = shop.get("/cars/" + marmot.car + "/sides?axle=rear").is(200).text();
    assertTrue(sides.contains("What rules droop link to frame, crossed"), sides);
    String print = shop.get("/corners/" + left + "/print").is(200).text();
    assertTrue(print.contains("strap stops the wheel at, crossed"), print);
    assertTrue(print.contains("strap stops the wheel at, both together"), print);
  }

  @Test
  void every_link_of_a_measured_axle_opens_a_whole_page_in_one_flight_of_packets()
      throws IOException, InterruptedException {
    measure();
    marmot.adjust(right, "limit-strap", "19");
    Collection<Page> pages =
        Crawl.from(shop.browser, "/cars/" + marmot.car, "/corners/" + left, "/corners/" + right);
    assertTrue(pages.size() > 150, "pages: " + pages.size());
    for (Page page : pages) {
      if (page.status() != 302 && page.status() != 303) {
        assertEquals(200, page.status(), () -> page.path() + " is linked to");
      }
      if (page.status() == 200 && EveryPageTest.isPage(page)) {
        EveryPageTest.whole(page);
      }
    }
    List<String> heavy =
        new FirstScreenTest().weighed(shop, pages).stream().filter(FirstScreenTest::heavy).toList();
    assertEquals(List.of(), heavy.stream().limit(5).toList());
  }

  @Test
  void the_limits_of_an_axle_tell_each_pairing_from_its_own_stop_and_draw_each_on_a_tape() {
    measure();
    Page limits = shop.get("/corners/" + left + "/limits").is(200);
    assertTrue(limits.html().contains("ladder-droop-x"), "crossed has a tape of its own");
    assertTrue(limits.text().contains("two motions"), limits.text());
    JsonNode droop = shop.figures(left).at("/ladders/droop/rungs");
    assertEquals("crossed", droop.get(0).get("condition").asText());
    shop.get("/corners/" + left + "/trial?adjuster=limit-strap&to=19").is(200);
  }

  private JsonNode height(String corner, String key) {
    for (JsonNode height : shop.figures(corner).get("heights")) {
      if (height.get("key").asText().equals(key)) {
        return height;
      }
    }
    throw new AssertionError("no height " + key + " on " + corner);
  }

  private static void mm(double inches, JsonNode node, String name) {
    assertEquals(inches * IN, node.at("/" + name + "/value").asDouble(), 1e-6, name);
  }
}
