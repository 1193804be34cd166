package spindlebook.card;

import io.javalin.http.Context;
import spindlebook.corner.Content;
import spindlebook.log.Bodies;
import spindlebook.log.Book;
import spindlebook.web.Asked;
import spindlebook.web.Who;

/** What a form was answered with, into the book. */
public record IntoBook(Book book) {
  /** One entry, by the form's own key: sent again, it is stored once. */
  public void put(Context ctx, Asked asked, Content content) {
    book.append(Bodies.draft(asked.key().key(), asked.key().after(), Who.of(ctx), content));
  }
}
