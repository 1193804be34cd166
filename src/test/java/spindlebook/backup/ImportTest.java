package spindlebook.backup;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spindlebook.log.Book;
import spindlebook.log.BookFile;
import spindlebook.log.BookRefused;
import spindlebook.log.CarsOfFile;
import spindlebook.log.Draft;
import spindlebook.log.Entry;
import spindlebook.log.Json;

/** Another book, or one car of it, taken into this one. */
class ImportTest {
  @TempDir Path folder;
  private Garage here;
  private Garage there;
  private String red;
  private final List<String> told = new ArrayList<>();

  @BeforeEach
  void two_books() throws IOException {
    here = new Garage(folder.resolve("here"));
    there = new Garage(folder.resolve("there"));
    try (Book book = there.open()) {
      car(book, "mule", "Mule");
      car(book, "goat", "Goat");
      book.append(corner("mule-lf", "mule"));
      ObjectNode read =
          body().put("corner", "mule-lf").put("what", "clay").put("words", "not touched");
      book.append(draft("note", "telltale", read));
      book.append(draft("do", "to-do", body().put("car", "goat").put("words", "order a strap")));
      red = photo(book, "red", "mule-lf");
    }
  }

  @Test
  void where_nothing_was_begun_it_comes_byte_for_byte_with_its_photos() throws IOException {
    run(there.data, null);
    assertArrayEquals(there.bytes(), here.bytes());
    assertTrue(NamedPhotos.good(here.photos(), red));
    try (Book book = here.open()) {
      assertEquals(6, book.lastN());
    }
  }

  @Test
  void nor_does_a_book_that_was_begun_and_is_empty_make_a_difference() {
    here.open().close();
    run(there.data, null);
    assertArrayEquals(there.bytes(), here.bytes());
  }

  @Test
  void into_a_book_it_comes_entry_by_entry_with_where_each_stood_and_twice_is_harmless()
      throws IOException {
    here.with("own");
    run(there.data, null);
    assertEquals(List.of("Brought in 6 entries and 1 photo; 0 entries were here already."), told);
    byte[] once = here.bytes();
    List<Entry> entries = BookFile.read(here.log()).entries();
    assertEquals(
        List.of("own", "mule", "goat", "mule-lf", "note", "do", "red"),
        entries.stream().map(Entry::key).toList());
    assertEquals(4, entries.get(4).origin().n());
    assertTrue(NamedPhotos.good(here.photos(), red));
    run(there.data, null);
    assertEquals(List.of("Brought in 0 entries and 0 photos; 6 entries were here already."), told);
    assertArrayEquals(once, here.bytes());
  }

  @Test
  void one_car_comes_by_its_name_or_key_and_nothing_of_the_others() throws IOException {
    here.with("own");
    run(there.data, "Mule");
    assertEquals(
        List.of("own", "mule", "mule-lf", "note", "red"),
        BookFile.read(here.log()).entries().stream().map(Entry::key).toList());
    assertEquals(
        CarsOfFile.of(BookFile.read(there.log())).get("mule").entries().size(),
        CarsOfFile.of(BookFile.read(here.log())).get("mule").entries().size());
    run(there.data, "goat");
    assertEquals(7, BookFile.read(here.log()).entries().size());
    run(there.data, null);
    assertEquals(7, BookFile.read(here.log()).entries().size());
  }

  @Test
  void one_car_into_a_folder_without_a_book_begins_one() throws IOException {
    run(there.data, "goat");
    assertEquals(
        List.of("goat", "do"),
        BookFile.read(here.log()).entries().stream().map(Entry::key).toList());
    assertFalse(NamedPhotos.good(here.photos(), red));
  }

  @Test
  void a_copy_in_a_backup_place_will_do_as_well() {
    here.with("own");
    Place place = new Place(folder.resolve("stick"));
    there.backup(place);
    run(place.folder, "mule");
    assertEquals(List.of("Brought in 4 entries and 1 photo; 0 entries were here already."), told);
  }

  @Test
  void a_car_that_is_not_there_is_said_with_those_that_are() {
    here.with("own");
    byte[] before = here.bytes();
    BackupRefused refused = assertThrows(BackupRefused.class, () -> run(there.data, "Burro"));
    assertEquals(
        "There is no car 'Burro' in that book; it has mule (Mule), goat (Goat).",
        refused.getMessage());
    assertArrayEquals(before, here.bytes());
  }

  @Test
  void a_damaged_book_brings_nothing_in() throws IOException {
    here.with("own");
    byte[] before = here.bytes();
    String text = Files.readString(there.log());
    Files.writeString(there.log(), text.replace("order a strap", "order a stray"));
    assertThrows(BookRefused.class, () -> run(there.data, null));
    assertArrayEquals(before, here.bytes());
  }

  @Test
  void while_a_program_has_the_book_open_it_is_refused() {
    here.with("own");
    try (Book book = here.open()) {
      assertThrows(BookRefused.class, () -> run(there.data, null));
      assertEquals(1, book.lastN());
    }
  }

  private void run(Path from, String car) {
    told.clear();
    Import.run(here.data, from, car, Garage.CLOCK, told::add);
  }

  private static void car(Book book, String key, String name) {
    ObjectNode body = body();
    body.putObject("details").put("name", name);
    body.putArray("tools");
    book.append(draft(key, "car", body));
  }

  private static Draft corner(String key, String car) {
    ObjectNode body =
        body().put("car", car).put("place", "left-front").put("layout", "steered-double-a-arm");
    body.putArray("watchPoints");
    body.putArray("adjusters");
    return draft(key, "corner", body);
  }

  private String photo(Book book, String key, String corner) throws IOException {
    return there.photo(
        book, key, body().put("corner", corner).put("widthPx", 640).put("heightPx", 480));
  }

  private static Draft draft(String key, String kind, ObjectNode body) {
    return new Draft(key, kind, 1, 0, "Sam", null, null, body);
  }

  private static ObjectNode body() {
    return Json.MAPPER.createObjectNode();
  }
}
