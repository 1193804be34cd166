package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What holds on every page that can be reached, and what must not be said on any. */
class EveryPageTest {
  private static final Pattern INPUT =
      Pattern.compile("<(?:input|select|textarea)\\b((?:\"[^\"]*\"|[^\">])*)>");
  private static final Pattern ID = Pattern.compile("\\sid=\"([^\"]*)\"");
  private static final Pattern LABEL = Pattern.compile("<label\\b[^>]*>");
  private static final Pattern SAFE = Pattern.compile("\\b(un)?safe(ly|ty)?\\b");

  /** What the content policy forbids. */
  private static final Pattern INLINE =
      Pattern.compile("<[^>]*\\s(style|on[a-z]+)=|<style|<script(?![^>]*\\ssrc=)|javascript:");

  @Test
  void every_page_is_whole_and_every_link_leads_somewhere(@TempDir Path folder) {
    try (Shop shop = new Shop(folder)) {
      Marmot marmot = new Marmot(shop).prepared().measured().measuredOn();
      marmot.adjust(marmot.left, "upper-rod-ends", "4");
      marmot.height(marmot.round, "stop-touch", "12", "31 5/8");
      String corners = "/cars/" + marmot.car + "/corners";
      marmot.send(corners + "/new", corners, Map.of("end", "rear", "layout", "trailing-arm"));
      String rear = marmot.startRound(marmot.car + "-lr", Map.of());
      String height = marmot.height(rear, "on-the-strap", "15 3/16", "31 5/8");
      marmot.read(height, "straight", "p-cv-angle", "18.5");
      marmot.read(height, "straight", "p-cv-plunge", "-1/8");
      String aligned = "/corners/" + marmot.left + "/alignment";
      Map<String, String> gauge = Map.of("rolled", "no", "read", "-0.5", "turned", "0.7");
      marmot.send(aligned + "/new?way=gauge", aligned, gauge);
      marmot.send(aligned + "/targets", Map.of("camber-to", "0"));
      Collection<Page> pages = Crawl.from(shop.browser, "/", "/cars");
      assertTrue(pages.size() > 150, "pages: " + pages.size());
      for (Page page : pages) {
        if (page.status() == 302) {
          continue;
        }
        assertEquals(200, page.status(), () -> page.path() + " is linked to");
        if (isPage(page)) {
          whole(page);
        }
      }
      assertEquals(List.of(), shop.told);
    }
  }

  /** And no file to be taken away. */
  static boolean isPage(Page page) {
    return page.headers().firstValue("Content-Type").orElse("").startsWith("text/html");
  }

  @Test
  void a_book_without_a_car_asks_for_one(@TempDir Path folder) {
    try (Shop shop = new Shop(folder)) {
      for (Page page : Crawl.from(shop.browser, "/", "/cars")) {
        assertEquals(200, page.status(), page.path());
      }
      whole(shop.get("/"));
      whole(shop.get("/cars"));
    }
  }

  static void whole(Page page) {
    String at = page.path();
    String html = page.html();
    assertEquals(
        "text/html;charset=utf-8",
        page.headers()
            .firstValue("Content-Type")
            .orElse("")
            .toLowerCase(Locale.ROOT)
            .replace(" ", ""),
        at);
    assertTrue(html.startsWith("<!doctype html>"), at);
    assertTrue(html.contains("<html lang=\"en\">"), at);
    assertTrue(html.contains("<meta charset=\"utf-8\">"), at);
    assertEquals(1, page.each("h1").size(), at);
    assertFalse(page.each("h1").get(0).isBlank(), at);
    assertFalse(page.each("title").get(0).isBlank(), at);
    assertEquals(1, page.each("main").size(), at);
    assertFalse(SAFE.matcher(page.text().toLowerCase(Locale.ROOT)).find(), at);
    for (String leak : List.of("null", "NaN", "Infinity", "Optional", "@", "${")) {
      assertFalse(page.text().contains(leak), () -> at + " says " + leak + ": " + page.text());
    }
    assertFalse(INLINE.matcher(html).find(), () -> at + " has inline script or style: " + html);
    idsAreUniqueAndNamedOnesExist(page);
    inputsAreLabelled(page);
  }

  private static void idsAreUniqueAndNamedOnesExist(Page page) {
    Set<String> ids = new HashSet<>();
    for (MatchResult id : ID.matcher(page.html()).results().toList()) {
      assertTrue(ids.add(id.group(1)), () -> page.path() + " has two ids " + id.group(1));
    }
    for (MatchResult named :
        Pattern.compile("\\s(?:for|aria-describedby|aria-labelledby)=\"([^\"]*)\"")
            .matcher(page.html())
            .results()
            .toList()) {
      for (String id : named.group(1).split(" ")) {
        assertTrue(ids.contains(id), () -> page.path() + " names the missing id " + id);
      }
    }
  }

  private static void inputsAreLabelled(Page page) {
    String inLabels = String.join("", eachRaw(page, "<label\\b[^>]*>.*?</label>"));
    Set<String> labelled = new HashSet<>();
    LABEL
        .matcher(page.html())
        .results()
        .map(m -> Page.attributes(m.group().substring(6)).get("for"))
        .forEach(labelled::add);
    for (MatchResult input : INPUT.matcher(page.html()).results().toList()) {
      Map<String, String> a = Page.attributes(input.group(1));
      boolean hidden = "hidden".equals(a.get("type"));
      assertTrue(
          hidden || labelled.contains(a.get("id")) || inLabels.contains(input.group()),
          () -> page.path() + " has an input without a label: " + input.group());
    }
  }

  private static List<String> eachRaw(Page page, String pattern) {
    return Pattern.compile(pattern, Pattern.DOTALL)
        .matcher(page.html())
        .results()
        .map(MatchResult::group)
        .toList();
  }
}
