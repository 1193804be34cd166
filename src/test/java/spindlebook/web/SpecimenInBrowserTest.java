package spindlebook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.chrome.ChromeDriver;
import spindlebook.Accessibility;
import spindlebook.Chromium;

class SpecimenInBrowserTest {
  private static final String SMALL_TARGETS =
      """
      return [...document.querySelectorAll('a, button, input:not([type=radio]), label.option')]
        .filter(e => !e.matches('.vh, .skip'))
        .filter(e => { const r = e.getBoundingClientRect(); return r.height < 48 || r.width < 48 })
        .map(e => e.outerHTML.slice(0, 90))
      """;

  @BeforeAll
  static void a_browser_is_there() throws IOException {
    boolean required = "required".equals(System.getProperty("browser"));
    assumeTrue(required || Files.exists(Path.of("/usr/bin/chromium")), "no Chromium here");
    Specimen.main(new String[0]);
  }

  private static void scheme(ChromeDriver browser, String scheme) {
    browser.executeCdpCommand(
        "Emulation.setEmulatedMedia",
        Map.of("features", List.of(Map.of("name", "prefers-color-scheme", "value", scheme))));
  }

  private static void width(ChromeDriver browser, int width) {
    browser.executeCdpCommand(
        "Emulation.setDeviceMetricsOverride",
        Map.of("width", width, "height", 844, "deviceScaleFactor", 1, "mobile", width < 800));
  }

  private static void show(ChromeDriver browser, String page) {
    browser.get(Path.of("target", "specimen", page + ".html").toAbsolutePath().toUri().toString());
  }

  @Test
  void no_page_scrolls_sideways_at_any_width_or_text_size() throws IOException {
    List<String> wide = new ArrayList<>();
    for (int textPx : new int[] {16, 32}) {
      ChromeDriver browser = SpecimenScreens.open(textPx);
      try {
        for (String page : Specimen.pages("").keySet()) {
          show(browser, page);
          for (int width : new int[] {320, 390, 768, 1280}) {
            width(browser, width);
            long scroll =
                (Long) browser.executeScript("return document.documentElement.scrollWidth");
            if (scroll > width) {
              wide.add(page + " at " + width + ", text " + textPx + ": " + scroll);
            }
          }
        }
      } finally {
        browser.quit();
      }
    }
    assertEquals(List.of(), wide);
  }

  @Test
  void what_is_tapped_is_a_thumb_wide() throws IOException {
    ChromeDriver browser = SpecimenScreens.open(16);
    try {
      for (String page : Specimen.pages("").keySet()) {
        show(browser, page);
        for (int width : new int[] {320, 390, 1280}) {
          width(browser, width);
          assertEquals(List.of(), browser.executeScript(SMALL_TARGETS), page + " at " + width);
        }
      }
    } finally {
      browser.quit();
    }
  }

  @Test
  void an_accessibility_checker_finds_nothing_in_light_or_dark() {
    ChromeDriver browser = Chromium.open();
    try {
      Accessibility.into(browser);
      width(browser, 390);
      for (String page : Specimen.pages("").keySet()) {
        show(browser, page);
        for (String scheme : List.of("light", "dark")) {
          scheme(browser, scheme);
          assertEquals(List.of(), Accessibility.broken(browser), page + " " + scheme);
        }
      }
    } finally {
      Chromium.giveBack(browser);
    }
  }
}
