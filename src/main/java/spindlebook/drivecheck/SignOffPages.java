package spindlebook.drivecheck;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import spindlebook.card.Capital;
import spindlebook.card.Counted;
import spindlebook.card.Days;
import spindlebook.corner.CarBook;
import spindlebook.corner.Content;
import spindlebook.corner.EntryWords;
import spindlebook.corner.Noted;
import spindlebook.corner.SeenSignOff;
import spindlebook.corner.SignedCorner;
import spindlebook.log.Histories;
import spindlebook.travel.DriveCheck;
import spindlebook.units.LengthUnit;
import spindlebook.web.Cautions;
import spindlebook.web.Crumb;
import spindlebook.web.FormKey;
import spindlebook.web.FormPage;
import spindlebook.web.Html;
import spindlebook.web.Notice;
import spindlebook.web.PageFrame;
import spindlebook.web.Posted;
import spindlebook.web.State;
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
    Html.show(ctx, Html.TEMPLATES.drivecheckSignoffs(frame, car, SignOffList.of(history)));
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
                DriveCheckPages.asOf(history)
                    + " A copy of figures, settings, rules and limits is kept.")
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
    List<SinceView.Line> newest = new ArrayList<>();
    for (int i = came.size() - 1; i >= 0 && newest.size() < MOST_CAME; i--) {
      newest.add(Since.line(came.get(i), words));
    }
    Html.show(
        ctx, Html.TEMPLATES.drivecheckSign(page, DriveCheckPages.view(history, check), newest));
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
            frame, view(history, seen, Optional.ofNullable(ctx.queryParam("corner")))));
  }

  private SignOffView view(CarBook history, SeenSignOff seen, Optional<String> asked) {
    Content.SignOff kept = seen.signOff();
    String address = "/sign-offs/" + seen.key();
    Optional<SignedCorner> shown =
        kept.corners().stream()
            .filter(c -> asked.filter(c.corner()::equals).isPresent())
            .findFirst()
            .or(() -> kept.corners().stream().findFirst());
    CopyChanges again = again(history, kept);
    return new SignOffView(
        kept.car(),
        seen.key(),
        Capital.of(SignOffList.outcome(kept.open().size())),
        kept.why() == null ? "" : kept.why(),
        Counted.of(seen.since(history).size(), "entry", "entries") + " since",
        sentence(kept, again),
        again == null ? List.of() : all(again),
        kept.open().stream()
            .map(
                o ->
                    new SignOffView.Open(
                        Capital.of(o.why()),
                        o.place() == null ? "the whole car" : o.place().words(),
                        o.words()))
            .toList(),
        kept.corners().stream()
            .map(
                c ->
                    new SignOffView.Tab(
                        c.place().words(),
                        address + "?corner=" + c.corner(),
                        shown.filter(c::equals).isPresent()))
            .toList(),
        shown.map(c -> corner(c, kept.unit())).orElse(null),
        kept.hash());
  }

  /** Null where it cannot be computed anew: entry n is not what it was. */
  private CopyChanges again(CarBook history, Content.SignOff kept) {
    if (!store.sameChain(kept)) {
      return null;
    }
    List<SignedCorner> today = SignOffCopy.corners(DriveCheck.of(history.asOf(kept.n())));
    return today.equals(kept.corners())
        ? CopyChanges.NONE
        : CopyChanges.between(kept.corners(), today, kept.unit(), kept.unit());
  }

  private static String sentence(Content.SignOff kept, CopyChanges again) {
    if (again == null) {
      return "Entry "
          + kept.n()
          + " of this book is not the one it was signed at, so it cannot be computed anew here.";
    }
    return again.none()
        ? "Computed anew from entries 1 to " + kept.n() + " today: the same."
        : "Computed anew from entries 1 to " + kept.n() + " today, this is different:";
  }

  private static List<SignOffView.CopyRow> all(CopyChanges changes) {
    List<SignOffView.CopyRow> all = new ArrayList<>();
    all.addAll(SignOffView.CopyRow.of(changes.turned()));
    all.addAll(SignOffView.CopyRow.of(changes.figures()));
    all.addAll(SignOffView.CopyRow.of(changes.settings()));
    all.addAll(SignOffView.CopyRow.of(changes.rules()));
    return all;
  }

  private static SignOffView.Corner corner(SignedCorner kept, LengthUnit unit) {
    SignedWords words = new SignedWords(kept, unit);
    return new SignOffView.Corner(
        Capital.of(kept.place().words()),
        SignedWords.state(kept.outcome()),
        SignedWords.state(kept.outcome()) == State.NOT_MEASURED ? kept.outcome() : "",
        "Positions are " + kept.zero() + ", + towards bump.",
        kept.figures().stream()
            .map(f -> new SignOffView.Row(Capital.of(f.name()), f.atLeast(), words.figure(f)))
            .toList(),
        kept.settings().stream()
            .map(
                s ->
                    new SignOffView.Text(
                        Capital.of(s.name()), s.to() == null ? "not said" : s.to()))
            .toList(),
        kept.rules().stream()
            .map(r -> new SignOffView.Text(Capital.of(r.name()), r.says()))
            .toList(),
        kept.limits().stream()
            .map(
                l ->
                    new SignOffView.LimitRow(
                        Capital.of(l.end()) + ": " + l.what(),
                        SignedWords.state(l.outcome()),
                        words.position(l),
                        words.room(l)))
            .toList());
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
    String then = SignOffList.outcome(kept.open().size());
    Html.show(
        ctx,
        Html.TEMPLATES.drivecheckSince(
            frame,
            new SinceView(
                kept.car(),
                "/sign-offs/" + seen.key(),
                Capital.of(then) + " then; now: " + CheckWords.outcome(check) + ".",
                SignOffView.CopyRow.of(changes.turned()),
                SignOffView.CopyRow.of(changes.settings()),
                SignOffView.CopyRow.of(
                    changes.figures().stream().filter(CopyChanges.Row::weighty).toList()),
                SignOffView.CopyRow.of(
                    changes.figures().stream().filter(f -> !f.weighty()).toList()),
                SignOffView.CopyRow.of(changes.rules()),
                Since.groups(history, kept.n()))));
  }

  // --- found

  /** Of this book alone: a card from the histories may know of more by now. */
  private static DriveCheck check(CarBook history) {
    return DriveCheck.of(history);
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
