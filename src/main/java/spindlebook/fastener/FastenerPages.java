package spindlebook.fastener;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.List;
import spindlebook.card.Addressed;
import spindlebook.card.Capital;
import spindlebook.card.CornerBar;
import spindlebook.card.IntoBook;
import spindlebook.card.Shown;
import spindlebook.entry.Content;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.fold.SeenFastener;
import spindlebook.log.Histories;
import spindlebook.page.Asked;
import spindlebook.page.Cautions;
import spindlebook.page.Html;
import spindlebook.page.PageFrame;
import spindlebook.words.EntryWords;

/** What holds the settings where they are: touched, tight, marked. */
public record FastenerPages(Histories histories, IntoBook book) {
  private static final String SUB =
      "A change of a setting loosens what holds it, until it is said to be tight and marked.";

  public void ofCar(Context ctx) {
    CarBook history = Addressed.car(ctx, histories);
    String car = history.car().orElseThrow();
    PageFrame frame =
        CornerBar.under(history, "Fasteners", "Fasteners").sub(SUB).caution(Cautions.SETTING);
    List<FastenersOfCorner> corners =
        history.corners().stream().map(c -> corner(history, histories.card(car, c))).toList();
    Html.show(ctx, Html.TEMPLATES.fastenerList(frame, corners, "car"));
  }

  public void ofCorner(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    PageFrame frame =
        CornerBar.under(card, "Fasteners", "Fasteners").sub(SUB).caution(Cautions.SETTING);
    CarBook history = histories.of(card.car());
    Html.show(ctx, Html.TEMPLATES.fastenerList(frame, List.of(corner(history, card)), "corner"));
  }

  private static FastenersOfCorner corner(CarBook history, Card card) {
    EntryWords words = new EntryWords(history);
    List<FastenerLine> lines =
        history.fasteners().stream()
            .filter(f -> f.corner().equals(card.corner()))
            .map(f -> FastenerLine.of(f, words, history.n()))
            .toList();
    return new FastenersOfCorner(
        card.place().words(),
        lines.stream().filter(FastenerLine::open).toList(),
        lines.stream().filter(l -> !l.open()).toList());
  }

  public void fastener(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    SeenFastener seen = fastener(ctx, card);
    Asked a = Asked.of(ctx, card.details().unit(), card.n());
    Content.Fastener said = ask(a, seen);
    String fasteners = "/corners/" + card.corner() + "/fasteners";
    if (a.ok()) {
      book.put(ctx, a, said);
      Html.next(
          ctx,
          switch (a.text("back")) {
            case "drive-check" -> "/cars/" + card.car() + "/drive-check?at=" + card.corner();
            case "car" -> "/cars/" + card.car() + "/fasteners";
            case "re-check" -> "/cars/" + card.car() + "/re-check?corner=" + card.corner();
            default -> fasteners;
          });
      return;
    }
    String name = seen.adjuster().name();
    FastenerLine line = FastenerLine.of(seen, new EntryWords(histories.of(card.car())), 0);
    PageFrame frame =
        PageFrame.of(name + " · Spindlebook", Capital.of(name))
            .sub(seen.adjuster().kind().fastener() + ": " + line.how())
            .plan(Shown.plan(card))
            .up("fasteners", fasteners)
            .caution(Cautions.SETTING);
    a.show(ctx, frame, line.href(), "Save", fasteners);
  }

  /** How it is, and the torque figure its owner keeps it to. */
  private static Content.Fastener ask(Asked a, SeenFastener seen) {
    String how =
        a.<String>one("how", "How is it?")
            .option("marked", "tight and marked", "a line across nut and part")
            .option("not-marked", "tight, not marked")
            .option("loose", "found loose")
            .read();
    a.hidden("torque-asked", "yes");
    String typed =
        a.line("torque", "Torque figure, if you have one", 60)
            .hint("In your words: 65 ft-lb, 90 Nm dry. The part maker's figure wins.")
            .was(seen.torque())
            .read();
    // A list's key does not ask for it; what stands already is not said again.
    String torque = typed == null ? "" : typed;
    boolean same = torque.equals(seen.torque() == null ? "" : seen.torque());
    torque = same || !a.has("torque-asked") ? null : torque;
    String words = a.line("words", "In your words", 200).hint("May be left empty.").read();
    if (how == null && torque == null) {
      a.wrong("how", "Say how it is: tight and marked, tight, or loose.");
    }
    Boolean tight = how == null ? null : !how.equals("loose");
    Boolean marked = tight == null || !tight ? null : how.equals("marked");
    return a.ok()
        ? new Content.Fastener(
            seen.corner(), seen.adjuster().adjuster(), torque, tight, marked, words)
        : null;
  }

  private SeenFastener fastener(Context ctx, Card card) {
    return histories.of(card.car()).fasteners().stream()
        .filter(f -> f.corner().equals(card.corner()))
        .filter(f -> f.adjuster().adjuster().equals(ctx.pathParam("adjuster")))
        .findFirst()
        .orElseThrow(NotFoundResponse::new);
  }
}
