package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the program itself asks for, it takes: in every form of every page, and on the phone. */
class PrefilledFormsTest {
  private static final Pattern KEY = Pattern.compile("[a-z0-9]{14}|\\b[0-9]+\\b");
  private static final Pattern LINK = Pattern.compile("href=\"(/[^\"#]*)");
  private static final Pattern WRONG =
      Pattern.compile("<(?:input|textarea)\\b[^>]*aria-invalid=\"true\"[^>]*>");
  private static final Pattern WRONG_CHOICE =
      Pattern.compile("<fieldset[^>]*-problem[^>]*>.*?name=\"([^\"]*)\"", Pattern.DOTALL);

  /** They end what other forms are about, so they are sent when those were. */
  private static final Pattern ENDS = Pattern.compile(".*/(take-back|retire|other-side|answer)");

  private static final List<String> SPINDLES = List.of("14 3/8", "18 7/8", "22 3/16", "26 5/8");

  @TempDir Path folder;
  private final Set<String> sent = new HashSet<>();
  private final Set<String> guided = new TreeSet<>();
  private Shop shop;

  @ParameterizedTest
  @CsvSource({
    "steered-double-a-arm, trailing-arm",
    "unsteered-double-a-arm, solid-axle-end",
  })
  void every_form_is_taken_as_it_stands_before_and_after_ride_is_read(String front, String rear) {
    try (Shop opened = new Shop(folder)) {
      shop = opened;
      Form form = shop.get("/").form("/cars").with("name", "Marmot");
      String car = form.with("front", front).with("rear", rear).keep().location().substring(6);
      List<String> corners = List.of(car + "-lf", car + "-lr");
      for (String corner : corners) {
        measure(start(corner, Map.of()));
      }
      everyForm();
      int before = guided.size();
      for (String corner : corners) {
        ride(start(corner, Map.of("spring", "in", "on", "tyres")));
      }
      everyForm();
      assertTrue(before > 3 && guided.size() > before, "rounds of what is needed: " + guided);
      assertTrue(sent.size() > 100, "forms: " + sent.size());
      assertEquals(List.of(), shop.told);
    }
  }

  @Test
  void what_a_measured_corner_still_needs_is_taken_before_ride_is_read() {
    try (Shop opened = new Shop(folder)) {
      shop = opened;
      new Marmot(shop).prepared().measured();
      everyForm();
      assertTrue(
          guided.stream().anyMatch(g -> g.contains("from level with the frame mark")),
          "heights are told from the mark: " + guided);
      assertEquals(List.of(), shop.told);
    }
  }

  private String start(String corner, Map<String, String> conditions) {
    String action = "/corners/" + corner + "/rounds";
    Form form = shop.get(action + "/new").form(action);
    for (Map.Entry<String, String> c : conditions.entrySet()) {
      form = form.with(c.getKey(), c.getValue());
    }
    form.keep();
    return form.key();
  }

  private void ride(String round) {
    height(round, "ride", "20 3/4");
  }

  private void height(String round, String name, String spindle) {
    Form form = shop.get("/rounds/" + round + "/heights/new").form("/rounds/" + round + "/heights");
    for (Map.Entry<String, String> typed :
        Map.of("name", name, "spindle", spindle, "mark", "31 5/8").entrySet()) {
      form = form.with(typed.getKey(), typed.getValue());
    }
    if (form.values().containsKey("otherSpindle")) {
      form = form.with("otherSpindle", spindle).with("otherMark", "31 5/8");
    }
    form.keep();
  }

  private void measure(String round) {
    if (shop.get("/rounds/" + round + "/guide").status() == 303) {
      List<String> names = List.of("on-the-strap", "in-between", "in-between", "stop-touch");
      for (int i = 0; i < names.size(); i++) {
        height(round, names.get(i), SPINDLES.get(i));
      }
    } else {
      walk(round, true);
    }
  }

  // --- every form

  private void everyForm() {
    List<Form> forms = new ArrayList<>();
    List<String> pages = new ArrayList<>();
    for (Page page : pages()) {
      for (Form form : page.forms()) {
        boolean ours = !form.action().matches("/(devices|pair).*|.*/photos");
        if (ours && sent.add(shape(form))) {
          forms.add(form);
          pages.add(page.path());
        }
      }
    }
    List<Integer> order = new ArrayList<>();
    for (int i = 0; i < forms.size(); i++) {
      order.add(i);
    }
    order.sort(Comparator.comparing(i -> ENDS.matcher(forms.get(i).action()).matches()));
    for (int i : order) {
      send(pages.get(i), forms.get(i));
    }
  }

  /** A page of each kind that can be reached; of what is asked for, each. */
  private List<Page> pages() {
    List<Page> pages = new ArrayList<>();
    Map<String, Integer> seen = new HashMap<>();
    Set<String> known = new HashSet<>();
    Deque<String> open = new ArrayDeque<>(List.of("/", "/cars"));
    while (!open.isEmpty()) {
      String path = open.poll();
      boolean few = seen.merge(KEY.matcher(path).replaceAll("*"), 1, Integer::sum) <= 1;
      if (!few || path.startsWith("/static/") || !known.add(path)) {
        continue;
      }
      Page page = shop.get(path);
      pages.add(page);
      if (page.status() == 302) {
        open.add(page.location());
      }
      LINK.matcher(page.html()).results().map(m -> Page.decoded(m.group(1))).forEach(open::add);
    }
    return pages;
  }

  /** A form and what it is filled with, whichever thing it is of. */
  private static String shape(Form form) {
    Map<String, String> filled = new LinkedHashMap<>(form.values());
    filled.remove("key");
    filled.remove("after");
    return KEY.matcher(form.action() + " " + filled).replaceAll("*");
  }

  /** As its page shows it now, if it still does. */
  private void send(String path, Form known) {
    Page page = shop.get(path);
    for (Form form : page.forms()) {
      if (form.action().equals(known.action()) && shape(form).equals(shape(known))) {
        Page answer = form.send();
        String at = path + " " + form.action() + " " + form.values();
        if (answer.status() == 422) {
          wrongOnlyWhereEmpty(at, form, answer);
        } else {
          assertTrue(List.of(200, 303).contains(answer.status()), () -> at + answer.text());
        }
        boolean round = answer.status() == 303 && answer.location().endsWith("/guide");
        if (round && guided.add(shape(form))) {
          walk(answer.location().split("/")[2], false);
        }
        return;
      }
    }
  }

  private static void wrongOnlyWhereEmpty(String at, Form form, Page answer) {
    List<String> wrong = new ArrayList<>();
    WRONG
        .matcher(answer.html())
        .results()
        .forEach(
            m -> wrong.add(Page.attributes(m.group().replaceFirst("<\\w+ ?", "")).get("name")));
    Matcher choice = WRONG_CHOICE.matcher(answer.html());
    while (choice.find()) {
      wrong.add(choice.group(1));
    }
    assertTrue(!wrong.isEmpty(), () -> at + " says: " + answer.text());
    for (String name : wrong) {
      assertEquals("", form.value(name), () -> at + " says: " + answer.text());
    }
  }

  // --- every step of a guided round, as the phone sends it

  /**
   * @param all whether everything is read that is asked for, or the heights and a first reading
   */
  private void walk(String round, boolean all) {
    Page guide = shop.get("/rounds/" + round + "/guide");
    if (guide.status() == 303) {
      return;
    }
    JsonNode plan = plan(guide);
    Set<String> taken = new HashSet<>();
    int i = 0;
    for (JsonNode place : plan.get("places")) {
      String height = place.path("height").asText("");
      if (height.isEmpty()) {
        height = "h" + sent(round).length() + guided.size() + i + round;
        Map<String, String> body = new LinkedHashMap<>();
        body.put("what", "height");
        for (String said : List.of("name", "label", "pairing", "otherName")) {
          if (place.hasNonNull(said)) {
            body.put(said, place.get(said).asText());
          }
        }
        body.put("spindle", SPINDLES.get(i % SPINDLES.size()));
        body.put("mark", "31 5/8");
        phone(round, height, body);
      }
      i++;
      String at = height;
      (place.has("asked") ? place : plan)
          .get("asked")
          .fields()
          .forEachRemaining(
              asked ->
                  asked
                      .getValue()
                      .forEach(
                          row -> {
                            if (all || taken.add(round)) {
                              read(round, plan, at, asked.getKey(), row.asText());
                            }
                          }));
    }
  }

  private static String sent(String round) {
    return "/rounds/" + round + "/sent";
  }

  private static JsonNode plan(Page guide) {
    Matcher plan = Pattern.compile("data-plan=\"([^\"]*)\"").matcher(guide.is(200).html());
    assertTrue(plan.find(), guide::text);
    try {
      return new ObjectMapper().readTree(Page.decoded(plan.group(1)));
    } catch (IOException unread) {
      throw new UncheckedIOException(unread);
    }
  }

  private void read(String round, JsonNode plan, String height, String steering, String row) {
    String value =
        switch (plan.get("rows").get(row).get("kind").asText()) {
          case "angle" -> "1.5";
          case "tape" -> "20 1/2";
          case "toe", "signed" -> "-1/8";
          default -> "3/8";
        };
    Map<String, String> body =
        Map.of(
            "what", "reading", "height", height, "steering", steering, "row", row, "value", value);
    String doubt = phone(round, height + steering + row.substring(2), body).path("doubt").asText();
    assertTrue(!doubt.contains("read"), () -> row + " " + value + ": " + doubt);
  }

  private JsonNode phone(String round, String key, Map<String, String> body) {
    Map<String, String> posted = new LinkedHashMap<>(body);
    posted.put("key", key);
    posted.put("after", "0");
    Page answer = shop.browser.post(sent(round), posted);
    assertEquals(200, answer.status(), () -> body + " " + answer.html());
    try {
      return new ObjectMapper().readTree(answer.html());
    } catch (IOException unread) {
      throw new UncheckedIOException(unread);
    }
  }
}
