package spindlebook.travel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import spindlebook.fold.CarBook;
import spindlebook.fold.Noted;
import spindlebook.fold.RandomBook;

class LifeTest {
  private static final int ALL = Integer.MAX_VALUE;

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6})
  void at_every_point_it_is_what_was_known_then(long seed) {
    CarBook book = CarBook.of(new RandomBook(seed).entries(140));
    for (String corner : book.corners()) {
      Life life = Life.of(book, corner, ALL);
      assertTrue(life.points().size() > 30);
      for (Life.Point point : life.points()) {
        assertEquals(known(book, corner, point.n()), point.ends());
      }
      assertEquals(book.n(), book.asOf(book.n()).n());
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void no_change_is_left_out(long seed) {
    List<Noted> entries = new RandomBook(seed).entries(140);
    CarBook book = CarBook.of(entries);
    for (String corner : book.corners()) {
      for (Noted entry : entries.subList(10, entries.size())) {
        CarBook then = book.asOf(entry.n());
        List<Life.Point> points = Life.of(then, corner, ALL).points();
        assertEquals(known(book, corner, entry.n()), points.get(points.size() - 1).ends());
      }
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void asked_after_every_entry_it_is_the_same_as_asked_once(long seed) {
    List<Noted> entries = new RandomBook(seed).entries(140);
    CarBook growing = CarBook.of(entries.subList(0, 10));
    for (Noted entry : entries.subList(10, entries.size())) {
      growing = growing.with(entry);
      Life.of(growing, "lf", 12);
    }
    CarBook anew = CarBook.of(entries);
    assertEquals(Life.of(anew, "lf", ALL), Life.of(growing, "lf", ALL));
    Life last = Life.of(anew, "lf", 12);
    List<Life.Point> all = Life.of(anew, "lf", ALL).points();
    assertEquals(all.subList(all.size() - 12, all.size()), last.points());
    assertEquals(all.get(all.size() - 13).n(), last.earlier());
  }

  private static Life.Ends known(CarBook book, String corner, long n) {
    return Life.Ends.of(CornerTravel.of(book.asOf(n).card(corner)));
  }
}
