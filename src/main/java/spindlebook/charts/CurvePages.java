package spindlebook.charts;

import io.javalin.http.Context;
import java.util.List;
import spindlebook.card.Addressed;
import spindlebook.card.CornerBar;
import spindlebook.fold.Card;
import spindlebook.log.Histories;
import spindlebook.page.Action;
import spindlebook.page.Cautions;
import spindlebook.page.Html;
import spindlebook.page.PageFrame;

/** Curves of what was read, and how toe wanders. */
public record CurvePages(Histories histories) {
  private static final String CHART = "chart.css";

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
    Html.show(ctx, Html.TEMPLATES.chartsCurves(frame, view));
  }

  public void bumpSteer(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    Html.show(
        ctx,
        Html.TEMPLATES.chartsBumpsteer(
            CornerBar.titled(card, "Bump steer").ownSheets(CHART).modules("curve.js"),
            new BumpSteerView(card, histories.of(card.car()), asked(ctx, "middle")),
            actions(card)));
  }

  private static List<Action> actions(Card card) {
    String corner = "/corners/" + card.corner();
    return List.of(
        Action.link("Measure", corner + "/rounds/new", true),
        Action.link("Alignment", corner + "/alignment", false));
  }

  private static String asked(Context ctx, String name) {
    String asked = ctx.queryParam(name);
    return asked == null ? "" : asked;
  }
}
