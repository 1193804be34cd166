package spindlebook;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spindlebook.entry.Content;
import spindlebook.log.Bodies;

/** Lists say what the card says: names and what belongs where come from one fold. */
class NamesTest {
  private static final Pattern KEY = Pattern.compile("\"key\":\"([^\"]+)\"");

  @Test
  void a_name_that_was_taken_back_is_gone_from_the_list_as_from_the_page(@TempDir Path folder) {
    try (Shop shop = new Shop(folder)) {
      Marmot marmot = new Marmot(shop);
      marmot.send("/cars/" + marmot.car + "/details", Map.of("name", "Badger"));
      assertTrue(shop.get("/cars").is(200).text().contains("Badger"));
      takeBackLast(shop);
      for (int i = 0; i < 2; i++) {
        assertTrue(shop.get("/cars/" + marmot.car).is(200).text().contains("Marmot"));
        String list = shop.get("/cars").is(200).text();
        assertTrue(list.contains("Marmot"), list);
        assertFalse(list.contains("Badger"), list);
        shop.reopen();
      }
    }
  }

  @Test
  void a_round_moved_to_the_other_side_by_mistake_comes_back_with_its_pages(@TempDir Path folder) {
    try (Shop shop = new Shop(folder)) {
      Marmot marmot = new Marmot(shop);
      String round = marmot.startRound(marmot.left, Map.of());
      String height = marmot.height(round, "on-the-strap", "15 3/16", "31 5/8");
      shop.get("/rounds/" + round).form("/rounds/" + round + "/other-side").keep();
      assertTrue(shop.get("/heights/" + height).is(200).text().contains("Right front"));
      takeBackLast(shop);
      String there = shop.get("/heights/" + height).is(200).text();
      assertTrue(there.contains("Left front"), there);
    }
  }

  @Test
  void the_filter_by_adjuster_finds_what_is_older_than_a_page_of_the_book(@TempDir Path folder) {
    try (Shop shop = new Shop(folder)) {
      Marmot marmot = new Marmot(shop);
      marmot.adjust(marmot.left, "limit-strap", "18 3/8");
      for (int i = 0; i < 120; i++) {
        Content.ToDo later = new Content.ToDo(marmot.car, null, null, "later " + i, null, null);
        shop.app().bookFile.append(Bodies.draft("later-" + i, 0, "Sam", later));
      }
      String book = "/cars/" + marmot.car + "/book";
      assertTrue(shop.get(book + "?adjuster=limit-strap").is(200).text().contains("18 3/8"));
    }
  }

  private static void takeBackLast(Shop shop) {
    List<String> lines = shop.lines();
    Matcher key = KEY.matcher(lines.get(lines.size() - 1));
    assertTrue(key.find());
    // No page offers it; a book from another hand may hold it all the same.
    shop.app()
        .bookFile
        .append(Bodies.draft("slip", 0, "Sam", new Content.Correction(key.group(1), null, "slip")));
  }
}
