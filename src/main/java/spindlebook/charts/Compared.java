package spindlebook.charts;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import spindlebook.card.Days;
import spindlebook.card.Zero;
import spindlebook.charts.CurveView.Pickable;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.fold.Change;

/**
 * What a curve is compared with: the same thing on the car's other side, or as it held just before
 * a change.
 *
 * @param change null for the other side
 */
record Compared(Card card, Curved of, CornerChart chart, Change change) {
  private static final String OTHER_SIDE = "other-side";
  private static final String BEFORE = "before-";

  boolean before() {
    return change != null;
  }

  /** Whether it is the other side, and anything of the thing was read there. */
  boolean sideRead() {
    return !before() && card.readings().stream().anyMatch(of::reads);
  }

  Compared countedFrom(Zero zero) {
    return new Compared(card, of, chart.countedFrom(zero), change);
  }

  /** "right front"; "before". */
  String name() {
    return before() ? "before" : card.place().words();
  }

  /** What an address asks for; empty where it names nothing that is there. */
  static Optional<Compared> of(Card card, CarBook book, Curved of, String against) {
    if (against.equals(OTHER_SIDE)) {
      return book.mirror(card).flatMap(m -> of(m, of, null));
    }
    return changes(card).stream()
        .filter(c -> against.equals(BEFORE + c.key()))
        .findFirst()
        .flatMap(c -> of(book.asOf(c.n() - 1).card(card.corner()), of, c));
  }

  private static Optional<Compared> of(Card other, Curved of, Change change) {
    return of.on(other).map(c -> new Compared(other, c, new CornerChart(other), change));
  }

  static List<Pickable> choices(Card card, CarBook book, String chosen) {
    List<Pickable> choices = new ArrayList<>();
    choices.add(new Pickable("", "nothing", chosen.isEmpty()));
    book.mirror(card)
        .ifPresent(
            m ->
                choices.add(
                    new Pickable(OTHER_SIDE, m.place().words(), chosen.equals(OTHER_SIDE))));
    List<Change> changes = changes(card);
    List<String> words = changes.stream().map(c -> shortly(card, c)).toList();
    for (int i = 0; i < changes.size(); i++) {
      Change c = changes.get(i);
      String word = words.get(i);
      boolean twice = words.stream().filter(word::equals).count() > 1;
      String value = BEFORE + c.key();
      choices.add(
          new Pickable(
              value, "before: " + word + (twice ? ", n " + c.n() : ""), value.equals(chosen)));
    }
    return choices;
  }

  /** "tyre, 17 Oct 2026": short enough for a phone's list; the page says the whole of it. */
  static String shortly(Card card, Change change) {
    return thing(card, change) + ", " + Days.day(change.at());
  }

  /** "tyre changed on 17 Oct 2026"; "hit or bent on 17 Oct 2026". */
  static String happened(Card card, Change change) {
    return thing(card, change)
        + (change.adjuster() == null ? "" : " changed")
        + " on "
        + Days.day(change.at());
  }

  private static String thing(Card card, Change change) {
    return change.adjuster() == null
        ? change.words().split(":", 2)[0]
        : card.adjuster(change.adjuster()).map(a -> a.adjuster().name()).orElse(change.adjuster());
  }

  /** Changes that readings of this corner were taken before and after, the last first. */
  private static List<Change> changes(Card card) {
    return card.changes().stream()
        .filter(c -> c.place() == null || c.place() == card.place())
        .filter(c -> card.readings().stream().anyMatch(r -> r.n() < c.n()))
        .filter(c -> card.readings().stream().anyMatch(r -> r.n() > c.n()))
        .sorted(Comparator.comparingLong(Change::n).reversed())
        .toList();
  }
}
