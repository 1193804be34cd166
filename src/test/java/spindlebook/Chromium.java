package spindlebook;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Map;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.logging.Level;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.WebDriverException;
import org.openqa.selenium.WindowType;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;
import org.openqa.selenium.support.ui.WebDriverWait;

/** Real Chromiums. One that is given back serves the next test as new, for starting one is slow. */
public final class Chromium {
  private static final Queue<ChromeDriver> IDLE = new ConcurrentLinkedQueue<>();

  static {
    Runtime.getRuntime()
        .addShutdownHook(new Thread(() -> IDLE.forEach(ChromeDriver::quit), "last-chromium"));
  }

  private Chromium() {}

  /** With an empty window, no cookie and nothing kept. */
  public static ChromeDriver open() {
    boolean required = "required".equals(System.getProperty("browser"));
    assumeTrue(required || Files.exists(Path.of("/usr/bin/chromium")), "no Chromium here");
    ChromeDriver idle = IDLE.poll();
    return idle != null ? idle : start();
  }

  private static ChromeDriver start() {
    ChromeOptions options = new ChromeOptions();
    options.setBinary("/usr/bin/chromium");
    options.addArguments(
        "--headless",
        "--no-sandbox",
        "--disable-gpu",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync");
    LoggingPreferences heard = new LoggingPreferences();
    heard.enable(LogType.BROWSER, Level.ALL);
    options.setCapability("goog:loggingPrefs", heard);
    Path driver = Path.of("/usr/bin/chromedriver");
    if (Files.exists(driver)) {
      System.setProperty("webdriver.chrome.driver", driver.toString());
    }
    return new ChromeDriver(options);
  }

  /**
   * What a test put into its window (size, media, no script) goes with the window; what the pages
   * of its server kept goes too, for another server may get the same port.
   */
  public static void giveBack(ChromeDriver browser) {
    try {
      browser.switchTo().newWindow(WindowType.TAB);
      String fresh = browser.getWindowHandle();
      for (String window : browser.getWindowHandles()) {
        if (!window.equals(fresh)) {
          browser.switchTo().window(window).close();
        }
      }
      browser.switchTo().window(fresh);
      browser.executeCdpCommand("Network.clearBrowserCookies", Map.of());
      browser.executeCdpCommand("Network.clearBrowserCache", Map.of());
      browser.executeCdpCommand(
          "Storage.clearDataForOrigin", Map.of("origin", "*", "storageTypes", "all"));
      browser.manage().logs().get(LogType.BROWSER);
      IDLE.add(browser);
    } catch (WebDriverException ill) {
      browser.quit();
    }
  }

  /** For what the page is about to show; it is looked for often, so that nothing waits idly. */
  static WebDriverWait patience(ChromeDriver browser, Duration patience) {
    WebDriverWait wait = new WebDriverWait(browser, patience, Duration.ofMillis(20));
    wait.ignoring(StaleElementReferenceException.class);
    return wait;
  }
}
