package spindlebook;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.support.ui.ExpectedConditions;

/** A phone's screen of its own, paired with the program, in a real Chromium. */
final class Screen implements AutoCloseable {
  private static final Duration PATIENCE = Duration.ofSeconds(60);
  static final By BOX = By.id("g-box");

  final ChromeDriver screen;
  private final Shop shop;

  Screen(Shop shop, int width, int height) {
    this.screen = Chromium.open();
    this.shop = shop;
    size(width, height);
    devtools("Emulation.setTouchEmulationEnabled", Map.of("enabled", true, "maxTouchPoints", 1));
    go(shop.app().code().path());
    find(button("Pair this device")).click();
    wait(() -> !screen.getCurrentUrl().contains("/pair/"));
  }

  void size(int width, int height) {
    devtools(
        "Emulation.setDeviceMetricsOverride",
        Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", width < 800));
  }

  void media(String medium, String feature, String value) {
    devtools(
        "Emulation.setEmulatedMedia",
        Map.of("media", medium, "features", List.of(Map.of("name", feature, "value", value))));
  }

  Object devtools(String command, Map<String, Object> with) {
    return screen.executeCdpCommand(command, with);
  }

  Object ask(String script, Object... with) {
    return screen.executeScript(script, with);
  }

  void go(String path) {
    screen.get("http://127.0.0.1:" + shop.port() + path);
  }

  /** On the page that is there or just coming. */
  WebElement find(By what) {
    return Chromium.patience(screen, PATIENCE)
        .until(ExpectedConditions.presenceOfElementLocated(what));
  }

  /** As soon as it is there; again where the page drew it anew meanwhile. */
  void press(By what) {
    wait(
        () -> {
          screen.findElement(what).click();
          return true;
        });
  }

  void wait(Supplier<Boolean> until) {
    Chromium.patience(screen, PATIENCE).until(d -> until.get());
  }

  void pause(long ms) {
    screen.executeAsyncScript("setTimeout(arguments[1], arguments[0])", ms);
  }

  static By button(String word) {
    return By.xpath("//*[self::button or self::a][normalize-space()='" + word + "']");
  }

  static By key(String label) {
    return By.cssSelector("[data-key=\"" + label + "\"]");
  }

  /** The step the guided round is at; empty when nothing is left. */
  String step() {
    return (String)
        ask(
            "const s = document.querySelector('#guide .pad-end'); return s ? '' :"
                + " document.getElementById('guide').dataset.step;");
  }

  /** Until nothing waits on the phone to be sent. */
  void sent() {
    wait(
        () ->
            (Long)
                    ask(
                        "return Object.keys(localStorage).filter(k =>"
                            + " k.startsWith('sb:o:')).length")
                == 0);
  }

  String text(String css) {
    return (String) ask("return document.querySelector(arguments[0])?.innerText ?? ''", css);
  }

  @Override
  public void close() {
    Chromium.giveBack(screen);
  }
}
