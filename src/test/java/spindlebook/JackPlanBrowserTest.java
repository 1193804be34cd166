package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spindlebook.JackPlanTest.Truth;

/** The same plan on the pad: what changes between heights fills the screen, the end says it all. */
class JackPlanBrowserTest {
  private static final String SEEN =
      """
      const g = document.getElementById('guide');
      const stop = g.querySelector('.g-stop');
      const keys = [...g.querySelectorAll('[data-key]')].filter((k) => k.checkVisibility());
      return [
        document.querySelector('.pad-end') ? '' : g.dataset.step, g.dataset.kind ?? '',
        stop.hidden ? '' : stop.innerText, g.querySelector('.g-lines')?.innerText ?? '',
        keys.map((k) => k.dataset.key).join('|'), document.querySelector('.step-height').innerText];
      """;

  private static final String PRESS =
      """
      const keys = [...document.querySelectorAll('[data-key]')].filter((k) => k.checkVisibility());
      const key = keys.find((k) => k.dataset.key === arguments[0])
        ?? keys.find((k) => k.dataset.key.startsWith(arguments[0]));
      key?.click();
      return !!key;
      """;

  @TempDir Path folder;
  private Screen phone;
  private int taps;
  private int pictures;
  private final List<String> stops = new ArrayList<>();

  private List<?> seen() {
    return (List<?>) phone.ask(SEEN);
  }

  private void press(String key) {
    assertEquals(true, phone.ask(PRESS, key), key + " at " + seen());
    taps++;
  }

  private void type(String value) {
    if (value.matches("[a-z ]+")) {
      press(value);
      return;
    }
    String plain = value.startsWith("-") ? value.substring(1) : value;
    if (!plain.equals(value)) {
      press("−");
    }
    if (value.endsWith("°")) {
      for (char c : plain.replace("°", "").toCharArray()) {
        press(String.valueOf(c));
      }
      press("Keep");
      return;
    }
    String whole = plain.contains("/") ? plain.replaceFirst(" ?\\d+/\\d+$", "") : plain;
    String part = plain.substring(whole.length()).strip();
    for (char c : whole.toCharArray()) {
      press(String.valueOf(c));
    }
    if (part.endsWith("/32")) {
      press("32nds");
    }
    press(part.isEmpty() ? "even" : part);
  }

  private void picture(String name) throws IOException {
    String to = System.getProperty("pictures");
    if (to != null) {
      Map<?, ?> shot =
          (Map<?, ?>) phone.devtools("Page.captureScreenshot", Map.of("format", "png"));
      Files.write(
          Path.of(to, String.format("%02d-%s.png", ++pictures, name)),
          Base64.getDecoder().decode((String) shot.get("data")));
    }
  }

  @Test
  void a_steered_corner_is_walked_to_its_verdict_on_the_pad() throws IOException {
    JackPlanTest made = new JackPlanTest();
    made.folder = folder;
    String corner = made.corner("steered-double-a-arm", false);
    try (Shop shop = made.shop) {
      phone = new Screen(shop, 390, 664);
      String round = made.marmot.startRound(corner, Map.of());
      phone.go("/corners/" + corner + "/rounds/new");
      picture("start");
      phone.go("/rounds/" + round + "/guide");
      phone.find(Screen.key("Done"));
      Truth truth =
          JackPlanTest.truth(
              "tie-rod-upper-arm",
              JackPlanTest.DROOP_END + 0.75,
              "tyre-frame",
              JackPlanTest.BUMP_END + 1);
      walk(truth);
      phone.sent();
      phone.wait(() -> phone.text(".pad-end").contains("Droop"));
      picture("end");
      String end = phone.text("#guide");
      assertTrue(end.contains("Droop: too close") && end.contains("Bump: clear"), end);
      // What is to be done before a question stands alone: the end's words stayed above it.
      assertEquals(
          "none",
          phone.ask(
              "const end = document.querySelector('.pad-end'); end.hidden = true; const shown ="
                  + " getComputedStyle(end).display; end.hidden = false; return shown;"));
      System.out.println(taps + " taps, " + stops + "\n" + end);
      phone.close();
    }
  }

  private void walk(Truth truth) throws IOException {
    Map<String, Double> z = new HashMap<>();
    String before = "";
    for (int n = 0; n < 400; n++) {
      List<?> seen = seen();
      String step = (String) seen.get(0);
      String kind = (String) seen.get(1);
      String stop = (String) seen.get(2);
      if (step.isEmpty()) {
        phone.sent();
        phone.wait(() -> phone.text(".pad-end").contains("Droop") || !seen().get(0).equals(""));
        if (seen().get(0).equals("")) {
          return;
        }
        continue;
      }
      String place = step.substring(0, step.indexOf('/'));
      if (place.startsWith("closing") && !step.equals(before)) {
        // What was read last may have decided it: the book says so in a moment.
        before = step;
        phone.sent();
        phone.pause(2000);
        continue;
      }
      if (!stop.isEmpty()) {
        picture("stop");
        stops.add(stop.lines().findFirst().orElse(""));
        press(
            stop.contains("It stands there")
                ? "It stands there"
                : stop.contains("Done") ? "Done" : "It is right");
        continue;
      }
      String count = phone.text(".step-n");
      String steady = place.startsWith("closing") ? "" : "height \\d of 7";
      assertTrue(count.matches(steady), count + " at " + step);
      if (!step.equals(before) && (kind.equals("others") || kind.equals("spindle"))) {
        picture(kind);
      }
      before = step;
      switch (kind) {
        case "spindle" -> {
          double here = aimed((String) seen.get(3), step);
          z.put(place, here);
          type(JackPlanTest.text(JackPlanTest.MARK + here, 16));
        }
        case "mark" -> {
          if (((String) seen.get(4)).contains("as at")) {
            press("as at");
          } else {
            type("32");
          }
        }
        case "others" -> press("All others well clear");
        default ->
            type(
                JackPlanTest.value(truth, step.substring(step.lastIndexOf('/') + 1), z.get(place)));
      }
    }
  }

  private static double aimed(String said, String step) {
    var about = java.util.regex.Pattern.compile("about (\\d+)(?: (\\d)/(\\d))? in").matcher(said);
    if (step.startsWith("closing") && about.find()) {
      double part =
          about.group(2) == null
              ? 0
              : Double.parseDouble(about.group(2)) / Double.parseDouble(about.group(3));
      return Double.parseDouble(about.group(1)) + part - JackPlanTest.MARK;
    }
    return JackPlanTest.at(step);
  }
}
