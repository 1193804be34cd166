package spindlebook.telltale;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import spindlebook.card.Shown;
import spindlebook.corner.CarBook;
import spindlebook.corner.Card;
import spindlebook.corner.EntryWords;
import spindlebook.corner.SeenTelltale;
import spindlebook.log.Histories;
import spindlebook.telltale.TelltaleForm.Kind;
import spindlebook.travel.CornerTravel;
import spindlebook.web.Cautions;
import spindlebook.web.Crumb;
import spindlebook.web.FormKey;
import spindlebook.web.Html;
import spindlebook.web.PageFrame;
import spindlebook.web.Posted;
import spindlebook.web.Who;

/** Telltales: what a drive left to be read at a corner. */
public final class TelltalePages {
  /** So that a long life does not make a long page; all of it is in the book. */
  private static final int MOST = 30;

  private final Histories histories;
  private final TelltaleStore store;

  public TelltalePages(Histories histories, TelltaleStore store) {
    this.histories = histories;
    this.store = store;
  }

  public void list(Context ctx) {
    Card card = card(ctx);
    show(ctx, card, null, new Posted(Map.of()), FormKey.fresh(card.n()));
  }

  public void read(Context ctx) {
    Card card = card(ctx);
    Posted posted = Html.posted(ctx);
    Kind kind = posted.word("form", Kind.class, Kind.RING);
    FormKey key = posted.formKey().orElseGet(() -> FormKey.fresh(card.n()));
    if (TelltaleForm.read(kind, posted, card) instanceof TelltaleForm.Accepted accepted) {
      store.add(accepted.telltale(), key, Who.of(ctx));
      Html.next(
          ctx,
          posted.text("back").equals("re-check")
              ? "/cars/" + card.car() + "/re-check?corner=" + card.corner()
              : "/corners/" + card.corner() + "/telltales");
    } else {
      ctx.status(422);
      show(ctx, card, kind, posted, key);
    }
  }

  private void show(Context ctx, Card card, Kind sent, Posted posted, FormKey key) {
    List<TelltaleView.Block> blocks = new ArrayList<>();
    for (Kind kind : Kind.values()) {
      blocks.add(
          block(
              kind,
              card,
              kind == sent ? posted : new Posted(Map.of()),
              kind == sent ? key : FormKey.fresh(card.n()),
              kind == sent && posted.text("back").equals("re-check") ? "re-check" : "telltales"));
    }
    PageFrame frame =
        PageFrame.of("Telltales · Spindlebook", "Telltales")
            .sub("What a drive left to be read.")
            .plan(Shown.plan(card))
            .crumbs(new Crumb(card.place().words(), "/corners/" + card.corner()))
            .caution(Cautions.MEASURING);
    Html.show(
        ctx,
        Html.TEMPLATES.telltaleList(
            frame,
            new TelltaleView(
                "/corners/" + card.corner() + "/telltales",
                blocks,
                lines(histories.of(card.car()), card))));
  }

  /** The forms of what is read between two drives. */
  public static List<TelltaleView.Block> betweenDrives(Card card) {
    return List.of(Kind.STRAP, Kind.RING, Kind.PRESSURE).stream()
        .map(k -> block(k, card, new Posted(Map.of()), FormKey.fresh(card.n()), "re-check"))
        .toList();
  }

  private static TelltaleView.Block block(
      Kind kind, Card card, Posted posted, FormKey key, String back) {
    String title =
        switch (kind) {
          case RING -> "Ring on the shock shaft";
          case STRAP -> "Limit strap";
          case PRESSURE -> "Tyre pressure";
          case MARK -> "Clay or a witness mark";
        };
    return new TelltaleView.Block(
        Posted.word(kind), title, back, key, TelltaleForm.parts(kind, posted, card));
  }

  private static List<TelltaleView.Line> lines(CarBook history, Card card) {
    TelltaleWords findings = new TelltaleWords(history, card, CornerTravel.of(card));
    EntryWords words = new EntryWords(history);
    List<TelltaleView.Line> lines = new ArrayList<>();
    List<SeenTelltale> telltales = history.telltales();
    for (int i = telltales.size() - 1; i >= 0 && lines.size() < MOST; i--) {
      SeenTelltale seen = telltales.get(i);
      if (seen.telltale().corner().equals(card.corner())) {
        lines.add(TelltaleView.Line.of(seen, words, findings.of(seen)));
      }
    }
    return lines;
  }

  private Card card(Context ctx) {
    return histories.cornerCard(ctx.pathParam("corner")).orElseThrow(NotFoundResponse::new);
  }
}
