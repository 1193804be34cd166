package spindlebook.card;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.ArrayList;
import java.util.List;
import spindlebook.corner.Card;
import spindlebook.log.Histories;
import spindlebook.travel.CornerTravel;
import spindlebook.travel.TravelFindings;
import spindlebook.web.Action;
import spindlebook.web.Cautions;
import spindlebook.web.Crumb;
import spindlebook.web.Html;
import spindlebook.web.Notice;
import spindlebook.web.PageFrame;

/** One corner: its travel, gaps, settings, and what no longer holds. */
public final class CornerPages {
  private final Histories histories;

  public CornerPages(Histories histories) {
    this.histories = histories;
  }

  public void corner(Context ctx) {
    String key = ctx.pathParam("corner");
    Card card = histories.cornerCard(key).orElseThrow(NotFoundResponse::new);
    TravelFindings travel = CornerTravel.of(card);
    CornerView view = new CornerViews(card, travel).view();
    PageFrame frame =
        PageFrame.of(
                Capital.of(card.place().words()) + " · " + card.details().name(),
                Capital.of(card.place().words()))
            .sub(card.layout().words())
            .plan(Shown.plan(card))
            .crumbs(new Crumb(card.details().name(), "/cars/" + card.car()))
            .notices(notices(card, travel))
            .caution(Cautions.FIGURES);
    Html.show(
        ctx,
        Html.TEMPLATES.cardCorner(
            frame,
            view,
            List.of(
                Action.link("Measure", "/corners/" + key + "/rounds/new", true),
                Action.link("Change a setting", "/corners/" + key + "/adjustments", false))));
  }

  private static List<Notice> notices(Card card, TravelFindings travel) {
    List<Notice> notices = new ArrayList<>();
    int doubts = card.doubts().size();
    if (doubts > 0) {
      notices.add(
          new Notice(
              Notice.Kind.PROBLEM,
              doubts == 1
                  ? "One entry is in doubt and does not count until somebody answers, below."
                  : doubts
                      + " entries are in doubt and do not count until somebody answers, below."));
    }
    String differ = new TravelWords(card, travel).stopsDiffer(travel.bump());
    if (!differ.isEmpty()) {
      notices.add(new Notice(Notice.Kind.PROBLEM, differ));
    }
    return notices;
  }
}
