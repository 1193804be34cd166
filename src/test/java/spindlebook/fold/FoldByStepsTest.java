package spindlebook.fold;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import spindlebook.entry.AlignedFigure;
import spindlebook.entry.AlignmentWay;

/** A card does not depend on how its book came together. */
class FoldByStepsTest {

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
  void entry_by_entry_and_all_at_once_give_the_same_cards_at_every_n(long seed) {
    List<Noted> entries = new RandomBook(seed).entries(140);
    CarBook whole = CarBook.of(entries);
    CarBook growing = CarBook.empty();
    for (int i = 0; i < entries.size(); i++) {
      growing = growing.with(entries.get(i));
      CarBook scratch = CarBook.of(entries.subList(0, i + 1));
      CarBook asOf = whole.asOf(entries.get(i).n());
      assertEquals(scratch.corners(), growing.corners());
      for (String corner : scratch.corners()) {
        Card expected = scratch.card(corner);
        assertEquals(expected, growing.card(corner));
        assertEquals(expected, asOf.card(corner));
      }
    }
  }

  @Test
  void in_batches_of_any_size_as_well() {
    List<Noted> entries = new RandomBook(77).entries(200);
    SplittableRandom random = new SplittableRandom(5);
    CarBook growing = CarBook.empty();
    for (int i = 0; i < entries.size(); ) {
      int next = Math.min(entries.size(), i + random.nextInt(0, 9));
      growing = growing.with(entries.subList(i, next));
      i = next;
    }
    for (String corner : growing.corners()) {
      assertEquals(CarBook.of(entries).card(corner), growing.card(corner));
    }
  }

  /** Else the two tests above would say little. */
  @Test
  void the_random_books_hold_every_state_there_is() {
    Set<Standing> readings = EnumSet.noneOf(Standing.class);
    Set<Standing> stops = EnumSet.noneOf(Standing.class);
    Set<Standing> alignments = EnumSet.noneOf(Standing.class);
    Set<Class<?>> ways = new HashSet<>();
    Set<AlignedFigure> targets = EnumSet.noneOf(AlignedFigure.class);
    for (long seed = 1; seed <= 12; seed++) {
      CarBook book = CarBook.of(new RandomBook(seed).entries(140));
      for (String corner : book.corners()) {
        book.card(corner).readings().forEach(r -> readings.add(r.stands()));
        book.card(corner).heights().forEach(h -> stops.add(h.stop()));
        for (SeenAlignment read : book.card(corner).aligned().read()) {
          alignments.add(read.stands());
          ways.add(read.way().getClass());
        }
        book.card(corner).aligned().targets().forEach(t -> targets.add(t.content().figure()));
      }
    }
    assertEquals(EnumSet.allOf(Standing.class), readings);
    assertTrue(
        stops.containsAll(
            List.of(Standing.LIVE, Standing.STALE, Standing.PUT_BACK, Standing.REPLACED)));
    // Alignment has no wheel position that it could lack, and moves by no amount that is known.
    assertEquals(
        EnumSet.complementOf(EnumSet.of(Standing.OUTSIDE, Standing.WORKED_OUT)), alignments);
    assertEquals(Set.of(AlignmentWay.class.getPermittedSubclasses()), ways);
    assertTrue(targets.size() > 4, targets.toString());
  }

  @Test
  void an_entry_that_does_not_come_later_is_refused() {
    List<Noted> entries = new ArrayList<>(new RandomBook(1).entries(5));
    CarBook book = CarBook.of(entries);
    org.junit.jupiter.api.Assertions.assertThrows(
        IllegalArgumentException.class, () -> book.with(entries.get(4)));
  }
}
