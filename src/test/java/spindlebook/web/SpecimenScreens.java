package spindlebook.web;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeOptions;

/** Screenshots of the specimen at phone and desktop widths, light, dark, large text and print. */
final class SpecimenScreens {
  private SpecimenScreens() {}

  public static void main(String[] args) throws Exception {
    Specimen.main(args);
    List<String> only = args.length == 0 ? List.of() : List.of(args[0].split(","));
    shoot(16, only);
    shoot(32, only);
  }

  /** A fresh headless browser whose reader likes text of the given size. */
  static ChromeDriver open(int textPx) throws IOException {
    ChromeOptions options = new ChromeOptions();
    options.addArguments(
        "--headless",
        "--no-sandbox",
        "--disable-gpu",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
        "--hide-scrollbars",
        "--user-data-dir=" + Files.createTempDirectory("specimen"));
    options.setExperimentalOption("prefs", Map.of("webkit.webprefs.default_font_size", textPx));
    Path driver = Path.of("/usr/bin/chromedriver");
    if (Files.exists(driver)) {
      System.setProperty("webdriver.chrome.driver", driver.toString());
    }
    return new ChromeDriver(options);
  }

  private static void shoot(int textPx, List<String> only) throws Exception {
    ChromeDriver browser = open(textPx);
    try {
      for (String page : Specimen.pages("").keySet()) {
        if (!only.isEmpty() && !only.contains(page)) {
          continue;
        }
        Path file = Path.of("target", "specimen", page + ".html").toAbsolutePath();
        for (int width : new int[] {320, 390, 1280}) {
          for (String scheme : textPx == 16 ? List.of("light", "dark") : List.of("light")) {
            browser.executeCdpCommand(
                "Emulation.setEmulatedMedia",
                Map.of(
                    "features", List.of(Map.of("name", "prefers-color-scheme", "value", scheme))));
            browser.executeCdpCommand(
                "Emulation.setDeviceMetricsOverride",
                Map.of(
                    "width", width, "height", 844, "deviceScaleFactor", 1, "mobile", width < 800));
            browser.get(file.toUri().toString());
            String name = page + "-" + width + "-" + scheme + (textPx == 16 ? "" : "-large");
            if (textPx == 16 && width == 390) {
              save(browser, name + "-fold");
            }
            Object tall = browser.executeScript("return document.documentElement.scrollHeight");
            browser.executeCdpCommand(
                "Emulation.setDeviceMetricsOverride",
                Map.of(
                    "width", width, "height", tall, "deviceScaleFactor", 1, "mobile", width < 800));
            save(browser, name);
            if (textPx == 16 && width == 1280 && scheme.equals("light")) {
              browser.executeCdpCommand(
                  "Emulation.setDeviceMetricsOverride",
                  Map.of("width", 700, "height", tall, "deviceScaleFactor", 1, "mobile", false));
              browser.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("media", "print"));
              save(browser, page + "-print");
              browser.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("media", ""));
            }
          }
        }
      }
    } finally {
      browser.quit();
    }
  }

  private static void save(ChromeDriver browser, String name) throws Exception {
    Map<String, Object> shot = browser.executeCdpCommand("Page.captureScreenshot", Map.of());
    Files.write(
        Path.of("target", "specimen", name + ".png"),
        Base64.getDecoder().decode((String) shot.get("data")));
  }
}
