package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import spindlebook.fold.CarBook;
import spindlebook.fold.Noted;
import spindlebook.fold.RandomBook;
import spindlebook.log.Bodies;
import spindlebook.log.Book;
import spindlebook.log.Histories;

/**
 * Books of any entries, alignment taken in every way among them, through the file, its index and
 * the server: a card that grew entry by entry, one from scratch and one after a rebuild are the
 * same, and every page there is of them answers.
 */
class AnyBookServedTest {
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void entry_by_entry_from_scratch_and_after_a_rebuild_give_the_same_cards_and_pages(
      long seed, @TempDir Path folder) {
    List<Noted> entries = new RandomBook(seed).entries(160);
    CarBook grown;
    try (Book book = Book.open(folder, Clock.systemUTC(), line -> {})) {
      Histories histories = new Histories(book);
      for (Noted e : entries) {
        book.append(Bodies.draft(e.key(), e.after(), e.who(), e.content()));
        CarBook now = histories.of("car");
        if (e.n() % 20 == 0) {
          same(CarBook.of(now.entries()), now);
        }
      }
      grown = histories.of("car");
    }
    Map<String, String> before = pages(folder, grown);
    App.rebuild(folder, -1, line -> {});
    try (Book book = Book.open(folder, Clock.systemUTC(), line -> {})) {
      same(grown, new Histories(book).of("car"));
    }
    assertEquals(before, pages(folder, grown));
    assertTrue(before.values().stream().anyMatch(p -> p.contains("Read with")), "no alignment");
  }

  private static void same(CarBook expected, CarBook found) {
    assertEquals(expected.corners(), found.corners());
    for (String corner : expected.corners()) {
      assertEquals(expected.card(corner), found.card(corner));
    }
  }

  private static Map<String, String> pages(Path folder, CarBook book) {
    Map<String, String> pages = new TreeMap<>();
    try (Shop shop = new Shop(folder)) {
      for (String corner : book.corners()) {
        for (String page : List.of("", "/alignment", "/print")) {
          String path = "/corners/" + corner + page;
          pages.put(path, shop.get(path).is(200).text());
        }
      }
      for (String page : List.of("/drive-check", "/compare?one=90", "/compare?beside=other-side")) {
        pages.put(page, shop.get("/cars/car" + page).is(200).text());
      }
      book.entries().stream()
          .filter(e -> e.n() % 7 == 0)
          .map(e -> "/entries/" + e.key())
          .forEach(path -> pages.put(path, shop.get(path).is(200).text()));
    }
    return pages;
  }
}
