package spindlebook.log;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileTime;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Somebody moves, replaces or edits the book's file while the program has it open. */
class ReplacedTest {
  @TempDir Path folder;
  private Bench bench;
  private Book book;
  private Path older;
  private Path away;

  @BeforeEach
  void a_book_of_three_entries_and_a_copy_of_two() throws IOException {
    bench = new Bench(folder);
    older = folder.resolve("older-copy");
    away = folder.resolve("away");
    book = bench.open();
    book.append(List.of(Bench.note("a"), Bench.note("b")));
    Files.copy(bench.log(), older);
    book.append(Bench.note("c"));
  }

  @AfterEach
  void close() {
    book.close();
  }

  @Test
  void an_older_copy_in_its_place_takes_nothing_and_stays_as_it_is() throws IOException {
    byte[] copy = Files.readAllBytes(older);
    Files.move(bench.log(), away);
    Files.move(older, bench.log());
    refuses();
    assertArrayEquals(copy, bench.bytes());
    assertEquals(4, Files.readAllLines(away).size());
  }

  @Test
  void an_older_copy_written_over_it_takes_nothing_and_leaves_no_hole() throws IOException {
    byte[] copy = Files.readAllBytes(older);
    bench.write(copy);
    refuses();
    assertArrayEquals(copy, bench.bytes());
  }

  @Test
  void a_book_moved_away_takes_nothing_until_it_is_back() throws IOException {
    byte[] whole = bench.bytes();
    Files.move(bench.log(), away);
    refuses();
    assertFalse(Files.exists(bench.log()));
    assertArrayEquals(whole, Files.readAllBytes(away));
    Files.move(away, bench.log());
    assertEquals(4, book.append(Bench.note("d")).get(0).n());
  }

  @Test
  void a_word_of_the_same_length_changed_in_it_is_noticed() throws IOException {
    String text = new String(bench.bytes(), StandardCharsets.UTF_8);
    FileTime before = Files.getLastModifiedTime(bench.log());
    bench.write(text.replace("note b", "note x").getBytes(StandardCharsets.UTF_8));
    // However coarse the file system's clock.
    Files.setLastModifiedTime(bench.log(), FileTime.fromMillis(before.toMillis() + 10_000));
    refuses();
  }

  @Test
  void a_line_that_somebody_else_added_is_noticed() throws IOException {
    Files.writeString(bench.log(), "{}\n", StandardOpenOption.APPEND);
    refuses();
  }

  @Test
  void a_copy_with_the_same_bytes_is_another_file_all_the_same() throws IOException {
    Files.copy(bench.log(), away);
    Files.delete(bench.log());
    Files.move(away, bench.log());
    refuses();
  }

  @Test
  void a_book_that_was_only_touched_goes_on() throws IOException {
    for (int day = 1; day <= 3; day++) {
      Files.setLastModifiedTime(bench.log(), FileTime.fromMillis(day * 86_400_000L));
      book.append(Bench.note("day-" + day));
    }
    assertEquals(6, book.lastN());
  }

  @Test
  void one_replaced_while_a_line_is_on_its_way_gets_no_answer_that_it_is_in_the_book()
      throws IOException {
    byte[] whole = bench.bytes();
    book.replaceDisk(
        new AppendFile(bench.log()) {
          @Override
          void force() throws IOException {
            super.force();
            Files.move(bench.log(), away);
            Files.copy(older, bench.log());
          }
        });
    refuses();
    assertArrayEquals(whole, Files.readAllBytes(away));
  }

  @Test
  void what_is_in_it_can_still_be_read_when_another_is_in_its_place() throws IOException {
    Files.move(older, bench.log(), java.nio.file.StandardCopyOption.REPLACE_EXISTING);
    assertEquals(List.of("a", "b", "c"), book.entries(1).stream().map(Entry::key).toList());
    bench.write(Arrays.copyOf(bench.bytes(), 50));
    assertEquals("c", book.byKey("c").orElseThrow().key());
  }

  @Test
  void what_was_cut_off_is_said_in_words() throws IOException {
    bench.write(Arrays.copyOf(bench.bytes(), 50));
    BookRefused refused = assertThrows(BookRefused.class, () -> book.entries(1));
    assertTrue(refused.getMessage().contains("while Spindlebook had it open"));
  }

  private void refuses() {
    for (String key : List.of("x", "y")) {
      BookRefused refused = assertThrows(BookRefused.class, () -> book.append(Bench.note(key)));
      assertEquals(BookRefused.Why.DISK, refused.why());
      assertEquals(
          "book.jsonl was moved, replaced or changed while Spindlebook had it open, so nothing is"
              + " taken: stop Spindlebook, put the right file there, then start it again.",
          refused.getMessage());
      assertTrue(book.byKey(key).isEmpty());
    }
    assertEquals(3, book.lastN());
  }
}
