package spindlebook;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spindlebook.log.FullDisk;

/** What a phone says, and keeps, while the disk beside the book is full. */
class FullDiskBrowserTest {
  @Test
  void the_phone_says_why_nothing_is_taken_and_sends_it_when_there_is_room(@TempDir Path folder)
      throws IOException {
    Path book = folder.resolve("book");
    try (Shop shop = new Shop(book)) {
      Marmot marmot = new Marmot(shop);
      String round = marmot.startRound(marmot.left, Map.of());
      try (Screen phone = new Screen(shop, 390, 844)) {
        phone.go("/rounds/" + round + "/guide");
        phone.find(Screen.BOX);
        FullDisk.leaves(shop.app().bookFile, book, 0);
        phone.find(Screen.BOX).sendKeys("15 1/4\n30 1/4\n");
        phone.wait(() -> phone.text("#outbox").contains("The book could not be written"));
        FullDisk.leaves(shop.app().bookFile, book, 1L << 40);
        phone.sent();
      }
    }
  }
}
