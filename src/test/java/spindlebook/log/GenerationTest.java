package spindlebook.log;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** When a book is a new generation, so that phones offer again what they sent lately. */
class GenerationTest {
  @TempDir Path folder;
  @TempDir Path elsewhere;
  private Bench bench;

  @BeforeEach
  void aFolder() {
    bench = new Bench(folder);
  }

  private static String with(Bench bench, String... notes) {
    return with(bench.open(), notes);
  }

  private static String with(Book opened, String... notes) {
    try (Book book = opened) {
      for (String note : notes) {
        book.append(Bench.note(note));
      }
      return book.generation();
    }
  }

  /** What a killed program leaves: the folder as it is while the book is open. */
  private Bench killed(String... notes) throws IOException {
    try (Book book = bench.open()) {
      for (String note : notes) {
        book.append(Bench.note(note));
      }
      // The writer notes how far it came after it has answered.
      book.append(Bench.note("last"));
      try (var files = Files.list(folder)) {
        for (Path file : files.filter(f -> f.toString().matches(".*\\.jsonl?")).toList()) {
          Files.copy(file, elsewhere.resolve(file.getFileName()));
        }
      }
    }
    return new Bench(elsewhere);
  }

  @Test
  void a_book_that_is_closed_and_opened_goes_on() {
    String first = with(bench, "a");
    assertEquals(UUID.fromString(first).toString(), first);
    assertEquals(first, with(bench));
    assertEquals(first, with(bench, "b", "c"));
    assertEquals(first, with(bench));
  }

  @Test
  void an_older_copy_put_back_is_a_new_generation_and_then_goes_on() throws IOException {
    String first = with(bench, "a");
    byte[] backup = bench.bytes();
    with(bench, "b", "c");
    bench.write(backup);
    String second = with(bench.openRestored(1));
    assertNotEquals(first, second);
    assertEquals(second, with(bench, "d"));
    assertEquals(second, with(bench));
  }

  @Test
  void a_copy_that_was_written_on_elsewhere_is_a_new_generation_however_long_it_is()
      throws IOException {
    with(bench, "a");
    Bench other = new Bench(elsewhere);
    other.write(bench.bytes());
    with(other, "x", "y", "z", "beyond");
    String first = with(bench, "b");
    bench.write(other.bytes());
    assertNotEquals(first, with(bench.openRestored(5)));
  }

  @Test
  void a_killed_book_goes_on() throws IOException {
    String first = with(bench, "a");
    assertEquals(first, with(killed("b", "c")));
  }

  @Test
  void an_older_copy_put_back_after_a_kill_is_a_new_generation() throws IOException {
    String first = with(bench, "a");
    with(bench, "b");
    Bench after = killed("c", "d", "e");
    String whole = new String(after.bytes(), StandardCharsets.UTF_8);
    // A copy made while it ran: longer than when it was opened, shorter than when it was killed.
    String backup = whole.lines().limit(4).reduce("", (all, line) -> all + line + "\n");
    after.write(backup.getBytes(StandardCharsets.UTF_8));
    assertNotEquals(first, with(after.openRestored(3)));
  }

  @Test
  void without_a_note_that_can_be_read_it_is_a_new_generation() throws IOException {
    Path note = folder.resolve("generation.json");
    String last = with(bench, "a");
    for (String damaged :
        new String[] {null, "", "{", "[]", "{\"id\":\"\",\"n\":1}", "{\"n\":1}"}) {
      if (damaged == null) {
        Files.delete(note);
      } else {
        Files.writeString(note, damaged);
      }
      String fresh = with(bench);
      assertNotEquals(last, fresh, damaged);
      assertEquals(fresh, with(bench), damaged);
      last = fresh;
    }
  }
}
