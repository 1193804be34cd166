package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.javalin.Javalin;
import io.javalin.router.Endpoint;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/**
 * What a page does not offer, its address refuses: every form there is, sent to every thing of two
 * cars that it does not belong to.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class NotOfferedTest {
  private static final Pattern GAP = Pattern.compile("\\{([a-z]+)}");

  private Shop shop;

  /** Key and kind of one entry of each kind a car has. */
  private final Map<String, String> things = new LinkedHashMap<>();

  @BeforeAll
  void open(@TempDir Path folder) throws IOException {
    shop = new Shop(folder);
    Marmot other = new Marmot(shop).prepared();
    String round = other.startRound(other.left, Map.of());
    String height = other.height(round, "on-the-strap", "15 3/16", "31 5/8");
    String taken = other.read(height, "straight", Marmot.STRAP, "18 11/16");
    other.read(height, "straight", Marmot.SHOCK, "25");
    other.send("/cars/" + other.car + "/use", Map.of("amount", "12"));
    String back = "/entries/" + taken + "/take-back";
    shop.get("/entries/" + taken).form(back).with("reason", "typed by mistake").keep();
    int ofOther = shop.entries();
    shop.close();
    DemoCar.play(folder, Clock.systemUTC(), t -> {}, () -> false);
    shop.open();
    List<String> lines = shop.lines();
    oneOfEachKind(lines.subList(1 + ofOther, lines.size()));
    oneOfEachKind(lines.subList(1, 1 + ofOther));
    assertTrue(things.size() > 20, things.toString());
  }

  private void oneOfEachKind(List<String> lines) throws IOException {
    Set<String> seen = new HashSet<>();
    for (String line : lines) {
      JsonNode entry = new ObjectMapper().readTree(line);
      String kind = entry.get("kind").asText();
      boolean doubted = entry.at("/body/doubt").isTextual();
      if (seen.add(kind) || kind.equals("correction") || doubted) {
        things.put(entry.get("key").asText(), kind);
      }
    }
  }

  @AfterAll
  void close() {
    shop.close();
  }

  private List<String> routes(String method) {
    List<String> paths = new ArrayList<>();
    Javalin.create(
        config -> {
          Routes.add(config.routes, shop.app());
          config.unsafe.internalRouter.allHttpHandlers().stream()
              .map(parsed -> parsed.endpoint)
              .filter(e -> e.method.name().equals(method))
              .map((Endpoint e) -> e.path)
              .filter(p -> p.contains("{") && !p.startsWith("/pair"))
              .forEach(paths::add);
        });
    return paths;
  }

  private String firstOf(String kind) {
    return things.keySet().stream()
        .filter(k -> things.get(k).equals(kind))
        .findFirst()
        .orElseThrow();
  }

  /** What really stands in the gap of an address. */
  private String real(String gap) {
    return switch (gap) {
      case "car", "corner", "round", "height", "reading" -> firstOf(gap);
      case "alignment" -> "lf-camber";
      case "todo" -> firstOf("to-do");
      case "signoff" -> firstOf("sign-off");
      case "entry" -> firstOf("reading");
      case "tool" -> "tape";
      case "point" -> "tyre-frame";
      case "adjuster" -> "limit-strap";
      case "device" -> device();
      case "table" -> "entries";
      case "joint" -> "lf";
      case "stop" -> "hydraulic";
      case "part" -> "part-lf-strap";
      default -> "none";
    };
  }

  private String device() {
    Matcher own = Pattern.compile("/devices/(d-[a-z0-9]+)").matcher(shop.get("/devices").html());
    assertTrue(own.find());
    return own.group(1);
  }

  private String address(String route) {
    return GAP.matcher(route).replaceAll(gap -> real(gap.group(1)));
  }

  /** A form of each address that takes one, as some page shows it. */
  private Map<String, Form> forms() {
    Map<String, Form> forms = new TreeMap<>();
    for (String page : routes("GET")) {
      for (Form form : shop.get(address(page)).forms()) {
        routes("POST").stream()
            .filter(r -> form.action().matches(GAP.matcher(r).replaceAll("[^/]+")))
            .findFirst()
            .ifPresent(r -> forms.putIfAbsent(r, form));
      }
    }
    return forms;
  }

  @Test
  void every_form_is_refused_by_every_thing_it_does_not_belong_to() {
    Map<String, Form> forms = forms();
    assertTrue(forms.size() > 25, forms.keySet().toString());
    List<String> wrong = new ArrayList<>();
    int entries = shop.entries();
    int sent = 0;
    for (String route : routes("POST")) {
      Map<String, String> fields = new LinkedHashMap<>();
      if (forms.containsKey(route)) {
        fields.putAll(forms.get(route).values());
      }
      for (String gap : GAP.matcher(route).results().map(m -> m.group(1)).toList()) {
        for (String kind : Set.copyOf(things.values())) {
          if (gap.equals("entry")
              || kind.equals(gap)
              || kind.equals("to-do") && gap.equals("todo")) {
            continue;
          }
          String key = firstOf(kind);
          fields.put("key", "foreign-" + sent++);
          String address = address(route.replace("{" + gap + "}", key));
          Page answer = shop.browser.post(address, fields);
          if (answer.status() < 400 || answer.status() >= 500) {
            wrong.add(answer.status() + " " + address + " (" + kind + ")");
          }
        }
      }
    }
    assertEquals(List.of(), wrong);
    assertTrue(sent > 500, "sent: " + sent);
    assertEquals(entries, shop.entries());
  }

  @Test
  void what_is_done_with_an_entry_is_done_only_where_its_page_offers_it() {
    List<String> wrong = new ArrayList<>();
    int entries = shop.entries();
    int refused = 0;
    for (String key : things.keySet()) {
      Page page = shop.get("/entries/" + key).is(200);
      for (String action : List.of("/take-back", "/answer", "/counts")) {
        String address = "/entries/" + key + action;
        Map<String, String> fields =
            Map.of("key", "foreign-" + refused, "answer", "not", "counts", "again");
        boolean putsBack = things.get(key).equals("correction");
        if (page.html().contains("action=\"" + address + "\"") || putsBack) {
          continue;
        }
        Page answer = shop.browser.post(address, fields);
        refused++;
        // What is withdrawn or answered already is so: pressed again, the answer is the first
        // one's.
        boolean done = page.text().contains("Withdrawn") || page.text().contains("answered:");
        boolean again = done && answer.status() == 303;
        if ((answer.status() < 400 || answer.status() >= 500) && !again) {
          wrong.add(answer.status() + " " + address + " (" + things.get(key) + ")");
        }
      }
    }
    assertEquals(List.of(), wrong);
    assertTrue(refused > 40, "refused: " + refused);
    assertEquals(entries, shop.entries());
    everyPageAnswers();
  }

  @Test
  void neither_does_a_phone_withdraw_or_answer_what_nothing_else_lets_it() {
    String sent = "/rounds/" + firstOf("round") + "/sent";
    int entries = shop.entries();
    List<String> wrong = new ArrayList<>();
    for (String kind : List.of("car", "corner", "round", "definition", "answer", "none of these")) {
      for (String what : List.of("take-back", "so", "not")) {
        String target = kind.startsWith("none") ? "never-written" : firstOf(kind);
        Page answer =
            shop.browser.post(sent, Map.of("key", "k-" + kind, "what", what, "target", target));
        if (answer.status() != 422 || !answer.html().contains("sentence")) {
          wrong.add(answer.status() + " " + what + " " + kind);
        }
      }
    }
    for (String kind : List.of("car", "corner", "round", "reading")) {
      Page hung =
          shop.browser.post(
              sent,
              Map.of(
                  "key", "h-" + kind, "what", "reading", "height", firstOf(kind), "value", "1/4"));
      if (hung.status() != 422) {
        wrong.add(hung.status() + " a reading on a " + kind);
      }
    }
    assertEquals(List.of(), wrong);
    assertEquals(entries, shop.entries());
    everyPageAnswers();
  }

  private void everyPageAnswers() {
    for (String page : routes("GET")) {
      if (!page.startsWith("/static") && !page.contains("{file}")) {
        boolean way = page.endsWith("/alignment/new");
        Page got = shop.get(address(page) + (way ? "?way=gauge" : ""));
        // An address that moved leads to where it is now.
        (page.endsWith("/bump-steer") ? shop.get(got.is(302).location()) : got).is(200);
      }
    }
  }
}
