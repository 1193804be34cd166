package spindlebook.backup;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spindlebook.log.Book;
import spindlebook.log.BookRefused;

/** Putting a book back, whatever happened to the one that is there. */
class RestoreTest {
  @TempDir Path folder;
  private Garage garage;
  private Place place;
  private String red;
  private String blue;
  private byte[] atFirst;
  private byte[] later;
  private BookCopy first;
  private BookCopy second;
  private final List<String> told = new ArrayList<>();

  @BeforeEach
  void two_backups_and_an_entry_since() throws IOException {
    garage = new Garage(folder.resolve("data"));
    place = new Place(folder.resolve("stick"));
    try (Book book = garage.open()) {
      book.append(Garage.note("a"));
      red = garage.photo(book, "red");
      atFirst = garage.bytes();
      first = garage.backup(place).newest();
      blue = garage.photo(book, "blue");
      book.append(Garage.note("b"));
      later = garage.bytes();
      second = garage.backup(place, Garage.NOON.plus(Duration.ofHours(1))).newest();
      book.append(Garage.note("c"));
    }
    Files.writeString(garage.data.resolve("devices.json"), "who is paired");
  }

  private void restore(Path from) {
    told.clear();
    Restore.run(garage.data, from, Garage.NOON, told::add);
  }

  private String generation() {
    try (Book book = garage.open()) {
      return book.generation();
    }
  }

  /** What design.md names, and what a spoilt disk does besides. */
  private Map<String, Damage> damages() {
    Map<String, Damage> all = new LinkedHashMap<>();
    all.put("nothing", data -> {});
    all.put("torn tail", data -> change(t -> t + "{\"n\":6,\"at\":\"2031"));
    all.put("last line torn", data -> change(t -> t.substring(0, t.length() - 30)));
    all.put("changed line", data -> change(t -> t.replace("note a", "note x")));
    all.put("last line changed", data -> change(t -> t.replace("note c", "note x")));
    all.put("cut at a line end", data -> change(t -> t.substring(0, t.lastIndexOf("{\"n\":4"))));
    all.put("empty", data -> change(t -> ""));
    all.put("zeros", data -> change(t -> "\0".repeat(t.length())));
    all.put("no header", data -> change(t -> t.substring(t.indexOf('\n') + 1)));
    all.put("of a newer version", data -> change(t -> t.replace("\"format\":1", "\"format\":2")));
    all.put("book missing", data -> Files.delete(garage.log()));
    all.put("index missing", data -> Files.delete(data.resolve("index.mv.db")));
    all.put("index damaged", data -> Files.writeString(data.resolve("index.mv.db"), "no index"));
    all.put("generation missing", data -> Files.delete(data.resolve("generation.json")));
    all.put("generation damaged", data -> Files.writeString(data.resolve("generation.json"), "{"));
    all.put("photos missing", data -> delete(garage.photos()));
    all.put(
        "photo damaged", data -> Files.writeString(NamedPhotos.full(garage.photos(), red), "no"));
    all.put("folder missing", RestoreTest::delete);
    return all;
  }

  private interface Damage {
    void to(Path data) throws IOException;
  }

  private interface Change {
    String of(String text);
  }

  private void change(Change change) throws IOException {
    Files.writeString(garage.log(), change.of(new String(garage.bytes(), StandardCharsets.UTF_8)));
  }

  private static void delete(Path folder) throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path each : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(each);
      }
    }
  }

  private static void copy(Path from, Path to) throws IOException {
    try (Stream<Path> all = Files.walk(from)) {
      for (Path each : all.toList()) {
        Path there = to.resolve(from.relativize(each).toString());
        if (Files.isDirectory(each)) {
          Files.createDirectories(there);
        } else {
          Files.copy(each, there, StandardCopyOption.REPLACE_EXISTING);
        }
      }
    }
  }

  @Test
  void any_kept_copy_comes_back_byte_for_byte_after_any_damage() throws IOException {
    String before = generation();
    Path asItWas = folder.resolve("as-it-was");
    copy(garage.data, asItWas);
    for (Map.Entry<String, Damage> damage : damages().entrySet()) {
      for (BookCopy copy : List.of(first, second)) {
        String what = damage.getKey() + ", entry " + copy.n();
        delete(garage.data);
        copy(asItWas, garage.data);
        damage.getValue().to(garage.data);
        byte[] replaced = Files.exists(garage.log()) ? garage.bytes() : null;
        Map<String, String> stick = Garage.files(place.folder);

        restore(copy.file());

        assertArrayEquals(copy.equals(first) ? atFirst : later, garage.bytes(), what);
        assertTrue(NamedPhotos.good(garage.photos(), red), what);
        assertTrue(copy.equals(first) || NamedPhotos.good(garage.photos(), blue), what);
        Path aside = garage.data.resolve("replaced-2031-05-04T120000Z");
        if (replaced != null) {
          assertArrayEquals(replaced, Garage.bytes(aside.resolve("book.jsonl")), what);
        }
        assertEquals(stick, Garage.files(place.folder), what);
        if (!damage.getKey().equals("folder missing")) {
          assertEquals("who is paired", Files.readString(garage.data.resolve("devices.json")));
        }
        if (damage.getKey().length() % 3 == 0) { // A start builds the index: every third will do.
          assertNotEquals(before, generation(), what);
          assertEquals(1, garage.told.size(), garage.told.toString());
          garage.with("next");
          assertEquals(List.of(), garage.told);
        }
      }
    }
  }

  @Test
  void a_dry_run_says_what_is_here_what_comes_and_what_leaves_and_changes_nothing() {
    Map<String, String> before = Garage.filesBesideAnOpenBook(folder);
    try (Book book = garage.open()) {
      Restore.tryOut(garage.data, first.file(), told::add);
    }
    assertEquals(
        List.of(
            "Here now: 5 entries.",
            "Comes back: 2 entries with 1 photo.",
            "3 entries after entry 2 leave the book: 2 note, 1 photo. Phones offer again what they"
                + " sent lately.",
            "Photos: 1 here, 0 come back, 0 missing or damaged in both.",
            "Nothing was changed."),
        told);
    assertEquals(before, Garage.filesBesideAnOpenBook(folder));
  }

  @Test
  void a_copy_that_goes_as_far_as_the_book_takes_nothing_from_it() throws IOException {
    BookCopy now = garage.backup(place, Garage.NOON.plus(Duration.ofDays(1))).newest();
    Restore.tryOut(garage.data, now.file(), told::add);
    assertTrue(told.contains("Nothing leaves the book."), told.toString());
  }

  @Test
  void a_copy_of_another_book_or_of_another_end_is_told_as_that() throws IOException {
    Garage other = new Garage(folder.resolve("other")).with("x", "y");
    Restore.tryOut(garage.data, other.log(), told::add);
    assertTrue(
        told.contains(
            "It is another book: all 5 entries here leave it. They stay in the folder beside."),
        told.toString());
    told.clear();
    Garage fork = new Garage(folder.resolve("fork"));
    Files.createDirectories(fork.data);
    Files.write(fork.log(), atFirst);
    fork.with("d", "e", "f", "g");
    Restore.tryOut(garage.data, fork.log(), told::add);
    assertTrue(
        told.stream().anyMatch(t -> t.startsWith("3 entries after entry 2 leave the book")),
        told.toString());
  }

  @Test
  void a_place_gives_its_newest_good_copy_and_of_two_books_the_one_that_is_here()
      throws IOException {
    new Garage(folder.resolve("other"))
        .with("x")
        .backup(place, Garage.NOON.plus(Duration.ofDays(9)));
    restore(place.folder);
    assertArrayEquals(later, garage.bytes());
    String whole = Files.readString(second.file());
    for (String damaged :
        List.of(
            "rotten",
            whole.replace("note b", "note x"),
            whole.substring(0, whole.lastIndexOf("{\"n\":4")))) {
      Files.writeString(second.file(), damaged);
      restore(place.folder);
      assertArrayEquals(atFirst, garage.bytes(), damaged);
    }
  }

  @Test
  void on_a_new_machine_a_place_fills_an_empty_folder() throws IOException {
    Garage fresh = new Garage(folder.resolve("new-machine"));
    Restore.run(fresh.data, place.folder, Garage.NOON, told::add);
    assertArrayEquals(later, fresh.bytes());
    assertEquals(Garage.files(garage.photos()), Garage.files(fresh.photos()));
    fresh.with("next");
  }

  @Test
  void while_the_book_is_open_it_is_refused_in_words_and_nothing_changes() {
    try (Book book = garage.open()) {
      Map<String, String> before = Garage.filesBesideAnOpenBook(folder);
      BookRefused refused = assertThrows(BookRefused.class, () -> restore(place.folder));
      assertEquals(
          "The book in "
              + garage.data
              + " is in use: another Spindlebook has this book open, stop that one first.",
          refused.getMessage());
      assertEquals(before, Garage.filesBesideAnOpenBook(folder));
      assertEquals(5, book.lastN());
    }
  }

  @Test
  void a_damaged_copy_is_refused_and_nothing_changes() throws IOException {
    String whole = new String(Garage.bytes(second.file()), StandardCharsets.UTF_8);
    Path zip = folder.resolve("book.zip");
    for (String damaged :
        List.of(
            whole.replace("note a", "note x"),
            whole.replace("note b", "note x"),
            whole.substring(0, whole.length() - 20),
            whole.substring(0, whole.lastIndexOf("{\"n\":4")),
            "")) {
      Files.writeString(second.file(), damaged);
      zip(zip, damaged);
      Map<String, String> before = Garage.files(folder);
      assertThrows(RuntimeException.class, () -> restore(second.file()), damaged);
      if (!damaged.equals(whole.replace("note b", "note x")) && !damaged.endsWith("\n")) {
        // Nothing vouches for the last line of a file that has no name of ours.
        assertThrows(RuntimeException.class, () -> restore(zip), damaged);
      }
      assertEquals(before, Garage.files(folder));
    }
    zip(zip, whole);
    byte[] bytes = Garage.bytes(zip);
    for (int length : new int[] {0, 1, 30, bytes.length / 2, bytes.length - 30}) {
      Files.write(zip, java.util.Arrays.copyOf(bytes, length));
      Map<String, String> before = Garage.files(folder);
      BackupRefused refused = assertThrows(BackupRefused.class, () -> restore(zip));
      assertTrue(refused.getMessage().startsWith(zip + " is no copy"), refused.getMessage());
      assertEquals(before, Garage.files(folder));
    }
    for (Path none : List.of(folder.resolve("none"), folder, garage.data.resolve("devices.json"))) {
      assertThrows(BackupRefused.class, () -> restore(none));
    }
  }

  private void zip(Path file, String book) throws IOException {
    try (OutputStream out = Files.newOutputStream(file);
        ZipOutputStream zip = new ZipOutputStream(out)) {
      zip.putNextEntry(new ZipEntry("book.jsonl"));
      zip.write(book.getBytes(StandardCharsets.UTF_8));
      for (String photo : List.of(red, blue)) {
        zip.putNextEntry(new ZipEntry("photos/" + photo + ".jpg"));
        zip.write(Garage.bytes(NamedPhotos.full(place.photos(), photo)));
      }
    }
  }

  @Test
  void a_zip_gives_the_book_and_its_photos_back() throws IOException {
    Path zip = folder.resolve("book.zip");
    zip(zip, new String(later, StandardCharsets.UTF_8));
    delete(garage.photos());
    restore(zip);
    assertArrayEquals(later, garage.bytes());
    assertTrue(NamedPhotos.good(garage.photos(), red) && NamedPhotos.good(garage.photos(), blue));
    assertTrue(
        told.contains("Photos: 0 here, 2 come back, 0 missing or damaged in both."),
        told.toString());
  }

  @Test
  void a_photo_that_is_damaged_in_the_copy_never_takes_the_place_of_a_good_one()
      throws IOException {
    Files.writeString(NamedPhotos.full(place.photos(), red), "rotten");
    restore(place.folder);
    assertTrue(NamedPhotos.good(garage.photos(), red));
    Files.writeString(NamedPhotos.full(garage.photos(), red), "rotten too");
    restore(place.folder);
    assertEquals("rotten too", Files.readString(NamedPhotos.full(garage.photos(), red)));
    assertTrue(
        told.contains("Photos: 1 here, 0 come back, 1 missing or damaged in both."),
        told.toString());
  }

  @Test
  void a_damaged_photo_that_comes_back_is_kept_beside() throws IOException {
    Files.writeString(NamedPhotos.full(garage.photos(), red), "rotten");
    restore(place.folder);
    assertTrue(NamedPhotos.good(garage.photos(), red));
    Path aside = garage.data.resolve("replaced-2031-05-04T120000Z/photos/" + red + ".jpg");
    assertEquals("rotten", Files.readString(aside));
  }

  @Test
  void what_was_sent_since_is_taken_again_once_each_by_the_new_generation() throws IOException {
    String before = generation();
    restore(second.file());
    try (Book book = garage.open()) {
      assertNotEquals(before, book.generation());
      for (int twice = 0; twice < 2; twice++) {
        book.append(List.of(Garage.note("a"), Garage.note("b"), Garage.note("c")));
      }
      assertEquals(5, book.lastN());
      assertEquals("c", book.entries(5).get(0).key());
    }
  }

  @Test
  void two_in_the_same_second_keep_what_they_replace_apart() {
    restore(first.file());
    restore(second.file());
    assertArrayEquals(
        atFirst, Garage.bytes(garage.data.resolve("replaced-2031-05-04T120000Z-2/book.jsonl")));
    assertFalse(Files.exists(garage.data.resolve("replaced-2031-05-04T120000Z/coming-back.part")));
  }
}
