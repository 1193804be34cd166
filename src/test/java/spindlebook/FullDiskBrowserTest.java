package spindlebook;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spindlebook.log.FullDisk;

/** What a phone says, and keeps, while the disk beside the book is full. */
class FullDiskBrowserTest {
  @Test
  void the_phone_says_why_nothing_is_taken_and_sends_it_when_there_is_room(@TempDir Path folder) {
    try (FullDisk disk = FullDisk.below();
        Shop shop = new Shop(folder.resolve("book"))) {
      Marmot marmot = new Marmot(shop);
      String round = marmot.startRound(marmot.left, Map.of());
      try (Screen phone = new Screen(shop, 390, 844)) {
        phone.go("/rounds/" + round + "/guide");
        phone.find(Screen.BOX);
        marmot.startRound(marmot.left, Map.of());
        disk.full(true);
        for (int i = 0; shop.get("/cars").status() != 503; i++) {
          assertTrue(i < 200, shop.told.toString());
          LockSupport.parkNanos(100_000_000);
        }
        phone.find(Screen.BOX).sendKeys("15 1/4\n30 1/4\n");
        phone.wait(() -> phone.text("#outbox").contains("The index is being built anew"));
        disk.full(false);
        phone.sent();
      }
    }
  }
}
