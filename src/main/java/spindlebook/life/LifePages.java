package spindlebook.life;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import spindlebook.card.Addressed;
import spindlebook.card.CornerBar;
import spindlebook.card.Shown;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.log.Histories;
import spindlebook.page.Cautions;
import spindlebook.page.Html;
import spindlebook.travel.CornerTravel;
import spindlebook.travel.Life;
import spindlebook.travel.TravelFindings;

/** A corner's margins over time, with what was set, driven and signed beneath them. */
public record LifePages(Histories histories) {
  /** As many changes as fit the drawing; each costs a fold of the corner when first shown. */
  private static final int MOST = 24;

  public void life(Context ctx) {
    Card now = Addressed.corner(ctx, histories);
    CarBook book = histories.of(now.car());
    long to = to(ctx.queryParam("to"), book.n());
    CarBook then = book.asOf(to);
    if (then.standing(now.corner()).isEmpty()) {
      throw new NotFoundResponse();
    }
    Card card = then.card(now.corner());
    TravelFindings travel = CornerTravel.of(card);
    LifeView view = LifeView.of(then, card, travel, Life.of(then, card.corner(), MOST));
    Html.show(
        ctx,
        Html.TEMPLATES.lifeLife(
            CornerBar.page(card, "Life", "Life")
                .state(Shown.state(travel.outcome()))
                .sub(then.n() == book.n() ? "" : "Up to entry " + then.n())
                .caution(Cautions.FIGURES)
                .ownSheets("tape.css", "life.css"),
            view));
  }

  private static long to(String n, long last) {
    try {
      return n == null ? last : Math.min(last, Long.parseLong(n.strip()));
    } catch (NumberFormatException e) {
      throw new NotFoundResponse();
    }
  }
}
