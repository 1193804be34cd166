package spindlebook.round;

import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import spindlebook.card.Capital;
import spindlebook.card.Counted;
import spindlebook.entry.Content;
import spindlebook.entry.GapResult;
import spindlebook.entry.Steering;
import spindlebook.fold.Card;
import spindlebook.fold.SeenHeight;
import spindlebook.log.Histories;
import spindlebook.page.Cautions;
import spindlebook.page.FormKey;
import spindlebook.page.Html;
import spindlebook.page.Notice;
import spindlebook.page.PageFrame;
import spindlebook.page.Posted;
import spindlebook.web.Who;

/**
 * A whole round typed on one page, quickly, from paper. What can be read goes into the book at
 * once; what cannot comes back as typed, with what is wrong with it, and the rest said to be in the
 * book.
 */
public record SheetPages(Histories histories, RoundStore store) {
  public void sheet(Context ctx) {
    Sitting at = Sitting.of(histories, ctx);
    FormKey key = FormKey.fresh(at.card().lastChange());
    show(ctx, new SheetBlocks(at, new Posted(Map.of()), key), 0);
  }

  private static void show(Context ctx, SheetBlocks blocks, int saved) {
    Posted posted = blocks.posted();
    int missing = blocks.missing();
    int wrong = posted.problems().size() - missing;
    List<Notice> notices = new ArrayList<>();
    if (saved > 0) {
      notices.add(
          new Notice(
              Notice.Kind.BOOK, Counted.of(saved, "entry is", "entries are") + " in the book."));
    }
    if (missing > 0) {
      notices.add(
          new Notice(
              Notice.Kind.PROBLEM,
              Counted.of(missing, "height has", "heights have")
                  + " no spindle yet; what was read there waits below, as you typed it."));
    }
    if (wrong > 0) {
      notices.add(
          new Notice(
              Notice.Kind.PROBLEM,
              wrong == 1
                  ? "1 could not be read; it is marked below, as you typed it."
                  : wrong + " could not be read; they are marked below, as you typed them."));
    }
    Sitting at = blocks.at();
    PageFrame frame =
        at.frame("From paper", Capital.of(at.card().place().words()) + ", from paper")
            .sub("Leave empty what was not read. A mark that did not move: type 'same'.")
            .notices(notices)
            .caution(Cautions.MEASURING)
            .ownSheets("paper.css");
    SheetView view = new SheetView(at.key(), blocks.all());
    Html.show(ctx, posted, Html.TEMPLATES.roundSheet(frame, view, blocks.key()));
  }

  public void read(Context ctx) {
    Posted posted = Html.posted(ctx);
    Sitting at = Sitting.of(histories, ctx);
    FormKey key = posted.formKey().orElseGet(() -> FormKey.fresh(at.card().lastChange()));
    int saved = 0;
    int howMany = new SheetBlocks(at, posted, key).howMany();
    for (int i = 0; i < howMany; i++) {
      saved += block(new SheetBlocks(Sitting.of(histories, ctx), posted, key), i, Who.of(ctx));
    }
    if (posted.ok()) {
      Html.next(ctx, Html.saved(at.href()));
    } else {
      show(ctx, new SheetBlocks(Sitting.of(histories, ctx), posted, key), saved);
    }
  }

  private int block(SheetBlocks blocks, int i, String who) {
    Card card = blocks.at().card();
    Posted posted = blocks.posted();
    long after = blocks.key().after();
    String key = blocks.heightKey(i);
    boolean there = card.height(key).isPresent();
    if (!there && !blocks.begun(i)) {
      return 0;
    }
    if (!there || blocks.said(i)) {
      // Sent again: the same is nothing new, another spindle is kept beside it, in doubt.
      Content.Height typed = blocks.height(i, blocks.same(i) ? markBefore(blocks, i) : null);
      if (typed != null) {
        store.keep(card, typed, new FormKey(key, after), who);
      } else if (!there) {
        return 0;
      }
    }
    Card now = histories.cardOf(key).orElseThrow();
    SeenHeight height = now.height(key).orElse(null);
    if (height == null) {
      posted.wrong(
          SheetBlocks.prefix(i) + "spindle",
          "This height was withdrawn; type it anew from the round's page.");
      return 0;
    }
    Sitting at = Sitting.of(histories, now, height.round());
    List<RoundStore.ToKeep> readings = new ArrayList<>();
    for (Steering steering : Steering.values()) {
      for (Slot slot : blocks.slots(i, steering)) {
        String name = SheetBlocks.cellName(i, steering, slot);
        boolean looked = blocks.lookedAt(i, steering, slot);
        if (looked || posted.has(name)) {
          String value = looked ? GapResult.WELL_CLEAR.words() : posted.text(name);
          FormKey form = new FormKey(blocks.readingKey(i, steering, slot), after);
          SentReading sent = new SentReading(key, steering, slot.row(), value, null);
          (looked
                  ? Optional.of(sent.kept(Optional.of(slot), at.unit()))
                  : sent.asked(slot, at.unit(), posted, name))
              .ifPresent(r -> readings.add(new RoundStore.ToKeep(r, form)));
        }
      }
    }
    if (!readings.isEmpty()) {
      store.keep(now, readings, who);
    }
    return (there ? 0 : 1) + readings.size();
  }

  /**
   * The key of the last height above this one on the sheet, else of the round's last one before the
   * sheet, when its mark is known; else a problem. A mark can be taken only from what is in the
   * book already.
   */
  private static String markBefore(SheetBlocks blocks, int i) {
    Card card = blocks.at().card();
    Posted posted = blocks.posted();
    String box = SheetBlocks.prefix(i) + "mark";
    int before = i - 1;
    while (before >= 0
        && card.height(blocks.heightKey(before)).isEmpty()
        && !blocks.begun(before)) {
      before--;
    }
    if (before < 0) {
      Optional<SeenHeight> there =
          blocks.before().stream()
              .filter(h -> h.stands().counts() && h.positionMm() != null)
              .reduce((first, second) -> second);
      if (there.isEmpty()) {
        posted.wrong(box, "There is no height before this one to take the mark from.");
      }
      return there.map(SeenHeight::key).orElse(null);
    }
    Optional<SeenHeight> height = card.height(blocks.heightKey(before));
    if (height.isEmpty()) {
      posted.wrong(
          box, "The height this mark is taken from is not in the book yet; put that one right.");
    } else if (height.get().positionMm() == null) {
      posted.wrong(box, "The height before this one has no mark to take; type this one's.");
    }
    return blocks.heightKey(before);
  }
}
