package spindlebook.telltale;

import spindlebook.corner.Content;
import spindlebook.log.Bodies;
import spindlebook.log.Book;
import spindlebook.web.FormKey;

/** What drives left to be read, into the book. */
public final class TelltaleStore {
  private final Book book;

  public TelltaleStore(Book book) {
    this.book = book;
  }

  void add(Content.Telltale telltale, FormKey form, String who) {
    book.append(Bodies.draft(form.key(), form.after(), who, telltale));
  }
}
