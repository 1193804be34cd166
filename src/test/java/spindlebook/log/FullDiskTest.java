package spindlebook.log;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.locks.LockSupport;
import org.jdbi.v3.core.Handle;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** H2 shuts a database that it cannot write; the book goes on, and so does its index in the end. */
class FullDiskTest {
  private static final String SOON =
      "The index is being built anew, as after a full disk; the book is whole. Make room on the"
          + " disk; what you typed is kept, and this page comes back by itself.";

  @TempDir Path folder;
  private Bench bench;
  private FullDisk disk;
  private Book book;

  @BeforeEach
  void open() {
    disk = FullDisk.below();
    bench = new Bench(folder);
    book = bench.open();
    book.append(Bench.car("mule"));
    book.append(Bench.corner("lf", "mule"));
  }

  @AfterEach
  void close() {
    book.close();
    disk.close();
  }

  @Test
  void a_lost_index_is_told_once_said_in_words_and_built_anew_by_itself() {
    fillUp();
    for (int i = 0; i < 20; i++) {
      assertEquals(SOON, assertThrows(BookRefused.class, this::rows).getMessage());
    }
    // The book's own file had room: what was acknowledged meanwhile is in it.
    assertEquals(book.lastN(), book.entries(1).size());
    List<String> lost = List.copyOf(bench.told);
    assertEquals(1, lost.size(), lost.toString());
    assertTrue(lost.get(0).startsWith("The index of the book was lost ("), lost.get(0));
    disk.full(false);
    untilItIsBack();
    assertEquals(book.lastN(), rows());
    assertEquals(2, bench.told.size(), bench.told.toString());
    assertEquals("The index is built anew.", bench.told.get(1));
    book.append(Bench.corner("rf", "mule"));
    assertEquals(book.lastN(), rows());
    book.close();
    book = bench.open();
    assertEquals(List.of(), bench.told);
  }

  @Test
  void an_index_that_nobody_saw_being_shut_is_never_read_without_its_last_rows() {
    disk.full(true);
    book.append(List.of(Bench.note("a"), Bench.note("b"), Bench.note("c")));
    // H2 writes once a second by a thread of its own, and shuts the database when it cannot.
    LockSupport.parkNanos(Duration.ofSeconds(3).toNanos());
    // The next connection opens it again, as it was last written.
    disk.full(false);
    long rows = -1;
    try (Handle onlyOne = book.index().open()) {
      for (int i = 0; rows < 0; i++) {
        assertTrue(i < 200, "it never came back: " + bench.told);
        try {
          rows = rows();
        } catch (BookRefused lost) {
          LockSupport.parkNanos(Duration.ofMillis(50).toNanos());
        }
      }
    }
    assertEquals(5, rows);
    assertTrue(bench.told.get(0).startsWith("The index of the book was lost ("), "" + bench.told);
  }

  @Test
  void it_is_not_built_anew_before_there_is_room_for_it() throws IOException {
    FullDisk.leaves(book, folder, 1 << 20);
    fillUp();
    disk.full(false);
    for (int i = 0; i < 3; i++) {
      book.append(Bench.note("meanwhile-" + i));
      LockSupport.parkNanos(Duration.ofSeconds(1).toNanos());
      assertThrows(BookRefused.class, this::rows);
    }
    FullDisk.leaves(book, folder, 1 << 30);
    untilItIsBack();
    assertEquals(book.lastN(), rows());
  }

  @Test
  void a_wrong_statement_loses_no_index() {
    assertFalse(
        assertThrows(
                RuntimeException.class,
                () -> book.read(handle -> handle.execute("select no_such_column from entry")))
            instanceof BookRefused);
    assertEquals(2, rows());
    assertEquals(List.of(), bench.told);
  }

  @Test
  void little_room_is_told_once_before_the_disk_is_full() throws IOException {
    FullDisk.leaves(book, folder, 300L << 20);
    book.append(Bench.note("plenty"));
    assertTrue(book.littleRoom().isEmpty());
    FullDisk.leaves(book, folder, 150L << 20);
    book.append(Bench.note("little"));
    book.append(Bench.note("still-little"));
    String warning =
        "The disk of the book is nearly full: 150 MB left. Make room before nothing more can be"
            + " kept.";
    assertEquals(warning, book.littleRoom().orElseThrow());
    FullDisk.leaves(book, folder, 300L << 20);
    book.append(Bench.note("plenty-again"));
    book.append(Bench.note("and-again"));
    assertTrue(book.littleRoom().isEmpty());
    assertEquals(List.of(warning), bench.told);
  }

  private void fillUp() {
    disk.full(true);
    for (int i = 0; book.indexIsOpen(); i++) {
      assertTrue(i < 20_000, "the index never noticed");
      book.append(
          Bench.draft(
              "full-" + i, "note", Bench.body().put("car", "mule").put("fill", "x".repeat(2000))));
    }
  }

  private long rows() {
    return book.read(
        handle -> handle.createQuery("select count(*) from entry").mapTo(Long.class).one());
  }

  private void untilItIsBack() {
    for (int i = 0; !book.indexIsOpen(); i++) {
      assertTrue(i < 600, "it never came back: " + bench.told);
      LockSupport.parkNanos(Duration.ofMillis(50).toNanos());
    }
  }
}
