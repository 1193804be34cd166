package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** SQL, typed into every box of every form that can be reached, is text like any other. */
class SqlTextTest {
  private static final Pattern BOX =
      Pattern.compile("<input type=\"text\"[^>]*\\sname=\"([^\"]*)\"");
  private static final ObjectMapper JSON = new ObjectMapper();

  private final Map<String, String> kept = new LinkedHashMap<>();
  private int sent;

  @Test
  void what_is_typed_is_refused_and_shown_again_or_kept_to_the_letter(@TempDir Path folder)
      throws IOException {
    try (Shop shop = new Shop(folder)) {
      Marmot marmot = new Marmot(shop);
      String round = marmot.startRound(marmot.left, Map.of());
      String height = marmot.height(round, "on-the-strap", "15 3/16", "31 5/8");
      marmot.read(height, "straight", Marmot.STRAP, "18 3/8");
      Collection<Page> pages = Crawl.from(shop.browser, "/", "/cars/new", "/pair");
      // Taking back comes last: what was taken back has no pages any more.
      typeInto(pages, form -> !form.action().endsWith("/take-back"));
      typeInto(pages, form -> form.action().endsWith(marmot.car + "/take-back"));
      assertTrue(sent > 60, "boxes typed into: " + sent);
      assertTrue(kept.size() > 15, "texts kept: " + kept);

      Set<String> written = texts(folder);
      kept.keySet().removeAll(written);
      assertEquals(Map.of(), kept, "not whole in the book");
      String cars = shop.get("/cars").is(200).text();
      shop.reopen();
      assertEquals(cars, shop.get("/cars").is(200).text());
      assertEquals(1, shop.browser.get("/cars/" + marmot.car + "/book").is(200).each("h1").size());
    }
  }

  private void typeInto(Collection<Page> pages, Predicate<Form> which) {
    Set<String> done = new HashSet<>();
    for (Page page : pages) {
      for (Form form : page.status() == 200 ? page.forms() : List.<Form>of()) {
        for (String box : which.test(form) ? boxes(page, form) : Set.<String>of()) {
          if (done.add(form.action() + " " + box)) {
            type(form, box);
          }
        }
      }
    }
  }

  private static Set<String> boxes(Page page, Form form) {
    Set<String> boxes = new HashSet<>();
    for (MatchResult box : BOX.matcher(page.html()).results().toList()) {
      if (form.values().containsKey(box.group(1))) {
        boxes.add(box.group(1));
      }
    }
    return boxes;
  }

  /** One box with SQL, the others as they were shown; a box that takes figures shows it again. */
  private void type(Form form, String box) {
    String text = "x'); drop table entry;--\" " + sent++;
    Page page = form.with(box, text).with("key", "sql-" + sent).send();
    if (page.status() == 303) {
      kept.put(text, form.action() + " " + box);
      return;
    }
    assertTrue(Set.of(200, 422, 429).contains(page.status()), form.action() + ": " + page.text());
    if (page.status() != 429) {
      boolean again =
          page.forms().stream().anyMatch(f -> f.values().containsValue(text))
              || page.text().contains(text);
      assertTrue(again, () -> form.action() + " lost what was typed as " + box);
    }
  }

  /** Every text in the book and in the list of devices. */
  private static Set<String> texts(Path folder) throws IOException {
    Set<String> texts = new HashSet<>();
    for (String line : Files.readAllLines(folder.resolve("book.jsonl"))) {
      add(texts, JSON.readTree(line));
    }
    add(texts, JSON.readTree(folder.resolve("devices.json").toFile()));
    return texts;
  }

  private static void add(Set<String> texts, JsonNode node) {
    if (node.isTextual()) {
      texts.add(node.asText());
    }
    node.forEach(child -> add(texts, child));
  }
}
