package spindlebook.drivecheck;

import java.util.Optional;
import spindlebook.advice.DriveCheck;
import spindlebook.card.Capital;
import spindlebook.card.Counted;
import spindlebook.card.Days;
import spindlebook.fold.CarBook;
import spindlebook.fold.SeenSignOff;

/**
 * The drive check in a line, for the car's page.
 *
 * @param count how many things are to do before driving; 0 where all rules are met
 * @param signed the last sign-off and what came since; empty before the first
 */
public record CheckLine(int count, String href, String signed) {
  public static CheckLine of(CarBook book, DriveCheck check) {
    return new CheckLine(
        check.things().size(),
        "/cars/" + book.car().orElseThrow() + "/drive-check",
        book.lastSignOff().map(s -> signed(book, s, "")).orElse("not signed off yet"));
  }

  /** {@code Signed off 3 Nov 2026 by Ada, 53 entries since.}; empty before the first. */
  static Optional<String> signed(CarBook book) {
    return book.lastSignOff().map(s -> Capital.of(signed(book, s, " by " + s.who())) + ".");
  }

  private static String signed(CarBook book, SeenSignOff last, String who) {
    return "signed off "
        + Days.day(last.at())
        + who
        + ", "
        + (last.since(book).isEmpty() ? "nothing since" : since(book, last));
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
