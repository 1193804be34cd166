package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A height taken back takes its readings along; that is said before and after, and undone. */
class TakenBackTest {
  @TempDir Path folder;
  private Shop shop;
  private Marmot marmot;
  private String round;
  private String height;
  private String gap;

  @BeforeEach
  void open() {
    shop = new Shop(folder);
    marmot = new Marmot(shop);
    round = marmot.startRound(marmot.left, Map.of());
    height = marmot.height(round, "on-the-strap", "15 3/16", "31 5/8");
    gap = marmot.read(height, "straight", Marmot.TIE_ROD, "9/16");
    marmot.read(height, "full-left", Marmot.TIE_ROD, "5/16");
  }

  @AfterEach
  void close() {
    assertEquals(java.util.List.of(), shop.told);
    shop.close();
  }

  private Page takeBack() {
    String address = "/entries/" + height;
    return shop.get(address).is(200).form(address + "/take-back").keep();
  }

  @Test
  void what_hangs_on_a_height_is_said_before_it_is_taken_back() {
    String told = "2 readings hang on it and go with it.";
    assertTrue(shop.get("/entries/" + height).text().contains(told));
    assertTrue(shop.get("/heights/" + height + "?saved=" + height).text().contains(told));
    assertFalse(shop.get("/entries/" + gap).text().contains("hang on it"));
  }

  @Test
  void its_own_address_says_that_it_was_taken_back_and_puts_it_back() {
    JsonNode before = shop.figures(marmot.left);
    Page gone = shop.browser.follow(takeBack()).is(200);
    assertEquals("/heights/" + height, gone.path());
    assertTrue(gone.text().contains("Withdrawn"), gone.text());
    assertTrue(gone.text().contains("spindle 15 3/16 in"), gone.text());
    assertTrue(gone.text().contains("2 readings went with it"), gone.text());
    assertEquals(0, shop.figures(marmot.left).get("readings").size());

    Form putBack = gone.forms().get(0);
    Page again = shop.browser.follow(putBack.keep()).is(200);
    assertEquals("/heights/" + height, again.path());
    assertTrue(again.text().contains("9/16"), again.text());
    JsonNode after = shop.figures(marmot.left);
    assertEquals(before.get("readings"), after.get("readings"));
    assertEquals(before.get("heights"), after.get("heights"));
    int entries = shop.entries();
    putBack.keep();
    assertEquals(entries, shop.entries(), "pressed twice");
    assertTrue(
        shop.get("/cars/" + marmot.car + "/book")
            .text()
            .contains("put back: left front · on the strap (full droop) · spindle 15 3/16 in"));

    takeBack();
    shop.get("/heights/" + height).is(200).forms().get(0).keep();
    assertEquals(before.get("readings"), shop.figures(marmot.left).get("readings"));
  }

  @Test
  void its_entry_page_puts_it_back_and_its_readings_say_why_they_do_not_count() {
    takeBack();
    Page reading = shop.get("/entries/" + gap).is(200);
    assertTrue(
        reading.text().contains("The height it hangs on was withdrawn, so it does not count."),
        reading.text());
    assertTrue(reading.html().contains("href=\"/entries/" + height + "\""), "leads to it");
    Page entry = shop.get("/entries/" + height).is(200);
    assertTrue(entry.text().contains("Put it back"), entry.text());
    entry.forms().get(0).keep();
    assertEquals(2, shop.figures(marmot.left).get("readings").size());
    assertFalse(shop.get("/entries/" + gap).text().contains("does not count"));
  }

  @Test
  void a_correction_made_before_it_was_taken_back_stands_again() {
    marmot.send(
        "/heights/" + height + "/correct",
        Map.of("spindle", "15 5/16", "reason", "read from the wrong mark"));
    JsonNode before = shop.figures(marmot.left).get("heights");
    takeBack();
    shop.get("/heights/" + height).forms().get(0).keep();
    assertEquals(before, shop.figures(marmot.left).get("heights"));
  }

  @Test
  void taking_back_without_a_reason_says_it_once() {
    takeBack();
    String text = shop.get("/entries/" + height).text();
    assertFalse(text.contains("withdrawn: withdrawn"), text);
    assertTrue(text.contains("withdrawn (left front"), text);
  }

  @Test
  void a_height_answered_away_keeps_its_address_too() {
    String touch = marmot.height(round, "stop-touch", "12", "31 5/8");
    shop.get("/entries/" + touch)
        .is(200)
        .form("/entries/" + touch + "/answer")
        .with("answer", "not")
        .keep();
    Page left = shop.get("/heights/" + touch).is(200);
    assertTrue(left.text().contains("It does not count"), left.text());
    assertEquals(0, left.forms().size(), "nothing to put back");
  }

  @Test
  void a_reading_sent_from_a_page_open_meanwhile_is_kept_and_counts_once_the_height_is_back() {
    Form open =
        marmot
            .readingForm(height, "full-right", Marmot.TIE_ROD)
            .with("v-" + Marmot.TIE_ROD, "7/16");
    takeBack();
    Page told = shop.browser.follow(open.keep()).is(200);
    assertTrue(told.text().contains("Just kept, but not counted"), told.text());
    assertTrue(told.text().contains("7/16"), told.text());
    assertTrue(told.text().contains("3 readings went with it"), told.text());
    int entries = shop.entries();
    open.keep();
    assertEquals(entries, shop.entries(), "pressed twice");
    assertEquals(0, shop.figures(marmot.left).get("readings").size());

    shop.get("/heights/" + height).forms().get(0).keep();
    assertEquals(3, shop.figures(marmot.left).get("readings").size());
  }

  @Test
  void a_reading_of_a_watch_point_retired_meanwhile_is_kept_unread() {
    Form open =
        marmot.readingForm(height, "straight", Marmot.TIE_ROD).with("v-" + Marmot.TIE_ROD, "1/2");
    String point = "/corners/" + marmot.left + "/watch-points/" + Marmot.TIE_ROD.substring(2);
    shop.get(point).form(point + "/retire").keep();
    Page told = shop.browser.follow(open.keep()).is(200);
    assertTrue(told.text().contains("does not watch"), told.text());
    assertTrue(told.text().contains("1/2"), told.text());
  }

  @Test
  void a_correction_of_what_was_taken_back_meanwhile_shows_what_was_typed_and_puts_it_back() {
    String correct = "/readings/" + gap + "/correct";
    Form open =
        shop.get(correct).is(200).form(correct).with("value", "7/16").with("reason", "misread <b>");
    Form height0 =
        shop.get("/heights/" + height + "/correct").form("/heights/" + height + "/correct");
    String entry = "/entries/" + gap;
    shop.get(entry).is(200).form(entry + "/take-back").keep();
    int entries = shop.entries();
    Page told = open.send().is(409);
    assertTrue(told.text().contains("value: 7/16"), told.text());
    assertTrue(told.html().contains("reason: misread &lt;b"), told.html());
    assertEquals(entries, shop.entries(), "nothing is brought back unasked");
    told.forms().get(0).keep();
    open.keep();
    assertTrue(shop.get(entry).text().contains("7/16"));

    takeBack();
    assertTrue(
        height0.with("reason", "other mark").send().is(409).text().contains("spindle: 15 3/16"));
    shop.get("/readings/nothing-of-this-name/correct").is(404);
  }
}
