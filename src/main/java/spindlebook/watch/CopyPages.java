package spindlebook.watch;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import spindlebook.card.Shown;
import spindlebook.corner.Card;
import spindlebook.corner.WatchPoint;
import spindlebook.log.Histories;
import spindlebook.web.Choice;
import spindlebook.web.Crumb;
import spindlebook.web.FormKey;
import spindlebook.web.FormPage;
import spindlebook.web.FormPart;
import spindlebook.web.Html;
import spindlebook.web.PageFrame;
import spindlebook.web.Posted;
import spindlebook.web.Who;

/** What one corner is watched for, copied to its mirror or to a corner of another car. */
public final class CopyPages {
  private final Histories histories;
  private final DefinitionStore store;

  public CopyPages(Histories histories, DefinitionStore store) {
    this.histories = histories;
    this.store = store;
  }

  public void ask(Context ctx) {
    Card from = from(ctx);
    show(ctx, from, new Posted(Map.of()), FormKey.fresh(from.lastChange()));
  }

  private void show(Context ctx, Card from, Posted posted, FormKey key) {
    String back = "/corners/" + from.corner() + "/watch-points";
    List<FormPart> parts = new ArrayList<>();
    List<Choice.Option> options = new ArrayList<>();
    for (Card to : others(from)) {
      options.add(
          new Choice.Option(
              to.corner(),
              (to.car().equals(from.car()) ? "" : to.details().name() + ", ") + to.place().words(),
              Copied.of(from, to).words(),
              to.corner().equals(posted.text("to"))));
    }
    String hint =
        options.isEmpty()
            ? "No other corner in the book is a " + from.layout().words() + ", as this one is."
            : "A rule of the same name and place becomes as it is here; what only the other corner"
                + " is watched for stays.";
    parts.add(
        new FormPart.Chosen(new Choice("to", "Copy to", hint, posted.problem("to"), options)));
    PageFrame frame =
        PageFrame.of("Copy what is watched · Spindlebook", "Copy what is watched")
            .sub(from.place().words())
            .plan(Shown.plan(from))
            .crumbs(new Crumb("back", back));
    Html.form(ctx, posted, new FormPage(frame, back + "/copy", key, parts, "Copy", back));
  }

  public void copy(Context ctx) {
    Card from = from(ctx);
    Posted posted = Html.posted(ctx);
    FormKey key = posted.formKey().orElseGet(() -> FormKey.fresh(from.lastChange()));
    Card to =
        others(from).stream()
            .filter(c -> c.corner().equals(posted.text("to")))
            .findFirst()
            .orElse(null);
    if (to == null) {
      posted.wrong("to", "Say which corner they are copied to.");
      show(ctx, from, posted, key);
      return;
    }
    List<WatchPoint> points = Copied.of(from, to).points();
    store.watchPoints(to.corner(), points, key, Who.of(ctx));
    Html.next(ctx, "/corners/" + to.corner() + "/watch-points");
  }

  /** Corners hung the same way, the mirror first, then this car's, then the others'. */
  private List<Card> others(Card from) {
    List<Card> mirror = new ArrayList<>();
    List<Card> own = new ArrayList<>();
    List<Card> foreign = new ArrayList<>();
    for (String corner : store.corners()) {
      Card to = histories.cornerCard(corner).orElse(null);
      if (to == null || corner.equals(from.corner()) || to.layout() != from.layout()) {
        continue;
      }
      boolean sameCar = to.car().equals(from.car());
      List<Card> where = !sameCar ? foreign : to.place() == from.place().mirror() ? mirror : own;
      where.add(to);
    }
    mirror.addAll(own);
    mirror.addAll(foreign);
    return mirror;
  }

  private Card from(Context ctx) {
    return histories.cornerCard(ctx.pathParam("corner")).orElseThrow(NotFoundResponse::new);
  }
}
