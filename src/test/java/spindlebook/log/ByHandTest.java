package spindlebook.log;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ByHandTest {
  @TempDir Path folder;

  @Test
  void a_book_of_nothing_but_kinds_and_bodies_can_be_read() throws IOException {
    BookFile.Contents contents =
        read(
            """
            {"kind":"car","key":"mule","body":{"name":"mule"}}

            {"kind":"corner","body":{"car":"mule"}}
              \t
            {"kind":"note","who":"Sam","v":2,"after":1,"body":{"text":"8 ¼"}}
            """);
    assertFalse(contents.sealed());
    List<Entry> entries = contents.entries();
    assertEquals(List.of(1L, 2L, 3L), entries.stream().map(Entry::n).toList());
    assertEquals(List.of("mule", "e2", "e3"), entries.stream().map(Entry::key).toList());
    assertEquals(List.of(0L, 1L, 1L), entries.stream().map(Entry::after).toList());
    assertEquals(List.of(1, 1, 2), entries.stream().map(Entry::v).toList());
    assertEquals(List.of("not said", "not said", "Sam"), entries.stream().map(Entry::who).toList());
    assertNull(entries.get(0).at());
    assertNull(entries.get(0).prev());
    assertEquals("8 ¼", entries.get(2).body().get("text").textValue());
  }

  @Test
  void a_header_times_and_numbers_may_be_given() throws IOException {
    BookFile.Contents contents =
        read(
            """
            {"spindlebook":"book","format":1,"id":"bench"}
            {"n":1,"at":"2031-05-04T12:00:00Z","kind":"car","key":"mule","body":{}}
            """);
    assertEquals("bench", contents.header().id());
    assertFalse(contents.sealed());
    assertEquals(Instant.parse("2031-05-04T12:00:00Z"), contents.entries().get(0).at());
  }

  @Test
  void marks_and_line_ends_of_other_editors_do_no_harm() throws IOException {
    BookFile.Contents contents =
        read("\ufeff{\"kind\":\"car\",\"body\":{}}\r\n\r\n{\"kind\":\"note\",\"body\":{}}");
    assertEquals(2, contents.entries().size());
  }

  @Test
  void an_empty_book_written_by_hand_holds_nothing() throws IOException {
    assertEquals(List.of(), read("\n\n").entries());
  }

  @Test
  void a_sealed_book_is_read_as_one_and_its_damage_is_refused() throws IOException {
    Bench bench = new Bench(folder);
    try (Book book = bench.open()) {
      book.append(Bench.note("a"));
      book.append(Bench.note("b"));
    }
    assertTrue(BookFile.readByHand(bench.log()).sealed());
    assertEquals(BookFile.read(bench.log()), BookFile.readByHand(bench.log()));
    String changed = Files.readString(bench.log()).replace("note a", "note x");
    assertEquals(
        "Line 3 of book.txt is damaged: it does not follow from the line before it.",
        refused(changed));
  }

  @Test
  void what_is_wrong_is_said_with_its_line() {
    String car = "{\"kind\":\"car\",\"key\":\"mule\",\"body\":{}}\n";
    assertEquals(
        "Line 3 of book.txt cannot be used: an earlier entry has the key mule.",
        refused(car + "\n" + car));
    assertEquals(
        "Line 2 of book.txt cannot be used: it has a field 'boddy', which no entry has.",
        refused(car + "{\"kind\":\"note\",\"boddy\":{}}"));
    assertEquals(
        "Line 2 of book.txt cannot be used: it has no usable 'kind'.",
        refused(car + "{\"body\":{}}"));
    assertEquals(
        "Line 2 of book.txt cannot be used: its body is not a JSON object.",
        refused(car + "{\"kind\":\"note\",\"body\":[]}"));
    assertEquals(
        "Line 2 of book.txt cannot be used: its n is 7, but it is entry 2 of this book.",
        refused(car + "{\"n\":7,\"kind\":\"note\",\"body\":{}}"));
    assertEquals(
        "Line 2 of book.txt cannot be used: it claims to follow entry 2, which does not come"
            + " before.",
        refused(car + "{\"after\":2,\"kind\":\"note\",\"body\":{}}"));
    assertEquals(
        "Line 2 of book.txt cannot be used: its 'at' is not a time like 2031-05-04T16:20:00Z.",
        refused(car + "{\"at\":\"noon\",\"kind\":\"note\",\"body\":{}}"));
    assertTrue(refused(car + "{\"prev\":\"00\",\"kind\":\"note\",\"body\":{}}").contains("'prev'"));
    assertTrue(refused(car + "text").startsWith("Line 2 of book.txt cannot be used: it is not"));
  }

  @Test
  void a_missing_file_is_one_sentence() {
    assertEquals(
        "book.txt cannot be read: it is not there.",
        assertThrows(BookRefused.class, () -> BookFile.readByHand(folder.resolve("book.txt")))
            .getMessage());
  }

  private BookFile.Contents read(String text) throws IOException {
    return BookFile.readByHand(Files.writeString(folder.resolve("book.txt"), text));
  }

  private String refused(String text) {
    return assertThrows(BookRefused.class, () -> read(text)).getMessage();
  }
}
