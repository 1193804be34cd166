package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A round one thing at a time, by its page and forms alone, and what its phone sends and asks. */
class GuideTest {
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

  private String start(Map<String, String> conditions) {
    return marmot.startRound(marmot.left, conditions);
  }

  private Page guide(String round, String at) {
    return shop.get("/rounds/" + round + "/guide" + (at.isEmpty() ? "" : "?at=" + at)).is(200);
  }

  private static Form form(Page page, String round) {
    return page.form("/rounds/" + round + "/guide");
  }

  /** The height that comes next. */
  private Page height(String round, String spindle, String mark) {
    return shop.browser.follow(
        form(guide(round, ""), round).with("spindle", spindle).with("mark", mark).keep());
  }

  private static String band(Page page) {
    return page.each("h1").get(0);
  }

  /** Where the key with this word leads. */
  private static String key(Page page, String word) {
    Matcher found =
        Pattern.compile("<a class=\"key\" href=\"([^\"]*)\">" + word + "</a>").matcher(page.html());
    assertTrue(found.find(), () -> "no key " + word + " on " + page.text());
    return Page.decoded(found.group(1));
  }

  private JsonNode plan(Page page) throws IOException {
    Matcher found = Pattern.compile("data-plan=\"([^\"]*)\"").matcher(page.html());
    assertTrue(found.find(), page.text());
    return new ObjectMapper().readTree(Page.decoded(found.group(1)));
  }

  private Page sent(String round, String key, Map<String, String> body) {
    Map<String, String> fields = new HashMap<>(body);
    fields.put("key", key);
    fields.putIfAbsent("after", "0");
    return shop.browser.post("/rounds/" + round + "/sent", fields);
  }

  private static JsonNode json(Page answer) throws IOException {
    return new ObjectMapper().readTree(answer.html());
  }

  private void sendHeight(String round, String key, String name, String spindle) {
    sent(round, key, Map.of("what", "height", "name", name, "spindle", spindle, "mark", "30 1/4"))
        .is(200);
  }

  private Page sendReading(String round, String key, String height, String row, String value) {
    return sent(
        round,
        key,
        Map.of(
            "what",
            "reading",
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
  void a_started_round_begins_with_its_lowest_height() {
    Form form =
        shop.get("/corners/" + marmot.left + "/rounds/new")
            .form("/corners/" + marmot.left + "/rounds");
    Page first = shop.browser.follow(form.keep()).is(200);
    assertEquals("/rounds/" + form.key() + "/guide", first.path());
    assertTrue(band(first).startsWith("Left front Strap off"), band(first));
    assertTrue(first.text().contains("Spindle above the floor"), first.text());
  }

  @Test
  void without_a_script_each_kept_reading_leads_to_the_next() {
    String round = start(Map.of());
    Page next = height(round, "14 3/8", "30 1/4");
    assertTrue(next.text().contains("In the book: left front · strap off"), next.text());
    List<String> asked = new ArrayList<>();
    for (String value : List.of("3/32", "19 1/2", "26", "touches")) {
      asked.add(form(next, round).value("row"));
      next = shop.browser.follow(form(next, round).with("value", value).keep());
    }
    assertEquals(
        List.of("p-tie-rod-upper-arm", "q-strap-length", "q-shock-length", "p-upper-rod-end"),
        asked);
    assertTrue(next.text().contains("touches"), next.text());
    assertEquals("p-lower-rod-end", form(next, round).value("row"));
  }

  @Test
  void what_is_skipped_is_left_out_this_time_and_back_leads_back() {
    String round =
        start(Map.of("spring", "in", "on", "tyres", "along-camber", "1", "along-toe", "1"));
    Page page = height(round, "20 3/4", "31 1/2");
    assertEquals("q-camber", form(page, round).value("row"));
    page = shop.get(key(page, "Skip")).is(200);
    assertEquals("q-toe", form(page, round).value("row"));
    assertEquals("q-camber", form(shop.get(key(page, "Back")), round).value("row"));
    page = shop.browser.follow(form(page, round).with("value", "1/8").keep()).is(200);
    assertEquals("Left front The round is done", band(page));
    assertTrue(page.text().contains("2 read, 1 skipped"), page.text());
    assertTrue(page.text().contains("Droop not measured"), page.text());
    assertEquals("q-camber", form(guide(round, ""), round).value("row"), "opened anew");
  }

  @Test
  void all_others_are_seen_to_be_well_clear_in_one_look_and_one_of_them_read_alone() {
    String round = start(Map.of());
    sendHeight(round, "height-a", "strap-off", "12");
    String others = "strap-off-1/straight/others";
    Page look = guide(round, others);
    assertTrue(look.text().contains("Spindle parts to the wheel's barrel, full left"), look.text());
    Page one = guide(round, "strap-off-1/full-left/p-spindle-wheel");
    Page next = shop.browser.follow(form(one, round).with("value", "3/8").keep());
    assertEquals(others, form(guide(round, others), round).value("at"));
    int before = shop.entries();
    Form form = form(guide(round, others), round);
    long listed = form.values().keySet().stream().filter(name -> name.startsWith("seen-")).count();
    String key = "All " + listed + " others well clear";
    assertTrue(guide(round, others).text().contains(key), key);
    // A place that comes to the corner between the look and the tap was seen by nobody.
    String points = "/corners/" + marmot.left + "/watch-points";
    shop.get(points + "/new").form(points).with("place", "axle-tank").with("least", "1").keep();
    before = shop.entries();
    form.keep();
    int kept = shop.entries() - before;
    assertTrue(kept > 8, "kept " + kept);
    assertEquals(listed, kept);
    form.keep();
    assertEquals(before + kept, shop.entries(), "pressed twice");
    // What did not keep its rule there is asked for again further in, the others are not.
    sendHeight(round, "height-b", "on-the-strap", "14 3/8");
    Page strap = guide(round, "on-the-strap-1/full-left/p-spindle-wheel");
    assertTrue(strap.text().contains("Left front On the strap"), next.text());
    assertEquals("p-spindle-wheel", form(strap, round).value("row"));
  }

  @Test
  void the_jack_is_sent_as_far_past_the_stop_in_words_as_in_figures() {
    String heights = shop.get("/corners/" + marmot.left + "/rounds/new").is(200).text();
    assertTrue(
        heights.contains("Stop out, past solid: jack on, 1/2 in past where a hard landing ends"),
        heights);
    String round = start(Map.of());
    sendHeight(round, "height-a", "full-bump", "28");
    // A quarter of impact (the starter's) past solid, then that half inch.
    String stop = guide(round, "stop-out-1/straight/height").text();
    assertTrue(stop.contains("Spindle about 28 3/4 in above the floor"), stop);
  }

  @Test
  void the_end_says_what_is_off_the_car_before_it_is_driven() throws IOException {
    String round = start(Map.of());
    assertFalse(guide(round, "end").text().contains("before driving"), "nothing came off yet");
    sendHeight(round, "height-a", "on-the-strap", "14 3/8");
    sendHeight(round, "height-b", "stop-out", "28");
    Page end = guide(round, "end");
    String said = "Put the bump stop back in; spring back in before driving.";
    assertTrue(end.text().contains(said + " Lower first, then reach in."), end.text());
    JsonNode plan = plan(end);
    assertEquals("stop-out-1", plan.at("/end/last").asText());
    Map<String, String> back = new HashMap<>();
    plan.get("places").forEach(p -> back.put(p.get("id").asText(), p.at("/back/0").asText()));
    assertEquals(said, back.get("stop-out-1"));
    assertEquals("Spring back in before driving.", back.get("full-bump-1"));
    assertTrue(back.get("strap-off-1").startsWith("Put the limit strap back on; "), "" + back);
    // A round without its bump stop has it out at every height.
    String without = start(Map.of("bumpStop", "out"));
    sendHeight(without, "height-c", "on-the-strap", "14 3/8");
    assertTrue(guide(without, "end").text().contains(said), guide(without, "end").text());
  }

  @Test
  void what_is_wrong_with_no_box_of_the_page_is_said_too_and_the_step_asked_again() {
    String round = start(Map.of());
    sendHeight(round, "height-a", "strap-off", "12");
    Map.of(
            "what", "It does not say whether it is a height or a reading.",
            "height", "It does not say at which height it was read.")
        .forEach(
            (name, sentence) -> {
              Form form = form(guide(round, ""), round).with("value", "3/8");
              Page again = form.with(name, name.equals("what") ? "nonsense" : "").send().is(422);
              assertTrue(again.text().contains(sentence), again.text());
              assertEquals("p-tie-rod-upper-arm", form(again, round).value("row"));
              assertEquals("3/8", form(again, round).value("value"));
            });
  }

  @Test
  void what_cannot_be_read_comes_back_as_typed_with_its_sentence() {
    String round = start(Map.of());
    height(round, "14 3/8", "30 1/4");
    int before = shop.entries();
    Page again = form(guide(round, ""), round).with("value", "81/4").send().is(422);
    assertTrue(again.text().contains("more than one way"), again.text());
    assertEquals("81/4", form(again, round).value("value"));
    Page refused = form(again, round).with("value", "a bit <b>tight</b>").send().is(422);
    assertEquals("a bit <b>tight</b>", form(refused, round).value("value"));
    assertFalse(refused.html().contains("<b>tight"), refused.html());
    assertEquals(before, shop.entries());
    assertEquals(
        "q-strap-length",
        form(shop.browser.follow(form(refused, round).with("value", "8 1/4").keep()), round)
            .value("row"));
  }

  @Test
  void a_height_without_a_spindle_is_asked_for_again() {
    String round = start(Map.of());
    Page again = form(guide(round, ""), round).with("mark", "30 1/4").send().is(422);
    assertEquals("30 1/4", form(again, round).value("mark"));
    assertTrue(band(again).contains("Strap off"), band(again));
  }

  @Test
  void a_round_in_millimetres_reads_bare_numbers_as_such() throws IOException {
    String round = start(Map.of("unit", "mm"));
    Page page = height(round, "365", "768");
    assertTrue(page.text().contains("spindle 365 mm"), page.text());
    assertTrue(plan(page).get("mm").asBoolean());
  }

  @Test
  void at_every_step_the_band_says_corner_height_and_steering() {
    String round = start(Map.of());
    Page page = guide(round, "");
    Set<String> heights = new HashSet<>();
    List<String> seen = new ArrayList<>();
    while (true) {
      String at =
          page.path().contains("?at=")
              ? page.path().replaceFirst(".*at=", "")
              : "strap-off-1/straight/height";
      String[] part = at.split("/");
      String words =
          switch (part[0]) {
            case "strap-off-1" -> "Strap off";
            case "on-the-strap-1" -> "On the strap";
            case "full-bump-1" -> "Full bump";
            case "stop-out-1" -> "Stop out";
            case "stop-touch-1" -> "Bump stop touches";
            default -> "In between";
          };
      assertTrue(band(page).startsWith("Left front " + words), at + ": " + band(page));
      assertTrue(
          page.text().contains("Steering " + part[1].replace('-', ' ')), at + ": " + page.text());
      heights.add(part[0]);
      String count = "height " + heights.size() + " of 7 ";
      assertTrue(page.text().contains(count), at + ": " + page.text());
      seen.add(part[0] + "/" + part[1]);
      if (key(page, "Skip").endsWith("?at=end")) {
        break;
      }
      page = shop.get(key(page, "Skip")).is(200);
    }
    assertEquals("/rounds/" + round + "/guide?at=end", key(page, "Skip"));
    assertEquals(
        List.of(
            "strap-off-1/straight",
            "strap-off-1/full-left",
            "strap-off-1/full-right",
            "on-the-strap-1/straight",
            "on-the-strap-1/full-left",
            "on-the-strap-1/full-right",
            "in-between-1/straight",
            "in-between-1/full-left",
            "in-between-1/full-right",
            "in-between-2/straight",
            "stop-touch-1/straight",
            "full-bump-1/straight",
            "stop-out-1/straight",
            "stop-out-1/full-left",
            "stop-out-1/full-right"),
        seen.stream().distinct().toList());
  }

  @Test
  void another_phone_goes_on_where_the_first_one_left() {
    String round = start(Map.of());
    Page here = height(round, "14 3/8", "30 1/4");
    here = shop.browser.follow(form(here, round).with("value", "3/32").keep());
    Page there = shop.as("Bo").get("/rounds/" + round + "/guide").is(200);
    assertEquals(form(here, round).value("row"), form(there, round).value("row"));
    assertEquals("q-strap-length", form(there, round).value("row"));
  }

  @Test
  void a_planned_round_asks_for_exactly_what_is_planned() throws IOException {
    Marmot other = marmot.prepared().measured().measuredOn();
    other.adjust(other.left, "upper-rod-ends", "4");
    String action = "/corners/" + other.left + "/rounds";
    Page asks = shop.get(action + "/new?again=1").is(200);
    Form form = asks.form(action);
    form.keep();
    JsonNode entry = new ObjectMapper().readTree(shop.lines().get(shop.entries()));
    List<String> wanted = new ArrayList<>();
    for (JsonNode t : entry.get("body").get("toRead")) {
      if (!t.hasNonNull("point") && !t.hasNonNull("quantity")) {
        continue;
      }
      wanted.add(
          t.get("name").asText()
              + "/"
              + t.get("steering").asText()
              + "/"
              + (t.hasNonNull("point")
                  ? "p-" + t.get("point").asText()
                  : "q-" + t.get("quantity").asText()));
    }
    assertTrue(wanted.size() > 5, "planned " + wanted);
    List<String> planned = new ArrayList<>();
    JsonNode plan = plan(guide(form.key(), ""));
    for (JsonNode place : plan.get("places")) {
      (place.has("asked") ? place : plan)
          .get("asked")
          .fields()
          .forEachRemaining(
              s ->
                  s.getValue()
                      .forEach(
                          row ->
                              planned.add(
                                  place.get("name").asText()
                                      + "/"
                                      + s.getKey()
                                      + "/"
                                      + row.asText())));
    }
    assertEquals(
        wanted.stream().distinct().sorted().toList(),
        planned.stream().distinct().sorted().toList());
  }

  @Test
  void what_a_phone_sends_twice_is_in_the_book_once() throws IOException {
    String round = start(Map.of());
    sendHeight(round, "height-a", "on-the-strap", "14 3/8");
    int before = shop.entries();
    JsonNode first =
        json(sendReading(round, "reading-a", "height-a", "p-hose-slack", "1 1/4").is(200));
    JsonNode again =
        json(sendReading(round, "reading-a", "height-a", "p-hose-slack", "1 1/4").is(200));
    assertEquals(first, again);
    assertEquals("reading-a", first.get("key").asText());
    assertEquals(before + 1, shop.entries());
  }

  @Test
  void a_phones_unreadable_text_is_kept_as_typed_and_asked_about() throws IOException {
    String round = start(Map.of());
    sendHeight(round, "height-a", "on-the-strap", "14 3/8");
    JsonNode said =
        json(sendReading(round, "reading-a", "height-a", "p-hose-slack", "81/4").is(200));
    assertTrue(said.get("doubt").asText().contains("more than one way"), said.toString());
    JsonNode doubt = plan(guide(round, "")).get("doubts").get(0);
    assertEquals("reading-a", doubt.get("key").asText());
  }

  @Test
  void a_bump_below_droop_is_kept_in_doubt_until_somebody_says_it_is_so() throws IOException {
    String round = start(Map.of());
    sendHeight(round, "height-a", "on-the-strap", "14 3/8");
    JsonNode said =
        json(
            sent(
                round,
                "height-b",
                Map.of("what", "height", "name", "stop-touch", "spindle", "12", "mark", "30 1/4")));
    assertTrue(said.get("doubt").asText().contains("came out below"), said.toString());
    assertEquals(1, plan(guide(round, "")).get("doubts").size());
    // Where it came out, so that another phone draws it.
    assertEquals(-18.25 * 25.4, plan(guide(round, "")).at("/doubts/0/at").asDouble(), 0.1);
    sent(round, "so-b", Map.of("what", "so", "target", "height-b")).is(200);
    assertEquals(0, plan(guide(round, "")).get("doubts").size());
  }

  @Test
  void what_is_taken_back_is_asked_for_again() throws IOException {
    String round = start(Map.of());
    sendHeight(round, "height-a", "strap-off", "12");
    sendReading(round, "reading-a", "height-a", "p-tie-rod-upper-arm", "1/8").is(200);
    assertEquals("q-strap-length", form(guide(round, ""), round).value("row"));
    sent(round, "back-a", Map.of("what", "take-back", "target", "reading-a")).is(200);
    assertEquals("p-tie-rod-upper-arm", form(guide(round, ""), round).value("row"));
  }

  @Test
  void a_note_from_the_phone_reaches_the_book() {
    String round = start(Map.of());
    sendHeight(round, "height-a", "on-the-strap", "14 3/8");
    sent(
            round,
            "reading-a",
            Map.of(
                "what",
                "reading",
                "height",
                "height-a",
                "steering",
                "full-left",
                "row",
                "p-hose-slack",
                "value",
                "1 1/4",
                "note",
                "rubs the clip"))
        .is(200);
    assertTrue(shop.get("/entries/reading-a").text().contains("rubs the clip"));
  }

  @Test
  void a_plan_lacks_nothing_of_what_it_claims_to_reach_while_others_write() throws Exception {
    String round = start(Map.of());
    sendHeight(round, "h1", "on-the-strap", "14 3/8");
    Map<String, Long> told = new ConcurrentHashMap<>();
    AtomicBoolean over = new AtomicBoolean();
    List<JsonNode> plans = new ArrayList<>();
    CompletableFuture<Void> asking =
        CompletableFuture.runAsync(
            () -> {
              try {
                while (!over.get()) {
                  plans.add(json(shop.get("/rounds/" + round + "/news?n=-1").is(200)));
                }
              } catch (IOException unread) {
                throw new UncheckedIOException(unread);
              }
            });
    for (int i = 0; i < 150; i++) {
      String key = "r" + i;
      Page answer = sendReading(round, key, "h1", "p-upper-rod-end", i + " mm").is(200);
      told.put(key, json(answer).get("n").asLong());
    }
    over.set(true);
    asking.join();
    for (JsonNode plan : plans) {
      long reaches = plan.get("n").asLong();
      String read = plan.at("/done").path("h1/straight/p-upper-rod-end").path("key").asText("r-1");
      long newest =
          told.values().stream().filter(n -> n <= reaches).mapToLong(n -> n).max().orElse(0);
      assertTrue(
          newest == 0 || told.get(read) >= newest,
          () -> "it claims " + reaches + " and tells " + read + ", not " + newest);
    }
    assertTrue(plans.size() > 5, "plans " + plans.size());
  }

  @Test
  void news_is_the_plan_as_it_is_now_or_nothing() throws IOException {
    String round = start(Map.of());
    long n = plan(guide(round, "")).get("n").asLong();
    String news = "/rounds/" + round + "/news?n=" + n;
    shop.get(news).is(204);
    sendHeight(round, "height-a", "strap-off", "12");
    JsonNode plan = json(shop.get(news).is(200));
    assertEquals("height-a", plan.get("places").get(0).get("height").asText());
    assertEquals(n + 1, plan.get("n").asLong());
  }

  @Test
  void what_cannot_be_an_entry_is_refused_in_a_sentence() throws IOException {
    String round = start(Map.of());
    int before = shop.entries();
    for (Map<String, String> wrong :
        List.of(
            Map.of("what", "nonsense"),
            Map.of("what", "reading", "row", "q-camber", "value", "1"),
            Map.of("what", "reading", "height", "no-such-height", "row", "q-camber", "value", "1"),
            Map.of("what", "so"))) {
      JsonNode said = json(sent(round, "wrong-a", wrong).is(422));
      assertTrue(said.get("sentence").asText().endsWith("."), said.toString());
    }
    assertEquals(before, shop.entries());
  }

  private List<String> left(String round) throws IOException {
    List<String> left = new ArrayList<>();
    for (JsonNode place : plan(guide(round, "")).get("places")) {
      if (!place.hasNonNull("height")) {
        left.add(place.get("name").asText());
      }
    }
    return left;
  }

  @Test
  void a_height_read_is_left_out_once_and_one_not_asked_for_changes_nothing() throws IOException {
    String round = start(Map.of());
    sendHeight(round, "a", "strap-off", "12");
    sendHeight(round, "b", "on-the-strap", "14 3/8");
    sendHeight(round, "c", "on-the-strap", "14 3/8");
    assertEquals(
        List.of("in-between", "in-between", "stop-touch", "full-bump", "stop-out"), left(round));
    String other = start(Map.of());
    sendHeight(other, "d", "stop-touch", "26");
    sendHeight(other, "e", "in-between", "20");
    assertEquals(
        List.of("strap-off", "on-the-strap", "in-between", "full-bump", "stop-out"), left(other));
    sendHeight(other, "f", "on-the-strap", "14 3/8");
    sendHeight(other, "g", "in-between", "18");
    assertEquals(List.of("strap-off", "full-bump", "stop-out"), left(other));
  }

  /**
   * A tape to 1/16 in placed to ± 1/32 in: U = 2 √2 · 0.4583 = 1.30 mm, 1/16 in as pages round it
   * up. It reads the gaps from 1/2 in on, whatever the shank that tells the rule.
   */
  @Test
  void a_gap_that_the_tape_reads_has_the_doubt_of_the_tape() throws IOException {
    JsonNode plan = json(shop.get("/rounds/" + start(Map.of()) + "/news").is(200));
    assertEquals(12.7, plan.at("/tape/from").asDouble());
    assertEquals("1/16 in", plan.at("/tape/pm").asText());
    assertEquals(
        "1/32 in", plan.at("/rows/p-tie-rod-upper-arm/pm").asText(), plan.get("rows")::toString);
  }

  /** Without a script it is the same: the step that was gone back to mends what it was answered. */
  @Test
  void a_step_gone_back_to_mends_what_was_answered() {
    String round = start(Map.of());
    String step = key(height(round, "14 3/8", "30 1/4"), "Back");
    shop.browser.follow(
        form(guide(round, step.split("at=")[1]), round)
            .with("spindle", "15 3/8")
            .with("noMark", "")
            .keep());
    String news = shop.get("/rounds/" + round + "/news?n=-1").html();
    assertTrue(news.contains("15 3/8") && !news.contains("14 3/8"), news);
  }

  /** Into contact no jack is sent: what lies further out is not asked, and the end says why. */
  @Test
  void no_height_is_asked_past_one_where_something_touched() throws IOException {
    String round = start(Map.of());
    sendHeight(round, "height-a", "on-the-strap", "14");
    sendHeight(round, "height-b", "stop-touch", "24");
    String news = "/rounds/" + round + "/news?n=-1";
    assertTrue(shop.get(news).html().contains("\"stop-out-1\""), "asked for at first");
    sendReading(round, "reading-b", "height-b", "p-tie-rod-upper-arm", "touches").is(200);
    JsonNode plan = json(shop.get(news));
    List<String> ids = plan.get("places").findValuesAsText("id");
    assertFalse(ids.contains("stop-out-1") || ids.contains("full-bump-1"), ids.toString());
    assertTrue(ids.contains("strap-off-1"), ids.toString());
    assertTrue(
        plan.at("/end/touched/0").asText().endsWith("touches there."), plan.get("end").toString());
  }

  /** Where the strap stopped the wheel before it was changed is no place to go to. */
  @Test
  void the_jack_is_aimed_where_a_stop_is_and_not_where_it_was_before_it_moved() throws IOException {
    sendHeight(start(Map.of()), "height-a", "on-the-strap", "14");
    String news = "/rounds/" + start(Map.of()) + "/news?n=-1";
    assertTrue(place(news, "on-the-strap-1").has("aim"));
    marmot.adjust(marmot.left, "limit-strap", "17");
    JsonNode moved = place(news, "on-the-strap-1");
    assertFalse(moved.has("aim"), moved.toString());
    assertEquals("lower until the strap is tight", moved.get("find").asText());
  }

  /** 6 in out on a wheel leaning in by 6° the spindle is read 15.9 mm over where the wheel is. */
  @Test
  void the_jack_is_aimed_where_the_spindle_is_read() throws IOException {
    marmot.send("/corners/" + marmot.left + "/given", Map.of("read-point-outboard", "6"));
    String first = start(Map.of());
    sendHeight(first, "height-a", "on-the-strap", "14");
    sendReading(first, "reading-a", "height-a", "q-camber", "-6").is(200);
    String news = "/rounds/" + start(Map.of()) + "/news?n=-1";
    assertEquals((14 - 30.25) * 25.4, place(news, "on-the-strap-1").get("aim").asDouble(), 0.06);
  }

  /** A mark taken as that of a height which took it itself is the first one's. */
  @Test
  void the_jack_is_aimed_by_a_height_whose_mark_was_taken_on() throws IOException {
    marmot.send("/corners/" + marmot.left + "/given", Map.of("read-point-outboard", "6"));
    String first = start(Map.of());
    sendHeight(first, "height-a", "strap-off", "13");
    String taken = marmot.heightAsAt(first, "in-between", "20", "height-a");
    String takenOn = marmot.heightAsAt(first, "on-the-strap", "14", taken);
    sendReading(first, "reading-a", takenOn, "q-camber", "-6").is(200);
    String news = "/rounds/" + start(Map.of()) + "/news?n=-1";
    assertEquals((14 - 30.25) * 25.4, place(news, "on-the-strap-1").get("aim").asDouble(), 0.06);
  }

  private JsonNode place(String news, String id) throws IOException {
    for (JsonNode place : json(shop.get(news)).get("places")) {
      if (place.get("id").asText().equals(id)) {
        return place;
      }
    }
    throw new AssertionError(id);
  }
}
