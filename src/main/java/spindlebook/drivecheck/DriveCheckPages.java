package spindlebook.drivecheck;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import spindlebook.advice.DriveCheck;
import spindlebook.card.Addressed;
import spindlebook.card.Capital;
import spindlebook.card.Shown;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.log.Histories;
import spindlebook.measured.AlignedCheck;
import spindlebook.page.Cautions;
import spindlebook.page.Html;
import spindlebook.page.PageFrame;

/** Before a drive: all that is left to see to, and one page of each corner to print. */
public record DriveCheckPages(Histories histories) {
  public void check(Context ctx) {
    CarBook history = Addressed.car(ctx, histories);
    DriveCheck check = AlignedCheck.of(history);
    String name = history.details().orElseThrow().name();
    CheckView view = CheckView.of(history, check);
    Walk walk = Walk.of(view, ctx.queryParam("at"));
    PageFrame frame =
        PageFrame.of("Drive check · " + name, "Drive check")
            .plan(walk.plan())
            .up(name, "/cars/" + history.car().orElseThrow())
            .bar(walk.bar())
            .caution(Cautions.FIGURES)
            .ownSheets("check.css");
    Html.show(ctx, Html.TEMPLATES.drivecheckCheck(frame, view, walk));
  }

  // --- on paper

  public void print(Context ctx) {
    Card now = Addressed.corner(ctx, histories);
    CarBook history = histories.of(now.car());
    DriveCheck check = AlignedCheck.of(history);
    DriveCheck.Checked at = check.corner(now.corner()).orElseThrow(NotFoundResponse::new);
    Card card = at.card();
    PageFrame frame =
        PageFrame.of(
                Capital.of(card.place().words()) + " · " + card.details().name(),
                card.details().name() + ", " + card.place().words())
            .sub(CheckView.asOf(history))
            .plan(Shown.plan(card))
            .up("drive check", "/cars/" + card.car() + "/drive-check")
            .caution(Cautions.FIGURES);
    Html.show(ctx, Html.TEMPLATES.drivecheckPrint(frame, PrintView.of(history, check, at)));
  }
}
