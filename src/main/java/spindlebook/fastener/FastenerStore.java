package spindlebook.fastener;

import spindlebook.corner.Content;
import spindlebook.log.Bodies;
import spindlebook.log.Book;
import spindlebook.web.FormKey;

/** What is said of fasteners, into the book. */
public final class FastenerStore {
  private final Book book;

  public FastenerStore(Book book) {
    this.book = book;
  }

  void say(Content.Fastener fastener, FormKey form, String who) {
    book.append(Bodies.draft(form.key(), form.after(), who, fastener));
  }
}
