package spindlebook.charts;

import io.javalin.http.Context;
import spindlebook.card.Addressed;
import spindlebook.card.CornerBar;
import spindlebook.fold.Card;
import spindlebook.log.Histories;
import spindlebook.page.Cautions;
import spindlebook.page.Html;
import spindlebook.page.PageFrame;
import spindlebook.page.Posted;

/** Curves of what was read; that of toe with how it wanders. */
public record CurvePages(Histories histories) {
  public void curves(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    Posted asked = new Posted(ctx.queryParamMap());
    CurveView view =
        CurveView.of(
            card,
            histories.of(card.car()),
            asked.text("of"),
            asked.text("steering"),
            asked.text("against"),
            asked.text("middle"));
    PageFrame frame =
        CornerBar.page(card, "", "Curves")
            .state(view.head() == null ? null : view.head().state())
            .caution(Cautions.FIGURES)
            .ownSheets("chart.css")
            .modules(view.compared() ? new String[0] : new String[] {"curve.js"});
    Html.show(ctx, Html.TEMPLATES.chartsCurves(frame, view));
  }

  /** Where bump steer once was: with its curve. */
  public void bumpSteer(Context ctx) {
    String asked = ctx.queryString();
    ctx.redirect(
        "/corners/"
            + Addressed.corner(ctx, histories).corner()
            + "/curves?of=toe"
            + (asked == null ? "" : "&" + asked));
  }
}
