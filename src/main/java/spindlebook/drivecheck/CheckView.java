package spindlebook.drivecheck;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import spindlebook.advice.DriveCheck;
import spindlebook.advice.ThingFirst.Why;
import spindlebook.card.Capital;
import spindlebook.card.Days;
import spindlebook.card.Shown;
import spindlebook.definition.Place;
import spindlebook.drawing.State;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.fold.Noted;
import spindlebook.plan.AsLeft;

/**
 * The drive check of a car.
 *
 * @param tasks what is to see to, the weightiest first
 */
public record CheckView(CarBook history, DriveCheck check, List<Task> tasks) {
  static CheckView of(CarBook history, DriveCheck check) {
    return new CheckView(history, check, CheckWords.of(history, check));
  }

  /** By kind, the weightiest first. */
  public Map<Why, List<Task>> groups() {
    return tasks.stream()
        .collect(Collectors.groupingBy(l -> l.thing().why(), TreeMap::new, Collectors.toList()));
  }

  /** What is done about all of a kind, where that says more than what it is. */
  public String title(Why why) {
    return Capital.of(why.words());
  }

  /** What a sign-off's copy kept, as a page says it. */
  public static String said(String kept) {
    return Stream.of(Why.values())
        .filter(why -> why.keptAs().equals(kept))
        .map(Why::words)
        .findFirst()
        .orElse(kept);
  }

  public static String asOf(CarBook history) {
    Noted last = history.entries().get(history.entries().size() - 1);
    return "As of entry " + last.n() + ", " + Days.minute(last.at()) + ".";
  }

  /** The last sign-off in a line; null before the first. */
  public String signed() {
    return CheckLine.signed(history).orElse(null);
  }

  public State state(DriveCheck.Checked corner) {
    return corner.card().heights().isEmpty()
        ? State.NOT_MEASURED
        : Shown.state(corner.travel().outcome());
  }

  /** How many of each kind a corner has. */
  public String counted(Card card) {
    Map<Why, Integer> counts = check.counts(card.corner());
    return card.rounds().isEmpty() && counts.size() == 1 ? "no round yet" : counted(counts);
  }

  /**
   * What to put back at a corner, "bump stop, spring"; empty where the last reading left all in.
   */
  public String putBack(String corner) {
    return check
        .corner(corner)
        .map(c -> String.join(", ", AsLeft.of(history, c.card()).out()))
        .orElse("");
  }

  /** The same of the whole car; empty where nothing is. */
  public String ofCar() {
    Map<Why, Integer> counts = check.counts(null);
    return counts.isEmpty() ? "" : counted(counts);
  }

  private static String counted(Map<Why, Integer> counts) {
    return counts.isEmpty()
        ? "nothing left"
        : counts.entrySet().stream()
            .map(e -> e.getValue() + " " + e.getKey().words())
            .collect(Collectors.joining(" · "));
  }

  /** The corners of which nothing is said: a car of which the book has two is not whole. */
  public String absent() {
    return check.corners().isEmpty()
        ? ""
        : Arrays.stream(Place.values())
            .filter(p -> check.corners().stream().noneMatch(c -> c.card().place() == p))
            .map(Place::words)
            .collect(Collectors.joining(", "));
  }
}
