package spindlebook.drivecheck;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.List;
import java.util.Optional;
import spindlebook.advice.DriveCheck;
import spindlebook.card.Addressed;
import spindlebook.card.Capital;
import spindlebook.card.Counted;
import spindlebook.card.Days;
import spindlebook.entry.Content;
import spindlebook.fold.CarBook;
import spindlebook.fold.Noted;
import spindlebook.fold.SeenSignOff;
import spindlebook.log.Histories;
import spindlebook.measured.AlignedCheck;
import spindlebook.page.Asked;
import spindlebook.page.Cautions;
import spindlebook.page.FormPage;
import spindlebook.page.Html;
import spindlebook.page.Notice;
import spindlebook.page.PageFrame;
import spindlebook.web.Who;
import spindlebook.words.EntryWords;

/** Signing a car off: a copy of what it rests on, and what changed since. */
public record SignOffPages(Histories histories, SignOffStore store) {
  private static final int MOST_CAME = 6;
  private static final int LONGEST_WHY = 500;

  public void list(Context ctx) {
    CarBook history = Addressed.car(ctx, histories);
    String car = history.car().orElseThrow();
    PageFrame frame =
        PageFrame.of("Sign-offs · Spindlebook", "Sign-offs")
            .sub("Each keeps a copy of the car as the book knew it then.")
            .up("drive check", "/cars/" + car + "/drive-check")
            .caution(Cautions.FIGURES);
    Html.show(ctx, Html.TEMPLATES.drivecheckSignoffs(frame, history));
  }

  // --- signing

  /** Asked for, and sent. */
  public void sign(Context ctx) {
    CarBook history = Addressed.car(ctx, histories);
    String car = "/cars/" + history.car().orElseThrow();
    Asked a = Asked.of(ctx, history.details().orElseThrow().unit(), history.n());
    if (a.sent() && history.original(a.key().key()).isPresent()) {
      Html.next(ctx, "/sign-offs/" + a.key().key());
      return;
    }
    DriveCheck check = AlignedCheck.of(history);
    int open = check.things().size();
    String who =
        a.line("who", "Signed by", Who.LONGEST).starts(Who.of(ctx)).needed("Say who signs.");
    String why =
        a.line("why", open == 0 ? "In your words" : "Why it is signed all the same", LONGEST_WHY)
            .hint(open == 0 ? "May be left empty." : "One sentence. It is kept with what is open.")
            .neededIf(
                open > 0,
                "Say in a sentence why it is signed with " + Counted.of(open, "thing") + " open.");
    a.hidden("n", Long.toString(history.n()));
    List<Noted> came = a.sent() ? came(history, a.text("n")) : List.of();
    if (came.isEmpty() && a.ok()) {
      store.sign(history, check, why, a.key(), who);
      Who.remember(ctx, who);
      Html.next(ctx, "/sign-offs/" + a.key().key());
      return;
    }
    PageFrame frame =
        PageFrame.of("Sign off · Spindlebook", "Sign off: " + CheckWords.outcome(check))
            .sub(
                CheckView.asOf(history) + " A copy of figures, settings, rules and limits is kept.")
            .up("drive check", car + "/drive-check")
            .notices(came.isEmpty() ? List.of() : List.of(nothingSigned(came.size())))
            .caution(Cautions.FIGURES);
    List<Since.Line> newest = Since.newest(came, MOST_CAME, new EntryWords(history));
    FormPage page = a.page(frame, car + "/sign-offs", "Sign it off", car + "/drive-check");
    ctx.status(a.sent() ? 422 : 200);
    CheckView view = CheckView.of(history, check);
    Html.show(ctx, a.posted(), Html.TEMPLATES.drivecheckSign(page, view, newest));
  }

  /** What came into the book while a form lay open that showed it up to here. */
  private static List<Noted> came(CarBook history, String shown) {
    long n = Addressed.position(shown);
    // Of a form that was tampered with all of the book came since.
    return SeenSignOff.since(history, n > history.n() ? 0 : n);
  }

  private static Notice nothingSigned(int came) {
    return new Notice(
        Notice.Kind.PROBLEM,
        "Nothing was signed: "
            + Counted.of(came, "entry", "entries")
            + " came into the book meanwhile. Look again, then sign what stands now.");
  }

  // --- one that was kept

  public void signOff(Context ctx) {
    SeenSignOff seen = seen(ctx);
    CarBook history = histories.of(seen.signOff().car());
    Content.SignOff kept = seen.signOff();
    List<Notice> notices =
        seen.takenBack()
            ? List.of(new Notice(Notice.Kind.PROBLEM, "This sign-off was withdrawn."))
            : List.of();
    PageFrame frame =
        PageFrame.of("Sign-off · Spindlebook", "Signed off by " + seen.who())
            .sub(Days.minute(seen.at()) + ", as of entry " + kept.n() + ". As it was kept then.")
            .up("sign-offs", "/cars/" + kept.car() + "/sign-offs")
            .notices(notices)
            .caution(Cautions.FIGURES);
    Html.show(
        ctx,
        Html.TEMPLATES.drivecheckSignoff(
            frame,
            KeptCopy.of(
                history,
                seen,
                store.sameChain(kept),
                Optional.ofNullable(ctx.queryParam("corner")))));
  }

  // --- what changed since

  public void since(Context ctx) {
    SeenSignOff seen = seen(ctx);
    Content.SignOff kept = seen.signOff();
    CarBook history = histories.of(kept.car());
    DriveCheck check = AlignedCheck.of(history);
    CopyChanges changes =
        CopyChanges.between(
                kept.corners(),
                SignOffCopy.corners(check),
                kept.unit(),
                history.details().orElseThrow().unit())
            .asShown();
    int came = seen.since(history).size();
    PageFrame frame =
        PageFrame.of("What changed since · Spindlebook", "What changed since")
            .sub(
                "Signed off on "
                    + Days.day(seen.at())
                    + " by "
                    + seen.who()
                    + ", as of entry "
                    + kept.n()
                    + (came == 0
                        ? ". Nothing changed since."
                        : ". " + Counted.of(came, "entry", "entries") + " since."))
            .up("the sign-off", "/sign-offs/" + seen.key())
            .caution(Cautions.FIGURES);
    String then = Capital.of(CheckLine.outcome(seen));
    Html.show(
        ctx,
        Html.TEMPLATES.drivecheckSince(
            frame,
            new Since(
                then + " then; now: " + CheckWords.outcome(check) + ".",
                changes,
                kept.corners().stream().anyMatch(c -> c.alignment() == null)
                    ? "Alignment was not kept in sign-offs yet: nothing of it is held against that"
                        + " copy."
                    : "",
                Since.groups(history, kept.n()))));
  }

  // --- found

  private SeenSignOff seen(Context ctx) {
    String key = ctx.pathParam("signoff");
    return histories
        .locate(key)
        .filter(l -> l.car() != null)
        .flatMap(
            l ->
                histories.of(l.car()).signOffs().stream()
                    .filter(s -> s.key().equals(key) && s.signOff().car().equals(l.car()))
                    .findFirst())
        .orElseThrow(NotFoundResponse::new);
  }
}
