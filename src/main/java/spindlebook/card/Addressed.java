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

  public static CarBook car(Context ctx, Histories histories) {
    CarBook book = histories.of(ctx.pathParam("car"));
    if (book.car().isEmpty()) {
      throw new NotFoundResponse();
    }
    return book;
  }
}
