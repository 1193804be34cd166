package spindlebook.log;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Entries that were acknowledged and are gone at the next start are never gone in silence. */
class LostEntriesTest {
  private static final String GO_ON =
      ": put the newest copy back with 'restore', or, to go on with this one, start once with"
          + " --restored ";

  @TempDir Path folder;
  private Bench bench;
  private String whole;
  private String generation;

  @BeforeEach
  void a_book_of_four_entries() {
    bench = new Bench(folder);
    try (Book book = bench.open()) {
      for (String key : List.of("a", "b", "c", "d")) {
        book.append(Bench.note(key));
      }
      generation = book.generation();
    }
    whole = new String(bench.bytes(), StandardCharsets.UTF_8);
  }

  @Test
  void a_book_cut_at_a_line_end_is_refused_until_somebody_says_so() throws IOException {
    for (int left = 3; left >= 0; left--) {
      write(first(left));
      refused(log() + " once held 4 entries, it now holds " + left + GO_ON + left + ".");
    }
    write(first(2));
    goesOnAsANewGeneration(2);
  }

  @Test
  void a_last_line_that_was_changed_is_refused_until_somebody_says_so() throws IOException {
    write(whole.replace("note d", "note x"));
    refused("Entry 4 of " + log() + " is not the one that was written" + GO_ON + "4.");
    goesOnAsANewGeneration(4);
  }

  @Test
  void a_last_line_that_was_damaged_is_no_torn_tail_when_it_was_acknowledged() throws IOException {
    write(whole.substring(0, whole.length() - 20));
    BookRefused refused = refused();
    assertEquals(
        "Line 5 of book.jsonl is damaged: it is not JSON that can be read, from character 179 on. "
            + log()
            + " once held 4 entries, it now holds 3"
            + GO_ON
            + "3.",
        refused.getMessage());
    goesOnAsANewGeneration(3);
    assertEquals(1, bench.tornFiles().size());
  }

  @Test
  void a_copy_that_was_written_on_elsewhere_is_refused_until_somebody_says_so(@TempDir Path other)
      throws IOException {
    Bench elsewhere = new Bench(other);
    elsewhere.write(first(2).getBytes(StandardCharsets.UTF_8));
    try (Book book = elsewhere.open()) {
      Stream.of("p", "q", "r", "s").map(Bench::note).forEach(book::append);
    }
    bench.write(elsewhere.bytes());
    refused("Entry 4 of " + log() + " is not the one that was written" + GO_ON + "6.");
    goesOnAsANewGeneration(6);
  }

  @Test
  void either_of_the_two_files_beside_it_is_enough() throws IOException {
    write(first(1));
    for (String gone : List.of("generation.json", "index.clean")) {
      byte[] kept = Files.readAllBytes(folder.resolve(gone));
      Files.delete(folder.resolve(gone));
      refused(log() + " once held 4 entries, it now holds 1" + GO_ON + "1.");
      Files.write(folder.resolve(gone), kept);
    }
  }

  @Test
  void the_index_alone_makes_a_restored_book_a_new_generation_too() throws IOException {
    byte[] noted = Files.readAllBytes(folder.resolve("generation.json"));
    try (Book book = bench.open()) {
      book.append(Bench.note("e"));
    }
    Files.write(folder.resolve("generation.json"), noted);
    write(first(4));
    refused(log() + " once held 5 entries, it now holds 4" + GO_ON + "4.");
    goesOnAsANewGeneration(4);
  }

  @Test
  void another_number_than_it_holds_is_no_go_ahead() throws IOException {
    write(first(2));
    byte[] cut = bench.bytes();
    for (long said : new long[] {0, 1, 3, 4, -1}) {
      assertThrows(BookRefused.class, () -> bench.openRestored(said));
      assertArrayEquals(cut, bench.bytes());
    }
  }

  @Test
  void said_once_and_left_standing_it_does_no_harm_to_a_whole_book() throws IOException {
    write(first(2));
    bench.openRestored(2).close();
    String second = generation(bench.openRestored(2));
    try (Book book = bench.openRestored(2)) {
      book.append(Bench.note("e"));
    }
    assertEquals(second, generation(bench.openRestored(2)));
    write(first(1));
    assertThrows(BookRefused.class, () -> bench.openRestored(2));
  }

  @Test
  void a_book_that_is_gone_is_not_begun_anew_beside_anything_that_knew_it() throws IOException {
    Files.delete(bench.log());
    String of4 = " is missing, but the files beside it show that there was a book of 4 entries";
    String putBack = ": put it back, or begin a new one in another folder (--data).";
    gone(of4 + putBack);
    Files.delete(folder.resolve("index.mv.db"));
    gone(of4 + putBack);
    Files.delete(folder.resolve("index.clean"));
    gone(of4 + putBack);
  }

  @Test
  void the_index_alone_shows_that_there_was_a_book() throws IOException {
    for (String beside : List.of("book.jsonl", "generation.json", "index.clean")) {
      Files.delete(folder.resolve(beside));
    }
    gone(
        " is missing, but the files beside it show that there was a book: put it back, or begin a"
            + " new one in another folder (--data).");
  }

  @Test
  void building_the_index_anew_loses_no_witness_of_a_book_that_was_cut() throws IOException {
    Files.delete(folder.resolve("generation.json"));
    write(first(3));
    for (int i = 0; i < 2; i++) {
      assertThrows(
          BookRefused.class,
          () -> Book.rebuild(folder, Bench.NOON, OnceHeld.NOT_RESTORED, told -> {}));
    }
    Book.rebuild(folder, Bench.NOON, 3, told -> {});
    bench.open().close();
  }

  @Test
  void a_copy_put_into_an_empty_folder_just_opens(@TempDir Path empty) throws IOException {
    Bench fresh = new Bench(empty);
    fresh.write(first(3).getBytes(StandardCharsets.UTF_8));
    assertNotEquals(generation, generation(fresh.open()));
    assertEquals(1, fresh.told.size());
  }

  @Test
  void a_copy_put_over_a_book_just_begun_just_opens(@TempDir Path begun) throws IOException {
    Bench fresh = new Bench(begun);
    String ofEmpty = generation(fresh.open());
    fresh.write(whole.getBytes(StandardCharsets.UTF_8));
    assertNotEquals(ofEmpty, generation(fresh.open()));
  }

  private static String generation(Book opened) {
    try (Book book = opened) {
      return book.generation();
    }
  }

  private void goesOnAsANewGeneration(int entries) {
    try (Book book = bench.openRestored(entries)) {
      assertEquals(entries, book.lastN());
      assertNotEquals(generation, book.generation());
    }
    try (Book book = bench.open()) {
      assertNotEquals(generation, book.generation());
      assertEquals(entries + 1, book.append(Bench.note("next")).get(0).n());
    }
    bench.open().close();
  }

  private BookRefused refused() throws IOException {
    List<byte[]> before = everything();
    BookRefused refused = assertThrows(BookRefused.class, bench::open);
    assertEquals(BookRefused.Why.BOOK, refused.why());
    List<byte[]> after = everything();
    assertEquals(before.size(), after.size());
    for (int i = 0; i < before.size(); i++) {
      assertArrayEquals(before.get(i), after.get(i));
    }
    return refused;
  }

  private void refused(String sentence) throws IOException {
    assertEquals(sentence, refused().getMessage());
  }

  private void gone(String sentence) throws IOException {
    refused(log() + sentence);
    assertFalse(Files.exists(bench.log()));
  }

  private List<byte[]> everything() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.sorted().map(Bench::bytes).toList();
    }
  }

  private String first(int entries) {
    return String.join("", Arrays.asList(whole.split("(?<=\n)")).subList(0, entries + 1));
  }

  private void write(String text) throws IOException {
    bench.write(text.getBytes(StandardCharsets.UTF_8));
  }

  private Path log() {
    return bench.log();
  }
}
