package spindlebook;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;
import org.openqa.selenium.interactions.Actions;
import spindlebook.log.FullDisk;

/** What a phone says, and keeps, while the disk beside the book is full. */
class FullDiskBrowserTest {
  @Test
  void the_phone_says_why_nothing_is_taken_and_sends_it_when_there_is_room(@TempDir Path folder)
      throws IOException {
    Path book = folder.resolve("book");
    try (Shop shop = new Shop(book)) {
      Marmot marmot = new Marmot(shop);
      String round = marmot.everything(marmot.left, Map.of());
      try (Screen phone = new Screen(shop, 390, 844)) {
        phone.go("/rounds/" + round + "/guide");
        phone.find(Screen.key("1/2"));
        FullDisk.leaves(shop.app().bookFile, book, 0);
        new Actions(phone.screen).sendKeys("15 1/4", Keys.ENTER, "30 1/4", Keys.ENTER).perform();
        phone.wait(() -> phone.text("#outbox").contains("The book could not be written"));
        FullDisk.leaves(shop.app().bookFile, book, 1L << 40);
        phone.sent();
      }
    }
  }
}
