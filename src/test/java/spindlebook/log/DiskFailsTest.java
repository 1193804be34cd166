package spindlebook.log;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DiskFailsTest {
  @TempDir Path folder;
  private Bench bench;
  private Book book;
  private FailingDisk disk;

  @BeforeEach
  void open() throws IOException {
    bench = new Bench(folder);
    book = bench.open();
    book.append(Bench.note("before"));
    disk = new FailingDisk(bench.log());
    book.replaceDisk(disk);
  }

  @AfterEach
  void close() {
    book.close();
  }

  @Test
  void a_full_disk_refuses_the_entry_in_words_and_leaves_no_half_line() {
    byte[] before = bench.bytes();
    for (int room : new int[] {0, 1, 40, 100}) {
      disk.roomLeft = room;
      BookRefused refused = assertThrows(BookRefused.class, () -> book.append(Bench.note("a")));
      assertEquals(BookRefused.Why.DISK, refused.why());
      assertEquals(
          "The book could not be written (No space left on device); nothing of this was kept.",
          refused.getMessage());
      assertArrayEquals(before, bench.bytes());
      assertTrue(book.byKey("a").isEmpty());
    }
    assertEquals(1, book.lastN());
  }

  @Test
  void the_same_entry_is_taken_once_there_is_room_again() {
    disk.roomLeft = 30;
    assertThrows(BookRefused.class, () -> book.append(Bench.note("a")));
    disk.roomLeft = Integer.MAX_VALUE;
    assertEquals(2, book.append(Bench.note("a")).get(0).n());
    assertReopensWith("before", "a");
  }

  @Test
  void everybody_who_waits_for_a_failing_write_is_refused() throws Exception {
    CountDownLatch latch = new CountDownLatch(1);
    disk.forceWaitsFor = latch;
    CompletableFuture<List<Entry>> first = later(Bench.note("first"));
    disk.forcing.await();
    List<CompletableFuture<List<Entry>>> waiting = new ArrayList<>();
    for (int i = 0; i < 5; i++) {
      waiting.add(later(Bench.note("w" + i)));
    }
    // Less than any line: also one that comes late, and is written alone, must be refused.
    disk.roomLeft = 20;
    latch.countDown();
    assertEquals(2, first.join().get(0).n());
    for (CompletableFuture<List<Entry>> one : waiting) {
      CompletionException failed = assertThrows(CompletionException.class, one::join);
      assertEquals(BookRefused.Why.DISK, ((BookRefused) failed.getCause()).why());
    }
    disk.roomLeft = Integer.MAX_VALUE;
    assertReopensWith("before", "first");
  }

  @Test
  void after_a_failed_force_nothing_is_taken_until_a_restart_and_the_line_is_gone() {
    byte[] before = bench.bytes();
    disk.forceFails = true;
    BookRefused refused = assertThrows(BookRefused.class, () -> book.append(Bench.note("a")));
    assertEquals(
        "The disk failed while the book was being written (Input/output error); nothing more is"
            + " taken until Spindlebook is started again.",
        refused.getMessage());
    assertArrayEquals(before, bench.bytes());
    disk.forceFails = false;
    assertEquals(
        refused.getMessage(),
        assertThrows(BookRefused.class, () -> book.append(Bench.note("b"))).getMessage());
    // What is in the book can still be read, and a known key still gets its answer.
    assertEquals("before", book.entries(1).get(0).key());
    assertEquals(book.entries(1), book.append(Bench.note("before")));
    assertReopensWith("before");
    book.append(Bench.note("a"));
    assertReopensWith("before", "a");
  }

  @Test
  void a_half_line_that_cannot_be_taken_back_stops_the_writing_and_is_set_aside_at_the_restart()
      throws IOException {
    disk.roomLeft = 50;
    disk.cutFails = true;
    assertThrows(BookRefused.class, () -> book.append(Bench.note("a")));
    disk.roomLeft = Integer.MAX_VALUE;
    assertTrue(
        assertThrows(BookRefused.class, () -> book.append(Bench.note("b")))
            .getMessage()
            .contains("until Spindlebook is started again"));
    assertReopensWith("before");
    assertEquals(50, Files.size(bench.tornFiles().get(0)));
  }

  @Test
  void all_who_come_while_the_disk_is_waited_for_share_the_next_force() throws Exception {
    CountDownLatch latch = new CountDownLatch(1);
    disk.forceWaitsFor = latch;
    CompletableFuture<List<Entry>> first = later(Bench.note("first"));
    disk.forcing.await();
    List<Thread> senders = new ArrayList<>();
    for (int i = 0; i < 20; i++) {
      Draft draft = Bench.note("w" + i);
      Thread sender = new Thread(() -> book.append(draft));
      sender.start();
      senders.add(sender);
    }
    for (Thread sender : senders) {
      while (sender.getState() != Thread.State.WAITING) {
        Thread.onSpinWait();
      }
    }
    latch.countDown();
    first.join();
    for (Thread sender : senders) {
      sender.join();
    }
    assertEquals(22, book.lastN());
    assertEquals(2, book.forces());
    assertEquals(2, book.byKey("w7").orElseThrow().forced());
  }

  @Test
  void nobody_sees_an_entry_before_it_is_on_the_disk() throws Exception {
    CountDownLatch latch = new CountDownLatch(1);
    disk.forceWaitsFor = latch;
    CompletableFuture<List<Entry>> first = later(Bench.car("mule"));
    disk.forcing.await();
    assertFalse(first.isDone());
    assertEquals(1, book.lastN());
    assertTrue(book.byKey("mule").isEmpty());
    assertEquals(List.of(), book.ofCar("mule"));
    latch.countDown();
    first.join();
    assertEquals(1, book.ofCar("mule").size());
  }

  @Test
  void a_folder_that_cannot_be_made_or_written_is_refused_in_words() throws IOException {
    Path file = Files.writeString(folder.resolve("plain"), "a file where a folder should be");
    for (Path unusable : List.of(file, file.resolve("below"))) {
      BookRefused refused =
          assertThrows(BookRefused.class, () -> new Bench(unusable).open().close());
      assertTrue(refused.getMessage().contains("cannot be written"), refused.getMessage());
    }
  }

  private CompletableFuture<List<Entry>> later(Draft draft) {
    CompletableFuture<List<Entry>> answer = new CompletableFuture<>();
    Thread sender =
        new Thread(
            () -> {
              try {
                answer.complete(book.append(draft));
              } catch (BookRefused refused) {
                answer.completeExceptionally(refused);
              }
            });
    sender.start();
    return answer;
  }

  private void assertReopensWith(String... keys) {
    book.close();
    book = bench.open();
    assertEquals(List.of(keys), book.entries(1).stream().map(Entry::key).toList());
  }
}
