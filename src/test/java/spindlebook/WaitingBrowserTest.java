package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.interactions.Actions;
import spindlebook.entry.Content;
import spindlebook.log.Bodies;
import spindlebook.log.BookFile;

/** What the book does not take steps aside on the phone, and is seen and mended there. */
class WaitingBrowserTest {
  @TempDir Path folder;
  private Shop shop;
  private Marmot marmot;
  private Screen phone;

  @BeforeEach
  void open() {
    shop = new Shop(folder.resolve("book"));
    marmot = new Marmot(shop);
    phone = new Screen(shop, 390, 844);
  }

  @AfterEach
  void close() {
    if (phone != null) {
      phone.close();
    }
    shop.close();
  }

  private String guide() {
    String round = marmot.everything(marmot.left, Map.of());
    phone.go("/rounds/" + round + "/guide");
    phone.find(Screen.BOX);
    return round;
  }

  private void press(String key) {
    phone.find(Screen.key(key)).click();
  }

  private void tap(String words) {
    phone.find(Screen.button(words)).click();
  }

  private void typed(CharSequence... lines) {
    for (CharSequence line : lines) {
      new Actions(phone.screen).sendKeys(line, Keys.ENTER).perform();
    }
  }

  private void at(String step) {
    phone.wait(() -> phone.step().endsWith(step));
  }

  private long kept(String start) {
    return (Long)
        phone.ask(
            "return Object.keys(localStorage).filter(k => k.startsWith(arguments[0])).length",
            start);
  }

  private <T extends Content> List<T> inBook(Class<T> kind) {
    return BookFile.read(shop.log()).entries().stream()
        .map(Bodies::read)
        .flatMap(c -> kind.isInstance(c) ? Stream.of(kind.cast(c)) : Stream.empty())
        .toList();
  }

  /** A height nobody can read, two readings at it, then a height and a reading that are good. */
  private void aRefusedHeightAndAGoodOne() {
    typed("as told by Kim", "30 1/4");
    at("/p-upper-rod-end");
    press("3/8");
    press("1/4");
    phone.wait(() -> kept("sb:x:") == 3 && kept("sb:o:") == 0);
    String round = (String) phone.ask("return location.pathname");
    phone.go(round + "?at=stop-touch-1/straight/height");
    phone.find(Screen.BOX);
    typed("22 1/2", "30 1/4");
    at("stop-touch-1/straight/p-upper-rod-end");
    press("1/2");
    phone.sent();
  }

  @Test
  void a_refused_height_steps_aside_with_what_hangs_on_it_and_the_rest_goes_on() {
    guide();
    aRefusedHeightAndAGoodOne();
    assertEquals(1, inBook(Content.Height.class).size());
    assertEquals("22 1/2", inBook(Content.Height.class).get(0).spindle().typed());
    assertEquals(
        List.of("1/2"), inBook(Content.Reading.class).stream().map(r -> r.typed()).toList());
    assertEquals(3, kept("sb:x:"));
    phone.wait(() -> phone.text("#outbox").equals("3 the book did not take"));
  }

  @Test
  void the_count_leads_to_what_waits_where_it_is_mended_and_then_all_of_it_arrives() {
    guide();
    aRefusedHeightAndAGoodOne();
    phone.find(By.cssSelector("#outbox a")).click();
    phone.wait(() -> phone.text("#waiting").contains("The book did not take"));
    String said = phone.text("#waiting");
    assertTrue(
        said.contains("Marmot, left front · On the strap (full droop) · spindle as told by Kim"),
        said);
    assertTrue(said.contains("2 more hang on it."), said);
    assertTrue(said.contains("“as told by Kim” cannot be read"), said);
    tap("Mend");
    WebElement spindle = phone.find(By.cssSelector("#waiting input[name=spindle]"));
    spindle.clear();
    spindle.sendKeys("14 3/8");
    tap("Save");
    phone.wait(() -> kept("sb:x:") == 0 && kept("sb:o:") == 0);
    phone.wait(() -> phone.text("#waiting").contains("Nothing waits on this phone."));
    assertEquals(
        List.of("22 1/2", "14 3/8"),
        inBook(Content.Height.class).stream().map(h -> h.spindle().typed()).toList());
    assertEquals(
        List.of("1/2", "3/8", "1/4"),
        inBook(Content.Reading.class).stream().map(r -> r.typed()).toList());
    tap("Back");
    assertEquals("stop-touch-1/straight/p-lower-rod-end", phone.step());
    press("1/8");
    phone.sent();
    assertEquals(4, inBook(Content.Reading.class).size());
  }

  @Test
  void what_waits_is_seen_and_copied_with_the_book_away_and_its_own_page_says_the_same() {
    guide();
    aRefusedHeightAndAGoodOne();
    int port = shop.port();
    shop.close();
    press("well clear");
    phone.wait(() -> phone.text("#outbox").contains("1 on this phone: no connection"));
    phone.find(By.cssSelector("#outbox a")).click();
    phone.wait(() -> phone.text("#waiting").contains("To be sent"));
    tap("Copy as text");
    String text = phone.find(By.cssSelector("#waiting textarea")).getDomProperty("value");
    assertTrue(text.contains("spindle as told by Kim, mark 30 1/4"), text);
    assertTrue(text.contains("The book: "), text);
    assertTrue(
        text.contains("On the strap (full droop) · Upper rod end to its housing · 3/8"), text);
    assertTrue(text.contains("Bump stop touches · Lower rod end"), text);
    shop.open(port);
    phone.sent();
    phone.go("/waiting");
    phone.wait(() -> phone.text("#waiting").contains("as told by Kim"));
    assertFalse(phone.text("#waiting").contains("Bump stop touches"), phone.text("#waiting"));
    tap("Leave out");
    tap("Leave out all 3 for good");
    phone.wait(() -> phone.text("#waiting").contains("Nothing waits on this phone."));
    assertEquals(0, kept("sb:x:") + kept("sb:o:"));
    assertEquals(2, inBook(Content.Reading.class).size());
  }

  @Test
  void undo_of_what_was_refused_or_not_sent_yet_leaves_nothing_on_the_phone() {
    guide();
    int port = shop.port();
    typed("as told by Kim", "30 1/4");
    at("/p-upper-rod-end");
    phone.wait(() -> kept("sb:x:") == 1);
    press("undo");
    assertEquals(0, kept("sb:x:") + kept("sb:o:"));
    at("/height");
    press("undo");
    phone.wait(() -> !phone.text("[data-key=Type]").isEmpty());
    if (!phone.find(Screen.BOX).isDisplayed()) {
      press("Type");
    }
    phone.find(Screen.BOX).clear();
    typed("14 3/8", "30 1/4");
    at("/p-upper-rod-end");
    phone.sent();
    shop.close();
    press("3/8");
    phone.wait(() -> kept("sb:o:") == 1);
    press("1/4");
    assertEquals(2, kept("sb:o:"));
    press("undo");
    assertEquals(1, kept("sb:o:"));
    shop.open(port);
    phone.sent();
    assertEquals(
        List.of("3/8"), inBook(Content.Reading.class).stream().map(r -> r.typed()).toList());
    assertEquals(0, inBook(Content.Correction.class).size());
  }

  @Test
  void a_mark_taken_as_at_a_height_that_is_left_out_is_kept_as_read() {
    String round = guide();
    typed("as told by Kim", "30 1/4");
    at("/p-upper-rod-end");
    phone.go("/rounds/" + round + "/guide?at=stop-touch-1/straight/height");
    phone.find(Screen.BOX);
    typed("22 1/2");
    press("as at 'On the strap (full droop)', 30 1/4");
    phone.wait(() -> kept("sb:x:") == 2 && kept("sb:o:") == 0);
    assertEquals(0, inBook(Content.Height.class).size());
    phone.find(By.cssSelector("#outbox a")).click();
    tap("Leave out");
    tap("Leave out for good");
    phone.wait(() -> kept("sb:x:") == 0 && kept("sb:o:") == 0);
    Content.Height stop = inBook(Content.Height.class).get(0);
    assertEquals("22 1/2", stop.spindle().typed());
    assertEquals("30 1/4", stop.mark().typed());
  }

  /** What is wrong may be the far end's: its boxes are there, and what waits says both ends. */
  @Test
  void a_refused_height_of_an_axle_is_mended_at_either_end() {
    String corners = "/cars/" + marmot.car + "/corners";
    shop.get(corners + "/new")
        .form(corners)
        .with("end", "rear")
        .with("layout", "solid-axle-end")
        .keep();
    String round = marmot.startRound(marmot.car + "-lr", Map.of());
    phone.go("/rounds/" + round + "/guide");
    phone.wait(() -> !phone.text(".g-heights").isEmpty());
    press("Done");
    typed("20 3/8", "14 3/8x", "30", "30 1/16");
    phone.wait(() -> kept("sb:x:") == 1 && kept("sb:o:") == 0);
    phone.find(By.cssSelector("#outbox a")).click();
    phone.wait(() -> phone.text("#waiting").contains("The book did not take"));
    String said = phone.text("#waiting");
    assertTrue(
        said.contains("spindle 20 3/8, mark 30 · other end spindle 14 3/8x, mark 30 1/16"), said);
    tap("Mend");
    WebElement far = phone.find(By.cssSelector("#waiting input[name=otherSpindle]"));
    far.clear();
    far.sendKeys("20 1/2");
    tap("Save");
    phone.wait(() -> kept("sb:x:") == 0 && kept("sb:o:") == 0);
    Content.Height height = inBook(Content.Height.class).get(0);
    assertEquals("20 1/2", height.otherEnd().spindle().typed());
    assertEquals("30 1/16", height.otherEnd().mark().typed());
  }

  @Test
  void skip_on_the_last_step_leads_to_the_end_which_offers_what_was_not_read() {
    String round = guide();
    typed("14 3/8", "30 1/4");
    at("/p-upper-rod-end");
    press("3/8");
    phone.sent();
    String last =
        (String)
            phone.ask(
                """
                const plan = JSON.parse(document.getElementById("guide").dataset.plan);
                const place = plan.places[plan.places.length - 1];
                const [steering, rows] = Object.entries(place.asked ?? plan.asked).pop();
                return place.id + "/" + steering + "/" + rows.pop();
                """);
    phone.go("/rounds/" + round + "/guide?at=" + last);
    phone.find(Screen.BOX);
    press("Skip");
    assertEquals("on-the-strap-1/straight/p-lower-rod-end", phone.step());
  }
}
