package spindlebook.suspension;

import io.javalin.http.Context;
import java.util.function.Function;
import spindlebook.card.Addressed;
import spindlebook.card.CornerBar;
import spindlebook.card.IntoBook;
import spindlebook.definition.Defined;
import spindlebook.entry.Content;
import spindlebook.fold.Card;
import spindlebook.log.Histories;
import spindlebook.page.Asked;
import spindlebook.page.Cautions;
import spindlebook.page.Html;
import spindlebook.page.PageFrame;
import spindlebook.sums.OnPaperView;
import spindlebook.sums.SumPages;

/** What carries a corner, what ends its motion softly, and how its strap lasts. */
public record SpringPages(Histories histories, IntoBook book) {
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
    form(ctx, "Spring", "/rate", SpringForms::spring);
  }

  public void weight(Context ctx) {
    form(ctx, "Corner weight", "/weight", SpringForms::weight);
  }

  public void stop(Context ctx) {
    String name = ctx.pathParam("stop");
    form(ctx, "Bump stop", "/stops/" + name, ask -> ask.stop(name));
  }

  /** Another shock, on paper. */
  public void tried(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    Asked a = SumPages.asked(ctx, card);
    OnPaperView view = new ShockPaper(card, a).view();
    SumPages.show(ctx, a, under(card, "Try another shock"), view, address(card));
  }

  private void form(Context ctx, String heading, String below, Function<SpringForms, Defined> ask) {
    Card card = Addressed.corner(ctx, histories);
    Asked a = Asked.of(ctx, card.details().unit(), card.lastChange());
    Defined said = ask.apply(new SpringForms(a, card));
    a.form(
        ctx,
        under(card, heading),
        address(card) + below,
        address(card),
        () -> book.put(ctx, a, Content.Definition.of(card.corner(), said), address(card)));
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
