package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;

/**
 * A key never moves: every question of a round, on two small screens, in inches and millimetres.
 */
class PadStandsBrowserTest {
  /** What is asked, whether anything is off the screen, and where each key stands. */
  private static final String SEEN =
      """
      const root = document.getElementById('guide');
      const keys = [...root.querySelectorAll('.pad .key, .g-foot .key')].map((k) => {
        const r = k.getBoundingClientRect();
        return [k.dataset.key, [r.x, r.y, r.width, r.height].map(Math.round).join(' ')];
      });
      const cut = keys.filter(([, at]) => {
        const [x, y, w, h] = at.split(' ').map(Number);
        return x < 0 || y < 0 || h < 48 || x + w > innerWidth || y + h > innerHeight;
      });
      const turned = new DOMMatrix(getComputedStyle(document.querySelector('.plan-front')).transform).b;
      const band = document.querySelector('.step-lock b').innerText + ' ' + Math.sign(turned);
      const top = root.querySelector('.g-top');
      const under = top.scrollHeight > top.clientHeight ? top.innerText : '';
      return [root.dataset.step, root.dataset.kind, cut.join('; '), scrollY + '', keys, band, under];
      """;

  /** Questions of each round that are surely come by from where it is begun. */
  private static final int EVERYTHING = 31;

  private static final int WHOLE = 24;

  @TempDir Path folder;

  @Test
  void every_key_and_the_foot_stand_at_one_place_on_every_question() {
    Set<String> kinds = new HashSet<>();
    for (String unit : List.of("in", "mm")) {
      try (Shop shop = new Shop(folder.resolve("book-" + unit));
          Screen phone = new Screen(shop, 390, 664)) {
        Marmot marmot = new Marmot(shop).prepared();
        String round = marmot.everything(marmot.left, Map.of("unit", unit));
        String whole = marmot.startRound(marmot.left, Map.of("unit", unit));
        for (String of : List.of(round, whole)) {
          marmot.height(of, "on-the-strap", "15.25 in", "31.5 in");
          marmot.height(of, "stop-touch", "25.25 in", "31.5 in");
        }
        marmot.height(whole, "strap-off", "13.25 in", "31.5 in");
        marmot.height(whole, "stop-out", "28.25 in", "31.5 in");
        for (int[] size : new int[][] {{390, 664}, {360, 640}}) {
          phone.size(size[0], size[1]);
          for (String of : List.of(round, whole)) {
            phone.ask("localStorage.clear()");
            phone.go("/rounds/" + of + "/guide?at=on-the-strap-1/straight/height");
            phone.find(Screen.key("Skip"));
            kinds.addAll(walked(phone, of.equals(round) ? EVERYTHING : WHOLE));
          }
        }
      }
    }
    assertTrue(
        kinds.containsAll(List.of("spindle", "gap", "tape", "angle", "toe", "mm", "others")),
        "" + kinds);
  }

  @Test
  void what_the_jack_binds_on_is_one_height_and_one_reading_and_moves_no_key() {
    for (int[] size : new int[][] {{390, 664}, {360, 640}}) {
      try (Shop shop = new Shop(folder.resolve("book-" + size[0]));
          Screen phone = new Screen(shop, size[0], size[1])) {
        Marmot marmot = new Marmot(shop).prepared();
        String round = marmot.startRound(marmot.left, Map.of());
        for (String at : List.of("strap-off 13.25 in", "on-the-strap 15.25 in")) {
          marmot.height(round, at.split(" ")[0], at.split(" ", 2)[1], "31.5 in");
        }
        touched(phone, shop, round);
      }
    }
  }

  @Test
  void a_key_pressed_twice_answers_once_and_digits_pressed_fast_all_count() {
    try (Shop shop = new Shop(folder.resolve("book"));
        Screen phone = new Screen(shop, 390, 664)) {
      Marmot marmot = new Marmot(shop).prepared();
      String round = marmot.startRound(marmot.left, Map.of());
      marmot.height(round, "strap-off", "13.25 in", "31.5 in");
      String guide = "/rounds/" + round + "/guide?at=strap-off-1/";
      phone.go(guide + "straight/q-shock-length");
      phone.wait(() -> phone.find(Screen.key("Skip")).isEnabled());
      String press = "document.querySelector(`[data-key='${arguments[0]}']`).click();";
      phone.ask(press + press, "2");
      assertEquals("22", phone.ask("return document.getElementById('g-box').value"));
      phone.ask(press + press, "take the last back");
      phone.go(guide + "full-left/" + Marmot.TIE_ROD);
      phone.wait(() -> phone.find(Screen.key("Skip")).isEnabled());
      phone.sent();
      int before = shop.entries();
      phone.ask(press + press, "1/2");
      assertEquals("strap-off-1/full-right/p-upper-rod-end", phone.step());
      assertEquals(1, phone.screen.findElements(By.cssSelector(".g-verdict")).size());
      assertEquals("full right", phone.text(".step-lock b"), "the keys are of the next already");
      assertEquals("height 1 of 7", phone.text(".step-n"));
      phone.pause(400);
      phone.ask(press, "1/2");
      phone.sent();
      assertEquals(before + 2, shop.entries(), "pressed again, later, it counts");
    }
  }

  @Test
  void the_key_that_keeps_stands_at_one_place_before_the_late_style_is_there() {
    try (Shop shop = new Shop(folder.resolve("book"));
        Screen phone = new Screen(shop, 390, 664)) {
      Marmot marmot = new Marmot(shop).prepared();
      String round = marmot.startRound(marmot.left, Map.of("unit", "mm"));
      marmot.height(round, "strap-off", "13.25 in", "31.5 in");
      phone.devtools("Network.enable", Map.of());
      phone.devtools("Network.setBlockedURLs", Map.of("urls", List.of("*guide-late*")));
      Set<String> at = new HashSet<>();
      for (String row : List.of("straight/q-shock-length", "full-left/" + Marmot.TIE_ROD)) {
        phone.go("/rounds/" + round + "/guide?at=strap-off-1/" + row);
        phone.find(Screen.key("Keep"));
        assertEquals("strap-off-1/" + row, phone.step());
        at.add(
            (String)
                phone.ask(
                    "const r = document.querySelector(`.pad [data-key=Keep]`)"
                        + ".getBoundingClientRect();"
                        + "return [r.x, r.y, r.width].map(Math.round).join(' ')"));
      }
      assertEquals(1, at.size(), at.toString());
    }
  }

  @Test
  void what_may_touch_is_listed_as_soon_as_the_rest_of_the_plan_is_there() {
    try (Shop shop = new Shop(folder.resolve("book"));
        Screen phone = new Screen(shop, 390, 664)) {
      Marmot marmot = new Marmot(shop).prepared();
      String round = marmot.startRound(marmot.left, Map.of());
      marmot.height(round, "strap-off", "13.25 in", "31.5 in");
      phone.devtools("Network.enable", Map.of());
      phone.devtools("Network.setBlockedURLs", Map.of("urls", List.of("*/news*")));
      phone.go("/rounds/" + round + "/guide?at=in-between-1/straight/height");
      phone.wait(() -> phone.find(Screen.key("More")).isEnabled());
      phone.press(Screen.key("More"));
      phone.press(Screen.key("Something touches here"));
      phone.devtools("Network.setBlockedURLs", Map.of("urls", List.of()));
      phone.find(Screen.key("Tie rod to upper arm, full right"));
    }
  }

  private static void touched(Screen phone, Shop shop, String round) {
    phone.ask("localStorage.clear()");
    phone.go("/rounds/" + round + "/guide?at=in-between-1/straight/height");
    Map<String, String> stands = new HashMap<>();
    phone.find(Screen.key("Skip"));
    stands(phone, stands);
    phone.press(Screen.key("More"));
    phone.press(Screen.key("Something touches here"));
    List<?> seen = (List<?>) phone.ask(SEEN);
    assertEquals(List.of("", "0"), seen.subList(2, 4), "none under the foot, nothing to scroll");
    phone.press(Screen.key("Tie rod to upper arm, full right"));
    phone.wait(() -> phone.step().startsWith("touch-1/straight/"));
    assertEquals("touch-1/straight/height", phone.step());
    stands(phone, stands);
    int before = shop.entries();
    typed(phone, "1", "6", "1/2");
    phone.wait(() -> phone.text("#guide").contains("Frame mark"));
    stands(phone, stands);
    typed(phone, "3", "1", "1/2");
    phone.wait(() -> !phone.step().startsWith("touch-1/straight/height"));
    phone.sent();
    assertTrue(shop.entries() >= before + 2, "a height and what touches there");
    String said = shop.get("/rounds/" + round).text();
    assertTrue(said.contains("tie rod to upper arm, full right touches"), said);
  }

  private static void typed(Screen phone, String... keys) {
    for (String key : keys) {
      phone.press(Screen.key(key));
    }
  }

  private static void stands(Screen phone, Map<String, String> stands) {
    List<?> seen = (List<?>) phone.ask(SEEN);
    assertEquals("", seen.get(2), "cut or small at " + seen.get(0));
    for (Object one : (List<?>) seen.get(4)) {
      String key = (String) ((List<?>) one).get(0);
      String at = (String) ((List<?>) one).get(1);
      assertEquals(at, stands.computeIfAbsent(key, k -> at), key + " at " + seen.get(0));
    }
  }

  private static Set<String> walked(Screen phone, int least) {
    Map<String, String> stands = new HashMap<>();
    Set<String> steps = new HashSet<>();
    Set<String> kinds = new HashSet<>();
    while (true) {
      List<?> seen = (List<?>) phone.ask(SEEN);
      if (!steps.add((String) seen.get(0)) || phone.step().isEmpty()) {
        break;
      }
      kinds.add((String) seen.get(1));
      assertEquals("", seen.get(2), "cut or small at " + seen.get(0));
      assertEquals("0", seen.get(3), "scrolled at " + seen.get(0));
      assertEquals("", seen.get(6), "under the keys at " + seen.get(0));
      String steering = ((String) seen.get(0)).split("/")[1];
      // On the page clockwise is to the right.
      int turned = steering.endsWith("left") ? -1 : steering.endsWith("right") ? 1 : 0;
      assertEquals(steering.replace('-', ' ') + " " + turned, seen.get(5));
      stands(phone, stands);
      assertTrue(stands.keySet().containsAll(List.of("‹ Back", "undo", "Skip", "32nds", "More")));
      phone.press(Screen.key("Skip"));
    }
    assertTrue(steps.size() >= least, least + " at least: " + steps.size() + " " + steps);
    return kinds;
  }
}
