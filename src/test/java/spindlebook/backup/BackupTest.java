package spindlebook.backup;

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
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spindlebook.log.Book;
import spindlebook.log.BookFile;
import spindlebook.log.BookRefused;

/** One backup into one place, on real files. */
class BackupTest {
  @TempDir Path folder;
  private Garage garage;
  private Place place;
  private String red;

  @BeforeEach
  void a_book_of_two_notes_and_a_photo() throws IOException {
    garage = new Garage(folder.resolve("data"));
    place = new Place(folder.resolve("stick"));
    try (Book book = garage.open()) {
      book.append(Garage.note("a"));
      red = garage.photo(book, "red");
      book.append(Garage.note("b"));
    }
  }

  private List<String> names() throws IOException {
    return place.copies(null).stream().map(c -> c.file().getFileName().toString()).toList();
  }

  @Test
  void a_copy_has_the_books_bytes_its_photos_and_a_name_that_says_when_and_how_far()
      throws IOException {
    Backup done = garage.backup(place);
    assertTrue(done.fresh());
    assertEquals(3, done.newest().n());
    assertEquals(Garage.NOON, done.newest().at());
    assertArrayEquals(garage.bytes(), Garage.bytes(done.newest().file()));
    String hash = BookFile.chain(garage.log(), e -> {}).hash();
    String name = "2031-05-04T120000Z-n3-" + hash.substring(0, 12) + ".jsonl";
    assertEquals(
        Set.of("books/" + name, "photos/" + red + ".jpg", "photos/" + red + ".small.jpg"),
        Garage.files(place.folder).keySet());
    assertEquals(Garage.files(garage.photos()), Garage.files(place.photos()));
    assertEquals(
        "Copied to " + done.newest().file() + " and checked: 3 entries, 1 photo.", done.sentence());
  }

  @Test
  void nothing_is_copied_when_nothing_changed() throws IOException {
    garage.backup(place);
    Map<String, String> before = Garage.files(place.folder);
    Backup again = garage.backup(place, Garage.NOON.plus(Duration.ofDays(3)));
    assertFalse(again.fresh());
    assertEquals(before, Garage.files(place.folder));
    assertTrue(again.sentence().startsWith("Nothing changed since "), again.sentence());
    garage.with("c");
    assertTrue(garage.backup(place, Garage.NOON.plus(Duration.ofDays(3))).fresh());
    assertEquals(2, names().size());
  }

  @Test
  void a_copy_that_was_changed_cut_or_lost_since_counts_no_more_and_is_made_anew()
      throws IOException {
    byte[] book = garage.bytes();
    String text = new String(book, StandardCharsets.UTF_8);
    Path first = garage.backup(place).newest().file();
    for (String damaged :
        List.of(
            text.replace("note a", "note x"),
            text.replace("note b", "note x"), // the last line, for which no other one speaks
            text.substring(0, text.length() - 40),
            text.substring(0, text.lastIndexOf("{\"n\":3")),
            "")) {
      Files.writeString(first, damaged);
      Backup anew = garage.backup(place);
      assertTrue(anew.fresh(), damaged);
      assertEquals(anew.newest(), place.newestGood(null).copy());
      assertArrayEquals(book, Garage.bytes(anew.newest().file()));
      first = anew.newest().file();
    }
  }

  @Test
  void however_wrong_the_clock_is_the_newest_copy_is_the_last_one_made() throws IOException {
    garage.backup(place);
    garage.with("c");
    Backup back = garage.backup(place, Garage.NOON.minus(Duration.ofDays(900)));
    assertEquals(Garage.NOON.plusSeconds(1), back.newest().at());
    assertEquals(4, place.newestGood(null).copy().n());
    assertFalse(garage.backup(place, Garage.NOON.minus(Duration.ofDays(900))).fresh());
  }

  @Test
  void while_it_is_open_and_a_line_is_on_its_way_the_copy_ends_before_that_line()
      throws IOException {
    try (Book book = garage.open()) {
      byte[] whole = garage.bytes();
      Files.writeString(garage.log(), "{\"n\":4,\"at\":\"2031", StandardOpenOption.APPEND);
      assertArrayEquals(whole, Garage.bytes(garage.backup(place).newest().file()));
      assertEquals(BookFile.extent(garage.data), book.extent());
    }
  }

  @Test
  void what_the_disk_holds_for_good_is_copied_and_not_what_came_behind_it() throws IOException {
    BookFile.Extent two;
    byte[] before = garage.bytes();
    try (Book book = garage.open()) {
      two = book.extent();
      book.append(Garage.note("c"));
    }
    Backup done = Backup.of(garage.data, two, place, Garage.NOON, step -> {});
    assertArrayEquals(before, Garage.bytes(done.newest().file()));
  }

  @Test
  void a_damaged_book_is_not_copied_and_the_copies_there_are_stay() throws IOException {
    garage.backup(place);
    garage.with("c", "d");
    Map<String, String> before = Garage.files(place.folder);
    String text = new String(garage.bytes(), StandardCharsets.UTF_8);
    BookFile.Extent whole = BookFile.extent(garage.data);
    for (String damaged :
        List.of(
            text.replace("note a", "note x"),
            text.replace("note d", "note x"),
            text.substring(0, text.lastIndexOf("{\"n\":5")),
            text.substring(0, text.length() - 30),
            "nonsense",
            "")) {
      Files.writeString(garage.log(), damaged);
      BookRefused refused = assertThrows(BookRefused.class, () -> garage.backup(place), damaged);
      assertTrue(refused.getMessage().contains("book.jsonl"), refused.getMessage());
      assertEquals(before, Garage.files(place.folder));
      assertThrows(
          RuntimeException.class,
          () -> Backup.of(garage.data, whole, place, Garage.NOON, step -> {}));
      assertEquals(before, Garage.files(place.folder));
    }
    Files.delete(garage.log());
    assertThrows(BookRefused.class, () -> garage.backup(place));
  }

  @Test
  void a_photo_is_kept_once_and_one_that_rotted_in_the_place_is_copied_again() throws IOException {
    garage.backup(place);
    try (Book book = garage.open()) {
      garage.photo(book, "blue");
    }
    Path rotten = NamedPhotos.full(place.photos(), red);
    Files.writeString(rotten, "no picture of red");
    Backup done = garage.backup(place);
    assertEquals(2, done.photos());
    assertEquals(0, done.lacking());
    assertEquals(Garage.files(garage.photos()), Garage.files(place.photos()));
  }

  @Test
  void a_photo_that_is_gone_or_damaged_beside_the_book_is_told_and_the_rest_is_copied()
      throws IOException {
    Files.writeString(NamedPhotos.full(garage.photos(), red), "no picture");
    Backup done = garage.backup(place);
    assertTrue(done.fresh());
    assertEquals(1, done.lacking());
    assertTrue(
        done.sentence().endsWith(" 1 photo is missing or damaged beside the book."),
        done.sentence());
    assertFalse(Files.exists(NamedPhotos.full(place.photos(), red)));
  }

  @Test
  void a_photo_that_a_place_has_stays_there_when_it_is_gone_beside_the_book() throws IOException {
    garage.backup(place);
    Files.delete(NamedPhotos.full(garage.photos(), red));
    garage.with("c");
    assertEquals(0, garage.backup(place).lacking());
    assertTrue(NamedPhotos.good(place.photos(), red));
  }

  @Test
  void copies_of_another_book_in_the_same_place_are_left_alone() throws IOException {
    Garage other = new Garage(folder.resolve("other")).with("x");
    other.backup(place, Garage.NOON.minus(Duration.ofDays(5)));
    garage.backup(place);
    garage.with("c");
    garage.backup(place);
    assertEquals(3, names().size());
    assertFalse(other.backup(place).fresh());
    assertEquals(1, place.newestGood(BookFile.id(other.log())).chain().n());
  }

  @Test
  void too_little_room_is_said_and_nothing_is_written_or_thinned() throws IOException {
    garage.backup(place, Garage.NOON.minus(Duration.ofDays(800)));
    garage.with("c");
    garage.backup(place, Garage.NOON.minus(Duration.ofDays(799)));
    garage.with("d");
    Map<String, String> before = Garage.files(place.folder);
    Place full =
        new Place(place.folder) {
          @Override
          long left() {
            return 7 << 20;
          }
        };
    BackupRefused refused = assertThrows(BackupRefused.class, () -> garage.backup(full));
    assertEquals(
        place.folder + " has too little room: 7 MB left. Make room there; the copies it has stay.",
        refused.getMessage());
    assertEquals(before, Garage.files(place.folder));
  }

  @Test
  void copies_are_thinned_when_a_new_one_is_made_and_only_if_what_stands_for_them_opens()
      throws IOException {
    for (int hour = 0; hour < 4; hour++) {
      garage.with("h" + hour);
      garage.backup(place, Garage.NOON.plus(Duration.ofHours(hour)));
    }
    List<BookCopy> four = place.copies(null);
    assertEquals(4, four.size());
    Instant later = Garage.NOON.plus(Duration.ofDays(3));
    byte[] whole = Garage.bytes(four.get(3).file());
    Files.write(four.get(3).file(), Arrays.copyOf(whole, whole.length - 9));
    garage.with("later");
    garage.backup(place, later);
    assertEquals(5, place.copies(null).size(), "the last one of that day does not open");
    Files.write(four.get(3).file(), whole);
    garage.with("once-more");
    garage.backup(place, later.plusSeconds(60));
    assertEquals(List.of(7L, 8L, 9L), place.copies(null).stream().map(BookCopy::n).toList());
  }

  @Test
  void what_was_begun_and_never_ended_is_taken_away_after_a_day() throws IOException {
    garage.backup(place);
    Path old = Files.writeString(place.books().resolve("x.part"), "half");
    Path young = Files.writeString(place.photos().resolve("y.jpg.new"), "half");
    Files.setLastModifiedTime(
        old, java.nio.file.attribute.FileTime.from(Instant.now().minus(Duration.ofDays(2))));
    garage.backup(place);
    assertFalse(Files.exists(old));
    assertTrue(Files.exists(young));
  }

  @Test
  void a_backup_that_is_stopped_leaves_nothing_half() throws IOException {
    for (String where : List.of("Copying the book", "Checking the copy", "Photo 1 of 1")) {
      assertThrows(
          IllegalStateException.class,
          () ->
              Backup.of(
                  garage.data,
                  BookFile.extent(garage.data),
                  place,
                  Garage.NOON,
                  step -> {
                    if (step.equals(where)) {
                      throw new IllegalStateException();
                    }
                  }));
      assertEquals(Map.of(), Garage.files(place.folder), where);
    }
  }
}
