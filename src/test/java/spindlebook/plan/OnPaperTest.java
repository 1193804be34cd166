package spindlebook.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import spindlebook.definition.Setting;
import spindlebook.definition.SettingUnit;
import spindlebook.entry.Content;
import spindlebook.entry.HappeningKind;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.fold.InForce;
import spindlebook.fold.Noted;
import spindlebook.fold.RandomBook;
import spindlebook.fold.SeenHeight;
import spindlebook.fold.SeenReading;
import spindlebook.fold.Standing;
import spindlebook.travel.CornerTravel;

/** A trial against the same entry really written, by another writer later; seeded books. */
class OnPaperTest {
  private static final int LENGTH = 140;

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void a_trial_says_of_every_corner_what_the_entry_would_say_once_written(long seed) {
    List<Noted> entries = new RandomBook(seed).entries(LENGTH);
    CarBook book = CarBook.of(entries);
    int tried = 0;
    for (String corner : book.corners()) {
      for (Content content : changes(book.card(corner))) {
        CarBook paper = OnPaper.with(book, List.of(content));
        List<Noted> written = new ArrayList<>(entries);
        written.add(
            new Noted(
                book.n() + 1,
                "written",
                Instant.parse("2031-01-01T00:00:00Z"),
                "Sam",
                book.n(),
                content));
        CarBook real = CarBook.of(written);
        tried++;
        for (String other : book.corners()) {
          assertEquals(standings(real.card(other)), standings(paper.card(other)));
          assertEquals(
              CornerTravel.of(real.card(other)).toString(),
              CornerTravel.of(paper.card(other)).toString());
        }
        assertEquals(entries, book.entries());
      }
    }
    assertTrue(tried > 5, tried + " tried");
  }

  /** Else the comparison above would hold of changes that move nothing. */
  @Test
  void most_of_these_books_have_changes_that_move_something() {
    long moving = LongStream.rangeClosed(1, 8).filter(OnPaperTest::moves).count();
    assertTrue(moving >= 5, moving + " of 8");
  }

  private static boolean moves(long seed) {
    CarBook book = CarBook.of(new RandomBook(seed).entries(LENGTH));
    return book.corners().stream()
        .flatMap(corner -> changes(book.card(corner)).stream())
        .map(change -> OnPaper.with(book, List.of(change)))
        .anyMatch(
            paper ->
                book.corners().stream()
                    .anyMatch(c -> !standings(book.card(c)).equals(standings(paper.card(c)))));
  }

  private static List<Content> changes(Card card) {
    List<Content> changes = new ArrayList<>();
    for (InForce a : card.adjusters()) {
      SettingUnit unit = a.adjuster().unit();
      Setting to =
          unit == SettingUnit.WORDS ? Setting.words("another") : new Setting("7", unit, 7.0);
      changes.add(
          new Content.Adjustment(
              card.corner(), a.adjuster().adjuster(), a.setting(), to, null, null));
    }
    for (HappeningKind kind : HappeningKind.values()) {
      changes.add(new Content.Happening(card.car(), card.corner(), kind, null));
    }
    return changes;
  }

  private static List<Standing> standings(Card card) {
    List<Standing> all = new ArrayList<>();
    card.heights().stream().map(SeenHeight::stop).forEach(all::add);
    card.readings().stream().map(SeenReading::stands).forEach(all::add);
    return all;
  }
}
