package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.OutputType;

/**
 * The tape's fills as Chromium paints them. Relative luminance and contrast as WCAG 2 defines them;
 * 3 : 1 is its demand on graphics (1.4.11).
 */
class TapePixelsBrowserTest {
  private static final int SCALE = 3;

  /** A fill's box in the window, px. */
  private record Fill(double x, double y, double width, double height) {}

  @Test
  void neighbouring_fills_differ_by_tone_or_outline_in_light_dark_and_grey(@TempDir Path folder)
      throws IOException {
    DemoBook.copyTo(folder);
    try (Shop shop = new Shop(folder);
        Screen screen = new Screen(shop, 390, 664)) {
      screen.devtools(
          "Emulation.setDeviceMetricsOverride",
          Map.of("width", 390, "height", 664, "deviceScaleFactor", SCALE, "mobile", true));
      List<String> faults = new ArrayList<>();
      for (String scheme : List.of("light", "dark", "grey")) {
        screen.media("", "prefers-color-scheme", scheme.equals("dark") ? "dark" : "light");
        screen.devtools(
            "Emulation.setEmulatedVisionDeficiency",
            Map.of("type", scheme.equals("grey") ? "achromatopsia" : "none"));
        screen.go("/corners/marmot-lf");
        Fill tape = fill(screen, "f-off");
        List<Fill> down =
            List.of(
                fill(screen, "f-usable"),
                fill(screen, "f-held-back"),
                fill(screen, "f-past-a-limit"));
        Fill past = down.get(2);
        double foot = past.y() + past.height();
        Fill out = new Fill(tape.x(), foot + 4, tape.width(), tape.y() + tape.height() - foot - 8);
        BufferedImage seen =
            ImageIO.read(new ByteArrayInputStream(screen.screen.getScreenshotAs(OutputType.BYTES)));
        double last = -1;
        List<Fill> fills = new ArrayList<>(down);
        fills.add(out);
        List<String> ratios = new ArrayList<>();
        for (int i = 0; i < fills.size(); i++) {
          double now = luminance(seen, fills.get(i));
          if (i > 0) {
            double ratio = (Math.max(now, last) + .05) / (Math.min(now, last) + .05);
            ratios.add(String.format(java.util.Locale.ROOT, "%.1f", ratio));
            if (ratio < 3) {
              faults.add(scheme + ", fill " + i + ": " + ratio);
            }
          }
          last = now;
        }
        System.out.println(scheme + ": neighbouring fills of the tape " + ratios);
        // Bars and dye are both dark: what is past a limit stands out of the tape at both sides.
        if (past.x() > tape.x() - 3 || past.x() + past.width() < tape.x() + tape.width() + 3) {
          faults.add(scheme + ": no outline");
        }
      }
      assertEquals(List.of(), faults);
    }
  }

  @Test
  void on_a_desk_the_tape_stands_beside_the_map_of_gaps(@TempDir Path folder) {
    DemoBook.copyTo(folder);
    try (Shop shop = new Shop(folder);
        Screen screen = new Screen(shop, 1280, 800)) {
      screen.go("/corners/marmot-lf/gaps");
      String box = "document.querySelector('%s').getBoundingClientRect()";
      assertTrue(
          (Boolean)
              screen.ask(
                  "return "
                      + box.formatted(".desk-tape")
                      + ".right <= "
                      + box.formatted(".map")
                      + ".left"));
      String shapes =
          "return [...document.querySelectorAll('.map-row > summary .map-cell')]"
              + ".every(c => [...c.querySelectorAll('svg')].filter(s => s.checkVisibility())"
              + ".length == ";
      assertEquals(true, screen.ask(shapes + "3)"), "three locks a cell");
      screen.size(390, 664);
      assertEquals(true, screen.ask(shapes + "1)"), "the worst lock on a phone");
      assertEquals(
          false, screen.ask("return document.querySelector('.desk-tape').checkVisibility()"));
    }
  }

  /** The lowest fill of a kind on the standing tape. */
  private static Fill fill(Screen screen, String kind) {
    @SuppressWarnings("unchecked")
    List<Number> box =
        (List<Number>)
            screen.ask(
                "const r = [...document.querySelectorAll('.sheet-drawing .face ."
                    + kind
                    + "')].map(e => e.getBoundingClientRect()).filter(r => r.height > 0)"
                    + ".sort((a, b) => b.top - a.top)[0];"
                    + "return [r.x, r.y, r.width, r.height]");
    return new Fill(
        box.get(0).doubleValue(),
        box.get(1).doubleValue(),
        box.get(2).doubleValue(),
        box.get(3).doubleValue());
  }

  /** Mean over a strip beside its middle, where no stop, limit, tick or numeral lies. */
  private static double luminance(BufferedImage seen, Fill fill) {
    double sum = 0;
    int n = 0;
    int bottom = (int) ((fill.y() + fill.height() - 1) * SCALE);
    for (int y = (int) ((fill.y() + 1) * SCALE); y < bottom; y++) {
      for (int x = (int) ((fill.x() + .35 * fill.width()) * SCALE);
          x < (fill.x() + .41 * fill.width()) * SCALE;
          x++) {
        int rgb = seen.getRGB(x, y);
        sum +=
            .2126 * linear(rgb >> 16 & 255)
                + .7152 * linear(rgb >> 8 & 255)
                + .0722 * linear(rgb & 255);
        n++;
      }
    }
    return sum / n;
  }

  private static double linear(int level) {
    double share = level / 255.0;
    return share <= .04045 ? share / 12.92 : Math.pow((share + .055) / 1.055, 2.4);
  }
}
