package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the design promises for bad input, sent to the real server. */
class BadInputTest {
  @TempDir Path folder;
  private Shop shop;
  private Marmot marmot;
  private String round;

  @BeforeEach
  void open() {
    shop = new Shop(folder);
    marmot = new Marmot(shop);
    round = marmot.startRound(marmot.left, Map.of());
  }

  @AfterEach
  void close() {
    shop.close();
  }

  @Test
  void text_that_is_no_length_comes_back_as_typed_with_one_sentence_and_the_rest_kept() {
    int entries = shop.entries();
    Form form =
        marmot
            .heightForm(round, "ride", "eleventy ½ \"<inch>")
            .with("mark", "31 5/8")
            .with("label", "on the flat");
    Page page = form.send().is(422);
    assertEquals(entries, shop.entries());
    Form again = page.form(form.action());
    assertEquals("eleventy ½ \"<inch>", again.value("spindle"));
    assertEquals("31 5/8", again.value("mark"));
    assertEquals("on the flat", again.value("label"));
    assertEquals("ride", again.value("name"));
    assertEquals(form.key(), again.key());
    assertEquals(1, problems(page).size(), page.text());
    again.with("spindle", "20 3/4").keep();
    assertEquals(entries + 1, shop.entries());
  }

  /** What is wrong may lie two screens down: nothing seemed to happen. */
  @Test
  void a_form_that_comes_back_starts_where_something_is_wrong() {
    Form car = shop.get("/cars/new").form("/cars").with("name", "Heath");
    String wrong = car.with("rearTrack", "68 1/3").send().is(422).html();
    assertEquals(1, starts(wrong).size(), wrong);
    assertTrue(starts(wrong).get(0).contains("name=\"rearTrack\""), starts(wrong).get(0));
    // A choice has no box: its sentence is where one starts.
    Form happened =
        shop.get("/cars/" + marmot.car + "/happenings/new")
            .form("/cars/" + marmot.car + "/happenings")
            .with("words", "my autofocus");
    Page page = happened.send().is(422);
    assertEquals(1, starts(page.html()).size(), page.html());
    assertTrue(starts(page.html()).get(0).contains("class=\"problem\""), page.html());
    assertEquals("my autofocus", page.form(happened.action()).value("words"));
  }

  private static List<String> starts(String html) {
    return java.util.regex.Pattern.compile("<[^>]* autofocus[ >][^>]*")
        .matcher(html)
        .results()
        .map(java.util.regex.MatchResult::group)
        .toList();
  }

  /** Found wrong a day later, it was reached through the book alone. */
  @Test
  void a_height_s_page_says_how_it_was_read_and_leads_to_its_correction() {
    String height = marmot.height(round, "on-the-strap", "15 3/16", "31 5/8");
    Page page = shop.get("/heights/" + height).is(200);
    assertTrue(
        page.text().contains("Spindle 15 3/16, mark 31 5/8, correct or withdraw"), page.text());
    assertTrue(page.html().contains("href=\"/entries/" + height + "\""), page.html());
    assertTrue(shop.get("/entries/" + height).html().contains("/heights/" + height + "/correct"));
  }

  @Test
  void a_form_shown_before_an_older_copy_was_put_back_is_still_taken() {
    String later = String.valueOf(shop.entries() + 400);
    String given = "/corners/" + marmot.left + "/given";
    shop.get(given).is(200).form(given).with("after", later).with("stop-crush", "1").keep();
    String strap = "/corners/" + marmot.left + "/adjustments/limit-strap";
    Form set = shop.get(strap).is(200).form(strap + "/would-move").with("to", "18 3/8");
    set.with("after", later).send().is(200).form(strap).with("after", later).keep();
    marmot.heightForm(round, "ride", "20 3/4").with("mark", "31").with("after", later).keep();
    shop.get("/cars/new").is(200).form("/cars").with("name", "B").with("after", later).keep();
  }

  @Test
  void a_wrong_reading_comes_back_at_its_own_row_and_no_other() {
    String height = marmot.height(round, "on-the-strap", "15 3/16", "31 5/8");
    Page page =
        marmot
            .readingForm(height, "full-left", Marmot.TIE_ROD)
            .with("v-" + Marmot.TIE_ROD, "1/3")
            .send()
            .is(422);
    assertEquals("1/3", page.formWithId(Marmot.TIE_ROD).value("v-" + Marmot.TIE_ROD));
    assertEquals("", page.formWithId(Marmot.UPPER_ROD_END).value("v-" + Marmot.UPPER_ROD_END));
    assertEquals(1, problems(page).size(), page.text());
    page.formWithId(Marmot.TIE_ROD).with("v-" + Marmot.TIE_ROD, "3/8").keep();
    JsonNode reading = shop.figures(marmot.left).get("readings").get(0);
    assertEquals(3 / 8.0 * 25.4, reading.at("/mm/value").asDouble(), 1e-9);
    assertEquals("full-left", reading.get("steering").asText());
  }

  @Test
  void two_meanings_are_asked_back_as_keys_and_one_of_them_is_taken() {
    Form form = marmot.heightForm(round, "ride", "81/4").with("mark", "31 5/8");
    Page page = form.send().is(422);
    List<String> keys = page.each("button");
    assertTrue(keys.stream().anyMatch(k -> k.contains("8 1/4")), keys.toString());
    assertTrue(keys.stream().anyMatch(k -> k.contains("20 1/4")), keys.toString());
    assertEquals("81/4", page.form(form.action()).value("spindle"));
    assertTrue(page.html().contains("name=\"spindle\" value=\"20 1/4 in\""), page.html());
    // The key under the box is sent after the box itself, by the same name.
    String body = encoded(page.form(form.action())) + "&spindle=20+1%2F4+in";
    shop.browser.post(form.action(), body).is(303);
    JsonNode height = shop.figures(marmot.left).get("heights").get(0);
    double expected = 20 + 1 / 4.0 - (31 + 5 / 8.0);
    assertEquals(expected * 25.4, height.at("/positionMm/value").asDouble(), 1e-9);
  }

  @Test
  void two_meanings_of_a_gap_are_asked_back_too() {
    String height = marmot.height(round, "on-the-strap", "15 3/16", "31 5/8");
    Form form = marmot.readingForm(height, "straight", Marmot.TIE_ROD);
    Page page = form.with("v-" + Marmot.TIE_ROD, "13/8").send().is(422);
    assertTrue(page.each("button").stream().anyMatch(k -> k.contains("1 3/8")), page.text());
  }

  @Test
  void bump_below_droop_is_kept_in_doubt_not_counted_until_it_is_so() {
    marmot.height(round, "on-the-strap", "15 3/16", "31 5/8");
    String touch = marmot.height(round, "stop-touch", "14 1/2", "31 5/8");
    JsonNode doubted = shop.figures(marmot.left);
    assertEquals(1, doubted.get("inDoubt").size());
    assertEquals("in-doubt", doubted.at("/heights/1/stands").asText());
    assertFalse(doubted.has("rawMm"), "one height counts, so there is no travel yet");
    Page corner = shop.get("/corners/" + marmot.left).is(200);
    assertTrue(corner.html().contains("/entries/" + touch), "the doubt is listed to be answered");

    answer(touch, "so");
    JsonNode counted = shop.figures(marmot.left);
    assertEquals(0, counted.get("inDoubt").size());
    assertEquals("live", counted.at("/heights/1/stands").asText());
    assertTrue(counted.has("rawMm"));
    String entry = shop.get("/entries/" + touch).is(200).text();
    assertTrue(entry.contains("answered: it is so"), entry);
  }

  @Test
  void a_far_off_reading_is_kept_in_doubt_and_counts_when_it_is_corrected() {
    String height = marmot.height(round, "on-the-strap", "15 3/16", "31 5/8");
    marmot.read(height, "straight", Marmot.STRAP, "18 11/16");
    Form far = marmot.readingForm(height, "straight", Marmot.STRAP);
    Page saved = shop.browser.follow(far.with("v-" + Marmot.STRAP, "28 11/16").keep()).is(200);
    assertTrue(saved.text().contains("Check this: not counted yet."), saved.text());
    assertEquals("in-doubt", reading(far.key()).get("stands").asText());
    assertEquals("live", shop.figures(marmot.left).at("/readings/0/stands").asText());

    String address = "/readings/" + far.key() + "/correct";
    Page unsaid = shop.get(address).is(200).form(address).with("value", "18 3/4").send().is(422);
    assertEquals("18 3/4", unsaid.form(address).value("value"), "a correction says why");
    unsaid.form(address).with("reason", "read the wrong inch").keep();
    assertEquals("live", reading(far.key()).get("stands").asText());
    assertEquals(18.75 * 25.4, reading(far.key()).at("/mm/value").asDouble(), 1e-9);
    assertEquals(0, shop.figures(marmot.left).get("inDoubt").size());
  }

  @Test
  void a_far_off_reading_that_is_not_so_is_left_out() {
    String height = marmot.height(round, "on-the-strap", "15 3/16", "31 5/8");
    marmot.read(height, "straight", Marmot.STRAP, "18 11/16");
    String far = marmot.read(height, "straight", Marmot.STRAP, "28 11/16");
    answer(far, "not");
    JsonNode corner = shop.figures(marmot.left);
    assertEquals(1, corner.get("readings").size());
    assertEquals(0, corner.get("inDoubt").size());
    assertTrue(shop.get("/cars/" + marmot.car + "/book").text().contains("28 11/16 in"));
  }

  @Test
  void left_typed_for_right_moves_the_whole_round_with_one_tap() {
    String height = marmot.height(round, "on-the-strap", "15 3/16", "31 5/8");
    String in = marmot.heightAsAt(round, "in-between", "18 7/8", height);
    marmot.read(height, "full-right", Marmot.TIE_ROD, "5/32");
    marmot.read(in, "straight", Marmot.STRAP, "17 1/8");
    JsonNode before = shop.figures(marmot.left);
    Page round = shop.get("/rounds/" + this.round).is(200);
    Page moved = round.form("/rounds/" + this.round + "/other-side").keep();

    Page there = shop.browser.follow(moved).is(200);
    assertTrue(there.text().contains("Right front"), there.text());
    JsonNode left = shop.figures(marmot.left);
    JsonNode right = shop.figures(marmot.right);
    assertEquals(0, left.get("heights").size());
    assertEquals(0, left.get("readings").size());
    assertEquals(before.get("heights"), right.get("heights"));
    assertEquals(before.get("readings"), right.get("readings"));
    shop.get("/heights/" + in).is(200);
    marmot.read(in, "straight", Marmot.STOP_GAP, "4 7/16");
    String book = shop.get("/cars/" + marmot.car + "/book").text();
    assertTrue(book.contains("these were the right front"), book);
    shop.get("/rounds/" + this.round).form("/rounds/" + this.round + "/other-side").keep();
    assertEquals(3, shop.figures(marmot.left).get("readings").size(), "and back again");
  }

  @Test
  void a_correction_offers_the_mark_of_earlier_heights_only() {
    String first = marmot.height(round, "on-the-strap", "15 3/16", "31 5/8");
    String second = marmot.height(round, "ride", "20 3/4", "31 9/16");
    String offered = "name=\"markAsAt\" value=\"";
    String ofFirst = shop.get("/heights/" + first + "/correct").is(200).html();
    assertFalse(ofFirst.contains(offered), "neither itself nor a later one");
    String ofSecond = shop.get("/heights/" + second + "/correct").is(200).html();
    assertTrue(ofSecond.contains(offered + first), ofSecond);
    assertFalse(ofSecond.contains(offered + second), ofSecond);
  }

  @Test
  void a_mark_is_taken_from_no_other_thing_than_an_earlier_height_of_the_corner() {
    String first = marmot.height(round, "on-the-strap", "15 3/16", "31 5/8");
    String right = marmot.startRound(marmot.right, Map.of());
    String otherCorner = marmot.height(right, "on-the-strap", "15 3/16", "31 5/8");
    String later = marmot.height(round, "ride", "20 3/4", "31 9/16");
    int entries = shop.entries();
    String correct = "/heights/" + first + "/correct";
    for (String wrong : List.of("none", round, marmot.left, marmot.car, otherCorner)) {
      marmot.heightForm(round, "in-between", "18").with("markAsAt", wrong).send().is(422);
      Map<String, String> sent = new LinkedHashMap<>();
      sent.put("after", "0");
      sent.put("key", "sent-" + wrong);
      sent.put("what", "height");
      sent.put("name", "in-between");
      sent.put("spindle", "18");
      sent.put("markAsAt", wrong);
      shop.browser.post("/rounds/" + round + "/sent", sent).is(422);
    }
    for (String wrong : List.of(first, later, otherCorner)) {
      Form form = shop.get(correct).form(correct).with("reason", "typed wrong").with("mark", "");
      form.with("markAsAt", wrong).send().is(422);
    }
    assertEquals(entries, shop.entries());
    marmot.heightAsAt(round, "in-between", "18", later);
  }

  @Test
  void a_height_without_a_mark_is_kept_outside_every_limit() {
    marmot
        .heightForm(round, "on-the-strap", "15 3/16")
        .send()
        .is(422)
        .form("/rounds/" + round + "/heights")
        .with("noMark", "keep")
        .keep();
    String height = shop.figures(marmot.left).at("/heights/0/key").asText();
    marmot.read(height, "straight", Marmot.STRAP, "18 11/16");
    JsonNode corner = shop.figures(marmot.left);
    assertEquals("outside", corner.at("/heights/0/stands").asText());
    assertFalse(corner.get("heights").get(0).has("positionMm"));
    assertTrue(shop.get("/corners/" + marmot.left + "/gaps").text().contains("?"));
  }

  @Test
  void settings_that_say_nothing_come_back_as_typed() {
    String action = "/corners/" + marmot.left + "/adjustments/";
    for (String[] bad :
        new String[][] {
          {"limit-strap", "longer"},
          {"limit-strap", ""},
          {"limit-strap", "-3"},
          {"upper-rod-ends", "a few"},
          {"upper-rod-ends", "NaN"},
          {"upper-rod-ends", "0x10"},
          {"upper-rod-ends", "3d"},
          {"upper-rod-ends", "1e300"},
        }) {
      Form form = shop.get(action + bad[0]).form(action + bad[0] + "/would-move");
      Page page = form.with("to", bad[1]).with("why", "because").send();
      assertEquals(422, page.status(), () -> bad[0] + " to '" + bad[1] + "': " + page.text());
      assertEquals(bad[1], page.form(form.action()).value("to"));
      assertEquals("because", page.form(form.action()).value("why"));
      assertEquals(1, problems(page).size(), page.text());
      int entries = shop.entries();
      assertEquals(
          422, shop.browser.post(action + bad[0], form.with("to", bad[1]).values()).status());
      assertEquals(entries, shop.entries());
    }
  }

  @Test
  void a_tilt_no_car_stands_at_and_a_name_too_long_are_said_where_they_were_typed() {
    String action = "/corners/" + marmot.left + "/rounds";
    Form form = shop.get(action + "/new").form(action);
    for (String[] bad : new String[][] {{"rake", "90"}, {"roll", "-89"}, {"who", "S".repeat(60)}}) {
      Page page = form.with(bad[0], bad[1]).send().is(422);
      assertEquals(bad[1], page.form(action).value(bad[0]));
      assertEquals(1, problems(page).size(), bad[0] + ": " + page.text());
    }
  }

  @Test
  void given_lengths_that_cannot_be_are_said_and_none_of_the_form_is_kept() {
    String action = "/corners/" + marmot.left + "/given";
    Form form = shop.get(action).form(action).with("stop-crush", "1 1/2");
    int entries = shop.entries();
    for (String[] bad :
        new String[][] {
          {"shock-open", "-27"},
          {"strap-stretch", "200"},
          {"strap-stretch", "ten"},
          {"shock-closed-unsure", "a bit"},
          {"shock-closed-unsure", "1/16"},
        }) {
      Page page = form.with(bad[0], bad[1]).send();
      assertEquals(422, page.status(), bad[0] + " " + bad[1]);
      assertEquals(bad[1], page.form(action).value(bad[0]));
      assertEquals("1 1/2", page.form(action).value("stop-crush"));
      assertEquals(1, problems(page).size(), page.text());
      assertFalse(
          page.html()
              .matches(
                  "(?s).*<details"
                      + " class=\"more\"><summary>[^<]*</summary>(?:(?!</details>).)*class=\"problem\".*"),
          "what is wrong is not folded away");
    }
    assertEquals(entries, shop.entries());
  }

  private JsonNode reading(String key) {
    for (JsonNode reading : shop.figures(marmot.left).get("readings")) {
      if (reading.get("key").asText().equals(key)) {
        return reading;
      }
    }
    throw new AssertionError("no reading " + key);
  }

  private void answer(String entry, String said) {
    String address = "/entries/" + entry + "/answer";
    shop.get("/entries/" + entry).is(200).form(address).with("answer", said).keep();
  }

  private static String encoded(Form form) {
    StringBuilder body = new StringBuilder();
    form.values()
        .forEach(
            (name, value) ->
                body.append(body.isEmpty() ? "" : "&")
                    .append(name)
                    .append('=')
                    .append(
                        java.net.URLEncoder.encode(
                            value, java.nio.charset.StandardCharsets.UTF_8)));
    return body.toString();
  }

  /** The sentences under fields. */
  static List<String> problems(Page page) {
    return java.util.regex.Pattern.compile(
            "<p class=\"problem\"[^>]*>(.*?)</p>", java.util.regex.Pattern.DOTALL)
        .matcher(page.html())
        .results()
        .map(m -> Page.seen(m.group(1)))
        .toList();
  }
}
