package spindlebook.backup;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spindlebook.MovedClock;
import spindlebook.log.Book;

/** When backups are made by themselves, by a clock that a test moves. */
class BackupsTest {
  private static final Duration LOOK = Duration.ofSeconds(30);

  @TempDir Path folder;
  private Garage garage;
  private Path stick;
  private final MovedClock clock = new MovedClock();
  private final List<String> told = new ArrayList<>();
  private Book book;
  private Backups backups;

  @BeforeEach
  void a_book_of_one_entry() throws IOException {
    stick = Files.createDirectory(folder.resolve("stick"));
    garage = new Garage(folder.resolve("data")).with("a");
    book = garage.open();
  }

  @AfterEach
  void close() {
    book.close();
  }

  private void start(Path second) {
    backups = new Backups(book, garage.data, second, clock, told::add);
    backups.look();
  }

  private void goes(Duration time) {
    for (Duration gone = Duration.ZERO; gone.compareTo(time) < 0; gone = gone.plus(LOOK)) {
      clock.move(LOOK);
      backups.look();
    }
  }

  private void goes(int minutes) {
    goes(Duration.ofMinutes(minutes));
  }

  /** How far each copy beside the book goes. */
  private List<Long> copies() throws IOException {
    return Place.beside(garage.data).copies(null).stream().map(BookCopy::n).toList();
  }

  private List<Long> onStick() throws IOException {
    return new Place(stick).copies(null).stream().map(BookCopy::n).toList();
  }

  @Test
  void one_is_made_at_the_start_and_none_when_nothing_changes() throws IOException {
    start(null);
    assertEquals(List.of(1L), copies());
    goes(120);
    assertEquals(List.of(1L), copies());
  }

  @Test
  void an_empty_book_is_not_copied(@TempDir Path empty) throws IOException {
    try (Book nothing = new Garage(empty).open()) {
      Backups none = new Backups(nothing, empty, null, clock, told::add);
      none.look();
      assertFalse(Files.exists(empty.resolve("backups")));
      assertEquals(Optional.empty(), none.warning());
    }
  }

  @Test
  void one_is_made_ten_quiet_minutes_after_a_change() throws IOException {
    start(null);
    goes(60);
    book.append(Garage.note("b"));
    goes(9);
    book.append(Garage.note("c"));
    goes(10);
    assertEquals(List.of(1L), copies());
    goes(1);
    assertEquals(List.of(1L, 3L), copies());
  }

  @Test
  void in_an_evening_without_ten_quiet_minutes_one_is_made_every_hour() throws IOException {
    start(null);
    for (int i = 0; i < 21; i++) {
      book.append(Garage.note("n" + i));
      goes(9);
    }
    // By hand: seven entries an hour, and the eighth begins the next hour.
    assertEquals(List.of(1L, 8L, 15L, 22L), copies());
  }

  @Test
  void once_a_day_the_copy_is_looked_at_and_made_anew_if_it_rotted() throws IOException {
    start(null);
    Path copy = Place.beside(garage.data).copies(null).get(0).file();
    Files.writeString(copy, "rotten");
    goes(23 * 60);
    assertEquals("rotten", Files.readString(copy));
    goes(61);
    assertArrayEquals(
        garage.bytes(), Garage.bytes(Place.beside(garage.data).newestGood(null).copy().file()));
  }

  @Test
  void once_a_day_a_photo_that_rotted_in_the_place_is_copied_again() throws IOException {
    String red = garage.photo(book, "red");
    start(null);
    Path kept = NamedPhotos.full(garage.data.resolve("backups/photos"), red);
    byte[] whole = Garage.bytes(kept);
    var time = Files.getLastModifiedTime(kept);
    byte[] rotten = whole.clone();
    rotten[3] ^= 1;
    Files.write(kept, rotten);
    Files.setLastModifiedTime(kept, time); // As a disk forgets: nobody wrote it.
    goes(24 * 60);
    assertArrayEquals(whole, Garage.bytes(kept));
  }

  @Test
  void a_clock_that_is_set_back_holds_nothing_up() throws IOException {
    start(null);
    clock.move(Duration.ofDays(-400));
    book.append(Garage.note("b"));
    goes(11);
    assertEquals(List.of(1L, 2L), copies());
    assertEquals(2, Place.beside(garage.data).newestGood(null).copy().n());
  }

  @Test
  void a_second_place_that_is_pulled_out_is_told_once_and_caught_up_when_it_is_back()
      throws IOException {
    start(stick);
    assertEquals(List.of(1L), onStick());
    Path pocket = folder.resolve("pocket");
    Files.move(stick, pocket);
    book.append(Garage.note("b"));
    goes(30);
    assertEquals(List.of(1L, 2L), copies());
    assertEquals(
        List.of("Backups: " + stick + " is not there now; it is caught up when it is."), told);
    assertFalse(backups.standings().get(1).here());
    assertFalse(Files.exists(stick));
    Files.move(pocket, stick);
    goes(1);
    assertEquals(List.of(1L, 2L), onStick());
    assertTrue(backups.standings().get(1).here());
    assertEquals(1, told.size());
  }

  @Test
  void an_empty_folder_where_the_stick_was_is_not_the_stick() throws IOException {
    start(stick);
    Files.move(stick, folder.resolve("pocket"));
    Files.createDirectory(stick);
    book.append(Garage.note("b"));
    goes(30);
    assertFalse(backups.standings().get(1).here());
    assertEquals(0, stick.toFile().list().length);
    backups = new Backups(book, garage.data, stick, clock, told::add);
    backups.look();
    assertFalse(backups.standings().get(1).here(), "after a restart too");
  }

  @Test
  void a_second_place_on_the_same_disk_is_told_as_that() {
    start(stick);
    assertFalse(backups.standings().get(0).sameDisk());
    assertTrue(backups.standings().get(1).sameDisk());
  }

  @Test
  void a_damaged_book_is_told_once_and_the_good_copy_stays_the_good_one() throws IOException {
    start(null);
    BookCopy good = backups.standings().get(0).good();
    book.append(Garage.note("b"));
    String text = new String(garage.bytes(), StandardCharsets.UTF_8);
    Files.writeString(garage.log(), text.replace("note a", "note x"));
    goes(60);
    assertEquals(List.of(1L), copies());
    assertEquals(1, told.size(), told.toString());
    assertTrue(told.get(0).startsWith("No backup: Line 3 of book.jsonl is damaged"), told.get(0));
    assertEquals(good, backups.standings().get(0).good());
    Files.writeString(garage.log(), text);
    goes(11);
    assertEquals(List.of(1L, 2L), copies());
    assertNull(backups.standings().get(0).problem());
  }

  @Test
  void no_good_backup_is_a_warning_and_one_that_lags_a_day_behind_too() throws IOException {
    Files.writeString(garage.data.resolve("backups"), "a file in its way");
    start(null);
    assertEquals(Optional.of("No good backup of this book."), backups.warning());
    Files.delete(garage.data.resolve("backups"));
    goes(11);
    assertEquals(Optional.empty(), backups.warning());
    Files.move(garage.data.resolve("backups/books"), folder.resolve("away"));
    Files.writeString(garage.data.resolve("backups/books"), "a file in its way");
    start(stick);
    assertEquals(Optional.empty(), backups.warning(), "the stick has a good one");
  }

  @Test
  void a_backup_that_lags_a_day_behind_is_a_warning() throws IOException {
    start(null);
    Files.move(garage.data.resolve("backups/photos"), folder.resolve("away"));
    Files.writeString(garage.data.resolve("backups/photos"), "a file in its way");
    goes(23 * 60);
    assertEquals(Optional.empty(), backups.warning());
    book.append(Garage.note("b"));
    goes(2 * 60);
    assertTrue(backups.warning().orElse("").startsWith("No backup since 4 May 2031, "));
  }

  @Test
  void asked_for_one_is_made_at_once_by_a_thread_of_its_own() throws Exception {
    backups = new Backups(book, garage.data, null, clock, told::add);
    backups.askNow();
    while (backups.doing().isPresent()) {
      Thread.onSpinWait();
    }
    assertEquals(List.of(1L), copies());
    backups.close();
  }
}
