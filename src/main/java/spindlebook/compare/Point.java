package spindlebook.compare;

import java.util.Optional;
import spindlebook.card.Days;
import spindlebook.entry.Content;
import spindlebook.fold.CarBook;
import spindlebook.fold.Noted;

/**
 * A point of a car's book.
 *
 * @param at as it stands in an address: {@code now}, or an entry's number
 * @param n the last entry that is known there; of a sign-off, the one it is of
 * @param name short enough for the head of a column: {@code entry 23}
 * @param day when it was; empty for now
 */
public record Point(String at, long n, String name, String day) {
  static final String NOW = "now";

  static Point now(CarBook book) {
    return new Point(NOW, book.n(), NOW, "");
  }

  static Point of(Noted entry) {
    boolean signed = entry.content() instanceof Content.SignOff;
    long n = entry.content() instanceof Content.SignOff kept ? kept.n() : entry.n();
    String day = Days.day(entry.at());
    return new Point(
        Long.toString(entry.n()),
        n,
        signed ? "sign-off of " + day : "entry " + entry.n(),
        signed ? "" : day);
  }

  /** Empty where the book has no entry of this number. */
  static Optional<Point> read(CarBook book, String typed) {
    if (typed.equals(NOW)) {
      return Optional.of(now(book));
    }
    return book.entries().stream()
        .filter(e -> Long.toString(e.n()).equals(typed))
        .findFirst()
        .map(Point::of);
  }

  boolean isNow() {
    return at.equals(NOW);
  }

  /** In a sentence: {@code entry 23, 4 May 2031}. */
  String words() {
    return isNow() ? name : day.isEmpty() ? "the " + name : name + ", " + day;
  }
}
