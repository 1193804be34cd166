package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A whole round entered with taps that scatter about the key that is meant, as a thumb's do: normal
 * in both directions, 95 % of them within 6 mm (the number), on a phone 70 mm wide.
 */
class ThumbTest {
  private static final double PX_PER_MM = 390 / 70.0;

  /** 95 % of a normal scatter in two dimensions lie within 2.4477 standard deviations. */
  private static final double SIGMA_PX = 6 / 2.4477 * PX_PER_MM;

  private static final double MOST_WRONG = 0.03;

  /**
   * Which key a tap reached, as the page took it: a browser gives a near miss to the key beside.
   */
  private static final String LISTEN =
      """
      window.taps = [];
      document.addEventListener('click', (e) => {
        const k = e.target.closest('button,a');
        window.taps.push(k ? (k.dataset.key ?? k.innerText) : '');
      }, true);
      """;

  /** What the screen shows; and where the middle of the key to be tapped is, if one is. */
  private static final String SEEN =
      """
      const [key] = arguments;
      const g = document.getElementById('guide');
      const fine = document.querySelector('[data-key="32nds"]');
      const seen = [document.querySelector('.pad-end') ? '' : g.dataset.step, g.dataset.kind,
        document.getElementById('g-box').value, fine?.getAttribute('aria-pressed') ?? 'false',
        String(!!document.querySelector('.g-more')),
        document.querySelector('[data-key="front edge out"]')?.classList.contains('key-on') ? 'out' : 'in',
        String(!document.querySelector('.g-stop').hidden)];
      const keys = key ? [...document.querySelectorAll('[data-key]')] : [];
      const r = keys.find(k => k.dataset.key.startsWith(key))?.getBoundingClientRect();
      return [seen, r ? [r.x + r.width / 2, r.y + r.height / 2, innerWidth, innerHeight] : null];
      """;

  /** The key that took the tap, as soon as it did; nothing if none did in 15 s. */
  private static final String TOOK =
      """
      const done = arguments[0];
      const from = performance.now();
      const look = () => {
        if (window.taps.length) done(window.taps.shift());
        else if (performance.now() - from > 15000) done(null);
        else setTimeout(look, 1);
      };
      look();
      """;

  /** What the screen shows of where the person is, and whether the book doubts and asks. */
  private record Seen(
      String step, String kind, String text, boolean fine, boolean menu, String out, boolean asks) {
    static Seen of(List<String> s) {
      return new Seen(
          s.get(0),
          s.get(1),
          s.get(2),
          s.get(3).equals("true"),
          s.get(4).equals("true"),
          s.get(5),
          s.get(6).equals("true"));
    }
  }

  /** What is seen before a tap, and where the key is: x, y, width and height of the screen. */
  private record Aim(Seen before, List<Number> at) {}

  private static final class Thumb {
    final Screen phone;
    final Random random;

    /**
     * What is to be entered, drawn apart from where taps land: the same however often one misses.
     */
    final Random values;

    final Map<String, String> wanted = new LinkedHashMap<>();
    final Map<String, List<Integer>> taps = new LinkedHashMap<>();
    final List<String> wrong = new ArrayList<>();
    int all;

    Thumb(Screen phone, long seed) {
      this.phone = phone;
      this.random = new Random(seed);
      this.values = new Random(seed);
      phone.ask(LISTEN);
    }

    Seen seen() {
      return aim("").before();
    }

    @SuppressWarnings("unchecked")
    private Aim aim(String key) {
      List<Object> said = (List<Object>) phone.ask(SEEN, key);
      return new Aim(Seen.of((List<String>) said.get(0)), (List<Number>) said.get(1));
    }

    double wrongRate() {
      return wrong.size() / (double) all;
    }

    /** One tap aimed at a key; says which key took it, empty when none did. */
    private String tapOnce(String key, Aim aim) {
      List<Number> at = aim.at();
      assertTrue(at != null, () -> "no key " + key + " at " + aim.before());
      double x = at.get(0).doubleValue() + SIGMA_PX * random.nextGaussian();
      double y = at.get(1).doubleValue() + SIGMA_PX * random.nextGaussian();
      all++;
      if (x < 0 || y < 0 || x >= at.get(2).doubleValue() || y >= at.get(3).doubleValue()) {
        return "";
      }
      phone.devtools(
          "Input.dispatchTouchEvent",
          Map.of("type", "touchStart", "touchPoints", List.of(Map.of("x", x, "y", y))));
      phone.devtools(
          "Input.dispatchTouchEvent", Map.of("type", "touchEnd", "touchPoints", List.of()));
      String took = (String) phone.screen.executeAsyncScript(TOOK);
      assertTrue(took != null, () -> "a tap on " + key + " was not heard");
      return took;
    }

    /** Taps until the key was hit; what was hit by mistake is undone with one tap each. */
    void tap(String key) {
      while (true) {
        Aim aim = aim(key);
        Seen before = aim.before();
        String took = tapOnce(key, aim);
        if (!took.isEmpty() && took.startsWith(key)) {
          return;
        }
        if (took.isEmpty()) {
          continue;
        }
        wrong.add(key + " → " + took);
        Seen after = seen();
        if (!after.equals(before)) {
          tap(undoing(took, before));
          if (List.of("spindle", "mark").contains(before.kind()) && !seen().equals(before)) {
            again(before);
            continue;
          }
          assertEquals(before, seen(), took + " taken for " + key + " is undone with one tap");
        }
      }
    }

    /** A box of a height comes back whole, and goes with the first key. */
    private void again(Seen before) {
      assertEquals(before.step() + before.kind(), seen().step() + seen().kind());
      for (char digit : before.text().toCharArray()) {
        tap(String.valueOf(digit));
      }
      assertTrue(before.text().isEmpty() || seen().equals(before), before + " is " + seen());
    }

    private static String undoing(String took, Seen before) {
      return switch (took) {
        case "take the last back" -> before.text().substring(before.text().length() - 1);
        case "32nds" -> "32nds";
        case "‹ Back" -> "Skip";
        case "Skip" -> "‹ Back";
        case "More" -> "Keys";
        case "undo" -> "put back";
        case "put back" -> "undo";
        case "front edge in" -> "front edge out";
        case "front edge out" -> "front edge in";
        case "drill" -> "drill";
        case "Type" -> "Type";
        case "minus", "." -> "take the last back";
        case "Put back" -> "undo";
        default -> took.matches("\\d") ? "take the last back" : "undo";
      };
    }

    /** Enters what is wanted at the step that is shown. */
    void step(Seen at) {
      String kind = at.kind();
      String id = kind.equals("mark") ? at.step() + "/mark" : at.step();
      String value = wanted.computeIfAbsent(id, i -> value(i, kind));
      int from = all;
      if (value.equals("as at")) {
        tap("as at '");
      } else if (kind.equals("angle")) {
        for (char c : value.toCharArray()) {
          tap(c == '-' ? "minus" : String.valueOf(c));
        }
        tap("Keep");
      } else if (value.matches("[a-z ]+")) {
        tap(value);
      } else {
        inches(value);
      }
      taps.computeIfAbsent(kind, k -> new ArrayList<>()).add(all - from);
    }

    private void inches(String value) {
      String plain = value;
      if (plain.startsWith("-")) {
        tap("front edge out");
        plain = plain.substring(1);
      }
      int space = plain.indexOf(' ');
      String whole = space >= 0 ? plain.substring(0, space) : plain.contains("/") ? "" : plain;
      String part = plain.substring(whole.length()).strip();
      for (char digit : whole.toCharArray()) {
        tap(String.valueOf(digit));
      }
      if (part.endsWith("/32")) {
        tap("32nds");
      }
      tap(part.isEmpty() ? "even" : part);
    }

    private String value(String step, String kind) {
      int place =
          List.of("on-the-strap-1", "in-between-1", "in-between-2", "stop-touch-1")
              .indexOf(step.substring(0, step.indexOf('/')));
      return switch (kind) {
        case "spindle" -> (14 + 4 * place) + " 3/8";
        case "mark" -> place == 0 ? "30 1/4" : "as at";
        case "angle" -> values.nextBoolean() ? "-1.2" : "0.8";
        case "toe" -> values.nextBoolean() ? "3/16" : "-1/8";
        case "tape" ->
            (step.contains("strap-length") ? 20 - 2 * place : 27 - 3 * place)
                + List.of("", " 1/2", " 3/16", " 7/8", " 5/8", " 5/32").get(values.nextInt(6));
        default -> gap(step);
      };
    }

    /** Past a height where something touches nothing more is asked: there at the highest alone. */
    private String gap(String step) {
      int which = values.nextInt(20);
      if (which < 7) {
        int word = values.nextInt(5);
        return word < 3 || !step.startsWith("stop-touch")
            ? "well clear"
            : word == 3 ? "touches" : "binds";
      }
      String odd = String.valueOf(2 * values.nextInt(8) + 1);
      return which < 15 ? odd + "/16" : which < 17 ? odd + "/32" : "1 " + odd + "/16";
    }
  }

  @TempDir Path folder;

  @Test
  void a_thumb_enters_a_whole_round_with_hardly_a_wrong_key_and_undoes_each_with_one_tap()
      throws IOException {
    round(390, 844, 1);
  }

  @Test
  void so_it_does_on_a_smaller_phone() throws IOException {
    round(360, 740, 2);
  }

  @Test
  void so_do_other_thumbs_taken_together() throws IOException {
    Thumb three = entered(390, 844, 3);
    Thumb four = entered(390, 844, 4);
    Thumb five = entered(360, 740, 5);
    double wrong = three.wrong.size() + four.wrong.size() + five.wrong.size();
    double rate = wrong / (three.all + four.all + five.all);
    System.out.printf(Locale.ROOT, "thumbs 3 to 5 together: %.1f %% wrong keys%n", 100 * rate);
    assertTrue(rate <= MOST_WRONG, "wrong keys " + rate);
    List<Integer> lengths = new ArrayList<>();
    for (Thumb thumb : List.of(three, four, five)) {
      lengths.addAll(thumb.taps.get("tape"));
      lengths.addAll(thumb.taps.get("spindle"));
    }
    assertTrue(median(lengths) <= 3, "tape readings " + lengths);
  }

  private void round(int width, int height, long seed) throws IOException {
    assertTrue(entered(width, height, seed).wrongRate() <= MOST_WRONG, "wrong keys");
  }

  /** A round with its taps told and counted, and the book found to hold what was wanted. */
  private Thumb entered(int width, int height, long seed) throws IOException {
    try (Shop shop = new Shop(folder.resolve("book-" + seed));
        Screen phone = new Screen(shop, width, height)) {
      Marmot marmot = new Marmot(shop);
      String round = marmot.everything(marmot.left, Map.of());
      phone.go("/rounds/" + round + "/guide");
      phone.find(Screen.BOX);
      Thumb thumb = new Thumb(phone, seed);
      for (Seen at = thumb.seen(); !at.step().isEmpty(); at = thumb.seen()) {
        if (at.asks()) {
          thumb.tap("It is right, count it");
        } else {
          thumb.step(at);
        }
      }
      phone.sent();
      System.out.printf(
          Locale.ROOT,
          "thumb %d on %d x %d: %d taps for %d readings, %d wrong keys (%.1f %%) %s; median taps"
              + " %.1f a gap, %.1f a tape reading, %.1f a spindle, %.1f a mark, %.1f toe, %.1f an"
              + " angle%n",
          seed,
          width,
          height,
          thumb.all,
          thumb.wanted.size(),
          thumb.wrong.size(),
          100 * thumb.wrongRate(),
          thumb.wrong,
          median(thumb.taps.get("gap")),
          median(thumb.taps.get("tape")),
          median(thumb.taps.get("spindle")),
          median(thumb.taps.get("mark")),
          median(thumb.taps.get("toe")),
          median(thumb.taps.get("angle")));
      assertTrue(thumb.taps.get("gap").size() > 80, "a whole round: " + thumb.taps);
      assertTrue(median(thumb.taps.get("gap")) <= 1, "gaps " + thumb.taps);
      // One round reads a dozen lengths: a miss more or less moves their median by a tap.
      assertTrue(median(thumb.taps.get("tape")) <= 4, "tape " + thumb.taps);
      assertTrue(median(thumb.taps.get("spindle")) <= 4, "spindle " + thumb.taps);
      assertEquals(wanted(thumb), inTheBook(shop));
      return thumb;
    }
  }

  private static double median(List<Integer> taps) {
    List<Integer> sorted = taps.stream().sorted().toList();
    int half = sorted.size() / 2;
    return sorted.size() % 2 == 1
        ? sorted.get(half)
        : (sorted.get(half - 1) + sorted.get(half)) / 2.0;
  }

  private static List<String> wanted(Thumb thumb) {
    List<String> wanted = new ArrayList<>();
    thumb.wanted.forEach(
        (step, value) -> {
          String what = step.substring(step.lastIndexOf('/') + 1);
          if (!what.equals("mark") || !value.equals("as at")) {
            wanted.add(
                (what.equals("height") || what.equals("mark")
                        ? what
                        : step.substring(step.indexOf('/') + 1))
                    + " "
                    + value);
          }
        });
    return wanted.stream().sorted().toList();
  }

  /** Every height and reading of the file that was not taken back, and no other. */
  private static List<String> inTheBook(Shop shop) throws IOException {
    List<JsonNode> entries = new ArrayList<>();
    Set<String> takenBack = new HashSet<>();
    for (String line : shop.lines().subList(1, shop.lines().size())) {
      JsonNode entry = new ObjectMapper().readTree(line);
      entries.add(entry);
      if (entry.get("kind").asText().equals("correction")) {
        takenBack.add(entry.get("body").get("target").asText());
      }
    }
    List<String> said = new ArrayList<>();
    for (JsonNode entry : entries) {
      JsonNode body = entry.get("body");
      if (takenBack.contains(entry.get("key").asText())) {
        continue;
      }
      if (entry.get("kind").asText().equals("height")) {
        said.add("height " + typed(body.get("spindle")));
        if (body.has("mark")) {
          said.add("mark " + typed(body.get("mark")));
        }
      } else if (entry.get("kind").asText().equals("reading")) {
        String row =
            body.has("point")
                ? "p-" + body.get("point").asText()
                : "q-" + body.get("quantity").asText();
        said.add(body.get("steering").asText() + "/" + row + " " + typed(body.get("typed")));
      }
    }
    return said.stream().sorted().toList();
  }

  private static String typed(JsonNode text) {
    JsonNode plain = text.isObject() ? text.get("typed") : text;
    return plain.asText().replaceAll(" (in|°)$|°$", "").replaceFirst("^- ", "-");
  }
}
