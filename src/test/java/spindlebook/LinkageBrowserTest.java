package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;

/** The demo's corner under the thumb, on a phone six times as slow as this machine. */
class LinkageBrowserTest {
  /**
   * From each move of the thumb to the frame that shows it, the wait for that frame in it: the
   * middle of forty, and the second slowest, milliseconds. Other programs on the machine make
   * single frames late, so the middle one decides.
   */
  private static final String DRAGGED =
      """
      const done = arguments[0];
      const svg = document.querySelector('.moving svg');
      const box = svg.getBoundingClientRect();
      svg.setPointerCapture = () => {};
      const send = (type, share) => svg.dispatchEvent(new PointerEvent(type, {
        bubbles: true, pointerId: 1, buttons: 1,
        clientX: box.left + box.width / 2, clientY: box.top + share * box.height }));
      send('pointerdown', 0.2);
      const took = [];
      let i = 0;
      const next = () => {
        if (i === 40) return done([20, 38].map((n) => took.sort((a, b) => a - b)[n]));
        const before = performance.now();
        send('pointermove', 0.2 + 0.5 * i++ / 40);
        requestAnimationFrame(() => {
          svg.getBBox();
          took.push(performance.now() - before);
          setTimeout(next, 5);
        });
      };
      requestAnimationFrame(next);
      """;

  @TempDir Path folder;

  @Test
  void it_follows_the_thumb_within_fifty_milliseconds_on_a_slow_phone() {
    DemoBook.copyTo(folder);
    try (Shop shop = new Shop(folder);
        Screen phone = new Screen(shop, 390, 664)) {
      phone.go("/corners/marmot-lf/linkage/moves");
      phone.find(By.cssSelector(".moving[data-ready]"));
      String before = phone.text(".moving figcaption");
      phone.devtools("Emulation.setCPUThrottlingRate", Map.of("rate", 6));
      List<?> took = (List<?>) phone.screen.executeAsyncScript(DRAGGED);
      double ms = ((Number) took.get(0)).doubleValue();
      phone.devtools("Emulation.setCPUThrottlingRate", Map.of("rate", 1));
      System.out.println("under the thumb, at a sixth of the speed, ms: " + took);
      assertTrue(ms < 50, "a repaint took " + ms + " ms");
      assertNotEquals(before, phone.text(".moving figcaption"));
      String svg = "document.querySelector('.moving svg')";
      phone.ask(svg + ".dispatchEvent(new KeyboardEvent('keydown', {key: 'ArrowLeft'}))");
      phone.wait(() -> phone.text(".moving-lock").equals("full left"));
      assertEquals("slider", phone.ask("return " + svg + ".getAttribute('role')"));
    }
  }

  private static final String KEYS_AT =
      """
      return [...document.querySelectorAll('.under .key')].map((k) => {
        const r = k.getBoundingClientRect();
        const stands = r.x >= 0 && r.height >= 48 && r.x + r.width <= innerWidth
            && r.y + r.height <= innerHeight;
        return k.dataset.key + [r.x, r.y, stands].join(' ');
      }).join('; ')\
      """;

  @Test
  void a_whole_joint_goes_in_by_taps_on_keys_that_stand_still() {
    try (Shop shop = new Shop(folder);
        Screen phone = new Screen(shop, 390, 664)) {
      Marmot marmot = new Marmot(shop).prepared().measured();
      String linkage = "/corners/" + marmot.left + "/linkage";
      phone.go(linkage + "/to");
      assertEquals(0, phone.screen.findElements(By.cssSelector(".under:not([hidden])")).size());
      phone.find(By.id("f-out")).click();
      phone.wait(() -> phone.find(Screen.key("even")).isDisplayed());
      assertEquals("none", phone.ask("return document.activeElement.inputMode"), "no other keys");
      Object stand = phone.ask(KEYS_AT);
      assertFalse(stand.toString().contains("false"), stand.toString());
      tap(phone, "2", "5", "take the last back", "4", "7/8");
      assertEquals("f-back", phone.ask("return document.activeElement.id"));
      assertEquals(stand, phone.ask(KEYS_AT));
      assertTrue((Boolean) phone.ask(BOX_IS_SEEN), "the box that is filled is above the keys");
      tap(phone, "4", "5", "turn its sign", "turn its sign", "1/8");
      assertEquals("f-up", phone.ask("return document.activeElement.id"));
      assertEquals(stand, phone.ask(KEYS_AT));
      assertTrue((Boolean) phone.ask(BOX_IS_SEEN), "the box that is filled is above the keys");
      tap(phone, "1", "1", "even");
      phone.wait(() -> phone.find(SAVE).isDisplayed());
      phone.find(SAVE).click();
      phone.wait(() -> !phone.screen.getCurrentUrl().endsWith("/to"));
      String page = shop.get(linkage).text();
      assertTrue(page.contains("24 7/8 out, 45 1/8 back, 11 in up"), page);

      // What stands there already goes with the first key; a tap too many ends no other number.
      phone.go(linkage + "/to");
      phone.find(By.id("f-up")).click();
      tap(phone, "1", "2", "next");
      assertEquals("12", phone.find(By.id("f-up")).getDomProperty("value"));
      phone.wait(() -> phone.find(SAVE).isDisplayed());
      assertTrue(
          (Boolean) phone.ask("return document.activeElement.matches('.actions .key-main')"));
      phone.find(By.id("f-up")).click();
      phone.ask(TWICE_WHERE_DONE_IS);
      phone.wait(() -> phone.find(SAVE).isDisplayed());
      assertTrue(phone.screen.getCurrentUrl().endsWith("/to"), "tapped twice, Done is not Back");
      phone.find(By.id("f-up")).click();
      phone.find(By.id("f-up")).sendKeys(Keys.TAB);
      assertTrue(phone.find(SAVE).isDisplayed(), "Tab goes on to what is there");
      phone.find(By.id("f-out")).click();
      String press = "document.querySelector(`[data-key='${arguments[0]}']`).click();";
      phone.ask(press + press, "1/2");
      assertEquals("1/2", phone.find(By.id("f-out")).getDomProperty("value"));
      assertEquals("45 1/8", phone.find(By.id("f-back")).getDomProperty("value"));
      tap(phone, "Type");
      assertEquals("text", phone.ask("return document.activeElement.inputMode"), "its own keys");
      assertEquals(0, phone.screen.findElements(By.cssSelector(".under:not([hidden])")).size());
    }
  }

  @Test
  void a_phone_on_its_side_keeps_its_own_keys_for_a_joint() {
    try (Shop shop = new Shop(folder);
        Screen phone = new Screen(shop, 664, 390)) {
      Marmot marmot = new Marmot(shop).prepared().measured();
      phone.go("/corners/" + marmot.left + "/linkage/to");
      phone.find(By.id("f-out")).click();
      assertEquals("f-out", phone.ask("return document.activeElement.id"));
      assertNotEquals("none", phone.ask("return document.activeElement.inputMode"));
      assertTrue(phone.find(SAVE).isDisplayed());
    }
  }

  private static final By SAVE = By.cssSelector(".actions .key-main");

  private static final String TWICE_WHERE_DONE_IS =
      """
      const done = document.querySelector('.under [data-key=next]').getBoundingClientRect();
      const tap = () => document.elementFromPoint(done.x + 9, done.y + 9).click();
      tap();
      tap();
      """;

  private static final String BOX_IS_SEEN =
      """
      const box = document.activeElement.closest('.field').getBoundingClientRect();
      return box.top >= 0
          && box.bottom <= document.querySelector('.under').getBoundingClientRect().top\
      """;

  private static void tap(Screen phone, String... keys) {
    for (String key : keys) {
      phone.find(By.cssSelector(".under [data-key=\"" + key + "\"]")).click();
    }
  }
}
