package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spindlebook.log.FullDisk;

/** What a person sees before, while and after the disk is full. */
class FullDiskPagesTest {
  @Test
  void lists_say_that_the_index_is_built_anew_and_the_pages_of_a_car_stand(@TempDir Path folder) {
    try (FullDisk disk = FullDisk.below();
        Shop shop = new Shop(folder)) {
      Marmot marmot = new Marmot(shop);
      String round = marmot.startRound(marmot.left, Map.of());
      List<String> pages =
          List.of("/cars/" + marmot.car, "/corners/" + marmot.left, "/rounds/" + round);
      List<String> lists = List.of("/cars", "/cars/" + marmot.car + "/book");
      disk.full(true);
      LockSupport.parkNanos(Duration.ofSeconds(2).toNanos());
      for (int i = 0; i < 5; i++) {
        lists.forEach(page -> shop.browser.get(page));
      }
      pages.forEach(page -> shop.get(page).is(200));
      for (String page : lists) {
        Page now = shop.get(page).is(503);
        assertTrue(now.text().contains("Not now"), now.text());
        assertTrue(now.text().contains("The index is being built anew"), now.text());
      }
      Map<String, String> height =
          Map.of(
              "key",
              "k",
              "after",
              "0",
              "what",
              "height",
              "name",
              "in-between",
              "label",
              "jack 3",
              "spindle",
              "15 1/4",
              "mark",
              "30 1/4");
      shop.browser.post("/rounds/" + round + "/sent", height).is(200);
      assertTrue(shop.get("/rounds/" + round).is(200).text().contains("jack 3"));
      assertEquals(1, shop.told.size(), shop.told.toString());
      disk.full(false);
      for (int i = 0; shop.get("/cars").status() == 503; i++) {
        assertTrue(i < 200, shop.told.toString());
        LockSupport.parkNanos(Duration.ofMillis(100).toNanos());
      }
      lists.forEach(page -> shop.get(page).is(200));
      assertEquals(2, shop.told.size(), shop.told.toString());
      assertTrue(shop.get("/corners/" + marmot.left).is(200).text().contains("Left front"));
    }
  }

  @Test
  void little_room_is_said_on_the_first_pages(@TempDir Path folder) throws Exception {
    try (Shop shop = new Shop(folder)) {
      Marmot marmot = new Marmot(shop);
      String warning = "The disk of the book is nearly full: 100 MB left.";
      for (String page : List.of("/cars", "/cars/" + marmot.car)) {
        FullDisk.leaves(shop.app().bookFile, folder, 1L << 40);
        assertFalse(shop.get(page).is(200).text().contains("nearly full"));
        FullDisk.leaves(shop.app().bookFile, folder, 100L << 20);
        assertTrue(shop.get(page).is(200).text().contains(warning), page);
      }
    }
  }
}
