package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spindlebook.corner.Content;
import spindlebook.corner.GapResult;
import spindlebook.log.Bodies;
import spindlebook.log.BookFile;
import spindlebook.log.Entry;
import spindlebook.web.Posted;

/** Two phones, a bad network and a book that is killed: what was typed is there, once, in order. */
class ChaosBrowserTest {
  private static final long SEED = 20251125;
  private static final int EACH = 250;

  @TempDir Path folder;

  private Path data() {
    return folder.resolve("data");
  }

  /** Entries of one phone, in the book's order. */
  private List<Entry> from(String phone) {
    return BookFile.read(data().resolve("book.jsonl")).entries().stream()
        .filter(e -> e.device() != null && e.device().name().equals(phone))
        .toList();
  }

  /** As {@link Phone} notes what it pressed. */
  static String said(Entry entry) {
    Content content = Bodies.read(entry);
    if (content instanceof Content.Height height) {
      return Posted.word(height.name())
          + ": "
          + height.spindle().typed()
          + ", "
          + (height.mark() == null ? "as at" : height.mark().typed());
    }
    if (content instanceof Content.Reading reading) {
      assertTrue(reading.result() != GapResult.UNREAD, reading::toString);
      String row =
          reading.point() == null ? "q-" + Posted.word(reading.quantity()) : "p-" + reading.point();
      return Posted.word(reading.steering()) + "/" + row + ": " + reading.typed();
    }
    return content.toString();
  }

  private long lines() throws IOException {
    try (var lines = Files.lines(data().resolve("book.jsonl"))) {
      return lines.count();
    }
  }

  private void untilInBook(long lines) throws IOException {
    for (int i = 0; i < 3000 && lines() < lines; i++) {
      LockSupport.parkNanos(Duration.ofMillis(20).toNanos());
    }
    assertTrue(lines() >= lines, "the book came to a halt at " + lines());
  }

  private static void walk(Phone phone, List<String> rounds, boolean tabDies) {
    for (String round : rounds) {
      phone.guide(round);
      int disturbedAt = phone.pressed.size() + 50;
      boolean disturbed = false;
      int typed = 1;
      while (typed > 0 && phone.pressed.size() < EACH) {
        typed = phone.type(Math.min(20, EACH - phone.pressed.size()));
        if (!disturbed && phone.pressed.size() >= disturbedAt && round.equals(rounds.get(0))) {
          disturbed = true;
          assertTrue(phone.waiting("sb:o:") > 0, "something waits to be sent");
          if (tabDies) {
            phone.killTab(round);
          } else {
            phone.guide(round);
          }
        }
      }
    }
  }

  @Test
  void five_hundred_entries_over_a_bad_link_are_in_the_book_once_and_in_order() throws Exception {
    List<List<String>> rounds = List.of(new ArrayList<>(), new ArrayList<>());
    Browser sam;
    try (Shop shop = new Shop(data())) {
      Marmot marmot = new Marmot(shop);
      for (int i = 0; i < 3; i++) {
        rounds.get(0).add(marmot.startRound(marmot.left, Map.of("who", "Sam")));
        rounds.get(1).add(marmot.startRound(marmot.right, Map.of("who", "Kim")));
      }
      sam = shop.browser;
    }
    long before = lines();
    long began = System.nanoTime();
    try (ServedBook book = new ServedBook(data(), folder.resolve("terminal.txt"));
        BadLink left = new BadLink(SEED, book.port());
        BadLink right = new BadLink(SEED + 1, book.port());
        Phone one = new Phone(folder.resolve("one"), left.port(), SEED + 2);
        Phone two = new Phone(folder.resolve("two"), right.port(), SEED + 3)) {
      one.pair(book.pairing(), "phone one");
      two.pair(
          sam.at(book.port()).post("/devices/new-link", Map.of("may", "keep")).is(200).linkIn(),
          "phone two");
      left.bad(true);
      right.bad(true);

      CompletableFuture<Void> first =
          CompletableFuture.runAsync(() -> walk(one, rounds.get(0), false));
      CompletableFuture<Void> second =
          CompletableFuture.runAsync(() -> walk(two, rounds.get(1), true));
      int kills = 0;
      for (int at : new int[] {90, 300}) {
        untilInBook(before + at);
        book.kill();
        kills++;
        book.start();
        left.leadsTo(book.port());
        right.leadsTo(book.port());
      }
      CompletableFuture.allOf(first, second).get(180, TimeUnit.SECONDS);
      one.untilAllSent(Duration.ofSeconds(120));
      two.untilAllSent(Duration.ofSeconds(120));
      left.releaseAll();
      right.releaseAll();
      List<List<String>> keys = List.of(one.keysOf("sb:s:"), two.keysOf("sb:s:"));
      book.stop();

      System.out.printf(
          "chaos, seed %d: %d entries; %d dropped, %d delayed, %d doubled, %d reordered, %d answers"
              + " lost, %d kills, %d s%n",
          SEED,
          lines() - before,
          left.dropped.get() + right.dropped.get(),
          left.delayed.get() + right.delayed.get(),
          left.doubled.get() + right.doubled.get(),
          left.reordered.get() + right.reordered.get(),
          left.lost.get() + right.lost.get(),
          kills,
          (System.nanoTime() - began) / 1_000_000_000);
      assertEquals(before + 2 * EACH, lines());
      for (Phone phone : List.of(one, two)) {
        List<Entry> there = from(phone == one ? "phone one" : "phone two");
        assertEquals(EACH, phone.pressed.size());
        assertEquals(phone.pressed, there.stream().map(ChaosBrowserTest::said).toList());
        List<String> inBook = there.stream().map(Entry::key).toList();
        assertEquals(keys.get(phone == one ? 0 : 1), inBook);
        assertEquals(EACH, new HashSet<>(inBook).size());
      }
    }
  }
}
