package spindlebook.round;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import spindlebook.card.Capital;
import spindlebook.card.Meanwhile;
import spindlebook.card.Shown;
import spindlebook.corner.CarBook;
import spindlebook.corner.Card;
import spindlebook.corner.Content;
import spindlebook.corner.EntryWords;
import spindlebook.corner.Layout;
import spindlebook.corner.ReadingText;
import spindlebook.corner.SeenHeight;
import spindlebook.corner.SeenReading;
import spindlebook.log.Histories;
import spindlebook.web.Crumb;
import spindlebook.web.Field;
import spindlebook.web.FormKey;
import spindlebook.web.FormPage;
import spindlebook.web.FormPart;
import spindlebook.web.Html;
import spindlebook.web.PageFrame;
import spindlebook.web.Posted;
import spindlebook.web.Who;

/** Correcting a height or a reading, with a reason; the first text stays in the book. */
public final class CorrectionPages {
  private static final Field REASON =
      Field.of("reason", "Why it is corrected").hint("Such as: read from the wrong mark.");

  private static final String SEEN = "seen";

  private final Histories histories;
  private final RoundStore store;

  public CorrectionPages(Histories histories, RoundStore store) {
    this.histories = histories;
    this.store = store;
  }

  // --- a height

  public void height(Context ctx) {
    Card card = card(ctx, "height");
    SeenHeight height = card.height(ctx.pathParam("height")).orElseThrow(NotFoundResponse::new);
    Map<String, List<String>> typed = new HashMap<>();
    typed.put("name", List.of(Posted.word(height.name())));
    put(typed, "label", height.height().label());
    if (height.height().spindle() != null) {
      put(typed, "spindle", height.height().spindle().typed());
    }
    if (height.height().mark() != null) {
      put(typed, "mark", height.height().mark().typed());
    }
    if (card.layout() == Layout.SOLID_AXLE_END) {
      typed.put(AxleHeightForm.PAIRING, List.of(Posted.word(height.pairing())));
      Content.OtherEnd other = height.height().otherEnd();
      if (other != null) {
        put(typed, "otherName", other.name() == null ? null : Posted.word(other.name()));
        put(typed, "otherSpindle", other.spindle() == null ? null : other.spindle().typed());
        put(typed, "otherMark", other.mark() == null ? null : other.mark().typed());
      }
    }
    showHeight(ctx, card, height, new Posted(typed), FormKey.fresh(card.lastChange()));
  }

  private static void put(Map<String, List<String>> typed, String name, String text) {
    if (text != null) {
      typed.put(name, List.of(text));
    }
  }

  private void showHeight(Context ctx, Card card, SeenHeight height, Posted posted, FormKey key) {
    List<FormPart> parts = new ArrayList<>();
    parts.add(new FormPart.Hidden(SEEN, words(card, height.key())));
    parts.add(
        new FormPart.Said(
            "All readings at this height hang on it and move with it, steered ones too."));
    parts.addAll(HeightForm.parts(posted, card, height.round(), height.name(), height.n()));
    parts.add(new FormPart.Typed(posted.fill(REASON)));
    Html.form(
        ctx,
        posted,
        new FormPage(
            frame(card, "Correct a height", height.words(), "/heights/" + height.key()),
            "/heights/" + height.key() + "/correct",
            key,
            parts,
            "Keep the correction",
            "/heights/" + height.key()));
  }

  public void correctHeight(Context ctx) {
    Card card = card(ctx, "height");
    Posted posted = Html.posted(ctx);
    Optional<SeenHeight> found = card.height(ctx.pathParam("height"));
    if (found.isEmpty()) {
      Meanwhile.show(ctx, histories.of(card.car()), ctx.pathParam("height"), posted);
      return;
    }
    SeenHeight height = found.get();
    FormKey key = posted.formKey().orElseGet(() -> FormKey.fresh(card.lastChange()));
    String reason = posted.neededLine("reason", 200, "Say in a few words why it is corrected.");
    HeightForm form = HeightForm.read(posted, height.round(), height.height().mark() != null);
    if (meanwhile(posted, "spindle", card, height.key(), key)) {
      showHeight(ctx, card, height, posted, key);
      return;
    }
    if (!(form instanceof HeightForm.Accepted accepted)) {
      showHeight(ctx, card, height, posted, key);
      return;
    }
    Content.Height typed = accepted.height();
    String asAt =
        typed.mark() == null && typed.markAsAt() == null
            ? height.height().markAsAt()
            : typed.markAsAt();
    Content.Height corrected =
        typed
            .withMarkAsAt(height.key().equals(asAt) ? null : asAt)
            .withAgain(height.height().again());
    store.correct(height.key(), corrected, reason, key, Who.of(ctx));
    Html.next(ctx, "/heights/" + height.key() + "?saved=" + height.key());
  }

  // --- a reading

  public void reading(Context ctx) {
    Card card = card(ctx, "reading");
    SeenReading reading = card.reading(ctx.pathParam("reading")).orElseThrow(NotFoundResponse::new);
    Map<String, List<String>> typed = new HashMap<>();
    put(typed, "value", reading.reading().typed());
    showReading(ctx, card, reading, new Posted(typed), FormKey.fresh(card.lastChange()));
  }

  private void showReading(
      Context ctx, Card card, SeenReading reading, Posted posted, FormKey key) {
    String what = reading.what() + " · " + reading.reading().steering().words();
    Html.form(
        ctx,
        posted,
        new FormPage(
            frame(
                card,
                "Correct a reading",
                what + " · " + reading.height().words(),
                "/entries/" + reading.key()),
            "/readings/" + reading.key() + "/correct",
            key,
            List.of(
                new FormPart.Hidden(SEEN, words(card, reading.key())),
                new FormPart.Said("It says " + EntryWords.value(reading.reading()) + "."),
                new FormPart.Typed(
                    posted.fill(Field.of("value", Capital.of(reading.what())).focused())),
                new FormPart.Typed(posted.fill(REASON))),
            "Keep the correction",
            "/entries/" + reading.key()));
  }

  public void correctReading(Context ctx) {
    Card card = card(ctx, "reading");
    Posted posted = Html.posted(ctx);
    Optional<SeenReading> found = card.reading(ctx.pathParam("reading"));
    if (found.isEmpty()) {
      Meanwhile.show(ctx, histories.of(card.car()), ctx.pathParam("reading"), posted);
      return;
    }
    SeenReading reading = found.get();
    FormKey key = posted.formKey().orElseGet(() -> FormKey.fresh(card.lastChange()));
    String reason = posted.neededLine("reason", 200, "Say in a few words why it is corrected.");
    Content.Reading before = reading.reading();
    Optional<ReadingText.Says> says =
        HeightPages.says(
            posted,
            "value",
            reading.height().round().round().unit(),
            before.quantity(),
            reading.point() == null ? reading.pointThen() : reading.point());
    if (meanwhile(posted, "value", card, reading.key(), key) || says.isEmpty() || !posted.ok()) {
      showReading(ctx, card, reading, posted, key);
      return;
    }
    Content.Reading corrected = before.withText(posted.text("value").strip(), says.get());
    store.correct(reading.key(), corrected, reason, key, Who.of(ctx));
    Html.next(
        ctx,
        "/heights/"
            + reading.height().key()
            + "?steering="
            + Posted.word(before.steering())
            + "&saved="
            + reading.key());
  }

  /** From the undo bar: a later reading counts again, or instead, against the automatic rule. */
  public void counts(Context ctx) {
    String entry = ctx.pathParam("entry");
    Card card = histories.cardOf(entry).orElseThrow(NotFoundResponse::new);
    SeenReading reading = card.reading(entry).orElseThrow(NotFoundResponse::new);
    if (card.before(reading).isEmpty()) {
      throw new NotFoundResponse();
    }
    Posted posted = Html.posted(ctx);
    FormKey key = posted.formKey().orElseGet(() -> FormKey.fresh(0));
    boolean again = posted.text("counts").equals("again");
    Content.Reading r = reading.reading();
    store.correct(
        entry,
        r.withAgain(again),
        again ? "counts again" : "counts instead of the one before",
        key,
        Who.of(ctx));
    Html.next(
        ctx,
        "/heights/"
            + reading.height().key()
            + "?steering="
            + Posted.word(r.steering())
            + "&saved="
            + entry);
  }

  /** What the entry says now. */
  private String words(Card card, String entry) {
    CarBook history = histories.of(card.car());
    return history.standing(entry).map(new EntryWords(history)::of).orElse("");
  }

  /** Whether somebody else corrected it while the form was open: both are shown then, once. */
  private boolean meanwhile(Posted posted, String field, Card card, String entry, FormKey key) {
    String now = words(card, entry);
    boolean other =
        posted.has(SEEN) && !posted.text(SEEN).equals(now) && store.written(key.key()).isEmpty();
    if (other && posted.problem(field).isEmpty()) {
      posted.wrong(field, "Corrected meanwhile: " + now + ". Save yours below, or go back.");
    }
    return other;
  }

  private static PageFrame frame(Card card, String heading, String sub, String back) {
    return PageFrame.of(heading + " · Spindlebook", heading)
        .sub(card.place().words() + " · " + sub)
        .plan(Shown.plan(card))
        .crumbs(new Crumb("back", back));
  }

  private Card card(Context ctx, String path) {
    return histories.cardOf(ctx.pathParam(path)).orElseThrow(NotFoundResponse::new);
  }
}
