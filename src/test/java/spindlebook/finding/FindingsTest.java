package spindlebook.finding;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import spindlebook.finding.Finding.Group;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.fold.RandomBook;
import spindlebook.travel.CornerBench;
import spindlebook.travel.End;
import spindlebook.travel.Limit;
import spindlebook.travel.StandardCorner;
import spindlebook.uncertainty.Outcome;

/** One list of what is known of a corner; its sums by hand from {@link StandardCorner}. */
class FindingsTest {
  private final Findings findings = Findings.of(StandardCorner.worked(), Optional.empty(), false);

  @Test
  void a_figure_says_where_it_is_and_what_it_rests_on() {
    Finding stop = findings.of(CornerFigure.DROOP_STOP);
    assertEquals(254, stop.figure().value(), 1e-9);
    assertEquals(254, stop.position().value(), 1e-9);
    assertTrue(stop.isPlace());
    assertEquals(List.of("strap"), stop.readings());
    // Held back e = 25.4 at the wheel: the strap lets it go to 254 − 25.4.
    Finding held = findings.of(CornerFigure.DROOP_HELD_BACK);
    assertEquals(25.4, held.figure().value(), 1e-9);
    assertEquals(254 - 25.4, held.position().value(), 1e-9);
    // S − e − L with the arm's L = 203.2.
    Finding margin = findings.of(CornerFigure.DROOP_MARGIN);
    assertEquals(25.4, margin.figure().value(), 1e-9);
    assertEquals(End.DROOP, margin.end());
    assertEquals(Outcome.CLEAR, margin.verdict());
    assertTrue(margin.readings().containsAll(stop.readings()));
    assertTrue(margin.readings().containsAll(held.readings()));
    Finding arm = findings.all(Group.LIMIT).get(0);
    assertEquals("arm STRAIGHT null", arm.id().substring("droop ".length()));
    assertEquals(203.2, arm.position().value(), 1e-9);
    assertEquals(25.4, arm.figure().value(), 1e-9);
    assertTrue(margin.readings().containsAll(arm.readings()));
    assertEquals(arm.readings(), ((Limit) arm.of()).readings());
  }

  @Test
  void what_was_not_read_far_enough_is_at_least_so_much() {
    // At bump the arm and the shock are kept to 600; nobody looked further.
    assertTrue(findings.of(CornerFigure.BUMP_MARGIN).atLeast());
    assertTrue(!findings.of(CornerFigure.DROOP_MARGIN).atLeast());
    assertTrue(findings.of(CornerFigure.AS_IT_COULD_BE).atLeast());
    assertEquals(146, findings.of(CornerFigure.AS_SET_DROOP).figure().value(), 1e-9);
    assertEquals(400, findings.of(CornerFigure.RIDE).position().value(), 1e-9);
    assertNull(findings.of(CornerFigure.AS_SET).position());
  }

  /** The arm keeps 6 mm at every height but at 300, where it has 3: between 200 and ride. */
  @Test
  void what_is_broken_between_the_ends_is_a_finding_of_its_own_with_its_place_and_readings() {
    Card card =
        StandardCorner.bench(CornerBench.exact())
            .height("low", "in-between", 300)
            .gap("arm", "off", 20)
            .gap("arm", "strap", 20)
            .gap("arm", "low", 3)
            .gap("arm", "ride", 20)
            .gap("arm", "bump", 20)
            .gap("arm", "beyond", 30)
            .card();
    List<Finding> mid = Findings.of(card, Optional.empty(), false).all(Group.MID_TRAVEL);
    assertEquals(1, mid.size());
    Finding arm = mid.get(0);
    assertEquals("mid-travel arm STRAIGHT null", arm.id());
    assertEquals(Outcome.SHORT, arm.verdict());
    assertEquals("too close", arm.word());
    assertEquals("in mid-travel", arm.says());
    assertNull(arm.figure());
    // Between the strap and 300 it crosses 6 mm, and again before ride.
    assertTrue(arm.position().value() > 254 && arm.position().value() <= 300, "" + arm.position());
  }

  @Test
  void of_any_book_the_list_has_one_order_no_thing_twice_and_rests_on_what_was_read() {
    for (int seed = 0; seed < 40; seed++) {
      CarBook book = CarBook.of(new RandomBook(seed).entries(160));
      for (String corner : book.corners()) {
        Card card = book.card(corner);
        Findings all = Findings.of(card, book.mirror(card), false);
        List<Group> groups = all.all().stream().map(Finding::group).toList();
        assertEquals(groups.stream().sorted(Comparator.naturalOrder()).toList(), groups);
        Set<String> ids = new HashSet<>();
        for (Finding one : all.all()) {
          assertTrue(ids.add(one.group() + " " + one.id()), one::toString);
          assertEquals(new HashSet<>(one.readings()).size(), one.readings().size(), one::toString);
          if (one.group() != Group.ALIGNMENT) {
            one.readings()
                .forEach(
                    key ->
                        assertTrue(
                            card.reading(key).isPresent() || card.height(key).isPresent(), key));
          }
        }
      }
    }
  }
}
