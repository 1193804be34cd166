package spindlebook.gauge;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import spindlebook.card.Addressed;
import spindlebook.card.CornerBar;
import spindlebook.card.IntoBook;
import spindlebook.card.Meanwhile;
import spindlebook.entry.Content;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.fold.SeenAlignment;
import spindlebook.log.Histories;
import spindlebook.measured.FarOff;
import spindlebook.page.Asked;
import spindlebook.page.Cautions;
import spindlebook.page.FormKey;
import spindlebook.page.Html;
import spindlebook.page.Link;
import spindlebook.page.PageFrame;
import spindlebook.plan.OnPaper;

/** Alignment as measured: its figures, measuring it, correcting that, and the owner's targets. */
public record AlignmentPages(Histories histories, IntoBook book) {
  public void figures(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    String corner = "/corners/" + card.corner();
    Html.show(
        ctx,
        Html.TEMPLATES.gaugeAlignment(
            CornerBar.page(card, "Align", "Align").caution(Cautions.FIGURES),
            new AlignmentView(card, histories.mirror(card)),
            List.of(
                new Link("Targets", address(card) + "/targets"),
                new Link("Bump steer", corner + "/curves?of=toe"),
                new Link("Curves", corner + "/curves"),
                new Link("Linkage", corner + "/linkage"),
                new Link("Rod ends on paper", corner + "/rod-ends"),
                new Link("Wheel on paper", corner + "/wheel"))));
  }

  /** Measures it one way. */
  public void measure(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    Asked a = Asked.of(ctx, card.details().unit(), card.lastChange());
    String named = a.sent() ? a.text("way") : ctx.queryParam("way");
    TakenBy by = TakenBy.named(named == null ? "" : named, card).orElseThrow(NotFoundResponse::new);
    Content.Alignment read = new WayAsked(a, card, histories.mirror(card), by, null).ask();
    a.form(
        ctx,
        under(card, by.heading()).caution(Cautions.MEASURING),
        address(card),
        address(card),
        () -> book.put(ctx, a, doubted(card, read, a.key()), address(card)));
  }

  /** In doubt when it is far off what was known. */
  private Content.Alignment doubted(Card card, Content.Alignment read, FormKey key) {
    if (read.doubt() != null) {
      return read;
    }
    CarBook history = histories.of(card.car());
    Card with = OnPaper.with(history, key.key(), key.after(), read).card(card.corner());
    return FarOff.doubt(card, with, histories.mirror(card), key.key())
        .map(read::withDoubt)
        .orElse(read);
  }

  /** Corrects what was measured. */
  public void correct(Context ctx) {
    String key = ctx.pathParam("alignment");
    Card card = histories.cardOf(key).orElseThrow(NotFoundResponse::new);
    Asked a = Asked.of(ctx, card.details().unit(), card.lastChange());
    Optional<SeenAlignment> found = card.aligned().read(key);
    if (found.isEmpty() && a.sent()) {
      Meanwhile.show(ctx, histories.of(card.car()), key, a.posted());
      return;
    }
    Content.Alignment was = found.orElseThrow(NotFoundResponse::new).alignment();
    TakenBy by = TakenBy.of(was.way());
    Content.Alignment read = new WayAsked(a, card, histories.mirror(card), by, was).ask();
    String reason =
        a.line("reason", "Why it is corrected", 200)
            .hint("What was written first stays in the book.")
            .needed("Say why, such as: read the wrong mark.");
    if (a.ok()) {
      book.put(ctx, a, new Content.Correction(key, read, reason), address(card));
      return;
    }
    a.show(
        ctx,
        under(card, "Correct: " + by.link()),
        "/alignments/" + key + "/correct",
        "Correct it",
        "/entries/" + key);
  }

  /** What the owner wants each figure to be. */
  public void targets(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    Asked a = Asked.of(ctx, card.details().unit(), card.lastChange());
    Map<String, Content.Target> changed = TargetForm.ask(a, card);
    String targets = address(card) + "/targets";
    a.form(
        ctx,
        under(card, "Targets"),
        targets,
        address(card),
        () -> book.put(ctx, a, changed, address(card)));
  }

  // --- what it is about

  static String address(Card card) {
    return "/corners/" + card.corner() + "/alignment";
  }

  /** A page below the alignment of a corner. */
  private static PageFrame under(Card card, String heading) {
    return CornerBar.titled(card, heading).up("Align", address(card));
  }
}
