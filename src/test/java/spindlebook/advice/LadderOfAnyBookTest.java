package spindlebook.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import spindlebook.definition.WatchPoint;
import spindlebook.entry.Quantity;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.fold.RandomBook;
import spindlebook.travel.CornerTravel;
import spindlebook.travel.End;
import spindlebook.travel.EndFindings;
import spindlebook.travel.Limit;
import spindlebook.travel.Need;
import spindlebook.travel.TravelFindings;

/** What must hold of ladders and next readings whatever a book says; seeded books. */
class LadderOfAnyBookTest {
  private static void each(BiConsumer<Card, TravelFindings> check) {
    for (long seed = 1; seed <= 60; seed++) {
      CarBook book = CarBook.of(new RandomBook(seed).entries(160));
      for (String corner : book.corners()) {
        Card card = book.card(corner);
        check.accept(card, CornerTravel.of(card));
      }
    }
  }

  private static EndFindings end(TravelFindings travel, End end) {
    return end == End.DROOP ? travel.droop() : travel.bump();
  }

  @Test
  void every_limit_and_every_missing_term_has_a_rung_and_they_stand_from_mid_travel_outwards() {
    int[] placed = new int[1];
    each(
        (card, travel) -> {
          for (End end : End.values()) {
            EndFindings findings = end(travel, end);
            Ladder ladder = Ladder.of(travel, end);
            Set<Need> told =
                ladder.rungs().stream()
                    .flatMap(r -> r.needs().stream())
                    .collect(Collectors.toSet());
            assertTrue(told.containsAll(findings.needs()), findings.needs() + " in " + told);
            assertEquals(
                findings.limits().size(),
                ladder.rungs().stream().filter(r -> r.limit() != null).count());
            List<Double> out =
                ladder.rungs().stream()
                    .filter(r -> r.atMm() != null)
                    .map(r -> r.atMm().value() * end.outward())
                    .toList();
            assertEquals(out.stream().sorted().toList(), out);
            placed[0] += out.size();
          }
        });
    assertTrue(placed[0] > 100, "too few: " + placed[0]);
  }

  @Test
  void one_more_reading_of_a_watch_point_says_the_same_alone_as_among_all_that_is_worked_out() {
    int[] compared = new int[1];
    each(
        (card, travel) ->
            card.readings().stream()
                .filter(r -> r.counts() && r.reading().quantity() == Quantity.WATCH_POINT)
                .forEach(
                    r -> {
                      Card then = card.supposing(null, r);
                      WatchPoint point = card.watchPoint(r.reading().point()).orElseThrow();
                      for (End end : End.values()) {
                        Set<Limit> alone =
                            Set.copyOf(CornerTravel.limits(then, point, travel, end));
                        Set<Limit> among =
                            CornerTravel.of(then).at(end).limits().stream()
                                .filter(l -> point.equals(l.point()))
                                .collect(Collectors.toSet());
                        assertEquals(among, alone);
                        compared[0] += alone.size();
                      }
                    }));
    assertTrue(compared[0] > 500, "too few: " + compared[0]);
  }

  @Test
  void no_win_is_told_over_a_rung_that_could_act_anywhere_and_told_wins_end_at_their_next() {
    int[] told = new int[2];
    each(
        (card, travel) -> {
          for (End end : End.values()) {
            Ladder ladder = Ladder.of(travel, end);
            boolean hidden = ladder.rungs().stream().anyMatch(r -> r.state() == Rung.State.NEEDS);
            for (Rung rung : ladder.rungs()) {
              if (rung.wins() instanceof Win.Travel wins) {
                double toMm = rung.atMm().value() + end.outward() * wins.mm().value();
                assertEquals(ladder.rungs().get(wins.next()).atMm().value(), toMm, 1e-9);
                assertTrue(!hidden && wins.mm().value() > wins.mm().U());
                told[0]++;
              }
              told[1] += rung.wins() instanceof Win.Withheld ? 1 : 0;
            }
          }
        });
    assertTrue(told[1] > 100, "too few: " + told[1]);
  }

  @Test
  void a_total_that_is_withheld_is_what_the_next_reading_is_for() {
    int[] asked = new int[1];
    each(
        (card, travel) -> {
          List<NextReading> ranked = NextReading.ranked(card, travel);
          // What settles most comes first; what settles as much stands in the order of its kind.
          assertEquals(
              ranked.stream()
                  .sorted(
                      Comparator.comparing((NextReading r) -> r.why() != NextReading.Why.WITHHOLDS)
                          .thenComparing(r -> -r.settled())
                          .thenComparing(NextReading::why))
                  .toList(),
              ranked);
          boolean withheld = travel.asSet().mm().isEmpty() || travel.asItCouldBe().mm().isEmpty();
          if (withheld) {
            NextReading next = ranked.get(0);
            assertEquals(NextReading.Why.WITHHOLDS, next.why());
            assertTrue(next.withholds() > 0);
            asked[0]++;
          }
          for (End end : End.values()) {
            for (Need need : end(travel, end).needs()) {
              assertTrue(ranked.stream().anyMatch(r -> r.need().equals(need)), need.toString());
            }
          }
        });
    assertTrue(asked[0] > 50, "too few: " + asked[0]);
  }
}
