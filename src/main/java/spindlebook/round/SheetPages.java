package spindlebook.round;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import spindlebook.card.Capital;
import spindlebook.card.Counted;
import spindlebook.card.Shown;
import spindlebook.corner.Card;
import spindlebook.corner.Content;
import spindlebook.corner.Layout;
import spindlebook.corner.SeenHeight;
import spindlebook.corner.SeenRound;
import spindlebook.corner.Steering;
import spindlebook.log.Draft;
import spindlebook.log.Histories;
import spindlebook.units.TypedLength;
import spindlebook.web.Cautions;
import spindlebook.web.Crumb;
import spindlebook.web.FormKey;
import spindlebook.web.Html;
import spindlebook.web.Notice;
import spindlebook.web.PageFrame;
import spindlebook.web.Posted;
import spindlebook.web.Who;

/**
 * A whole round typed on one page, quickly, from paper. What can be read goes into the book at
 * once; what cannot comes back as typed, with what is wrong with it, and the rest said to be in the
 * book.
 */
public final class SheetPages {
  private static final String SAME = "same";

  private final Histories histories;
  private final RoundStore store;

  public SheetPages(Histories histories, RoundStore store) {
    this.histories = histories;
    this.store = store;
  }

  public void sheet(Context ctx) {
    Card card = card(ctx);
    if (card.layout() == Layout.SOLID_AXLE_END) {
      // Its blocks hold one spindle; an axle's heights are typed one by one.
      Html.next(ctx, "/rounds/" + round(ctx, card).key());
      return;
    }
    show(ctx, card, round(ctx, card), new Posted(Map.of()), FormKey.fresh(card.lastChange()), 0);
  }

  private static void show(
      Context ctx, Card card, SeenRound round, Posted posted, FormKey key, int saved) {
    SheetBlocks blocks = new SheetBlocks(card, round, posted, key);
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
    PageFrame frame =
        PageFrame.of("From paper · Spindlebook", Capital.of(card.place().words()) + ", from paper")
            .sub("Leave empty what was not read. A mark that did not move: type 'same'.")
            .plan(Shown.plan(card))
            .crumbs(new Crumb("the round", "/rounds/" + round.key()))
            .notices(notices)
            .caution(Cautions.MEASURING);
    SheetView view = new SheetView(round.key(), blocks.all(), saved, posted.problems().size());
    if (posted.ok()) {
      Html.show(ctx, Html.TEMPLATES.roundSheet(frame, view, key));
    } else {
      Html.again(ctx, Html.TEMPLATES.roundSheet(frame, view, key));
    }
  }

  public void read(Context ctx) {
    Card card = card(ctx);
    SeenRound round = round(ctx, card);
    Posted posted = Html.posted(ctx);
    FormKey key = posted.formKey().orElseGet(() -> FormKey.fresh(card.lastChange()));
    int saved = 0;
    for (int i = 0; i < SheetBlocks.HOW_MANY; i++) {
      saved += block(new SheetBlocks(card(ctx), round, posted, key), i, Who.of(ctx));
    }
    if (posted.ok()) {
      Html.next(ctx, "/rounds/" + round.key());
    } else {
      show(ctx, card(ctx), round, posted, key, saved);
    }
  }

  private int block(SheetBlocks blocks, int i, String who) {
    Card card = blocks.card();
    Posted posted = blocks.posted();
    FormKey key = blocks.key();
    int saved = 0;
    String height = blocks.heightKey(i);
    boolean there = card.height(height).isPresent();
    if (there && posted.has("h" + i + "-spindle")) {
      // Sent again: the same is nothing new, another spindle is kept beside it, in doubt.
      height(blocks, i)
          .ifPresent(h -> store.height(card, h, new FormKey(height, key.after()), who));
    }
    if (!there) {
      if (!blocks.begun(i)) {
        return 0;
      }
      Optional<Content.Height> typed = height(blocks, i);
      if (typed.isEmpty()) {
        return 0;
      }
      store.height(card, typed.get(), new FormKey(height, key.after()), who);
      saved++;
    }
    Card now = histories.cardOf(height).orElseThrow();
    if (now.height(height).isEmpty()) {
      posted.wrong(
          "h" + i + "-spindle", "This height was taken back; type it anew from the round's page.");
      return 0;
    }
    SeenHeight seen = now.height(height).orElseThrow();
    List<Draft> drafts = new ArrayList<>();
    for (Steering steering : Steering.values()) {
      for (Asked asked : Asked.all(now, steering)) {
        String name = SheetBlocks.cellName(i, steering, asked);
        if (posted.has(name)) {
          FormKey form = new FormKey(blocks.readingKey(i, steering, asked), key.after());
          HeightPages.typed(posted, name, seen, steering, asked)
              .ifPresent(r -> drafts.add(store.draft(now, r, form, who)));
        }
      }
    }
    if (!drafts.isEmpty()) {
      store.append(drafts);
    }
    return saved + drafts.size();
  }

  private static Optional<Content.Height> height(SheetBlocks blocks, int i) {
    Posted posted = blocks.posted();
    SeenRound round = blocks.round();
    String prefix = "h" + i;
    TypedLength spindle =
        posted.neededLength(
            prefix + "-spindle",
            round.round().unit(),
            "The readings of this height need its spindle above the floor.");
    boolean same = posted.text(prefix + "-mark").strip().equalsIgnoreCase(SAME);
    TypedLength mark = same ? null : posted.lengthFromZero(prefix + "-mark", round.round().unit());
    if (spindle == null || !posted.problem(prefix + "-mark").isEmpty()) {
      return Optional.empty();
    }
    String asAt = same ? markBefore(blocks, i) : null;
    return posted.problem(prefix + "-mark").isEmpty()
        ? Optional.of(
            new Content.Height(round.key(), blocks.name(i), null, spindle, mark, asAt, null, null))
        : Optional.empty();
  }

  /**
   * The key of the last height above this one on the sheet, else of the round's last one before the
   * sheet, when its mark is known; else a problem. A mark can be taken only from what is in the
   * book already.
   */
  private static String markBefore(SheetBlocks blocks, int i) {
    Card card = blocks.card();
    Posted posted = blocks.posted();
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
        posted.wrong(
            "h" + i + "-mark", "There is no height before this one to take the mark from.");
      }
      return there.map(SeenHeight::key).orElse(null);
    }
    Optional<SeenHeight> height = card.height(blocks.heightKey(before));
    if (height.isEmpty()) {
      posted.wrong(
          "h" + i + "-mark",
          "The height this mark is taken from is not in the book yet; put that one right.");
    } else if (height.get().positionMm() == null) {
      posted.wrong(
          "h" + i + "-mark", "The height before this one has no mark to take; type this one's.");
    }
    return blocks.heightKey(before);
  }

  private static SeenRound round(Context ctx, Card card) {
    return card.round(ctx.pathParam("round")).orElseThrow(NotFoundResponse::new);
  }

  private Card card(Context ctx) {
    return histories.cardOf(ctx.pathParam("round")).orElseThrow(NotFoundResponse::new);
  }
}
