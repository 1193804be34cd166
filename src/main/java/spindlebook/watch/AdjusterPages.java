package spindlebook.watch;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import spindlebook.card.Capital;
import spindlebook.card.Shown;
import spindlebook.corner.Adjuster;
import spindlebook.corner.AdjusterKind;
import spindlebook.corner.Card;
import spindlebook.corner.Content;
import spindlebook.corner.InForce;
import spindlebook.corner.SettingUnit;
import spindlebook.log.Histories;
import spindlebook.units.TypedLength;
import spindlebook.web.Choice;
import spindlebook.web.Crumb;
import spindlebook.web.Field;
import spindlebook.web.FormKey;
import spindlebook.web.FormPage;
import spindlebook.web.FormPart;
import spindlebook.web.Html;
import spindlebook.web.PageFrame;
import spindlebook.web.Posted;
import spindlebook.web.Who;

/** How an adjuster is counted: its unit, its step, which way shortens. */
public final class AdjusterPages {
  private final Histories histories;
  private final DefinitionStore store;

  public AdjusterPages(Histories histories, DefinitionStore store) {
    this.histories = histories;
    this.store = store;
  }

  public void adjuster(Context ctx) {
    Card card = card(ctx);
    Adjuster a = adjuster(ctx, card).adjuster();
    Map<String, List<String>> typed = new HashMap<>();
    typed.put("name", List.of(a.name()));
    typed.put("unit", List.of(Posted.word(a.unit())));
    typed.put("more", List.of(a.moreShortens() ? "shorter" : "longer"));
    if (a.step() != null) {
      typed.put("step", List.of(a.step().typed()));
    }
    show(ctx, card, a, new Posted(typed), FormKey.fresh(card.lastChange()));
  }

  private static void show(Context ctx, Card card, Adjuster a, Posted posted, FormKey key) {
    SettingUnit unit = posted.word("unit", SettingUnit.class, a.unit());
    List<FormPart> parts =
        List.of(
            new FormPart.Typed(posted.fill(Field.of("name", "Called"))),
            new FormPart.Chosen(
                new Choice(
                    "unit",
                    "It is counted in",
                    "What it was set to before is kept in the book as it was said.",
                    "",
                    Arrays.stream(SettingUnit.values())
                        .map(u -> new Choice.Option(Posted.word(u), u.words(), "", u == unit))
                        .toList())),
            new FormPart.Typed(
                posted.fill(
                    Field.of("step", "One hole, one turn, or the thinnest piece is")
                        .hint("Hole spacing, thread pitch, spacer. Empty: not known.")
                        .unit(card.details().unit().word()))),
            new FormPart.Chosen(
                new Choice(
                    "more",
                    "A higher hole, or more turns, makes it",
                    "",
                    "",
                    List.of(
                        new Choice.Option(
                            "shorter", "shorter", "", posted.text("more").equals("shorter")),
                        new Choice.Option(
                            "longer", "longer", "", !posted.text("more").equals("shorter"))))));
    PageFrame frame =
        PageFrame.of(a.name() + " · Spindlebook", Capital.of(a.name()))
            .sub(card.place().words() + " · unit and step")
            .plan(Shown.plan(card))
            .crumbs(
                new Crumb("back", "/corners/" + card.corner() + "/adjustments/" + a.adjuster()));
    FormPage page =
        new FormPage(
            frame,
            "/corners/" + card.corner() + "/adjusters/" + a.adjuster(),
            key,
            parts,
            "Keep these",
            "/corners/" + card.corner() + "/adjustments/" + a.adjuster());
    Html.show(
        ctx.status(posted.ok() ? 200 : 422),
        Html.TEMPLATES.watchPoint(
            page,
            FormKey.fresh(card.lastChange()),
            "/corners/" + card.corner() + "/adjusters/" + a.adjuster() + "/retire",
            List.of(),
            null));
  }

  // --- a new one

  public void newAdjuster(Context ctx) {
    Card card = card(ctx);
    showNew(ctx, card, new Posted(Map.of()), FormKey.fresh(card.lastChange()));
  }

  private static void showNew(Context ctx, Card card, Posted posted, FormKey key) {
    List<Choice.Option> kinds =
        Arrays.stream(AdjusterKind.values())
            .map(
                k ->
                    new Choice.Option(
                        Posted.word(k), k.words(), "", Posted.word(k).equals(posted.text("kind"))))
            .toList();
    SettingUnit unit = posted.word("unit", SettingUnit.class, SettingUnit.LENGTH);
    List<Choice.Option> units =
        Arrays.stream(SettingUnit.values())
            .map(u -> new Choice.Option(Posted.word(u), u.words(), "", u == unit))
            .toList();
    FormPage page =
        new FormPage(
            PageFrame.of("A new adjuster · Spindlebook", "A new adjuster")
                .sub(card.place().words())
                .plan(Shown.plan(card))
                .crumbs(new Crumb("back", "/corners/" + card.corner() + "/adjustments")),
            "/corners/" + card.corner() + "/adjusters",
            key,
            List.of(
                new FormPart.Chosen(
                    new Choice(
                        "kind",
                        "It is a",
                        "What it moves follows from this.",
                        posted.problem("kind"),
                        kinds)),
                new FormPart.Typed(
                    posted.fill(Field.of("name", "Called").hint("Such as: rear limit strap."))),
                new FormPart.Chosen(new Choice("unit", "It is counted in", "", "", units))),
            "Put it in the book",
            "/corners/" + card.corner() + "/adjustments");
    Html.form(ctx, posted, page);
  }

  public void create(Context ctx) {
    Card card = card(ctx);
    Posted posted = Html.posted(ctx);
    FormKey key = posted.formKey().orElseGet(() -> FormKey.fresh(card.lastChange()));
    AdjusterKind kind = posted.word("kind", AdjusterKind.class, null);
    if (kind == null) {
      posted.wrong("kind", "Say what kind of thing it is.");
    }
    String name =
        posted.neededLine("name", 60, "Give it a name, so that it is told from the others.");
    if (!posted.ok()) {
      showNew(ctx, card, posted, key);
      return;
    }
    SettingUnit unit = posted.word("unit", SettingUnit.class, SettingUnit.LENGTH);
    store.adjuster(
        card.corner(),
        new Adjuster(key.key(), kind, name, unit, null, false, null),
        key,
        Who.of(ctx));
    Html.next(ctx, "/corners/" + card.corner() + "/adjusters/" + key.key());
  }

  public void change(Context ctx) {
    Card card = card(ctx);
    InForce inForce = adjuster(ctx, card);
    Adjuster a = inForce.adjuster();
    Posted posted = Html.posted(ctx);
    FormKey key = posted.formKey().orElseGet(() -> FormKey.fresh(card.lastChange()));
    SettingUnit unit = posted.word("unit", SettingUnit.class, a.unit());
    TypedLength step = posted.lengthFromZero("step", card.details().unit());
    if (step != null && step.mm() == 0) {
      posted.wrong("step", "A step of nothing sets nothing; leave it empty when it is not known.");
    }
    String name = posted.line("name", 60);
    if (!posted.ok()) {
      show(ctx, card, a, posted, key);
      return;
    }
    store.adjuster(
        card.corner(),
        new Adjuster(
            a.adjuster(),
            a.kind(),
            name,
            unit,
            step,
            posted.text("more").equals("shorter"),
            unit == a.unit() ? a.first() : null),
        key,
        Who.of(ctx));
    Html.next(ctx, "/corners/" + card.corner() + "/adjustments/" + a.adjuster());
  }

  public void retire(Context ctx) {
    Card card = card(ctx);
    Adjuster a = adjuster(ctx, card).adjuster();
    Posted posted = Html.posted(ctx);
    FormKey key = posted.formKey().orElseGet(() -> FormKey.fresh(card.lastChange()));
    store.retire(card.corner(), new Content.Retired(null, a.adjuster(), null), key, Who.of(ctx));
    Html.next(ctx, "/corners/" + card.corner() + "/adjustments");
  }

  private static InForce adjuster(Context ctx, Card card) {
    return card.adjuster(ctx.pathParam("adjuster")).orElseThrow(NotFoundResponse::new);
  }

  private Card card(Context ctx) {
    return histories.cornerCard(ctx.pathParam("corner")).orElseThrow(NotFoundResponse::new);
  }
}
