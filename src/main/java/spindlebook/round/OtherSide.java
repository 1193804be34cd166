package spindlebook.round;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spindlebook.card.Counted;
import spindlebook.definition.Layout;
import spindlebook.definition.WatchPoint;
import spindlebook.fold.Card;
import spindlebook.fold.SeenReading;
import spindlebook.fold.SeenRound;
import spindlebook.fold.Standing;
import spindlebook.page.Link;
import spindlebook.page.Notice;
import spindlebook.words.EntryWords;

/** A round on the corner it was moved to: nothing of it is lost, and what does not fit is said. */
record OtherSide(Card card, SeenRound round) {

  /** Readings of places this corner does not watch: kept, listed, and not counted. */
  List<Link> notWatched(Optional<Card> mirror) {
    return readings().stream()
        .filter(SeenReading::notWatched)
        .map(r -> new Link(words(r, mirror), "/entries/" + r.key()))
        .toList();
  }

  private static String words(SeenReading r, Optional<Card> mirror) {
    Optional<WatchPoint> there = mirror.flatMap(m -> m.watchPoint(r.reading().point()));
    return String.join(
        " · ",
        there.map(WatchPoint::name).orElse(r.what()),
        r.height().words(),
        r.reading().steering().words(),
        EntryWords.value(r.reading()));
  }

  /** What became of a round that was just moved here, and how it goes back. */
  List<Notice> notices() {
    long heights = card.heightsOf(round.key()).size();
    long notWatched = readings().stream().filter(SeenReading::notWatched).count();
    long stale = readings().stream().filter(r -> r.stands() == Standing.STALE).count();
    List<String> said = new ArrayList<>();
    if (card.layout() == Layout.SOLID_AXLE_END) {
      said.add("The ends are swapped, heights and readings alike.");
    }
    said.add(
        "This round is now the "
            + card.place().words()
            + "'s, with "
            + Counted.of(heights, "height")
            + " and "
            + Counted.of(readings().size(), "reading")
            + ".");
    if (notWatched > 0) {
      said.add(
          Counted.of(notWatched, "reading is", "readings are")
              + " of places that are not watched here: kept and listed below, not counted.");
    }
    if (stale > 0) {
      said.add(Counted.of(stale, "reading is", "readings are") + " to measure again here.");
    }
    said.add("'These were the " + card.place().mirror().words() + "', below, moves it back.");
    return List.of(new Notice(Notice.Kind.BOOK, String.join(" ", said)));
  }

  private List<SeenReading> readings() {
    return card.readingsIn(round.key());
  }
}
