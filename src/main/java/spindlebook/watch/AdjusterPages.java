package spindlebook.watch;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.List;
import java.util.function.Supplier;
import spindlebook.card.Addressed;
import spindlebook.card.Capital;
import spindlebook.card.CornerBar;
import spindlebook.card.IntoBook;
import spindlebook.definition.Adjuster;
import spindlebook.definition.AdjusterKind;
import spindlebook.definition.Retired;
import spindlebook.definition.SettingUnit;
import spindlebook.entry.Content;
import spindlebook.fold.Card;
import spindlebook.log.Histories;
import spindlebook.page.Asked;
import spindlebook.page.FormKey;
import spindlebook.page.Html;
import spindlebook.page.PageFrame;
import spindlebook.units.TypedLength;

/** How an adjuster is counted: its unit, its step, which way shortens. */
public record AdjusterPages(Histories histories, IntoBook book) {
  /** One adjuster, and how it is counted changed. */
  public void adjuster(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    Adjuster now = adjuster(ctx, card);
    Asked a = Asked.of(ctx, card.details().unit(), card.lastChange());
    String name = a.line("name", "Called", 60).was(now.name()).read();
    SettingUnit unit =
        a.one("unit", "It is counted in", SettingUnit.class, SettingUnit::words)
            .hint("What it was set to before is kept in the book as it was said.")
            .first(now.unit())
            .read();
    TypedLength step =
        a.length("step", "One hole, one turn, or the thinnest piece is")
            .hint("Hole spacing, thread pitch, spacer. Empty: not known.")
            .was(now.step())
            .check(
                l -> l.mm() != 0,
                "A step of nothing sets nothing; leave it empty when it is not known.")
            .read();
    boolean shortens =
        a.<Boolean>one("more", "A higher hole, or more turns, makes it")
            .option("shorter", true, "shorter", "")
            .option("longer", false, "longer", "")
            .startsKey(now.moreShortens() ? "shorter" : "longer")
            .firstKey("longer")
            .read();
    String setting = settings(card) + "/" + now.adjuster();
    if (a.ok()) {
      Adjuster then =
          new Adjuster(
              now.adjuster(),
              now.kind(),
              name,
              unit,
              step,
              shortens,
              unit == now.unit() ? now.first() : null);
      book.put(ctx, a, Content.Definition.of(card.corner(), then), setting);
      return;
    }
    PageFrame frame =
        CornerBar.under(card, now.name(), Capital.of(now.name()))
            .sub(card.place().words() + " · unit and step")
            .up("back", setting);
    String address = "/corners/" + card.corner() + "/adjusters/" + now.adjuster();
    a.show(
        ctx,
        Html.TEMPLATES.watchPoint(
            a.page(frame, address, "Save", setting),
            FormKey.fresh(card.lastChange()),
            address + "/retire",
            List.of(),
            null));
  }

  /** A new one. */
  public void create(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    Asked a = Asked.of(ctx, card.details().unit(), card.lastChange());
    AdjusterKind kind =
        a.one("kind", "It is a", AdjusterKind.class, AdjusterKind::words)
            .hint("What it moves follows from this.")
            .needed("Say what kind of thing it is.");
    String name =
        a.line("name", "Called", 60)
            .hint("Such as: rear limit strap.")
            .needed("Give it a name, so that it is told from the others.");
    SettingUnit unit =
        a.one("unit", "It is counted in", SettingUnit.class, SettingUnit::words)
            .first(SettingUnit.LENGTH)
            .read();
    String adjusters = "/corners/" + card.corner() + "/adjusters";
    if (a.ok()) {
      String key = a.key().key();
      Adjuster adjuster = new Adjuster(key, kind, name, unit, null, false, null);
      book.put(ctx, a, Content.Definition.of(card.corner(), adjuster), adjusters + "/" + key);
      return;
    }
    PageFrame frame =
        CornerBar.under(card, "A new adjuster", "A new adjuster").up("back", settings(card));
    a.show(ctx, frame, adjusters, "Save", settings(card));
  }

  public void retire(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    Asked a = Asked.of(ctx, card.details().unit(), card.lastChange());
    Supplier<Retired> retired = () -> new Retired(null, adjuster(ctx, card).adjuster(), null);
    book.once(ctx, a, () -> Content.Definition.of(card.corner(), retired.get()), settings(card));
  }

  private static String settings(Card card) {
    return "/corners/" + card.corner() + "/adjustments";
  }

  private static Adjuster adjuster(Context ctx, Card card) {
    return card.adjuster(ctx.pathParam("adjuster")).orElseThrow(NotFoundResponse::new).adjuster();
  }
}
