package spindlebook.drivecheck;

import spindlebook.card.Counted;
import spindlebook.card.Days;
import spindlebook.fold.CarBook;
import spindlebook.fold.SeenSignOff;
import spindlebook.travel.DriveCheck;

/**
 * The drive check in a line, for the car's page.
 *
 * @param outcome "meets your rules", or how many things first
 * @param signed the last sign-off and what came since; empty before the first
 * @param sinceHref what changed since it; null before the first
 */
public record CheckLine(String outcome, String href, String signed, String sinceHref) {
  public static CheckLine of(CarBook book, DriveCheck check) {
    String car = book.car().orElseThrow();
    return new CheckLine(
        CheckWords.outcome(check),
        "/cars/" + car + "/drive-check",
        book.lastSignOff().map(s -> signed(book, s)).orElse(""),
        book.lastSignOff().map(s -> "/sign-offs/" + s.key() + "/since").orElse(null));
  }

  /** {@code Last signed off on 3 Nov 2026 by Ada; 53 entries since, to be signed off anew}. */
  static String signed(CarBook book, SeenSignOff last) {
    int since = last.since(book).size();
    return "Last signed off on "
        + Days.day(last.at())
        + " by "
        + last.who()
        + (since == 0
            ? ", nothing changed since"
            : "; " + Counted.of(since, "entry", "entries") + " since, to be signed off anew");
  }

  /** Of a sign-off: how it was then. */
  public static String outcome(SeenSignOff seen) {
    int open = seen.signOff().open().size();
    return open == 0 ? "met the rules" : Counted.of(open, "thing") + " open";
  }

  /** How many entries came since. */
  public static String since(CarBook book, SeenSignOff seen) {
    return Counted.of(seen.since(book).size(), "entry", "entries") + " since";
  }
}
