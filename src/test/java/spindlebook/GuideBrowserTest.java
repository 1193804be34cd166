package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.ElementNotInteractableException;
import org.openqa.selenium.Keys;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.interactions.Actions;

/** A guided round in a real Chromium, in the ways a hand may go about it. */
class GuideBrowserTest {
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

  private String guide(Map<String, String> conditions) {
    String round = marmot.everything(marmot.left, conditions);
    phone.go("/rounds/" + round + "/guide");
    phone.find(Screen.BOX);
    return round;
  }

  private void press(String key) {
    phone.wait(() -> pressed(key));
  }

  /** Not yet where it is still hidden, or drawn anew just then. */
  private boolean pressed(String key) {
    try {
      phone.find(Screen.key(key)).click();
      return true;
    } catch (ElementNotInteractableException | StaleElementReferenceException notYet) {
      return false;
    }
  }

  private void keyboard(CharSequence... keys) {
    new Actions(phone.screen).sendKeys(keys).perform();
  }

  private void height(String spindle, String mark) {
    keyboard(spindle, Keys.ENTER, mark, Keys.ENTER);
  }

  private List<JsonNode> entries(String kind) {
    List<JsonNode> found = new ArrayList<>();
    try {
      List<String> lines = shop.lines();
      for (String line : lines.subList(1, lines.size())) {
        JsonNode entry = new ObjectMapper().readTree(line);
        if (entry.get("kind").asText().equals(kind)) {
          found.add(entry.get("body"));
        }
      }
    } catch (IOException unread) {
      throw new AssertionError(unread);
    }
    return found;
  }

  private List<String> readings() {
    return entries("reading").stream()
        .map(
            r ->
                r.get("steering").asText()
                    + " "
                    + r.path("point").asText(r.get("quantity").asText())
                    + " "
                    + r.get("typed").asText())
        .toList();
  }

  @Test
  void a_keyboard_alone_enters_a_whole_round() {
    guide(Map.of());
    List<String> wanted = new ArrayList<>();
    int heights = 0;
    for (String step = phone.step(); !step.isEmpty(); step = phone.step()) {
      if (step.endsWith("/height")) {
        height((14 + 4 * heights) + " 3/8", "30 1/4");
        heights++;
      } else {
        String[] at = step.split("/");
        String row = at[2].substring(2);
        String typed =
            switch (row) {
              case "camber" -> "-1.2";
              case "toe" -> "1/8";
              case "strap-length", "shock-length" -> 30 - heights + " 1/2";
              default -> at[2].startsWith("q-") ? "2 1/16" : "well clear";
            };
        keyboard(typed, Keys.ENTER);
        wanted.add(at[1] + " " + row + " " + typed);
      }
      String left = step;
      phone.wait(() -> !phone.step().equals(left));
    }
    phone.sent();
    assertTrue(wanted.size() > 80, "a whole round: " + wanted.size());
    assertEquals(wanted.size(), readings().size());
    assertEquals(wanted.stream().sorted().toList(), readings().stream().sorted().toList());
    assertEquals(heights, entries("height").size());
  }

  @Test
  void a_round_in_millimetres_has_ten_digits_and_no_sixteenths() {
    guide(Map.of("unit", "mm"));
    assertTrue(phone.screen.findElements(Screen.key("1/16")).isEmpty(), "sixteenths");
    for (String digit : List.of("3", "6", "5", "Keep", "7", "7", "0", ".", "5", "Keep")) {
      press(digit);
    }
    phone.wait(() -> phone.step().endsWith("/p-upper-rod-end"));
    press("4");
    press("Keep");
    phone.sent();
    assertEquals("365", entries("height").get(0).get("spindle").get("typed").asText());
    assertEquals("770.5", entries("height").get(0).get("mark").get("typed").asText());
    assertEquals(List.of("straight upper-rod-end 4"), readings());
    assertEquals(4.0, entries("reading").get(0).at("/length/mm").asDouble());
  }

  @Test
  void an_angle_is_tapped_with_its_sign() {
    String round = guide(Map.of());
    height("14 3/8", "30 1/4");
    phone.sent();
    phone.go("/rounds/" + round + "/guide?at=on-the-strap-1/straight/q-camber");
    phone.find(Screen.BOX);
    for (String key : List.of("minus", "1", ".", "2", "Keep")) {
      press(key);
    }
    phone.sent();
    assertEquals(List.of("straight camber -1.2"), readings());
    assertEquals(
        Math.toRadians(-1.2), entries("reading").get(0).at("/angle/rad").asDouble(), 1e-12);
  }

  @Test
  void heights_of_one_name_are_numbered_under_more() {
    phone.go("/rounds/" + marmot.startRound(marmot.left, Map.of()) + "/guide");
    press("Done");
    press("More");
    for (String place : List.of("In between 1, ", "In between 2, ")) {
      assertTrue(phone.text(".g-jump").contains(place), phone.text(".g-jump"));
    }
  }

  @Test
  void well_clear_for_the_rest_is_asked_once_said_of_each_and_undone_at_once() {
    guide(Map.of());
    height("14 3/8", "30 1/4");
    phone.wait(() -> phone.step().endsWith("/p-upper-rod-end"));
    press("3/8");
    press("More");
    By rest = By.cssSelector("[data-key^='Well clear for the ']");
    String key = phone.text("[data-key^='Well clear for the ']");
    phone.find(rest).click();
    assertTrue(phone.text(".g-stop").contains("not read yet here?"), phone.text(".g-stop"));
    press("No");
    phone.sent();
    assertEquals(1, readings().size());
    press("More");
    phone.find(rest).click();
    press("Yes, well clear");
    phone.sent();
    List<String> more = readings().subList(1, readings().size());
    assertTrue(more.size() >= 4, more.toString());
    assertEquals("Well clear for the " + more.size() + " not read here", key);
    assertTrue(more.stream().allMatch(r -> r.endsWith(" well clear")), more.toString());
    assertTrue(more.stream().allMatch(r -> r.startsWith("straight ")), more.toString());
    assertFalse(phone.step().isEmpty());
    press("undo");
    phone.sent();
    assertEquals(more.size(), entries("correction").size());
  }

  @Test
  void a_bump_below_droop_is_asked_about_before_it_is_kept() {
    String round = guide(Map.of());
    height("20", "30 1/4");
    phone.sent();
    phone.go("/rounds/" + round + "/guide?at=stop-touch-1/straight/height");
    phone.find(Screen.BOX);
    height("14", "30 1/4");
    assertTrue(
        phone
            .text(".g-stop")
            .contains("'Bump stop touches' came out below 'On the strap (full droop)'."),
        phone.text(".g-stop"));
    press("Read spindle again");
    assertEquals(1, entries("height").size());
    assertEquals("stop-touch-1/straight/height", phone.step());
    keyboard("14", Keys.ENTER);
    press("It is right, count it");
    phone.sent();
    assertEquals(2, entries("height").size());
    assertEquals(1, entries("answer").size());
  }

  /** With the mark taken over, the spindle alone is typed again: nothing dies, nothing waits. */
  @Test
  void a_spindle_is_read_again_where_the_mark_was_taken_as_before() {
    String round = guide(Map.of());
    height("20", "30 1/4");
    phone.sent();
    phone.go("/rounds/" + round + "/guide?at=stop-touch-1/straight/height");
    phone.find(Screen.BOX);
    keyboard("14", Keys.ENTER);
    By asAt = By.cssSelector("[data-key^='as at ']");
    phone.find(asAt).click();
    assertTrue(phone.text(".g-stop").contains("came out below"), phone.text(".g-stop"));
    press("Read spindle again");
    assertTrue(phone.text(".g-ask").contains("Spindle"), phone.text(".g-ask"));
    keyboard("24", Keys.ENTER);
    phone.sent();
    assertEquals(2, entries("height").size());
    assertEquals("24", entries("height").get(1).at("/spindle/typed").asText());
    assertTrue(entries("height").get(1).has("markAsAt"), entries("height").get(1).toString());
  }

  /** Gone back to, a gap that was read is mended; read again after its verdict, it counts too. */
  @Test
  void going_back_to_a_reading_mends_it_and_undo_gives_the_first_back() {
    String round = guide(Map.of());
    height("14 3/8", "30 1/4");
    phone.wait(() -> phone.step().endsWith("/p-upper-rod-end"));
    press("5/16");
    phone.wait(() -> phone.step().endsWith("/p-lower-rod-end"));
    press("‹ Back");
    phone.wait(() -> phone.step().endsWith("/p-upper-rod-end"));
    press("1/16");
    phone.wait(() -> phone.step().endsWith("/p-lower-rod-end"));
    phone.sent();
    assertEquals(List.of("straight upper-rod-end 5/16"), readings());
    JsonNode mended = entries("correction").get(0);
    assertEquals("1/16", mended.at("/body/typed").asText(), mended.toString());
    String news = "/rounds/" + round + "/news?n=-1";
    assertFalse(shop.get(news).html().contains("5/16"), "the first counts no more");
    press("undo");
    phone.sent();
    phone.wait(() -> entries("correction").size() == 2);
    assertTrue(shop.get(news).html().contains("5/16"), "the first is back");
    // Its verdict stands for a second, which a slow machine may take to look for it.
    phone.ask(
        "const read = setInterval(() => { const key = document.querySelector(`[data-key='Read"
            + " again']`); if (key) { clearInterval(read); key.click(); } }, 5);"
            + " document.querySelector(`[data-key='3/16']`).click();");
    phone.wait(() -> phone.step().endsWith("/p-upper-rod-end"));
    press("1/4");
    phone.sent();
    assertEquals(List.of("straight upper-rod-end 5/16", "straight upper-rod-end 1/4"), readings());
    assertEquals("3/16", entries("correction").get(2).at("/body/typed").asText());
  }

  /** The same of a height, with the book away: what was read there stays with it. */
  @Test
  void going_back_to_a_height_mends_it_in_the_outbox_too() {
    int port = shop.port();
    String round = guide(Map.of());
    phone.wait(() -> phone.find(Screen.key("More")).isEnabled());
    shop.close();
    height("14 3/8", "30 1/4");
    phone.wait(() -> phone.step().endsWith("/p-upper-rod-end"));
    press("5/16");
    phone.wait(() -> phone.step().endsWith("/p-lower-rod-end"));
    press("‹ Back");
    press("1/16");
    phone.wait(() -> phone.step().endsWith("/p-lower-rod-end"));
    press("‹ Back");
    press("‹ Back");
    phone.wait(() -> phone.step().endsWith("/height"));
    List.of("1", "5", "3/8").forEach(this::press);
    press("mark as it was");
    phone.wait(() -> phone.step().endsWith("/p-lower-rod-end"));
    press("1/2");
    shop.open(port);
    phone.sent();
    assertEquals(1, entries("height").size());
    assertEquals(List.of("straight upper-rod-end 5/16", "straight lower-rod-end 1/2"), readings());
    List<JsonNode> mended = entries("correction");
    assertEquals(2, mended.size());
    assertEquals("1/16", mended.get(0).at("/body/typed").asText());
    assertEquals("15 3/8", mended.get(1).at("/body/spindle/typed").asText());
    assertEquals("30 1/4", mended.get(1).at("/body/mark/typed").asText());
    String news = shop.get("/rounds/" + round + "/news?n=-1").html();
    assertTrue(news.contains("spindle 15 3/8, mark 30 1/4"), news);
    assertFalse(news.contains("14 3/8"), news);
  }

  /** Said where its wheel stands already, a touch is a reading there; the rest stays asked. */
  @Test
  void what_touches_at_a_height_that_is_read_leaves_the_rest_asked() {
    String round = marmot.startRound(marmot.left, Map.of());
    phone.go("/rounds/" + round + "/guide?at=full-bump-1/straight/height");
    phone.wait(() -> phone.find(Screen.key("More")).isEnabled());
    height("26 3/8", "30 1/4");
    phone.wait(() -> phone.step().startsWith("stop-out-1/"));
    press("Done");
    press("‹ Back");
    phone.wait(() -> phone.step().startsWith("full-bump-1/"));
    press("More");
    press("Something touches here");
    phone.find(By.cssSelector(".pad .key[data-key*='full left']")).click();
    phone.sent();
    assertEquals(1, readings().size());
    assertTrue(readings().get(0).endsWith(" touches"), readings().toString());
    assertEquals(1, entries("height").size());
    assertFalse(phone.step().startsWith("stop-out"), phone.step());
  }

  @Test
  void the_first_key_replaces_what_stands_there_already() {
    guide(Map.of());
    for (String key : List.of("2", "1", "1/2")) {
      press(key);
    }
    press("undo");
    phone.wait(() -> phone.find(Screen.BOX).getDomProperty("value").equals("21 1/2"));
    assertTrue(phone.find(By.cssSelector(".g-fig.g-old")).isDisplayed(), "shown as selected");
    press("2");
    assertEquals("2", phone.find(Screen.BOX).getDomProperty("value"));
    for (String key : List.of("2", "1/2", "3", "0", "1/4")) {
      press(key);
    }
    phone.sent();
    assertEquals("22 1/2", entries("height").get(0).at("/spindle/typed").asText());
  }

  /** What cannot be read is asked for again with its text, and is never right as it stands. */
  @Test
  void a_sign_stands_in_front_and_what_says_nothing_is_not_counted() {
    String round = guide(Map.of());
    height("14 3/8", "30 1/4");
    phone.sent();
    phone.go("/rounds/" + round + "/guide?at=on-the-strap-1/straight/q-camber");
    phone.find(Screen.BOX);
    phone.wait(() -> phone.text(".g-lines").contains("+ top out, − top in"));
    for (String key : List.of("1", ".", "5", "minus")) {
      press(key);
    }
    assertEquals("-1.5", phone.find(Screen.BOX).getDomProperty("value"));
    for (String key : List.of(".", ".", "Keep")) {
      press(key);
    }
    phone.wait(() -> phone.text(".g-stop").contains("Check this"));
    assertFalse(phone.text(".g-stop").contains("It is right"), phone.text(".g-stop"));
    press("Read it again");
    phone.wait(() -> phone.step().endsWith("/q-camber"));
    assertEquals("-1.5..", phone.find(Screen.BOX).getDomProperty("value"));
    for (String key : List.of("take the last back", "take the last back", "Keep")) {
      press(key);
    }
    phone.sent();
    assertEquals("-1.5", entries("reading").get(1).get("typed").asText());
  }

  /** A shank larger than the rule's may go too: its size is tapped, and then that it goes. */
  @Test
  void a_larger_drill_that_goes_is_said_by_its_size() {
    guide(Map.of());
    height("14 3/8", "30 1/4");
    phone.wait(() -> phone.step().contains("/straight/p-"));
    press("drill");
    press("3/8");
    press("3/8 goes");
    phone.wait(() -> readings().size() == 1);
    assertTrue(readings().get(0).endsWith(" 3/8 goes"), readings().toString());
  }

  @Test
  void a_doubt_that_was_answered_does_not_come_back() {
    guide(Map.of());
    height("14 3/8", "30 1/4");
    phone.wait(() -> phone.step().endsWith("/p-upper-rod-end"));
    keyboard("two fingers", Keys.ENTER);
    phone.wait(() -> phone.text(".g-stop").contains("Check this"));
    press("Read it again");
    phone.sent();
    phone.wait(() -> entries("correction").size() == 1);
    // Longer than the plan is asked for again.
    phone.pause(3500);
    assertFalse(phone.find(By.cssSelector(".g-stop")).isDisplayed());
    assertEquals(1, entries("correction").size());
  }

  @Test
  void half_a_value_survives_a_reload_and_a_second_phone_goes_on_where_the_first_is() {
    String round = guide(Map.of());
    height("14 3/8", "30 1/4");
    phone.wait(() -> phone.step().endsWith("/p-upper-rod-end"));
    press("3/8");
    phone.wait(() -> phone.step().endsWith("/p-lower-rod-end"));
    press("2");
    phone.screen.navigate().refresh();
    phone.find(Screen.BOX);
    assertEquals("on-the-strap-1/straight/p-lower-rod-end", phone.step());
    assertEquals("2", phone.find(Screen.BOX).getDomProperty("value"));
    phone.sent();
    try (Screen second = new Screen(shop, 390, 844)) {
      second.go("/rounds/" + round + "/guide");
      second.find(Screen.BOX);
      assertEquals("on-the-strap-1/straight/p-lower-rod-end", second.step());
      second.find(Screen.key("1/4")).click();
      press("1/16");
      phone.wait(() -> readings().size() == 3);
    }
    // Two people's readings of one thing are repeats: both stay.
    assertEquals(
        List.of("straight lower-rod-end 1/4", "straight lower-rod-end 2 1/16"),
        readings().subList(1, 3).stream().sorted().toList());
  }

  @Test
  void a_locked_phone_loses_nothing_and_sends_when_it_is_looked_at_again() {
    int port = shop.port();
    guide(Map.of());
    shop.close();
    height("14 3/8", "30 1/4");
    press("3/8");
    press("2");
    phone.devtools("Page.setWebLifecycleState", Map.of("state", "frozen"));
    shop.open(port);
    phone.devtools("Page.setWebLifecycleState", Map.of("state", "active"));
    phone.sent();
    assertEquals(1, entries("height").size());
    assertEquals(List.of("straight upper-rod-end 3/8"), readings());
    assertEquals("2", phone.find(Screen.BOX).getDomProperty("value"));
  }

  @Test
  void a_key_held_down_while_the_book_answers_still_counts_when_it_is_let_go() {
    String round = guide(Map.of());
    height("14 3/8", "30 1/4");
    phone.wait(() -> phone.step().endsWith("/p-upper-rod-end"));
    phone.sent();
    @SuppressWarnings("unchecked")
    List<Number> middle =
        (List<Number>)
            phone.ask(
                """
                const r = document.querySelector('[data-key="touches"]').getBoundingClientRect();
                return [r.x + r.width / 2, r.y + r.height / 2];
                """);
    Map<String, Object> mouse =
        Map.of(
            "x",
            middle.get(0).doubleValue(),
            "y",
            middle.get(1).doubleValue(),
            "button",
            "left",
            "clickCount",
            1);
    countPlans();
    phone.devtools("Emulation.setTouchEmulationEnabled", Map.of("enabled", false));
    mouse("mousePressed", mouse);
    // Another phone's entry brings a new plan meanwhile.
    marmot.height(round, "in-between", "20", "30 1/4");
    phone.wait(() -> ((Long) phone.ask("return window.plans")) > 0);
    mouse("mouseReleased", mouse);
    phone.sent();
    assertEquals(List.of("straight upper-rod-end touches"), readings());
  }

  @Test
  void a_question_that_the_book_needs_no_more_stays_while_it_is_answered() {
    guide(Map.of());
    phone.wait(() -> phone.find(Screen.key("More")).isEnabled());
    height("14 3/8", "30 1/4");
    phone.wait(() -> phone.step().endsWith("/p-upper-rod-end"));
    press("1");
    countPlans();
    String point = "/corners/" + marmot.left + "/watch-points/upper-rod-end";
    shop.get(point).form(point + "/retire").keep();
    phone.wait(() -> ((Long) phone.ask("return window.plans")) > 0);
    assertTrue(phone.step().endsWith("/p-upper-rod-end"), phone.step());
    press("1/4");
    phone.wait(() -> phone.step().endsWith("/p-lower-rod-end"));
    phone.sent();
    assertEquals(List.of("straight upper-rod-end 1 1/4"), readings());
  }

  private void countPlans() {
    phone.ask(
        """
        window.plans = 0;
        const asked = window.fetch;
        window.fetch = async (...of) => {
          const answer = await asked(...of);
          if (of[0].includes('/news') && answer.status === 200) window.plans++;
          return answer;
        };
        """);
  }

  private void mouse(String type, Map<String, Object> at) {
    Map<String, Object> event = new HashMap<>(at);
    event.put("type", type);
    phone.devtools("Input.dispatchMouseEvent", event);
  }

  private static final String SMALL_KEYS =
      """
      return [...document.querySelectorAll('button, a.key, input, select')]
        .filter((e) => e.offsetParent && e.type !== 'hidden')
        .map((e) => [e, e.getBoundingClientRect()])
        .filter(([, r]) => r.height < 47.5 || r.width < 24)
        .map(([e, r]) => (e.dataset.key ?? e.innerText) + ' ' + r.width + ' x ' + r.height);
      """;

  @Test
  void every_key_is_48_px_high_on_the_narrowest_phone() {
    phone.size(320, 640);
    guide(Map.of());
    assertEquals(List.of(), phone.ask(SMALL_KEYS));
    height("14 3/8", "30 1/4");
    phone.wait(() -> phone.step().endsWith("/p-upper-rod-end"));
    assertEquals(List.of(), phone.ask(SMALL_KEYS));
    press("More");
    assertEquals(List.of(), phone.ask(SMALL_KEYS));
  }

  private static final String CUT =
      """
      return [...document.querySelectorAll('button, p, h1, h2, a.key')]
        .filter((e) => e.offsetParent && e.scrollWidth > e.clientWidth + 1 && getComputedStyle(e).display !== 'inline')
        .map((e) => e.outerHTML.slice(0, 90) + ' ' + e.scrollWidth + ' > ' + e.clientWidth);
      """;

  private static final String OVER =
      """
      return [...document.querySelectorAll('body *')]
        .filter((e) => e.getBoundingClientRect().right > 391)
        .map((e) => e.outerHTML.slice(0, 120)).join('; ');
      """;

  @Test
  void at_twice_the_text_size_no_word_is_cut_and_nothing_scrolls_sideways() {
    guide(Map.of());
    phone.devtools("Page.enable", Map.of());
    phone.devtools("Page.setFontSizes", Map.of("fontSizes", Map.of("standard", 32, "fixed", 26)));
    assertEquals("32px", phone.ask("return getComputedStyle(document.documentElement).fontSize"));
    height("14 3/8", "30 1/4");
    phone.wait(() -> phone.step().endsWith("/p-upper-rod-end"));
    for (int i = 0; i < 2; i++) {
      assertEquals(List.of(), phone.ask(CUT));
      long wide = (Long) phone.ask("return document.documentElement.scrollWidth");
      assertTrue(wide <= 390, () -> "scrolls sideways: " + wide + " for " + phone.ask(OVER));
      press(i == 0 ? "More" : "Keys");
    }
  }

  @Test
  void tab_goes_down_the_page_in_the_order_that_is_seen() {
    guide(Map.of());
    height("14 3/8", "30 1/4");
    phone.wait(() -> phone.step().endsWith("/p-upper-rod-end"));
    phone.ask("document.querySelector('a').focus()");
    List<String> order = new ArrayList<>();
    double last = -1;
    for (int i = 0; i < 60; i++) {
      keyboard(Keys.TAB);
      @SuppressWarnings("unchecked")
      List<Object> at =
          (List<Object>)
              phone.ask(
                  """
                  const e = document.activeElement;
                  const r = e.getBoundingClientRect();
                  return [e.closest('#guide') ? (e.dataset.key ?? e.id) : '', r.top + scrollY,
                    parseFloat(getComputedStyle(e).outlineWidth)];
                  """);
      if (at.get(0).equals("")) {
        if (!order.isEmpty()) {
          break;
        }
        continue;
      }
      double top = ((Number) at.get(1)).doubleValue();
      assertTrue(top >= last - 2, "up again at " + at.get(0) + " after " + order);
      assertTrue(((Number) at.get(2)).doubleValue() >= 2, "no ring about " + at.get(0));
      last = top;
      order.add((String) at.get(0));
    }
    assertTrue(
        order.containsAll(List.of("Type", "1/16", "well clear", "undo", "More")), order.toString());
  }

  @Test
  void in_forced_colours_keys_keep_an_edge_and_the_chosen_one_differs() {
    phone.media("", "forced-colors", "active");
    guide(Map.of());
    height("14 3/8", "30 1/4");
    phone.wait(() -> phone.step().endsWith("/p-upper-rod-end"));
    press("32nds");
    String edges =
        """
        return [...document.querySelectorAll('#guide .key')].filter((k) =>
          parseFloat(getComputedStyle(k).borderTopWidth) < 1).map((k) => k.dataset.key);
        """;
    // What comes after the first screen brings the foot's edges.
    phone.wait(() -> List.of().equals(phone.ask(edges)));
    assertEquals(true, phone.ask("return matchMedia('(forced-colors: active)').matches"));
    String look =
        """
        const s = getComputedStyle(document.querySelector(arguments[0]));
        return s.backgroundColor + s.color + s.borderTopWidth + s.borderTopColor;
        """;
    assertFalse(
        phone.ask(look, "[data-key='32nds']").equals(phone.ask(look, "[data-key='4']")),
        "the chosen key looks as the others");
  }

  @Test
  void what_was_kept_is_told_to_who_hears_the_page() {
    guide(Map.of());
    height("14 3/8", "30 1/4");
    phone.wait(() -> phone.step().endsWith("/p-upper-rod-end"));
    press("touches");
    String live =
        "return [...document.querySelectorAll('[role=status],[aria-live]')].map(e =>"
            + " e.innerText).join(' | ')";
    phone.wait(() -> ((String) phone.ask(live)).contains("touches · in the book"));
    assertTrue(((String) phone.ask(live)).contains("ower rod end"), (String) phone.ask(live));
  }

  private void without(String... addresses) {
    List<Object> patterns = new ArrayList<>();
    for (String address : addresses) {
      patterns.add(Map.of("urlPattern", address, "block", true));
    }
    phone.devtools("Network.setBlockedURLs", Map.of("urlPatterns", patterns));
  }

  /** The network may go with the first screen there: what did come is used, and nothing throws. */
  @Test
  void what_comes_after_the_first_screen_comes_each_by_itself() {
    phone.devtools("Network.enable", Map.of());
    without("*://*:*/static/guide-news*");
    guide(Map.of());
    height("14 3/8", "30 1/4");
    phone.wait(() -> phone.step().endsWith("/p-upper-rod-end"));
    press("3/8");
    press("undo");
    press("put back");
    phone.wait(() -> phone.step().endsWith("/p-lower-rod-end"));
    phone.find(Screen.key("More"));
    without("*://*:*/static/guide-more*");
    phone.screen.navigate().refresh();
    phone.find(Screen.BOX);
    press("3/8");
    phone.wait(() -> phone.step().endsWith("/p-tie-rod-end"));
    assertFalse(phone.find(Screen.key("undo")).isEnabled(), "not there yet");
    without();
    phone.wait(() -> phone.find(Screen.key("undo")).isEnabled());
    press("undo");
    phone.wait(() -> phone.text(".g-said").contains("Withdrawn"));
    press("put back");
    phone.wait(() -> phone.step().endsWith("/p-tie-rod-end"));
  }

  /** An axle's height is both ends', and both ends' readings hang on it. */
  @Test
  void a_solid_axle_is_walked_on_the_pad_as_any_corner() {
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
    List<String> asked = new ArrayList<>();
    for (String text : List.of("20 3/8", "20 1/2", "30", "30 1/16")) {
      asked.add(phone.text("#g-what"));
      keyboard(text, Keys.ENTER);
    }
    assertEquals(
        List.of(
            "Left rear, spindle above the floor",
            "Right rear, spindle above the floor",
            "Left rear, frame mark above the floor",
            "Right rear, frame mark above the floor"),
        asked);
    int steps = 0;
    while (!phone.step().endsWith("/height")) {
      String step = phone.step();
      assertFalse(step.contains("camber") || step.contains("toe"), step);
      String kind = (String) phone.ask("return document.getElementById('guide').dataset.kind");
      if (kind.equals("others")) {
        press("All others well clear");
      } else {
        keyboard(
            kind.equals("gap") ? "well clear" : kind.equals("angle") ? "3" : "12 1/2", Keys.ENTER);
      }
      phone.wait(() -> !phone.step().equals(step));
      steps++;
    }
    press("Done");
    // The second height: its mark is taken as at the first, at both ends.
    keyboard("24", Keys.ENTER, "24", Keys.ENTER);
    phone.wait(() -> !phone.text("[data-key^='as at']").isEmpty());
    String both = phone.text("[data-key^='as at']");
    assertTrue(
        both.toLowerCase(Locale.ROOT)
            .endsWith("strap off, hanging, both together', 30 and 30 1/16"),
        both);
    phone.find(By.cssSelector("[data-key^='as at']")).click();
    phone.wait(() -> !phone.step().endsWith("/height"));
    // Crossed, with one end not read.
    phone.go("/rounds/" + round + "/guide?at=on-the-strap-2/straight/height");
    press("Done");
    assertTrue(
        phone.text(".g-top").contains("Right rear: full bump, stop solid"), phone.text(".g-top"));
    keyboard("18", Keys.ENTER);
    assertEquals(List.of(), phone.ask(SMALL_KEYS));
    press("not read");
    keyboard("30", Keys.ENTER);
    phone.sent();
    List<JsonNode> heights = entries("height");
    assertEquals("20 1/2", heights.get(0).at("/otherEnd/spindle/typed").asText());
    assertEquals("both-together", heights.get(0).get("pairing").asText());
    assertFalse(heights.get(0).get("otherEnd").has("name"), heights.get(0).toString());
    assertTrue(heights.get(1).has("markAsAt"), heights.get(1).toString());
    assertEquals("crossed", heights.get(2).get("pairing").asText());
    assertEquals("full-bump", heights.get(2).at("/otherEnd/name").asText());
    assertFalse(heights.get(2).get("otherEnd").has("spindle"), heights.get(2).toString());
    List<JsonNode> readings = entries("reading");
    assertTrue(readings.size() > steps, steps + " asked, " + readings.size() + " in the book");
    long there = readings.stream().filter(r -> r.path("atOtherEnd").asBoolean()).count();
    assertTrue(there >= 5 && there < steps, there + " of " + steps);
    assertEquals(390L, phone.ask("return Math.max(390, document.documentElement.scrollWidth)"));
  }
}
