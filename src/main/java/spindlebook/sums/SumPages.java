package spindlebook.sums;

import io.javalin.http.Context;
import java.util.List;
import spindlebook.card.Addressed;
import spindlebook.card.CornerBar;
import spindlebook.fold.Card;
import spindlebook.log.Histories;
import spindlebook.page.Action;
import spindlebook.page.Asked;
import spindlebook.page.Cautions;
import spindlebook.page.Html;
import spindlebook.page.Posted;

/** Sums on paper: rod ends turned, another wheel. Nothing goes into the book. */
public record SumPages(Histories histories) {
  public void rodEnds(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    Asked a = typed(ctx, card);
    paper(ctx, a, card, "Rod ends", Cautions.SETTING, new RodEndPaper(card, a).view());
  }

  public void wheel(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    Asked a = typed(ctx, card);
    OnPaperView view = new WheelPaper(card, histories.mirror(card), a).view();
    paper(ctx, a, card, "A wheel on paper", Cautions.WHEEL, view);
  }

  private static Asked typed(Context ctx, Card card) {
    return Asked.of(new Posted(ctx.queryParamMap()), card.details().unit(), 0);
  }

  private static void paper(
      Context ctx, Asked a, Card card, String heading, String caution, OnPaperView view) {
    a.show(
        ctx,
        Html.TEMPLATES.sumsPaper(
            CornerBar.titled(card, heading).caution(caution),
            view,
            List.of(Action.link("Back", "/corners/" + card.corner(), false))));
  }
}
