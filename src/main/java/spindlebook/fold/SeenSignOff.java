package spindlebook.fold;

import java.util.List;
import java.util.stream.Stream;
import spindlebook.entry.Content;

/**
 * A sign-off as the book knows it: what was kept then, whatever was corrected since.
 *
 * @param takenBack whether somebody took it back
 */
public record SeenSignOff(Noted entry, Content.SignOff signOff, boolean takenBack)
    implements OfEntry {

  static List<SeenSignOff> in(CarBook book) {
    return book.entries().stream()
        .flatMap(
            e ->
                e.content() instanceof Content.SignOff s
                    ? Stream.of(new SeenSignOff(e, s, book.takenBack(e.key())))
                    : Stream.empty())
        .toList();
  }

  /** What came into the car's book after what was signed; other sign-offs left out. */
  public List<Noted> since(CarBook book) {
    return since(book, signOff.n());
  }

  public static List<Noted> since(CarBook book, long n) {
    return book.entries().stream()
        .filter(e -> e.n() > n && !(e.content() instanceof Content.SignOff))
        .toList();
  }
}
