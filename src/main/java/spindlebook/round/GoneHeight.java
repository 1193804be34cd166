package spindlebook.round;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.Optional;
import spindlebook.card.PutBack;
import spindlebook.card.Shown;
import spindlebook.card.TakesAlong;
import spindlebook.corner.CarBook;
import spindlebook.corner.Card;
import spindlebook.corner.Content;
import spindlebook.corner.EntryWords;
import spindlebook.corner.Steering;
import spindlebook.log.Histories;
import spindlebook.units.LengthUnit;
import spindlebook.web.Crumb;
import spindlebook.web.FormKey;
import spindlebook.web.Html;
import spindlebook.web.PageFrame;
import spindlebook.web.Posted;
import spindlebook.web.Who;

/**
 * A height that is no longer on its corner's card: what stands at its address, what is sent there.
 */
record GoneHeight(Histories histories, RoundStore store) {
  /** A height that was taken back, or answered away, keeps its address and says so there. */
  void show(Context ctx, Card card) {
    String key = ctx.pathParam("height");
    CarBook history = histories.of(card.car());
    Content.Height height =
        history
            .standing(key)
            .or(() -> history.original(key))
            .filter(Content.Height.class::isInstance)
            .map(Content.Height.class::cast)
            .orElseThrow(NotFoundResponse::new);
    Optional<PutBack> putBack = PutBack.of(history, key);
    String why =
        putBack.isPresent()
            ? ("It was taken back and stays in the book. " + TakesAlong.after(history, key)).strip()
            : "It does not count: somebody answered that it is not so, or its round is gone.";
    PageFrame frame =
        PageFrame.of("Taken back · Spindlebook", putBack.isPresent() ? "Taken back" : "Left out")
            .sub(card.place().words() + " · a height")
            .plan(Shown.plan(card))
            .crumbs(new Crumb(card.place().words(), "/corners/" + card.corner()));
    GoneView view =
        new GoneView(
            new EntryWords(history).of(height),
            why,
            justKept(history, ctx.queryParam("saved")),
            putBack.orElse(null),
            "/entries/" + key,
            card.round(height.round()).map(r -> "/rounds/" + r.key()).orElse(null));
    Html.show(ctx, Html.TEMPLATES.roundGone(frame, view));
  }

  /** Empty when nothing was kept just now. */
  private static String justKept(CarBook history, String saved) {
    return Optional.ofNullable(saved)
        .flatMap(history::standing)
        .map(c -> "Just kept, but not counted: " + new EntryWords(history).of(c) + ".")
        .orElse("");
  }

  /**
   * A reading from a page that was open while its height, or what it asks for, was taken away: all
   * is kept.
   */
  void keep(Context ctx, Card card, Posted posted, Steering steering, Asked asked) {
    String height = ctx.pathParam("height");
    LengthUnit unit = unit(card, height);
    String row = posted.text("row");
    String text = posted.text("v-" + row).strip();
    if (row.isEmpty() || text.isEmpty()) {
      Html.next(ctx, "/heights/" + height);
      return;
    }
    FormKey key = posted.formKey().orElseGet(() -> FormKey.fresh(card.lastChange()));
    String kept =
        store.reading(
            card, Sent.kept(height, unit, steering, row, asked, text, null), key, Who.of(ctx));
    Html.next(ctx, "/heights/" + height + "?steering=" + Posted.word(steering) + "&saved=" + kept);
  }

  /** Of the round the height was read in, gone or not. */
  private LengthUnit unit(Card card, String height) {
    CarBook history = histories.of(card.car());
    String round =
        history
            .original(height)
            .filter(Content.Height.class::isInstance)
            .map(h -> ((Content.Height) h).round())
            .orElseThrow(NotFoundResponse::new);
    return history
        .original(round)
        .filter(Content.Round.class::isInstance)
        .map(r -> ((Content.Round) r).unit())
        .orElse(card.details().unit());
  }
}
