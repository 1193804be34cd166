package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spindlebook.entry.Content;
import spindlebook.log.Bodies;
import spindlebook.log.BookFile;
import spindlebook.log.Entry;

/** The same key with another body, and two corrections of one thing: nothing is lost. */
class OtherBodyTest {
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

  private List<Entry> entries(String kind) {
    return BookFile.read(shop.log()).entries().stream().filter(e -> e.kind().equals(kind)).toList();
  }

  private static JsonNode json(String text) {
    try {
      return new ObjectMapper().readTree(text);
    } catch (IOException unread) {
      throw new AssertionError(text, unread);
    }
  }

  @Test
  void a_height_typed_otherwise_after_going_back_is_kept_in_doubt_and_may_correct_the_first() {
    String round = marmot.startRound(marmot.left, Map.of());
    Form ten = marmot.heightForm(round, "on-the-strap", "10").with("mark", "31 5/8");
    ten.keep();
    Form fourteen = ten.with("spindle", "14");
    Page second = fourteen.keep();
    assertEquals(2, entries("height").size());
    String page = shop.browser.follow(second).is(200).text();
    assertTrue(page.contains("spindle 14 in"), page);
    assertTrue(page.contains("'10', and differs: a correction of it?"), page);
    assertEquals(second.location(), fourteen.keep().location());
    assertEquals(2, entries("height").size(), "that one sent again is stored once as well");

    String key = entries("height").get(1).key();
    Page entry = shop.get("/entries/" + key).is(200);
    assertTrue(entry.text().contains("It corrects left front · on the strap"), entry.text());
    entry.form("/entries/" + key + "/answer").with("answer", "correction").keep();
    String first = shop.get("/heights/" + ten.key()).is(200).text();
    assertTrue(shop.get("/entries/" + ten.key()).text().contains("spindle 14 in"), first);
    assertFalse(shop.get("/corners/" + marmot.left).text().contains("Check this"));
    assertEquals(1, shop.figures(marmot.left).get("heights").size());
  }

  @Test
  void a_reading_typed_otherwise_is_shown_as_typed_and_asked_about() {
    String round = marmot.startRound(marmot.left, Map.of());
    String height = marmot.height(round, "on-the-strap", "15 3/16", "31 5/8");
    Form first =
        marmot.readingForm(height, "straight", Marmot.STRAP).with("v-" + Marmot.STRAP, "18");
    first.keep();
    Page second = shop.browser.follow(first.with("v-" + Marmot.STRAP, "18 1/2").keep());
    assertTrue(second.text().contains("18 1/2 in"), second.text());
    assertTrue(second.text().contains("a correction of it?"), second.text());
    assertEquals(2, entries("reading").size());
  }

  @Test
  void what_a_phone_sends_under_a_used_key_is_kept_and_asked_about() {
    String round = marmot.startRound(marmot.left, Map.of());
    String height = marmot.height(round, "on-the-strap", "15 3/16", "31 5/8");
    Map<String, String> sent = new LinkedHashMap<>();
    sent.put("what", "reading");
    sent.put("key", "used-by-a-phone");
    sent.put("after", "0");
    sent.put("height", height);
    sent.put("steering", "straight");
    sent.put("row", Marmot.STRAP);
    sent.put("value", "18");
    List<JsonNode> answers = new ArrayList<>();
    for (String value : List.of("18", "18", "19", "19")) {
      sent.put("value", value);
      answers.add(json(shop.browser.post("/rounds/" + round + "/sent", sent).is(200).html()));
    }
    assertEquals(answers.get(0), answers.get(1));
    assertEquals(answers.get(2), answers.get(3));
    assertEquals("used-by-a-phone", answers.get(2).get("key").asText());
    assertNotEquals("used-by-a-phone", answers.get(2).get("as").asText());
    assertTrue(answers.get(2).get("doubt").asText().contains("a correction of it?"));
    assertEquals(2, entries("reading").size());
  }

  @Test
  void a_to_do_under_a_used_key_is_kept_too() {
    String list = "/cars/" + marmot.car + "/to-do";
    Form first = shop.get(list).form(list).with("words", "weld the tab");
    first.keep();
    first.with("words", "paint the tab").keep();
    first.keep();
    String text = shop.get(list).text();
    assertTrue(text.contains("weld the tab") && text.contains("paint the tab"), text);
    assertEquals(2, entries("to-do").size());
  }

  @Test
  void a_car_under_a_used_key_is_a_car_of_its_own_with_its_corners() {
    Form form = shop.get("/cars/new").form("/cars").with("name", "Vole").with("rear", "later");
    String vole = form.keep().location();
    for (Form other :
        List.of(
            form.with("name", "Stoat"),
            form.with("front", "unsteered-double-a-arm"),
            form.with("front", "later").with("rear", "trailing-arm"))) {
      Page kept = other.keep();
      assertNotEquals(vole, kept.location());
      assertEquals(kept.location(), other.keep().location());
      shop.browser.follow(kept).is(200);
    }
    List<String> cars = entries("car").stream().map(Entry::key).toList();
    assertEquals(5, cars.size());
    for (String car : cars) {
      long corners =
          entries("corner").stream()
              .map(e -> (Content.Corner) Bodies.read(e))
              .filter(c -> c.car().equals(car))
              .count();
      assertEquals(2, corners, car);
    }
    assertEquals(10, entries("corner").size(), "no corner without a car");
  }

  @Test
  void a_car_under_the_key_of_another_thing_leaves_no_corners_behind() {
    String list = "/cars/" + marmot.car + "/to-do";
    Form toDo = shop.get(list).form(list).with("words", "weld the tab");
    toDo.keep();
    Form form = shop.get("/cars/new").form("/cars").with("name", "Vole").with("key", toDo.key());
    shop.browser.follow(form.keep()).is(200);
    String vole = entries("car").get(1).key();
    assertNotEquals(toDo.key(), vole);
    assertEquals(
        2,
        entries("corner").stream()
            .filter(e -> ((Content.Corner) Bodies.read(e)).car().equals(vole))
            .count());
  }

  @Test
  void another_spindle_on_a_sheet_sent_again_is_kept_beside_the_first() {
    String round = marmot.startRound(marmot.left, Map.of());
    String action = "/rounds/" + round + "/sheet";
    Form sheet = shop.get(action).form(action).with("h0-spindle", "10").with("h0-mark", "31 5/8");
    sheet.keep();
    sheet.keep();
    assertEquals(1, entries("height").size());
    sheet.with("h0-spindle", "14").keep();
    assertEquals(2, entries("height").size());
  }

  @Test
  void a_round_put_back_from_a_phone_is_the_round_that_was_started() {
    String action = "/corners/" + marmot.left + "/rounds";
    String label = "-2 3/16 in from ~ here";
    Form start =
        shop.get(
                action
                    + "/new?need="
                    + URLEncoder.encode(
                        "in-between~straight~toe~~" + label, StandardCharsets.UTF_8))
            .form(action);
    for (String field : List.of("rake", "roll", "pressure", "note")) {
      start = start.with(field, field.startsWith("r") ? "1.5" : field + " said");
    }
    start = start.with("zeroed-play", "1").with("zeroed-floor", "1").with("wheel", "off");
    String round = start.key();
    start.keep();
    JsonNode whole = json(shop.get("/rounds/" + round + "/news?n=-1").is(200).html()).get("start");
    Map<String, String> again = new LinkedHashMap<>();
    whole
        .get("body")
        .fields()
        .forEachRemaining(
            f ->
                again.put(
                    f.getKey(),
                    f.getValue().isArray() ? f.getValue().get(0).asText() : f.getValue().asText()));
    again.put("key", "put-back-from-a-phone");
    shop.browser.post(whole.get("to").asText(), again).is(303);
    List<Entry> rounds = entries("round");
    assertEquals(rounds.get(0).body(), rounds.get(1).body());
    assertTrue(rounds.get(0).body().get("zeroed").size() == 2, rounds.get(0).body().toString());
    assertTrue(rounds.get(0).body().get("toRead").size() == 1, rounds.get(0).body().toString());
  }

  @Test
  void of_two_corrections_of_one_height_the_later_is_shown_both_and_then_holds() {
    String round = marmot.startRound(marmot.left, Map.of());
    String height = marmot.height(round, "on-the-strap", "15 3/16", "31 5/8");
    String action = "/heights/" + height + "/correct";
    Form sams = shop.get(action).form(action).with("spindle", "15 1/2").with("reason", "misread");
    Form kims = shop.get(action).form(action).with("spindle", "15 3/4").with("reason", "misread");
    sams.keep();
    Page both = kims.send().is(422);
    assertTrue(both.text().contains("Corrected meanwhile: "), both.text());
    assertTrue(both.text().contains("spindle 15 1/2 in"), both.text());
    assertEquals("15 3/4", both.form(action).value("spindle"));
    assertEquals(1, entries("correction").size());
    both.form(action).keep();
    assertEquals(2, entries("correction").size());
    assertTrue(shop.get("/entries/" + height).text().contains("spindle 15 3/4 in"));
    sams.keep();
    assertEquals(2, entries("correction").size(), "sent again it is the first's answer");
  }

  @Test
  void of_two_corrections_of_one_reading_the_later_is_shown_both() {
    String round = marmot.startRound(marmot.left, Map.of());
    String height = marmot.height(round, "on-the-strap", "15 3/16", "31 5/8");
    String reading = marmot.read(height, "straight", Marmot.STRAP, "18");
    String action = "/readings/" + reading + "/correct";
    Form sams = shop.get(action).form(action).with("value", "18 1/2").with("reason", "misread");
    Form kims = shop.get(action).form(action).with("value", "19").with("reason", "misread");
    sams.keep();
    Page both = kims.send().is(422);
    assertTrue(both.text().contains("Corrected meanwhile: "), both.text());
    assertTrue(both.text().contains("18 1/2 in"), both.text());
    assertEquals("19", both.form(action).value("value"));
    both.form(action).keep();
    assertEquals(2, entries("correction").size());
  }
}
