package spindlebook.log;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Damage to what was once acknowledged: the book does not open, and its file stays as it is. */
class DamageTest {
  @TempDir Path folder;
  private Bench bench;
  private String whole;

  @BeforeEach
  void a_book_of_eight_entries() {
    bench = new Bench(folder);
    try (Book book = bench.open()) {
      for (int i = 1; i <= 8; i++) {
        book.append(Bench.note("note-" + i));
      }
    }
    whole = new String(bench.bytes(), StandardCharsets.UTF_8);
  }

  @Test
  void any_changed_byte_before_the_last_line_is_refused_and_the_file_left_alone()
      throws IOException {
    byte[] good = bench.bytes();
    int lastLine = whole.indexOf("{\"n\":8");
    Random random = new Random(11);
    for (int i = 0; i < 400; i++) {
      byte[] bad = good.clone();
      bad[random.nextInt(lastLine)] ^= (byte) (1 << random.nextInt(8));
      assertRefused(bad);
    }
  }

  @Test
  void a_changed_word_in_the_last_line_but_one_is_refused_although_only_the_last_one_shows_it() {
    assertRefused(text -> text.replace("note note-7", "note note-9"), "Line 9 of book.jsonl");
  }

  @Test
  void a_changed_header_is_refused() {
    assertRefused(text -> text.replace("2031-05-04T12:00:00Z\"}", "2031-05-04T12:00:01Z\"}"), "");
    assertRefused(text -> text.replace("\"spindlebook\"", "\"spindelbook\""), "header");
    assertRefused(text -> text.substring(5), "header");
  }

  @Test
  void a_line_taken_out_and_two_lines_swapped_are_refused() {
    List<String> lines = whole.lines().toList();
    String fourth = lines.get(4) + "\n";
    String fifth = lines.get(5) + "\n";
    assertRefused(text -> text.replace(fourth, ""), "its n is 5 where 4 should stand");
    assertRefused(text -> text.replace(fourth + fifth, fifth + fourth), "where 4 should stand");
  }

  @Test
  void line_ends_changed_by_an_editor_are_refused_and_named() {
    assertRefused(text -> text.replace("\n", "\r\n"), "carriage return");
  }

  @Test
  void the_sentence_names_the_line_and_what_is_wrong() {
    assertRefused(
        text -> text.replace("\"key\":\"note-3\"", "\"key\":\"note-2\""),
        "Line 4 of book.jsonl is damaged: its key is that of entry 2.");
    assertRefused(
        text -> text.replace("\"key\":\"note-3\",", ""),
        "Line 4 of book.jsonl is damaged: it has no usable 'key'.");
    assertRefused(
        text -> text.replace("\"key\":\"note-3\"", "\"yek\":\"note-3\""),
        "Line 4 of book.jsonl is damaged: it has a field 'yek', which no entry has.");
    assertRefused(
        text -> text.replace("\"text\":\"note note-3\"", "\"text\":1e999"),
        "Line 4 of book.jsonl is damaged: a number in it is not finite.");
    assertRefused(
        text -> text.replace("\"text\":\"note note-3\"", "\"text\":1,\"text\":2"),
        "Line 4 of book.jsonl is damaged: it is not JSON that can be read");
  }

  @Test
  void a_book_saved_in_another_encoding_is_refused_whole_and_never_taken_for_a_torn_tail() {
    for (Charset other :
        List.of(
            StandardCharsets.UTF_16,
            StandardCharsets.UTF_16LE,
            StandardCharsets.UTF_16BE,
            Charset.forName("UTF-32"),
            Charset.forName("UTF-32LE"))) {
      refusesOtherEncoding(whole.getBytes(other));
      refusesOtherEncoding(("\uFEFF" + whole).getBytes(other));
    }
    refusesOtherEncoding(("\uFEFF" + whole).getBytes(StandardCharsets.UTF_8));
  }

  private void refusesOtherEncoding(byte[] saved) {
    try {
      assertEquals(
          "The first line of book.jsonl is not the header of a book: it is not plain UTF-8, as if"
              + " an editor had saved it otherwise. Nothing was changed: put the unchanged file"
              + " back.",
          assertRefused(saved));
    } catch (IOException trouble) {
      throw new AssertionError(trouble);
    }
  }

  @Test
  void a_newer_format_is_refused_with_the_way_out() {
    assertRefused(
        text -> text.replace("\"format\":1", "\"format\":2"),
        "book.jsonl was written by a newer Spindlebook (format 2, this one reads up to 1)");
  }

  @Test
  void an_empty_file_is_refused() {
    assertRefused(text -> "", "book.jsonl is empty");
  }

  @Test
  void reading_without_opening_refuses_the_same_damage() throws IOException {
    bench.write(whole.replace("note note-7", "note note-9").getBytes(StandardCharsets.UTF_8));
    BookRefused refused = assertThrows(BookRefused.class, () -> BookFile.read(bench.log()));
    assertEquals(
        "Line 9 of book.jsonl is damaged: it does not follow from the line before it.",
        refused.getMessage());
    bench.write((whole + "{\"n\":9").getBytes(StandardCharsets.UTF_8));
    assertTrue(
        assertThrows(BookRefused.class, () -> BookFile.read(bench.log()))
            .getMessage()
            .startsWith("Line 10 of book.jsonl is damaged"));
  }

  private void assertRefused(UnaryOperator<String> change, String words) {
    String bad = change.apply(whole);
    assertTrue(!bad.equals(whole), "the change must change something");
    try {
      String said = assertRefused(bad.getBytes(StandardCharsets.UTF_8));
      assertTrue(said.contains(words), said);
    } catch (IOException trouble) {
      throw new AssertionError(trouble);
    }
  }

  private String assertRefused(byte[] bad) throws IOException {
    bench.write(bad);
    BookRefused refused = assertThrows(BookRefused.class, bench::openLog);
    assertEquals(BookRefused.Why.BOOK, refused.why());
    assertArrayEquals(bad, bench.bytes());
    assertEquals(List.of(), bench.tornFiles());
    return refused.getMessage();
  }
}
