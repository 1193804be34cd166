package spindlebook;

import com.deque.html.axecore.selenium.AxeBuilder;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import org.openqa.selenium.chrome.ChromeDriver;

/**
 * The accessibility checker axe, inside the page that is shown. All its rules are asked; only what
 * a page breaks is written down, and no window is opened to write it.
 */
public final class Accessibility {
  private static final String ASK =
      """
      const done = arguments[1];
      const asked = {resultTypes: ['violations'], selectors: false, preload: false};
      if (arguments[0]) asked.runOnly = ['color-contrast', 'link-in-text-block'];
      axe.run(document, asked).then(
        (r) => done([r.passes.length, r.violations.map((v) => v.id + ': ' + v.nodes[0].html)]),
        (e) => done([1, ['the checker failed: ' + e]]));
      """;

  private Accessibility() {}

  /** Puts the checker into every page this window opens from now on. */
  public static void into(ChromeDriver browser) {
    try (InputStream axe = AxeBuilder.class.getResourceAsStream("/axe.min.js")) {
      browser.executeCdpCommand(
          "Page.addScriptToEvaluateOnNewDocument",
          Map.of("source", new String(axe.readAllBytes(), StandardCharsets.UTF_8)));
    } catch (IOException trouble) {
      throw new UncheckedIOException(trouble);
    }
  }

  /** Each rule the page breaks, with the first thing that breaks it. */
  public static List<String> broken(ChromeDriver browser) {
    return broken(browser, false);
  }

  /** The same of the two rules that colours can break: names and order are those of any scheme. */
  public static List<String> brokenByColour(ChromeDriver browser) {
    return broken(browser, true);
  }

  @SuppressWarnings("unchecked")
  private static List<String> broken(ChromeDriver browser, boolean colours) {
    List<Object> said = (List<Object>) browser.executeAsyncScript(ASK, colours);
    if ((Long) said.get(0) == 0) {
      throw new AssertionError("no rule was asked of " + browser.getCurrentUrl());
    }
    return (List<String>) said.get(1);
  }
}
