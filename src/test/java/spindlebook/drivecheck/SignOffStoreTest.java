package spindlebook.drivecheck;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spindlebook.advice.DriveCheck;
import spindlebook.definition.CarDetails;
import spindlebook.entry.Content;
import spindlebook.entry.SignedThing;
import spindlebook.fold.CarBook;
import spindlebook.fold.SeenSignOff;
import spindlebook.log.Bodies;
import spindlebook.log.Book;
import spindlebook.log.Histories;
import spindlebook.page.FormKey;
import spindlebook.units.LengthUnit;

class SignOffStoreTest {
  private static final CarDetails MULE =
      new CarDetails("Mule", LengthUnit.INCH, null, null, null, null, null);

  private static Content.SignOff at(long n, String hash) {
    return new Content.SignOff("mule", n, hash, LengthUnit.INCH, null, null, null);
  }

  @Test
  void a_copy_is_known_to_be_of_this_book_by_the_hash_of_its_entry(@TempDir Path folder) {
    try (Book book = Book.open(folder, Clock.systemUTC(), line -> {})) {
      SignOffStore store = new SignOffStore(book);
      book.append(Bodies.draft("mule", 0, "Sam", new Content.Car(MULE, null)));
      assertTrue(store.sameChain(at(1, book.hashAt(1))));
      assertFalse(store.sameChain(at(1, book.hashAt(0))), "another line");
      assertFalse(store.sameChain(at(1, null)), "written by hand");
      assertFalse(store.sameChain(at(2, book.hashAt(1))), "an entry that is not there");
    }
  }

  @Test
  void what_slips_in_after_the_look_is_no_part_of_the_copy_and_counts_as_since(
      @TempDir Path folder) {
    try (Book book = Book.open(folder, Clock.systemUTC(), line -> {})) {
      book.append(Bodies.draft("mule", 0, "Sam", new Content.Car(MULE, null)));
      CarBook seen = new Histories(book).of("mule");
      String hash = book.lastHash();
      book.append(
          Bodies.draft(
              "late", 1, "Ben", new Content.ToDo("mule", null, null, "new hose", null, null)));
      new SignOffStore(book)
          .sign(seen, DriveCheck.of(seen), "in the yard", FormKey.fresh(1), "Ada");
      CarBook now = new Histories(book).of("mule");
      SeenSignOff kept = now.lastSignOff().orElseThrow();
      assertEquals(1, kept.signOff().n());
      assertEquals(hash, kept.signOff().hash());
      assertEquals(3, kept.n());
      assertEquals("Ada", kept.who());
      assertEquals(List.of("late"), kept.since(now).stream().map(e -> e.key()).toList());
      assertEquals(SignOffCopy.corners(DriveCheck.of(now.asOf(1))), kept.signOff().corners());
    }
  }

  @Test
  void nothing_is_signed_without_a_reason_while_something_is_open() {
    List<SignedThing> open = List.of(new SignedThing("short", null, "too near"));
    IllegalArgumentException refused =
        assertThrows(
            IllegalArgumentException.class,
            () -> new Content.SignOff("mule", 1, null, null, null, open, " "));
    assertTrue(refused.getMessage().contains("'why'"), refused.getMessage());
    assertThrows(IllegalArgumentException.class, () -> at(0, null));
  }
}
