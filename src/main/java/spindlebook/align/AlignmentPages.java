package spindlebook.align;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spindlebook.card.Meanwhile;
import spindlebook.corner.Card;
import spindlebook.corner.Content;
import spindlebook.corner.SeenAlignment;
import spindlebook.log.Histories;
import spindlebook.web.Action;
import spindlebook.web.Cautions;
import spindlebook.web.Crumb;
import spindlebook.web.Field;
import spindlebook.web.FormKey;
import spindlebook.web.FormPage;
import spindlebook.web.FormPart;
import spindlebook.web.Html;
import spindlebook.web.PageFrame;
import spindlebook.web.Posted;
import spindlebook.web.Who;

/** Alignment as measured: its figures, measuring it, correcting that, and the owner's targets. */
public final class AlignmentPages {
  private final Histories histories;
  private final AlignmentStore store;

  public AlignmentPages(Histories histories, AlignmentStore store) {
    this.histories = histories;
    this.store = store;
  }

  public void figures(Context ctx) {
    Card card = card(ctx);
    Html.show(
        ctx,
        Html.TEMPLATES.alignAlignment(
            AlignPages.frame(card, "Alignment"),
            new AlignmentViews(card, histories.mirror(card)).view(),
            List.of(
                Action.link("Measure", address(card) + "#measure", true),
                Action.link("Targets", address(card) + "/targets", false))));
  }

  // --- measuring

  public void newAlignment(Context ctx) {
    Card card = card(ctx);
    TakenBy by = way(ctx.queryParam("way"), card);
    show(ctx, card, by, AlignmentTexts.fresh(by, card), FormKey.fresh(card.lastChange()));
  }

  public void measure(Context ctx) {
    Card card = card(ctx);
    Posted posted = Html.posted(ctx);
    TakenBy by = way(posted.text("way"), card);
    FormKey key = posted.formKey().orElseGet(() -> FormKey.fresh(card.lastChange()));
    if (AlignmentForm.read(by, posted, card) instanceof AlignmentForm.Accepted accepted) {
      store.add(card, accepted.alignment(), key, Who.of(ctx));
      Html.next(ctx, address(card));
    } else {
      show(ctx, card, by, posted, key);
    }
  }

  private void show(Context ctx, Card card, TakenBy by, Posted posted, FormKey key) {
    Html.form(
        ctx,
        posted,
        new FormPage(
            under(card, by.heading()).caution(Cautions.MEASURING),
            address(card),
            key,
            new AlignmentParts(card, histories.mirror(card), posted).of(by),
            "Put it in the book",
            address(card)));
  }

  // --- correcting

  public void correct(Context ctx) {
    Card card = cardOf(ctx);
    SeenAlignment seen = seen(ctx, card);
    Posted posted = new Posted(AlignmentTexts.of(seen.alignment()));
    showCorrection(ctx, card, seen, posted, FormKey.fresh(card.lastChange()));
  }

  public void correctAlignment(Context ctx) {
    Card card = cardOf(ctx);
    Posted posted = Html.posted(ctx);
    Optional<SeenAlignment> found = card.aligned().read(ctx.pathParam("alignment"));
    if (found.isEmpty()) {
      Meanwhile.show(ctx, histories.of(card.car()), ctx.pathParam("alignment"), posted);
      return;
    }
    SeenAlignment seen = found.get();
    FormKey key = posted.formKey().orElseGet(() -> FormKey.fresh(card.lastChange()));
    String reason = posted.neededLine("reason", 200, "Say why, such as: read the wrong mark.");
    if (AlignmentForm.read(TakenBy.of(seen.way()), posted, card)
        instanceof AlignmentForm.Accepted accepted) {
      store.correct(seen.key(), accepted.alignment(), reason, key, Who.of(ctx));
      Html.next(ctx, address(card));
    } else {
      showCorrection(ctx, card, seen, posted, key);
    }
  }

  private void showCorrection(
      Context ctx, Card card, SeenAlignment seen, Posted posted, FormKey key) {
    TakenBy by = TakenBy.of(seen.way());
    List<FormPart> parts =
        new ArrayList<>(new AlignmentParts(card, histories.mirror(card), posted).of(by));
    parts.add(
        new FormPart.Typed(
            posted.fill(
                Field.of("reason", "Why it is corrected")
                    .hint("What was written first stays in the book."))));
    Html.form(
        ctx,
        posted,
        new FormPage(
            under(card, "Correct: " + by.link()),
            "/alignments/" + seen.key() + "/correct",
            key,
            parts,
            "Correct it",
            "/entries/" + seen.key()));
  }

  // --- targets

  public void targets(Context ctx) {
    Card card = card(ctx);
    showTargets(ctx, card, TargetForm.fresh(card), FormKey.fresh(card.lastChange()));
  }

  public void aim(Context ctx) {
    Card card = card(ctx);
    Posted posted = Html.posted(ctx);
    FormKey key = posted.formKey().orElseGet(() -> FormKey.fresh(card.lastChange()));
    if (TargetForm.read(posted, card) instanceof TargetForm.Accepted accepted) {
      List<Content.Target> changed = accepted.changed();
      store.targets(changed, key, Who.of(ctx));
      Html.next(ctx, address(card));
    } else {
      showTargets(ctx, card, posted, key);
    }
  }

  private static void showTargets(Context ctx, Card card, Posted posted, FormKey key) {
    Html.form(
        ctx,
        posted,
        new FormPage(
            under(card, "Targets"),
            address(card) + "/targets",
            key,
            TargetForm.parts(posted, card),
            "Keep these targets",
            address(card)));
  }

  // --- what it is about

  private static String address(Card card) {
    return "/corners/" + card.corner() + "/alignment";
  }

  /** A page below the alignment of a corner. */
  private static PageFrame under(Card card, String heading) {
    PageFrame frame = AlignPages.frame(card, heading);
    List<Crumb> way = new ArrayList<>(frame.crumbs());
    way.add(new Crumb("Alignment", address(card)));
    return frame.crumbs(way.toArray(Crumb[]::new));
  }

  private static TakenBy way(String word, Card card) {
    return TakenBy.named(word == null ? "" : word, card).orElseThrow(NotFoundResponse::new);
  }

  private Card card(Context ctx) {
    return histories.cornerCard(ctx.pathParam("corner")).orElseThrow(NotFoundResponse::new);
  }

  private Card cardOf(Context ctx) {
    return histories.cardOf(ctx.pathParam("alignment")).orElseThrow(NotFoundResponse::new);
  }

  private static SeenAlignment seen(Context ctx, Card card) {
    return card.aligned().read(ctx.pathParam("alignment")).orElseThrow(NotFoundResponse::new);
  }
}
