package spindlebook.drivecheck;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import spindlebook.alignment.AlignedCheck;
import spindlebook.card.Capital;
import spindlebook.card.Counted;
import spindlebook.card.Days;
import spindlebook.corner.CarBook;
import spindlebook.corner.Content;
import spindlebook.corner.EntryWords;
import spindlebook.corner.Noted;
import spindlebook.corner.SeenSignOff;
import spindlebook.log.Histories;
import spindlebook.travel.DriveCheck;
import spindlebook.web.Cautions;
import spindlebook.web.Crumb;
import spindlebook.web.FormKey;
import spindlebook.web.FormPage;
import spindlebook.web.Html;
import spindlebook.web.Notice;
import spindlebook.web.PageFrame;
import spindlebook.web.Posted;
import spindlebook.web.Who;

/** Signing a car off: a copy of what it rests on, and what changed since. */
public final class SignOffPages {
  private static final int MOST_CAME = 6;

  private final Histories histories;
  private final SignOffStore store;

  public SignOffPages(Histories histories, SignOffStore store) {
    this.histories = histories;
    this.store = store;
  }

  public void list(Context ctx) {
    CarBook history = history(ctx);
    String car = history.car().orElseThrow();
    PageFrame frame =
        PageFrame.of("Sign-offs · Spindlebook", "Sign-offs")
            .sub("Each keeps a copy of the car as the book knew it then.")
            .crumbs(carCrumb(history), new Crumb("drive check", "/cars/" + car + "/drive-check"))
            .caution(Cautions.FIGURES);
    Html.show(ctx, Html.TEMPLATES.drivecheckSignoffs(frame, history));
  }

  private static Crumb carCrumb(CarBook history) {
    return new Crumb(
        history.details().orElseThrow().name(), "/cars/" + history.car().orElseThrow());
  }

  // --- signing

  public void newSignOff(Context ctx) {
    CarBook history = history(ctx);
    show(ctx, history, check(history), new Posted(Map.of()), FormKey.fresh(history.n()), List.of());
  }

  public void sign(Context ctx) {
    CarBook history = history(ctx);
    Posted posted = Html.posted(ctx);
    FormKey key = posted.formKey().orElseGet(() -> FormKey.fresh(history.n()));
    if (history.original(key.key()).isPresent()) {
      Html.next(ctx, "/sign-offs/" + key.key());
      return;
    }
    long shown = SignOffForm.shownN(posted);
    List<Noted> came = SeenSignOff.since(history, shown > history.n() ? 0 : shown);
    DriveCheck check = check(history);
    SignOffForm form = SignOffForm.read(posted, check.things().size());
    if (came.isEmpty() && form instanceof SignOffForm.Accepted accepted) {
      store.sign(history, check, accepted.why(), key, accepted.who());
      Who.remember(ctx, accepted.who());
      Html.next(ctx, "/sign-offs/" + key.key());
    } else {
      ctx.status(422);
      show(ctx, history, check, posted, key, came);
    }
  }

  /**
   * @param came what came into the book while an earlier showing lay open
   */
  private static void show(
      Context ctx,
      CarBook history,
      DriveCheck check,
      Posted posted,
      FormKey key,
      List<Noted> came) {
    String car = history.car().orElseThrow();
    PageFrame frame =
        PageFrame.of("Sign off · Spindlebook", "Sign off: " + CheckWords.outcome(check))
            .sub(
                CheckView.asOf(history) + " A copy of figures, settings, rules and limits is kept.")
            .crumbs(carCrumb(history), new Crumb("drive check", "/cars/" + car + "/drive-check"))
            .notices(
                came.isEmpty()
                    ? List.of()
                    : List.of(
                        new Notice(
                            Notice.Kind.PROBLEM,
                            "Nothing was signed: "
                                + Counted.of(came.size(), "entry", "entries")
                                + " came into the book meanwhile. Look again, then sign what stands"
                                + " now.")))
            .caution(Cautions.FIGURES);
    FormPage page =
        new FormPage(
            frame,
            "/cars/" + car + "/sign-offs",
            key,
            SignOffForm.parts(posted, check.things().size(), history.n(), Who.of(ctx)),
            "Sign it off",
            "/cars/" + car + "/drive-check");
    EntryWords words = new EntryWords(history);
    List<Since.Line> newest = new ArrayList<>();
    for (int i = came.size() - 1; i >= 0 && newest.size() < MOST_CAME; i--) {
      newest.add(Since.line(came.get(i), words));
    }
    Html.show(ctx, Html.TEMPLATES.drivecheckSign(page, CheckView.of(history, check), newest));
  }

  // --- one that was kept

  public void signOff(Context ctx) {
    SeenSignOff seen = seen(ctx);
    CarBook history = histories.of(seen.signOff().car());
    Content.SignOff kept = seen.signOff();
    List<Notice> notices =
        seen.takenBack()
            ? List.of(new Notice(Notice.Kind.PROBLEM, "This sign-off was taken back."))
            : List.of();
    PageFrame frame =
        PageFrame.of("Sign-off · Spindlebook", "Signed off by " + seen.who())
            .sub(Days.minute(seen.at()) + ", as of entry " + kept.n() + ". As it was kept then.")
            .crumbs(carCrumb(history), new Crumb("sign-offs", "/cars/" + kept.car() + "/sign-offs"))
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
    DriveCheck check = check(history);
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
            .crumbs(
                carCrumb(history),
                new Crumb("drive check", "/cars/" + kept.car() + "/drive-check"),
                new Crumb("the sign-off", "/sign-offs/" + seen.key()))
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

  /** Of this book alone: a card from the histories may know of more by now. */
  private static DriveCheck check(CarBook history) {
    return AlignedCheck.of(history);
  }

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

  private CarBook history(Context ctx) {
    CarBook history = histories.of(ctx.pathParam("car"));
    if (history.car().isEmpty()) {
      throw new NotFoundResponse();
    }
    return history;
  }
}
