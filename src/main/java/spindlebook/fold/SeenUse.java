package spindlebook.fold;

import java.util.List;
import java.util.Optional;
import spindlebook.entry.Content;
import spindlebook.entry.HappeningKind;

/**
 * A drive as the book knows it.
 *
 * @param use how much, null where only 'driven' was said
 * @param words ready to be read
 */
public record SeenUse(Noted entry, Content.Use use, String words) implements OfEntry {

  static List<SeenUse> in(CarBook book) {
    return book.entries().stream().flatMap(e -> seen(book, e).stream()).toList();
  }

  private static Optional<SeenUse> seen(CarBook book, Noted e) {
    Content content = book.standing(e.key()).orElse(null);
    if (content instanceof Content.Use use) {
      return Optional.of(new SeenUse(e, use, words(use)));
    }
    if (content instanceof Content.Happening h && h.what() == HappeningKind.DRIVEN) {
      String more = h.words() == null ? "" : ": " + h.words();
      return Optional.of(new SeenUse(e, null, h.what().words() + more));
    }
    return Optional.empty();
  }

  /** {@code driven, 4 1/2 hours: dunes}. */
  public static String words(Content.Use use) {
    String more = use.words() == null ? "" : ": " + use.words();
    return HappeningKind.DRIVEN.words() + ", " + use.howMuch() + more;
  }
}
