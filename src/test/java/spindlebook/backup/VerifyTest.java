package spindlebook.backup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jdbi.v3.core.Jdbi;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spindlebook.log.Book;

/** Each sentence of looking a book through, good and wrong. */
class VerifyTest {
  @TempDir Path folder;
  private Garage garage;
  private String red;
  private final List<String> told = new ArrayList<>();

  @BeforeEach
  void a_book_with_a_photo() throws IOException {
    garage = new Garage(folder.resolve("data"));
    try (Book book = garage.open()) {
      book.append(Garage.note("a"));
      red = garage.photo(book, "red");
      book.append(Garage.note("b"));
    }
  }

  /** Looks the folder through; nothing in it is changed by that. */
  private boolean good(Path book) {
    Map<String, String> before = files();
    told.clear();
    boolean good = Verify.of(book, told::add);
    assertEquals(before, files());
    return good;
  }

  private Map<String, String> files() {
    return Files.exists(garage.data.resolve("index.clean"))
        ? Garage.files(folder)
        : Garage.filesBesideAnOpenBook(folder);
  }

  private boolean good() {
    return good(garage.data);
  }

  private void says(String sentence) {
    assertTrue(told.contains(sentence), () -> told.toString());
  }

  private void change(String from, String to) throws IOException {
    String text = new String(garage.bytes(), StandardCharsets.UTF_8);
    assertTrue(text.contains(from), text);
    Files.writeString(garage.log(), text.replace(from, to));
  }

  @Test
  void a_book_that_is_whole_is_good_in_every_sentence() {
    garage.backup(Place.beside(garage.data));
    assertTrue(good(), told.toString());
    assertEquals(
        List.of(
            "Good: the chain holds, from the first to the last of 3 entries.",
            "Good: 1 photo, each as it was taken.",
            "Good: the index says what the book says.",
            "Good: generation.json knows entry 3, and the book holds it.",
            "Good: index.clean knows entry 3, and the book holds it.",
            "Good: the last backup, of 2031-05-04T120000Z, ends at entry 3, and the book holds"
                + " it."),
        told);
    assertTrue(good(garage.log()));
  }

  @Test
  void a_line_that_was_changed_breaks_the_chain() throws IOException {
    change("note a", "note x");
    assertFalse(good());
    says(
        "Wrong: Line 3 of book.jsonl is damaged: it does not follow from the line before it. Up to"
            + " entry 0 the chain holds.");
    says("Wrong: generation.json knows entry 3, and the book lacks it.");
    says("Not looked at: the index, as the book is damaged.");
  }

  @Test
  void a_last_line_that_was_changed_or_cut_off_is_known_to_the_files_beside_it()
      throws IOException {
    garage.backup(Place.beside(garage.data));
    byte[] whole = garage.bytes();
    change("note b", "note x");
    for (int i = 0; i < 2; i++) {
      assertFalse(good());
      says("Wrong: generation.json knows entry 3, and the book lacks it.");
      says("Wrong: index.clean knows entry 3, and the book lacks it.");
      says(
          "Wrong: the last backup, of 2031-05-04T120000Z, ends at entry 3, and the book lacks it.");
      says(
          "Wrong: the index is not the book's: a row in it is not what the book says; a start"
              + " builds it anew.");
      String text = new String(whole, StandardCharsets.UTF_8);
      Files.writeString(garage.log(), text.substring(0, text.lastIndexOf("{\"n\":3")));
    }
    says("Good: the chain holds, from the first to the last of 2 entries.");
  }

  @Test
  void a_book_that_is_no_book_or_missing_is_one_sentence() throws IOException {
    Files.writeString(garage.log(), "nonsense\n");
    assertFalse(good());
    assertEquals(1, told.size());
    assertTrue(told.get(0).startsWith("Wrong: The first line of book.jsonl is not"), told.get(0));
    Files.delete(garage.log());
    assertFalse(good());
    assertEquals(List.of("Wrong: book.jsonl cannot be read: it is not there."), told);
  }

  @Test
  void photos_that_are_missing_or_damaged_are_counted() throws IOException {
    try (Book book = garage.open()) {
      garage.photo(book, "blue");
    }
    Files.writeString(NamedPhotos.full(garage.photos(), red), "rotten");
    assertFalse(good());
    says("Wrong: of 2 photos 0 missing and 1 damaged.");
    Files.delete(NamedPhotos.full(garage.photos(), red));
    assertFalse(good());
    says("Wrong: of 2 photos 1 missing and 0 damaged.");
  }

  @Test
  void an_index_whose_file_or_row_was_changed_is_found() throws IOException {
    Path index = garage.data.resolve("index.mv.db");
    byte[] whole = Garage.bytes(index);
    whole[whole.length / 2] ^= 1;
    Files.write(index, whole);
    assertFalse(good());
    says(
        "Wrong: the index is not the book's: its file was changed since it was closed; a start"
            + " builds it anew.");
    garage.with("c");
    assertTrue(good(), told.toString());

    Jdbi.create("jdbc:h2:" + garage.data.resolve("index"), "sa", "")
        .useHandle(handle -> handle.execute("update entry set who = 'Pat' where n = 1"));
    String mark = Files.readString(garage.data.resolve("index.clean"));
    String now = spindlebook.log.Sha256.hex(index);
    Files.writeString(
        garage.data.resolve("index.clean"),
        mark.replaceFirst("\"sha256\":\"[0-9a-f]+", "\"sha256\":\"" + now));
    assertFalse(good());
    says(
        "Wrong: the index is not the book's: a row in it is not what the book says; a start builds"
            + " it anew.");
  }

  @Test
  void while_it_is_open_the_index_is_left_out_and_the_rest_is_looked_at() {
    try (Book book = garage.open()) {
      book.append(Garage.note("c"));
      assertTrue(good(), told.toString());
      says("Good: the chain holds, from the first to the last of 4 entries.");
      says("Not looked at: no index that is closed; a start builds it from the book.");
      says("Not looked at: no backup beside the book.");
    }
  }

  @Test
  void a_copy_in_a_place_is_looked_through_with_the_photos_there() throws IOException {
    Place place = new Place(folder.resolve("stick"));
    Path copy = garage.backup(place).newest().file();
    assertTrue(good(copy));
    assertEquals(
        List.of(
            "Good: the chain holds, from the first to the last of 3 entries.",
            "Good: 1 photo, each as it was taken."),
        told);
    String text = Files.readString(copy);
    Files.writeString(copy, text.replace("note b", "note x"));
    Files.delete(NamedPhotos.full(place.photos(), red));
    assertFalse(good(copy));
    assertEquals(
        List.of(
            "Wrong: the copy ends otherwise than when it was made, at entry 3.",
            "Wrong: of 1 photo 1 missing and 0 damaged."),
        told);
  }
}
