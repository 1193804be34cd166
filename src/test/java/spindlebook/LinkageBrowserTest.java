package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;

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
}
