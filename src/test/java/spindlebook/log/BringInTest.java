package spindlebook.log;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BringInTest {
  @TempDir Path here;
  @TempDir Path there;

  @Test
  void entries_of_another_book_keep_where_they_stood_and_follow_what_they_followed() {
    Bench other = new Bench(there);
    String id;
    try (Book book = other.open()) {
      book.append(List.of(Bench.car("goat"), Bench.corner("goat-lf", "goat")));
      book.append(new Draft("n", "note", 1, 2, "Sam", null, null, Bench.body()));
      id = book.id();
    }
    BookFile.Contents contents = BookFile.read(other.log());
    Bench bench = new Bench(here);
    try (Book book = bench.open()) {
      book.append(Bench.car("mule"));
      book.append(Bench.car("goat"));
      book.append(Bench.note("between"));
      List<Entry> brought = book.bringIn(contents);
      assertEquals(5, book.lastN());
      Entry corner = brought.get(1);
      assertEquals(4, corner.n());
      assertEquals(new Origin(id, 2, contents.hashes().get(1)), corner.origin());
      assertEquals(4, brought.get(2).after());
      // The car was here already: its entry stays the first one, without an origin.
      assertEquals(2, brought.get(0).n());
      assertNull(brought.get(0).origin());
      assertEquals(brought, book.bringIn(contents));
      assertEquals(5, book.lastN());
      assertEquals(List.of(2L, 4L), book.ofCar("goat").stream().map(Entry::n).toList());
    }
    assertEquals(5, BookFile.read(bench.log()).entries().size());
  }

  @Test
  void a_book_written_by_hand_can_be_brought_in() throws IOException {
    Path file =
        Files.writeString(
            there.resolve("hand.jsonl"),
            """
            {"kind":"car","key":"goat","body":{}}
            {"kind":"note","body":{"car":"goat"}}
            """);
    try (Book book = new Bench(here).open()) {
      List<Entry> brought = book.bringIn(BookFile.readByHand(file));
      assertEquals(List.of(0L, 1L), brought.stream().map(Entry::after).toList());
      assertEquals("by hand", brought.get(0).origin().book());
      assertEquals(2, book.ofCar("goat").size());
    }
  }
}
