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
import spindlebook.page.PageFrame;
import spindlebook.page.Posted;

/** Sums on paper: rod ends turned, another wheel. Nothing goes into the book. */
public record SumPages(Histories histories) {
  public void rodEnds(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    Asked a = asked(ctx, card);
    PageFrame frame = CornerBar.titled(card, "Rod ends").caution(Cautions.SETTING);
    show(ctx, a, frame, new RodEndPaper(card, a).view(), "/corners/" + card.corner());
  }

  public void wheel(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    Asked a = asked(ctx, card);
    OnPaperView view = new WheelPaper(card, histories.mirror(card), a).view();
    PageFrame frame = CornerBar.titled(card, "A wheel on paper").caution(Cautions.WHEEL);
    show(ctx, a, frame, view, "/corners/" + card.corner());
  }

  /** What the address holds of a sum. */
  public static Asked asked(Context ctx, Card card) {
    return Asked.of(new Posted(ctx.queryParamMap()), card.details().unit(), 0);
  }

  public static void show(Context ctx, Asked a, PageFrame frame, OnPaperView view, String back) {
    List<Action> ways = List.of(Action.link("Back", back, false));
    a.show(ctx, Html.TEMPLATES.sumsPaper(frame, view, ways));
  }
}
