package spindlebook.trial;

import spindlebook.corner.CarBook;
import spindlebook.corner.Content;
import spindlebook.corner.Noted;

/** The book with one entry more, which nobody wrote. */
final class OnPaper {
  static final String KEY = "on-paper";

  private OnPaper() {}

  static CarBook with(CarBook book, Content content) {
    Noted last = book.entries().get(book.entries().size() - 1);
    return book.with(new Noted(book.n() + 1, KEY, last.at(), "nobody", book.n(), content));
  }
}
