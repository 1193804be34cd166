package spindlebook.telltale;

import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import spindlebook.card.Addressed;
import spindlebook.card.CornerBar;
import spindlebook.card.IntoBook;
import spindlebook.entry.Content;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.fold.Written;
import spindlebook.log.Histories;
import spindlebook.page.Asked;
import spindlebook.page.Cautions;
import spindlebook.page.Html;
import spindlebook.page.PageFrame;
import spindlebook.page.Posted;
import spindlebook.travel.CornerTravel;
import spindlebook.words.EntryWords;

/** Telltales: what a drive left to be read at a corner. */
public record TelltalePages(Histories histories, IntoBook book) {
  /** So that a long life does not make a long page; all of it is in the book. */
  private static final int MOST = 30;

  private static final String RE_CHECK = "re-check";

  /** What was read so far, and a form for each thing that is. */
  public void list(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    Asked sent = Asked.of(ctx, card.details().unit(), card.n());
    TelltaleForm form = sent.posted().word("form", TelltaleForm.class, TelltaleForm.RING);
    boolean reCheck = sent.text("back").equals(RE_CHECK);
    String telltales = "/corners/" + card.corner() + "/telltales";
    List<TelltaleView.Block> blocks = new ArrayList<>();
    for (TelltaleForm each : TelltaleForm.values()) {
      if (!sent.sent() || each != form) {
        blocks.add(fresh(each, card, "telltales"));
        continue;
      }
      Content.Telltale told = form.ask(sent, card);
      if (sent.ok()) {
        book.put(ctx, sent, told);
        Html.next(
            ctx, reCheck ? "/cars/" + card.car() + "/re-check?corner=" + card.corner() : telltales);
        return;
      }
      blocks.add(block(form, sent, reCheck ? RE_CHECK : "telltales"));
    }
    PageFrame frame =
        CornerBar.under(card, "Telltales", "Telltales")
            .sub("What a drive left to be read.")
            .caution(Cautions.MEASURING);
    sent.show(
        ctx,
        Html.TEMPLATES.telltaleList(
            frame, new TelltaleView(telltales, blocks, lines(histories.of(card.car()), card))));
  }

  /** The forms of what is read between two drives. */
  public static List<TelltaleView.Block> betweenDrives(Card card) {
    return Stream.of(TelltaleForm.STRAP, TelltaleForm.RING, TelltaleForm.PRESSURE)
        .map(f -> fresh(f, card, RE_CHECK))
        .toList();
  }

  private static TelltaleView.Block fresh(TelltaleForm form, Card card, String back) {
    Asked a = Asked.fresh(card.details().unit(), card.n());
    form.ask(a, card);
    return block(form, a, back);
  }

  private static TelltaleView.Block block(TelltaleForm form, Asked a, String back) {
    return new TelltaleView.Block(Posted.word(form), form.title(), back, a.key(), a.parts());
  }

  private static List<TelltaleView.Line> lines(CarBook history, Card card) {
    TelltaleWords findings = new TelltaleWords(history, card, CornerTravel.of(card));
    EntryWords words = new EntryWords(history);
    List<TelltaleView.Line> lines = new ArrayList<>();
    List<Written<Content.Telltale>> telltales = history.telltales();
    for (int i = telltales.size() - 1; i >= 0 && lines.size() < MOST; i--) {
      Written<Content.Telltale> seen = telltales.get(i);
      if (seen.content().corner().equals(card.corner())) {
        lines.add(TelltaleView.Line.of(seen, words, findings.of(seen)));
      }
    }
    return lines;
  }
}
