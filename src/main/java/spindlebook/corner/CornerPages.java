package spindlebook.corner;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.ArrayList;
import java.util.List;
import spindlebook.card.Addressed;
import spindlebook.card.Capital;
import spindlebook.card.CornerBar;
import spindlebook.card.Days;
import spindlebook.card.Shown;
import spindlebook.card.TravelWords;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.fold.Noted;
import spindlebook.log.Histories;
import spindlebook.page.Cautions;
import spindlebook.page.Html;
import spindlebook.page.Link;
import spindlebook.page.Notice;
import spindlebook.page.PageFrame;
import spindlebook.travel.CornerTravel;
import spindlebook.travel.TravelFindings;
import spindlebook.words.EntryWords;

/** One corner: its travel, gaps, settings, and what no longer holds. */
public record CornerPages(Histories histories) {
  public void corner(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    if (ctx.queryParam("at") != null) {
      asWeKnewIt(ctx, card, ctx.queryParam("at"));
      return;
    }
    TravelFindings travel = CornerTravel.of(card);
    CornerView view = CornerView.of(card, travel, null);
    PageFrame frame =
        PageFrame.of(
                Capital.of(card.place().words()) + " · " + card.details().name(),
                Capital.of(card.place().words()))
            .state(view.tape() == null ? null : Shown.state(travel.outcome()))
            .plan(Shown.plan(card))
            .up(card.details().name(), "/cars/" + card.car())
            .notices(notices(card, travel))
            .bar(CornerBar.of(card.corner(), ""))
            .caution(Cautions.FIGURES)
            .ownSheets("tape.css");
    Html.show(ctx, Html.TEMPLATES.cornerCorner(frame, view));
  }

  /**
   * Watch points against heights, what is to be measured again, and the heights; or as of {@code
   * at}.
   */
  public void gaps(Context ctx) {
    Card now = Addressed.corner(ctx, histories);
    String at = ctx.queryParam("at");
    Card card = at == null ? now : asOf(histories.of(now.car()), at, now).card(now.corner());
    CornerView view = CornerView.of(card, CornerTravel.of(card), at == null ? null : List.of());
    Html.show(
        ctx,
        Html.TEMPLATES.cornerGaps(
            CornerBar.page(card, "Gaps", "Gaps")
                .sub(at == null ? "" : "As we knew it at entry " + card.n())
                .caution(Cautions.FIGURES)
                .state(Shown.state(view.travel().outcome()))
                .ownSheets("tape.css", "map.css"),
            view));
  }

  /** As the book stood at an entry: to look at, marked as such on top and at the foot. */
  private void asWeKnewIt(Context ctx, Card now, String at) {
    CarBook whole = histories.of(now.car());
    CarBook then = asOf(whole, at, now);
    Card card = then.card(now.corner());
    TravelFindings travel = CornerTravel.of(card);
    String address = "/corners/" + card.corner();
    Noted last = then.entries().get(then.entries().size() - 1);
    PageFrame frame =
        PageFrame.of(
                Capital.of(card.place().words()) + " as we knew it at entry " + last.n(),
                Capital.of(card.place().words()) + ", as we knew it at entry " + last.n())
            .sub(card.layout().words())
            .plan(Shown.plan(card))
            .up("as it is now", address)
            .notices(
                List.of(
                    new Notice(
                        Notice.Kind.NOTE,
                        "This is how it stood on "
                            + Days.minute(last.at())
                            + ", not how it stands now, and nothing is changed from here. The last"
                            + " entry known then: "
                            + new EntryWords(then).of(last.content())
                            + ".")))
            .caution(Cautions.FIGURES)
            .ownSheets("tape.css");
    List<Link> ways = new ArrayList<>();
    ways.add(new Link("gaps and heights then", address + "/gaps?at=" + last.n()));
    ways.add(new Link("entry " + last.n(), "/entries/" + last.key()));
    long before = whole.asOf(last.n() - 1).n();
    if (whole.asOf(before).standing(card.corner()).isPresent()) {
      ways.add(new Link("as of the entry before", address + "?at=" + before));
    }
    whole.entries().stream()
        .filter(e -> e.n() > last.n())
        .findFirst()
        .ifPresent(e -> ways.add(new Link("as of the next entry", address + "?at=" + e.n())));
    ways.add(new Link("as it is now", address));
    Html.show(ctx, Html.TEMPLATES.cornerCorner(frame, CornerView.of(card, travel, ways)));
  }

  private static CarBook asOf(CarBook whole, String at, Card corner) {
    long n = Addressed.position(at);
    CarBook then = whole.asOf(n > whole.n() ? 0 : n);
    if (then.standing(corner.corner()).isEmpty()) {
      throw new NotFoundResponse();
    }
    return then;
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
