package spindlebook.suspension;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.List;
import java.util.Optional;
import spindlebook.card.Addressed;
import spindlebook.card.CornerBar;
import spindlebook.card.IntoBook;
import spindlebook.definition.BumpStop;
import spindlebook.definition.Defined;
import spindlebook.entry.Content;
import spindlebook.fold.Card;
import spindlebook.fold.SeenSprings.Said;
import spindlebook.log.Histories;
import spindlebook.page.Action;
import spindlebook.page.Asked;
import spindlebook.page.Cautions;
import spindlebook.page.Html;
import spindlebook.page.PageFrame;
import spindlebook.page.Posted;

/** What carries a corner, what ends its motion softly, and how its strap lasts. */
public final class SpringPages {
  private final Histories histories;
  private final IntoBook book;

  public SpringPages(Histories histories, IntoBook book) {
    this.histories = histories;
    this.book = book;
  }

  public void springs(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    PageFrame frame =
        CornerBar.page(card, "Springs", "Springs")
            .caution(Cautions.FIGURES)
            .ownSheets("chart.css")
            .modules("curve.js");
    Html.show(
        ctx,
        Html.TEMPLATES.suspensionSprings(frame, new SpringView(histories.of(card.car()), card)));
  }

  public void spring(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    Asked a = asked(ctx, card);
    form(ctx, card, a, new SpringForms(a, card).spring(), "Spring", "/rate");
  }

  public void weight(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    Asked a = asked(ctx, card);
    form(ctx, card, a, new SpringForms(a, card).weight(), "Corner weight", "/weight");
  }

  public void stop(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    String name = ctx.pathParam("stop");
    Optional<BumpStop> was =
        card.springs().stops().stream()
            .map(Said::what)
            .filter(s -> s.stop().equals(name))
            .findFirst();
    if (was.isEmpty() && !name.equals("new")) {
      throw new NotFoundResponse();
    }
    Asked a = asked(ctx, card);
    String stop = was.map(BumpStop::stop).orElse(a.key().key());
    form(ctx, card, a, new SpringForms(a, card).stop(stop, was), "Bump stop", "/stops/" + name);
  }

  /** Another shock, on paper. */
  public void tried(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    Asked a = Asked.of(new Posted(ctx.queryParamMap()), card.details().unit(), 0);
    a.show(
        ctx,
        Html.TEMPLATES.sumsPaper(
            under(card, "Try another shock"),
            new ShockPaper(card, a).view(),
            List.of(Action.link("Back", address(card), false))));
  }

  private static Asked asked(Context ctx, Card card) {
    return Asked.of(ctx, card.details().unit(), card.lastChange());
  }

  private void form(Context ctx, Card card, Asked a, Defined said, String heading, String below) {
    if (a.ok()) {
      book.put(ctx, a, Content.Definition.of(card.corner(), said), address(card));
      return;
    }
    a.show(ctx, under(card, heading), address(card) + below, "Save", address(card));
  }

  private static String address(Card card) {
    return "/corners/" + card.corner() + "/spring";
  }

  private static PageFrame under(Card card, String heading) {
    return CornerBar.under(card, heading, heading)
        .up("Springs", address(card))
        .caution(Cautions.SETTING);
  }
}
