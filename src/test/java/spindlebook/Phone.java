package spindlebook;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.openqa.selenium.By;
import org.openqa.selenium.WebDriverException;
import org.openqa.selenium.WindowType;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.support.ui.WebDriverWait;

/** A phone in somebody's hand: a real Chromium that walks through rounds by the pad's keys. */
final class Phone implements AutoCloseable {
  private static final Duration PATIENCE = Duration.ofSeconds(60);

  final ChromeDriver browser;

  /** What was pressed, in order, one line an entry. */
  final List<String> pressed = new ArrayList<>();

  private final String address;
  private final Random random;

  Phone(int port, long seed) {
    browser = Chromium.open();
    browser.manage().timeouts().scriptTimeout(Duration.ofSeconds(60));
    browser.executeCdpCommand(
        "Emulation.setDeviceMetricsOverride",
        Map.of("width", 390, "height", 844, "deviceScaleFactor", 1, "mobile", true));
    address = "http://127.0.0.1:" + port;
    random = new Random(seed);
  }

  /** Opens a one-time link, says whose it is and presses the button. */
  void pair(String link, String name) {
    browser.get(address + link);
    browser.executeScript("document.querySelector('[name=name]').value = arguments[0]", name);
    browser.findElement(By.cssSelector("button.key-main")).click();
    until("!location.pathname.startsWith('/pair/')");
  }

  /** Opens a round step by step, again and again until the network lets the page through. */
  void guide(String round) {
    waiting()
        .until(
            b -> {
              try {
                b.get(address + "/rounds/" + round + "/guide");
                return browser.executeScript("return !!document.querySelector('#guide .pad')");
              } catch (WebDriverException noPage) {
                return false;
              }
            });
  }

  /** The tab is gone, and a new one opened. */
  void killTab(String round) {
    String old = browser.getWindowHandle();
    browser.switchTo().newWindow(WindowType.TAB);
    String fresh = browser.getWindowHandle();
    browser.switchTo().window(old);
    browser.close();
    browser.switchTo().window(fresh);
    guide(round);
  }

  /** Presses keys until so many entries more are typed or the round is walked through. */
  int type(int entries) {
    Object done = browser.executeAsyncScript(PRESS, entries, random.nextInt(1_000_000));
    int before = pressed.size();
    for (Object line : (List<?>) done) {
      pressed.add((String) line);
    }
    return pressed.size() - before;
  }

  String step() {
    return (String) browser.executeScript("return document.getElementById('guide').dataset.step");
  }

  /** How much is kept on the phone under such names. */
  long waiting(String start) {
    return (Long)
        browser.executeScript(
            "return Object.keys(localStorage).filter(k => k.startsWith(arguments[0])).length",
            start);
  }

  List<String> keysOf(String start) {
    return ((List<?>)
            browser.executeScript(
                "return Object.keys(localStorage).filter(k => k.startsWith(arguments[0])).sort()"
                    + ".map(k => k.slice(15))",
                start))
        .stream().map(String.class::cast).toList();
  }

  void until(String condition) {
    waiting().until(b -> Boolean.TRUE.equals(browser.executeScript("return " + condition)));
  }

  void untilAllSent(Duration patience) {
    // Looked at seldom: asking takes what sending needs.
    Chromium.patience(browser, patience)
        .pollingEvery(Duration.ofMillis(200))
        .until(b -> waiting("sb:o:") == 0);
  }

  void offline(boolean now) {
    browser.executeCdpCommand("Network.enable", Map.of());
    browser.executeCdpCommand(
        "Network.emulateNetworkConditions",
        Map.of("offline", now, "latency", 0, "downloadThroughput", -1, "uploadThroughput", -1));
  }

  private WebDriverWait waiting() {
    WebDriverWait wait = Chromium.patience(browser, PATIENCE);
    wait.ignoring(WebDriverException.class);
    return wait;
  }

  @Override
  public void close() {
    Chromium.giveBack(browser);
  }

  /** Types as a thumb does, on the keys the page shows, as fast as the page lets it. */
  private static final String PRESS =
      """
      const [many, seed, done] = arguments;
      const root = document.getElementById("guide");
      const keys = () => [...root.querySelectorAll(".g-lines [data-key], .pad [data-key], .g-stop [data-key]")];
      const press = (k) => {
        const key = keys().find((b) => b.dataset.key === k);
        if (!key) throw new Error("no key " + k + " at " + root.dataset.step);
        // A key that answered a moment ago takes nothing for a blink: a thumb presses again.
        let taken = false;
        key.addEventListener("click", () => (taken = true), { once: true });
        for (const till = performance.now() + 1000; !taken && performance.now() < till; ) key.click();
        if (!taken) throw new Error("key " + k + " takes nothing at " + root.dataset.step);
        return k;
      };
      let x = seed;
      const any = (n) => {
        x = (x + 0x6d2b79f5) | 0;
        const t = Math.imul(x ^ (x >>> 15), x | 1);
        return ((t ^ (t >>> 14)) >>> 0) % n;
      };
      const lowest = (n, d) => (n % 2 ? n + "/" + d : lowest(n / 2, d / 2));
      const fraction = () => press(lowest(1 + any(15), 16));
      const digits = (n) => { for (const d of String(n)) press(d); return n; };
      const HEIGHT = { "on-the-strap-1": 14, "in-between-1": 18, "in-between-2": 21, "stop-touch-1": 25, "strap-off-1": 12, "ride-1": 20, "full-bump-1": 27, "stop-out-1": 29 };
      const told = [];
      (async () => {
        while (told.length < many && !root.querySelector(".pad-end")) {
          const step = root.dataset.step;
          const kind = root.dataset.kind;
          if (!root.querySelector(".g-stop").hidden) {
            press(keys().some((b) => b.dataset.key === "Done") ? "Done" : keys().some((b) => b.dataset.key === "It stands there") ? "It stands there" : "It is right, count it");
          } else if (kind === "others") {
            press("All others well clear");
          } else if (kind === "spindle") {
            const spindle = digits(HEIGHT[step.split("/")[0]]) + " " + fraction();
            const as = keys().find((b) => b.dataset.key.startsWith("as at"));
            let mark = "as at";
            if (as) as.click();
            else mark = digits(31) + " " + fraction();
            told.push(step.split("/")[0].replace(/-\\d$/, "") + ": " + spindle + ", " + mark);
          } else {
            const at = step.slice(step.indexOf("/") + 1) + ": ";
            // Past a height where something touches nothing more is asked: it touches at the highest alone.
            if (kind === "gap" && any(4) === 0)
              told.push(at + press(any(2) && step.startsWith("stop-touch") ? "touches" : "well clear"));
            else if (kind === "gap") told.push(at + fraction());
            else if (kind === "toe" || kind === "signed") {
              const minus = any(2);
              press((kind === "toe" ? ["front edge in", "front edge out"] : ["+", "−"])[minus]);
              told.push(at + (minus ? "-" : "") + digits(1 + any(3)) + " " + fraction());
            } else if (kind === "angle") {
              const text = digits(1 + any(9)) + press(".") + digits(any(10));
              press("Keep");
              told.push(at + text);
            } else told.push(at + digits(10 + any(20)) + " " + fraction());
          }
          await new Promise((go) => setTimeout(go, 2));
        }
        done(told);
      })().catch((e) => done(told.concat(["! " + e.message])));
      """;
}
