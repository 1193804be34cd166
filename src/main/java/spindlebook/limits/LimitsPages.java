package spindlebook.limits;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.List;
import spindlebook.card.Capital;
import spindlebook.card.Shown;
import spindlebook.fold.Card;
import spindlebook.log.Histories;
import spindlebook.page.Action;
import spindlebook.page.Cautions;
import spindlebook.page.Crumb;
import spindlebook.page.Html;
import spindlebook.page.PageFrame;
import spindlebook.travel.CornerTravel;

/** What limits a corner, in the order in which it acts, and what to read next. */
public final class LimitsPages {
  private final Histories histories;

  public LimitsPages(Histories histories) {
    this.histories = histories;
  }

  public void limits(Context ctx) {
    String key = ctx.pathParam("corner");
    Card card = histories.cornerCard(key).orElseThrow(NotFoundResponse::new);
    String place = card.place().words();
    PageFrame frame =
        PageFrame.of(
                "Limits · " + Capital.of(place) + " · " + card.details().name(),
                "What limits " + place)
            .sub("In the order in which it acts, from mid-travel outwards")
            .plan(Shown.plan(card))
            .crumbs(
                new Crumb(card.details().name(), "/cars/" + card.car()),
                new Crumb(place, "/corners/" + key))
            .caution(Cautions.FIGURES)
            .ownSheets("limits.css");
    Html.show(
        ctx,
        Html.TEMPLATES.limitsLimits(
            frame,
            LimitsView.of(card, CornerTravel.of(card)),
            List.of(
                Action.link("Measure", "/corners/" + key + "/rounds/new", true),
                Action.link("Change a setting", "/corners/" + key + "/adjustments", false))));
  }
}
