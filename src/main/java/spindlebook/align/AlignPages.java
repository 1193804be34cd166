package spindlebook.align;

import io.javalin.http.Context;
import java.util.List;
import spindlebook.card.Addressed;
import spindlebook.card.Capital;
import spindlebook.card.CornerBar;
import spindlebook.card.Shown;
import spindlebook.fold.Card;
import spindlebook.log.Histories;
import spindlebook.page.Action;
import spindlebook.page.Asked;
import spindlebook.page.Cautions;
import spindlebook.page.Html;
import spindlebook.page.PageFrame;
import spindlebook.page.Posted;

/**
 * A corner's curves and bump steer, and the sums about rod ends and wheels that are tried on paper.
 */
public final class AlignPages {
  private static final String CHART = "chart.css";

  private final Histories histories;

  public AlignPages(Histories histories) {
    this.histories = histories;
  }

  public void curves(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    CurveView view =
        CurveView.of(
            card,
            histories.of(card.car()),
            asked(ctx, "of"),
            asked(ctx, "steering"),
            asked(ctx, "against"));
    PageFrame frame =
        CornerBar.page(card, "", "Curves")
            .state(view.head() == null ? null : view.head().state())
            .caution(Cautions.FIGURES)
            .ownSheets(CHART)
            .modules(view.compared() ? new String[0] : new String[] {"curve.js"});
    Html.show(ctx, Html.TEMPLATES.alignCurves(frame, view));
  }

  public void bumpSteer(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    Html.show(
        ctx,
        Html.TEMPLATES.alignBumpsteer(
            frame(card, "Bump steer").ownSheets(CHART).modules("curve.js"),
            new BumpSteerView(card, histories.of(card.car()), asked(ctx, "middle")),
            actions(card)));
  }

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
        Html.TEMPLATES.alignPaper(
            frame(card, heading).caution(caution),
            view,
            List.of(Action.link("Back", "/corners/" + card.corner(), false))));
  }

  private static List<Action> actions(Card card) {
    String corner = "/corners/" + card.corner();
    return List.of(
        Action.link("Measure", corner + "/rounds/new", true),
        Action.link("Alignment", corner + "/alignment", false));
  }

  static PageFrame frame(Card card, String heading) {
    return PageFrame.of(
            heading + " · " + card.place().words() + " · " + card.details().name(), heading)
        .sub(card.details().name() + ", " + card.place().words())
        .plan(Shown.plan(card))
        .up(Capital.of(card.place().words()), "/corners/" + card.corner())
        .caution(Cautions.FIGURES);
  }

  private static String asked(Context ctx, String name) {
    String asked = ctx.queryParam(name);
    return asked == null ? "" : asked;
  }
}
