package spindlebook.travel;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import spindlebook.advice.NextReading;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.fold.Noted;
import spindlebook.fold.RandomBook;

/** What is kept from one entry to the next says what is worked out anew. */
class FindingsByStepsTest {

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6})
  void entry_by_entry_and_all_at_once_give_the_same_findings_at_every_n(long seed) {
    List<Noted> entries = new RandomBook(seed).entries(140);
    CarBook growing = CarBook.empty();
    for (int i = 0; i < entries.size(); i++) {
      growing = growing.with(entries.get(i));
      CarBook scratch = CarBook.of(entries.subList(0, i + 1));
      for (String corner : scratch.corners()) {
        Card card = growing.card(corner);
        Card anew = scratch.card(corner);
        TravelFindings found = CornerTravel.of(anew);
        assertEquals(found, CornerTravel.of(card));
        assertEquals(
            NextReading.ranked(anew, found), NextReading.ranked(card, CornerTravel.of(card)));
      }
    }
  }
}
