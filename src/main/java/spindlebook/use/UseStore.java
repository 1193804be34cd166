package spindlebook.use;

import spindlebook.corner.Content;
import spindlebook.log.Bodies;
import spindlebook.log.Book;
import spindlebook.web.FormKey;

/** Drives, into the book. */
public final class UseStore {
  private final Book book;

  public UseStore(Book book) {
    this.book = book;
  }

  void add(Content.Use use, FormKey form, String who) {
    book.append(Bodies.draft(form.key(), form.after(), who, use));
  }
}
