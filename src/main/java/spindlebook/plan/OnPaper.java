package spindlebook.plan;

import java.util.ArrayList;
import java.util.List;
import spindlebook.entry.Content;
import spindlebook.fold.CarBook;
import spindlebook.fold.Noted;

/** The book with some entries more, which nobody wrote. */
public final class OnPaper {
  private OnPaper() {}

  /** In their order, each sent after the one before it. */
  public static CarBook with(CarBook book, List<? extends Content> contents) {
    Noted last = book.entries().get(book.entries().size() - 1);
    List<Noted> unwritten = new ArrayList<>();
    for (Content content : contents) {
      long n = book.n() + 1 + unwritten.size();
      unwritten.add(new Noted(n, key(n), last.at(), "nobody", n - 1, content));
    }
    return book.with(unwritten);
  }

  /** One more, by this key, from somebody who knew of the last change at {@code after}. */
  public static CarBook with(CarBook book, String key, long after, Content content) {
    Noted last = book.entries().get(book.entries().size() - 1);
    long n = book.n() + 1;
    return book.with(new Noted(n, key, last.at(), "nobody", Math.min(after, n - 1), content));
  }

  /** The key of the first of them. */
  public static String key(CarBook book) {
    return key(book.n() + 1);
  }

  private static String key(long n) {
    return "on-paper-" + n;
  }
}
