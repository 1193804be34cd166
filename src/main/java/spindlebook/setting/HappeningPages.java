package spindlebook.setting;

import io.javalin.http.Context;
import spindlebook.card.Addressed;
import spindlebook.card.CornerBar;
import spindlebook.card.IntoBook;
import spindlebook.entry.Content;
import spindlebook.entry.HappeningKind;
import spindlebook.fold.CarBook;
import spindlebook.log.Histories;
import spindlebook.page.Asked;
import spindlebook.page.Cautions;
import spindlebook.page.Html;
import spindlebook.page.PageFrame;

/** What befell the car: hit, cut or welded, driven. */
public record HappeningPages(Histories histories, IntoBook book) {
  private static final String WHOLE_CAR = "whole-car";

  public void happened(Context ctx) {
    CarBook history = Addressed.car(ctx, histories);
    String car = history.car().orElseThrow();
    Asked a = Asked.of(ctx, history.details().orElseThrow().unit(), history.n());
    Content.Happening happening = ask(a, car, history);
    if (a.ok()) {
      book.put(ctx, a, happening);
      String corner = happening.corner();
      Html.next(
          ctx,
          corner == null
              ? "/cars/" + car
              : "/corners/" + corner + "/rounds/new?again=1&change=" + a.key().key());
      return;
    }
    PageFrame frame =
        CornerBar.under(history, "Something happened", "Something happened")
            .sub("What cannot be set back by turning it back.")
            .caution(Cautions.SETTING);
    a.show(ctx, frame, "/cars/" + car + "/happenings", "Save", "/cars/" + car);
  }

  private static Content.Happening ask(Asked a, String car, CarBook history) {
    Asked.Keys<HappeningKind> whats = a.one("what", "What");
    for (HappeningKind kind : HappeningKind.values()) {
      whats.option(
          kind,
          kind.words(),
          switch (kind) {
            case HIT_OR_BENT, CUT_WELDED_GROUND -> "measure all of that corner again";
            case DRIVEN -> "straps may have stretched";
          });
    }
    HappeningKind what = whats.needed("Say which of the three it was.");
    String corner =
        a.<String>one("where", "Where")
            .option(WHOLE_CAR, null, "the whole car", "")
            .options(history.corners(), c -> history.card(c).place().words())
            .firstKey(WHOLE_CAR)
            .read();
    String words =
        a.line("words", "In your words", 300)
            .hint("Where, how hard, how far. May be left empty.")
            .read();
    return a.ok() ? new Content.Happening(car, corner, what, words) : null;
  }
}
