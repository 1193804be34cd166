package spindlebook;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The index thrown away and built anew: no page tells the difference. */
class RebuildTest {
  @Test
  void every_page_is_the_same_before_and_after(@TempDir Path folder) throws Exception {
    Map<String, String> before;
    try (Shop shop = new Shop(folder)) {
      Marmot marmot = new Marmot(shop).prepared().measured();
      marmot.adjust(marmot.left, "limit-strap", "17 1/2");
      marmot.send(
          "/heights/" + marmot.low + "/correct", Map.of("spindle", "18 5/8", "reason", "misread"));
      marmot.height(marmot.round, "stop-touch", "12", "31 5/8");
      String moved = "/rounds/" + marmot.round + "/other-side";
      shop.get("/rounds/" + marmot.round).form(moved).keep();
      marmot.send("/cars/" + marmot.car + "/details", Map.of("name", "Marmot the Second"));
      before = pages(shop);
    }
    byte[] book = Files.readAllBytes(folder.resolve("book.jsonl"));
    assertEquals(0, Main.run("rebuild", "--data", folder.toString()));
    assertArrayEquals(book, Files.readAllBytes(folder.resolve("book.jsonl")));
    try (Shop shop = new Shop(folder)) {
      assertEquals(java.util.List.of(), shop.told, "built once is enough");
      assertEquals(before, pages(shop));
    }
    assertFalse(before.isEmpty());
  }

  /** All pages of the book, but what is new each time a form is shown; devices are not in it. */
  private static Map<String, String> pages(Shop shop) {
    Map<String, String> pages = new TreeMap<>();
    for (Page page : Crawl.from(shop.browser, "/", "/cars")) {
      if (page.path().startsWith("/devices")) {
        continue;
      }
      pages.put(page.path(), page.html().replaceAll("name=\"key\" value=\"[^\"]*\"", ""));
    }
    return pages;
  }
}
