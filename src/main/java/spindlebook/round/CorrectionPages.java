package spindlebook.round;

import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import io.javalin.http.NotFoundResponse;
import java.util.Optional;
import spindlebook.card.Capital;
import spindlebook.card.CornerBar;
import spindlebook.card.Meanwhile;
import spindlebook.entry.Content;
import spindlebook.entry.ReadingText;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.fold.SeenHeight;
import spindlebook.fold.SeenReading;
import spindlebook.log.Histories;
import spindlebook.page.Asked;
import spindlebook.page.FormKey;
import spindlebook.page.Html;
import spindlebook.page.PageFrame;
import spindlebook.page.Posted;
import spindlebook.web.Who;
import spindlebook.words.EntryWords;

/** Correcting a height or a reading, with a reason; the first text stays in the book. */
public record CorrectionPages(Histories histories, RoundStore store) {
  private static final String SEEN = "seen";

  /** Shows the form of a height, and takes it. */
  public void height(Context ctx) {
    Card card = card(ctx, "height");
    SeenHeight seen = onTheCard(ctx, card, card.height(ctx.pathParam("height"))).orElse(null);
    if (seen == null) {
      return;
    }
    Content.Height was = seen.height();
    Sitting at = Sitting.of(histories, card, seen.round());
    Asked a = begin(ctx, at, seen.key());
    a.said("All readings at this height hang on it and move with it, steered ones too.");
    Content.Height typed = HeightForm.of(a, at, false).ask(was, was.mark() != null, seen.n());
    String reason = reason(a);
    meanwhile(a, "spindle", card, seen.key());
    String height = "/heights/" + seen.key();
    if (!a.ok()) {
      a.show(
          ctx,
          frame(card, "Correct a height", seen.words(), height),
          height + "/correct",
          "Save",
          height);
      return;
    }
    String asAt =
        typed.mark() == null && typed.markAsAt() == null ? was.markAsAt() : typed.markAsAt();
    Content corrected =
        typed.withMarkAsAt(seen.key().equals(asAt) ? null : asAt).withAgain(was.again());
    correct(ctx, card, seen.key(), corrected, reason, a.key());
    Html.next(ctx, height + "?saved=" + seen.key());
  }

  /** Shows the form of a reading, and takes it. */
  public void reading(Context ctx) {
    Card card = card(ctx, "reading");
    SeenReading seen = onTheCard(ctx, card, card.reading(ctx.pathParam("reading"))).orElse(null);
    if (seen == null) {
      return;
    }
    Content.Reading was = seen.reading();
    Sitting at = Sitting.of(histories, card, seen.height().round());
    Asked a = begin(ctx, at, seen.key());
    a.said("It says " + EntryWords.value(was) + ".");
    ReadingText.Says says =
        a.typed(
                "value",
                Capital.of(seen.what()),
                t ->
                    SentReading.says(
                            a.posted(),
                            "value",
                            at.unit(),
                            was.quantity(),
                            seen.point() == null ? seen.pointThen() : seen.point())
                        .orElse(null))
            .focused()
            .starts(was.typed())
            .needed(SentReading.NOTHING);
    String reason = reason(a);
    meanwhile(a, "value", card, seen.key());
    String entry = "/entries/" + seen.key();
    if (!a.ok()) {
      String sub = seen.what() + " · " + was.steering().words() + " · " + seen.height().words();
      a.show(
          ctx,
          frame(card, "Correct a reading", sub, entry),
          "/readings/" + seen.key() + "/correct",
          "Save",
          entry);
      return;
    }
    Content corrected = was.withText(a.text("value").strip(), says);
    correct(ctx, card, seen.key(), corrected, reason, a.key());
    Html.next(
        ctx, HeightPages.address(seen.height().key(), was.steering()) + "&saved=" + seen.key());
  }

  /** From the undo bar: a later reading counts again, or instead, against the automatic rule. */
  public void counts(Context ctx) {
    Card card = card(ctx, "entry");
    SeenReading reading = card.reading(ctx.pathParam("entry")).orElseThrow(NotFoundResponse::new);
    if (card.before(reading).isEmpty()) {
      throw new NotFoundResponse();
    }
    Posted posted = Html.posted(ctx);
    FormKey key = posted.formKey().orElseGet(() -> FormKey.fresh(0));
    boolean again = posted.text("counts").equals("again");
    Content.Reading r = reading.reading();
    correct(
        ctx,
        card,
        reading.key(),
        r.withAgain(again),
        again ? "counts again" : "counts instead of the one before",
        key);
    Html.next(
        ctx, HeightPages.address(reading.height().key(), r.steering()) + "&saved=" + reading.key());
  }

  private void correct(
      Context ctx, Card card, String entry, Content body, String reason, FormKey key) {
    store.keep(card, new Content.Correction(entry, body, reason), key, Who.of(ctx));
  }

  /** What was taken back while its form was open is said to be so, and nothing is written. */
  private <T> Optional<T> onTheCard(Context ctx, Card card, Optional<T> seen) {
    if (seen.isEmpty()) {
      if (ctx.method().equals(HandlerType.GET)) {
        throw new NotFoundResponse();
      }
      String entry = ctx.pathParamMap().values().iterator().next();
      Meanwhile.show(ctx, histories.of(card.car()), entry, Html.posted(ctx));
    }
    return seen;
  }

  private Asked begin(Context ctx, Sitting at, String entry) {
    Asked a = Asked.of(ctx, at.unit(), at.card().lastChange());
    a.hidden(SEEN, words(at.card(), entry));
    return a;
  }

  private static String reason(Asked a) {
    return a.line("reason", "Why it is corrected", 200)
        .hint("Such as: read from the wrong mark.")
        .needed("Say in a few words why it is corrected.");
  }

  /** What the entry says now. */
  private String words(Card card, String entry) {
    CarBook history = histories.of(card.car());
    return history.standing(entry).map(new EntryWords(history)::of).orElse("");
  }

  /** Somebody else corrected it while the form was open: both are shown then, once. */
  private void meanwhile(Asked a, String field, Card card, String entry) {
    String now = words(card, entry);
    boolean other =
        a.has(SEEN) && !a.text(SEEN).equals(now) && store.written(a.key().key()).isEmpty();
    if (other) {
      a.wrong(field, "Corrected meanwhile: " + now + ". Save yours below, or go back.");
    }
  }

  private static PageFrame frame(Card card, String heading, String sub, String back) {
    return CornerBar.under(card, heading, heading)
        .sub(card.place().words() + " · " + sub)
        .up("back", back);
  }

  private Card card(Context ctx, String path) {
    return histories.cardOf(ctx.pathParam(path)).orElseThrow(NotFoundResponse::new);
  }
}
