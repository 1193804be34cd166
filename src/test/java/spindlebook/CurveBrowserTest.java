package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.support.ui.WebDriverWait;

/** A curve under the finger, and another one by its chip, in a real Chromium. */
class CurveBrowserTest {
  @Test
  void a_finger_reads_every_line_with_its_doubt_and_a_chip_needs_no_new_page(@TempDir Path folder) {
    DemoBook.copyTo(folder);
    try (Shop shop = new Shop(folder);
        Screen screen = new Screen(shop, 390, 664)) {
      screen.go("/corners/marmot-lf/curves?of=p-tie-rod-upper-arm");
      assertEquals("tie rod to upper arm, in", screen.ask("return " + SAYS));
      assertTrue(
          (Boolean)
              screen.ask(
                  "return document.querySelector('.chart').getBoundingClientRect().bottom <= 608"),
          "on the first screen");
      touch(screen, 0.5);
      String said = (String) screen.ask("return " + SAYS);
      assertTrue(
          said.matches("[+−]?\\S.* in: straight .* in ± .* · L .* in ± .* · R .* in ± .*"), said);

      screen.ask("window.here = true; document.querySelectorAll('.chips a')[0].click()");
      new WebDriverWait(screen.screen, Duration.ofSeconds(20))
          .until(d -> screen.ask("return location.search").equals("?of=toe"));
      assertEquals(true, screen.ask("return window.here"), "no new page was loaded");
      assertTrue(
          ((String) screen.ask("return document.querySelector('.curve-head').innerText"))
              .startsWith("too much"));
      touch(screen, 0.5);
      assertTrue(((String) screen.ask("return " + SAYS)).contains("° ± "));
    }
  }

  private static final String SAYS = "document.querySelector('.chart-read').textContent";

  private static void touch(Screen screen, double down) {
    screen.ask(
        "const c = document.querySelector('.chart'), b = c.getBoundingClientRect();"
            + "c.dispatchEvent(new PointerEvent('pointerdown',"
            + " {clientX: b.left + b.width / 2, clientY: b.top + b.height * "
            + down
            + ", bubbles: true}))");
  }
}
