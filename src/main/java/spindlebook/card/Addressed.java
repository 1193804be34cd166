package spindlebook.card;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.log.Histories;

/** What an address names; where there is no such thing, there is no such page. */
public final class Addressed {
  private Addressed() {}

  public static Card corner(Context ctx, Histories histories) {
    return histories.cornerCard(ctx.pathParam("corner")).orElseThrow(NotFoundResponse::new);
  }

  /** A position of the book as it stands in an address or a form; −1 where the text is none. */
  public static long position(String text) {
    try {
      return text == null ? -1 : Long.parseLong(text.strip());
    } catch (NumberFormatException e) {
      return -1;
    }
  }

  public static CarBook car(Context ctx, Histories histories) {
    CarBook book = histories.of(ctx.pathParam("car"));
    if (book.car().isEmpty()) {
      throw new NotFoundResponse();
    }
    return book;
  }
}
