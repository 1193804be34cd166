package spindlebook.limits;

import io.javalin.http.Context;
import spindlebook.card.Addressed;
import spindlebook.card.CornerBar;
import spindlebook.card.Shown;
import spindlebook.fold.Card;
import spindlebook.log.Histories;
import spindlebook.page.Cautions;
import spindlebook.page.Html;
import spindlebook.travel.CornerTravel;
import spindlebook.travel.TravelFindings;

/** What limits a corner, in the order in which it acts, and what to read next. */
public record LimitsPages(Histories histories) {
  public void limits(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    TravelFindings travel = CornerTravel.of(card);
    Html.show(
        ctx,
        Html.TEMPLATES.limitsLimits(
            CornerBar.page(card, "Limits", "Limits")
                .state(Shown.state(travel.outcome()))
                .caution(Cautions.FIGURES)
                .ownSheets("tape.css", "limits.css"),
            LimitsView.of(card, travel)));
  }
}
