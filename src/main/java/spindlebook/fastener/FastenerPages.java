package spindlebook.fastener;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.List;
import java.util.Map;
import spindlebook.card.Capital;
import spindlebook.card.Shown;
import spindlebook.corner.CarBook;
import spindlebook.corner.Card;
import spindlebook.corner.EntryWords;
import spindlebook.corner.SeenFastener;
import spindlebook.log.Histories;
import spindlebook.web.Cautions;
import spindlebook.web.Crumb;
import spindlebook.web.FormKey;
import spindlebook.web.FormPage;
import spindlebook.web.Html;
import spindlebook.web.PageFrame;
import spindlebook.web.Posted;
import spindlebook.web.Who;

/** What holds the settings where they are: touched, tight, marked. */
public final class FastenerPages {
  private static final String SUB =
      "A change of a setting opens what holds it, until it is said to be tight and marked.";

  private final Histories histories;
  private final FastenerStore store;

  public FastenerPages(Histories histories, FastenerStore store) {
    this.histories = histories;
    this.store = store;
  }

  public void ofCar(Context ctx) {
    CarBook history = histories.of(ctx.pathParam("car"));
    String car = history.car().orElseThrow(NotFoundResponse::new);
    PageFrame frame =
        PageFrame.of("Fasteners · Spindlebook", "Fasteners")
            .sub(SUB)
            .crumbs(new Crumb(history.details().orElseThrow().name(), "/cars/" + car))
            .caution(Cautions.SETTING);
    List<FastenersOfCorner> corners =
        history.corners().stream().map(c -> corner(history, histories.card(car, c))).toList();
    Html.show(ctx, Html.TEMPLATES.fastenerList(frame, corners, "car"));
  }

  public void ofCorner(Context ctx) {
    Card card = card(ctx);
    PageFrame frame =
        PageFrame.of("Fasteners · Spindlebook", "Fasteners")
            .sub(SUB)
            .plan(Shown.plan(card))
            .crumbs(new Crumb(card.place().words(), "/corners/" + card.corner()))
            .caution(Cautions.SETTING);
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
    Card card = card(ctx);
    SeenFastener seen = fastener(ctx, card);
    Map<String, List<String>> start =
        seen.torque() == null ? Map.of() : Map.of("torque", List.of(seen.torque()));
    show(ctx, card, seen, new Posted(start), FormKey.fresh(card.n()));
  }

  private void show(Context ctx, Card card, SeenFastener seen, Posted posted, FormKey key) {
    String name = seen.adjuster().name();
    FastenerLine line = FastenerLine.of(seen, new EntryWords(histories.of(card.car())), 0);
    PageFrame frame =
        PageFrame.of(name + " · Spindlebook", Capital.of(name))
            .sub(seen.adjuster().kind().fastener() + ": " + line.how())
            .plan(Shown.plan(card))
            .crumbs(
                new Crumb(card.place().words(), "/corners/" + card.corner()),
                new Crumb("fasteners", "/corners/" + card.corner() + "/fasteners"))
            .caution(Cautions.SETTING);
    FormPage page =
        new FormPage(
            frame,
            line.href(),
            key,
            FastenerForm.parts(posted),
            "Put it in the book",
            "/corners/" + card.corner() + "/fasteners");
    Html.form(ctx, posted, page);
  }

  public void say(Context ctx) {
    Card card = card(ctx);
    SeenFastener seen = fastener(ctx, card);
    Posted posted = Html.posted(ctx);
    FormKey key = posted.formKey().orElseGet(() -> FormKey.fresh(card.n()));
    if (FastenerForm.read(posted, seen) instanceof FastenerForm.Accepted accepted) {
      store.say(accepted.fastener(), key, Who.of(ctx));
      Html.next(
          ctx,
          switch (posted.text("back")) {
            case "car" -> "/cars/" + card.car() + "/fasteners";
            case "re-check" -> "/cars/" + card.car() + "/re-check?corner=" + card.corner();
            default -> "/corners/" + card.corner() + "/fasteners";
          });
    } else {
      show(ctx, card, seen, posted, key);
    }
  }

  private Card card(Context ctx) {
    return histories.cornerCard(ctx.pathParam("corner")).orElseThrow(NotFoundResponse::new);
  }

  private SeenFastener fastener(Context ctx, Card card) {
    return histories.of(card.car()).fasteners().stream()
        .filter(f -> f.corner().equals(card.corner()))
        .filter(f -> f.adjuster().adjuster().equals(ctx.pathParam("adjuster")))
        .findFirst()
        .orElseThrow(NotFoundResponse::new);
  }
}
