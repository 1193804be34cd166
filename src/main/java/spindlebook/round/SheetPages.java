package spindlebook.round;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import spindlebook.card.Capital;
import spindlebook.card.Counted;
import spindlebook.card.Shown;
import spindlebook.corner.Card;
import spindlebook.corner.Content;
import spindlebook.corner.EntryWords;
import spindlebook.corner.HeightName;
import spindlebook.corner.HeightOrder;
import spindlebook.corner.SeenHeight;
import spindlebook.corner.SeenReading;
import spindlebook.corner.SeenRound;
import spindlebook.corner.Steering;
import spindlebook.log.Draft;
import spindlebook.log.Histories;
import spindlebook.units.TypedLength;
import spindlebook.web.Cautions;
import spindlebook.web.Crumb;
import spindlebook.web.Field;
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
  private static final int BLOCKS = 6;
  private static final String SAME = "same";

  private final Histories histories;
  private final RoundStore store;

  public SheetPages(Histories histories, RoundStore store) {
    this.histories = histories;
    this.store = store;
  }

  public void sheet(Context ctx) {
    Card card = card(ctx);
    show(ctx, card, round(ctx, card), new Posted(Map.of()), FormKey.fresh(card.lastChange()), 0);
  }

  private static void show(
      Context ctx, Card card, SeenRound round, Posted posted, FormKey key, int saved) {
    List<SheetView.Block> blocks = new ArrayList<>();
    for (int i = 0; i < BLOCKS; i++) {
      blocks.add(block(card, round, posted, key, i));
    }
    openFirstUnread(blocks);
    int missing = missing(posted);
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
    SheetView view = new SheetView(round.key(), blocks, saved, posted.problems().size());
    if (posted.ok()) {
      Html.show(ctx, Html.TEMPLATES.roundSheet(frame, view, key));
    } else {
      Html.again(ctx, Html.TEMPLATES.roundSheet(frame, view, key));
    }
  }

  private static void openFirstUnread(List<SheetView.Block> blocks) {
    for (int i = 0; i < blocks.size(); i++) {
      if (blocks.get(i).said() == null) {
        blocks.set(i, blocks.get(i).opened());
        return;
      }
    }
  }

  /** Heights that were begun without their spindle: nothing there could be misread. */
  private static int missing(Posted posted) {
    return (int)
        IntStream.range(0, BLOCKS)
            .mapToObj(i -> "h" + i + "-spindle")
            .filter(spindle -> !posted.problem(spindle).isEmpty() && !posted.has(spindle))
            .count();
  }

  /** What each block is offered as: what the round still lacks, then heights in between. */
  private static List<HeightName> names(Card card, SeenRound round, FormKey key) {
    List<HeightName> read = before(card, round, key).stream().map(SeenHeight::name).toList();
    return Stream.concat(
            HeightOrder.left(round.round(), read).stream(),
            Stream.generate(() -> HeightName.IN_BETWEEN))
        .limit(BLOCKS)
        .toList();
  }

  /** Heights of the round that were there before this sheet. */
  private static List<SeenHeight> before(Card card, SeenRound round, FormKey key) {
    return card.heightsOf(round.key()).stream()
        .filter(h -> !h.key().startsWith(key.key() + "-h"))
        .toList();
  }

  private static SheetView.Block block(
      Card card, SeenRound round, Posted posted, FormKey key, int i) {
    String prefix = "h" + i;
    Optional<SeenHeight> said = card.height(heightKey(key, i));
    HeightName chosen =
        posted.word(prefix + "-name", HeightName.class, names(card, round, key).get(i));
    List<SheetView.NameOption> names = new ArrayList<>();
    for (HeightName name : HeightName.values()) {
      names.add(new SheetView.NameOption(Posted.word(name), name.words(), name == chosen));
    }
    String unit = round.round().unit().word();
    List<SheetView.SteeringBlock> steerings = new ArrayList<>();
    List<Steering> swung =
        card.layout().steered()
            ? List.of(Steering.STRAIGHT, Steering.FULL_LEFT, Steering.FULL_RIGHT)
            : List.of(Steering.STRAIGHT);
    int typed = 0;
    int inBook = 0;
    boolean wrong =
        !posted.problem(prefix + "-spindle").isEmpty()
            || !posted.problem(prefix + "-mark").isEmpty();
    for (Steering steering : swung) {
      List<SheetView.Cell> cells = new ArrayList<>();
      boolean open = false;
      for (Asked asked : Asked.all(card, steering)) {
        String name = cellName(i, steering, asked);
        Optional<SeenReading> read = card.reading(readingKey(key, i, steering, asked));
        Field field = Field.of(name, asked.words());
        cells.add(
            new SheetView.Cell(
                posted.fill(field), read.map(r -> EntryWords.value(r.reading())).orElse(null)));
        open |= posted.has(name) && read.isEmpty();
        typed += posted.has(name) && read.isEmpty() ? 1 : 0;
        inBook += read.isPresent() ? 1 : 0;
        wrong |= !posted.problem(name).isEmpty();
      }
      steerings.add(
          new SheetView.SteeringBlock(
              steering.words(), open || steering == Steering.STRAIGHT, cells));
    }
    return new SheetView.Block(
        prefix,
        "Height " + (i + 1) + " · " + said.map(SeenHeight::words).orElse(chosen.words()),
        count(said.isPresent(), inBook, typed),
        wrong,
        names,
        posted.fill(Field.of(prefix + "-spindle", "Spindle above the floor").unit(unit)),
        posted.fill(Field.of(prefix + "-mark", "Frame mark above the floor").unit(unit)),
        said.map(h -> Capital.of(h.words()) + ", in the book").orElse(null),
        steerings);
  }

  private static String count(boolean said, int inBook, int typed) {
    String waits = typed == 0 ? "" : Counted.of(typed, "reading") + " typed";
    if (!said) {
      return waits.isEmpty() ? "empty" : waits;
    }
    return "in the book, " + Counted.of(inBook, "reading") + (waits.isEmpty() ? "" : "; " + waits);
  }

  private static String cellName(int i, Steering steering, Asked asked) {
    return "h" + i + "-" + Posted.word(steering) + "-" + asked.row();
  }

  private static String heightKey(FormKey key, int i) {
    return key.key() + "-h" + i;
  }

  /** Short, whatever the watch point is called: keys are at most 80 letters. */
  private static String readingKey(FormKey key, int i, Steering steering, Asked asked) {
    return heightKey(key, i)
        + "-"
        + steering.ordinal()
        + "-"
        + Integer.toHexString(asked.row().hashCode());
  }

  public void read(Context ctx) {
    Card card = card(ctx);
    SeenRound round = round(ctx, card);
    Posted posted = Html.posted(ctx);
    FormKey key = posted.formKey().orElseGet(() -> FormKey.fresh(card.lastChange()));
    int saved = 0;
    for (int i = 0; i < BLOCKS; i++) {
      saved += block(card(ctx), round, posted, key, i, Who.of(ctx));
    }
    if (posted.ok()) {
      Html.next(ctx, "/rounds/" + round.key());
    } else {
      show(ctx, card(ctx), round, posted, key, saved);
    }
  }

  private int block(Card card, SeenRound round, Posted posted, FormKey key, int i, String who) {
    int saved = 0;
    String height = heightKey(key, i);
    if (card.height(height).isEmpty()) {
      if (!begun(card, posted, i)) {
        return 0;
      }
      Optional<Content.Height> typed = height(card, posted, round, key, i);
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
        String name = cellName(i, steering, asked);
        if (posted.has(name)) {
          FormKey form = new FormKey(readingKey(key, i, steering, asked), key.after());
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

  private static boolean begun(Card card, Posted posted, int i) {
    if (posted.has("h" + i + "-spindle") || posted.has("h" + i + "-mark")) {
      return true;
    }
    for (Steering steering : Steering.values()) {
      for (Asked asked : Asked.all(card, steering)) {
        if (posted.has(cellName(i, steering, asked))) {
          return true;
        }
      }
    }
    return false;
  }

  private static Optional<Content.Height> height(
      Card card, Posted posted, SeenRound round, FormKey key, int i) {
    String prefix = "h" + i;
    HeightName name =
        posted.word(prefix + "-name", HeightName.class, names(card, round, key).get(i));
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
    String asAt = same ? markBefore(card, round, posted, key, i) : null;
    return posted.problem(prefix + "-mark").isEmpty()
        ? Optional.of(new Content.Height(round.key(), name, null, spindle, mark, asAt, null, null))
        : Optional.empty();
  }

  /**
   * The key of the last height above this one on the sheet, else of the round's last one before the
   * sheet, when its mark is known; else a problem. A mark can be taken only from what is in the
   * book already.
   */
  private static String markBefore(Card card, SeenRound round, Posted posted, FormKey key, int i) {
    int before = i - 1;
    while (before >= 0
        && card.height(heightKey(key, before)).isEmpty()
        && !begun(card, posted, before)) {
      before--;
    }
    if (before < 0) {
      Optional<SeenHeight> there =
          before(card, round, key).stream()
              .filter(h -> h.stands().counts() && h.positionMm() != null)
              .reduce((first, second) -> second);
      if (there.isEmpty()) {
        posted.wrong(
            "h" + i + "-mark", "There is no height before this one to take the mark from.");
      }
      return there.map(SeenHeight::key).orElse(null);
    }
    Optional<SeenHeight> height = card.height(heightKey(key, before));
    if (height.isEmpty()) {
      posted.wrong(
          "h" + i + "-mark",
          "The height this mark is taken from is not in the book yet; put that one right.");
    } else if (height.get().positionMm() == null) {
      posted.wrong(
          "h" + i + "-mark", "The height before this one has no mark to take; type this one's.");
    }
    return heightKey(key, before);
  }

  private static SeenRound round(Context ctx, Card card) {
    return card.round(ctx.pathParam("round")).orElseThrow(NotFoundResponse::new);
  }

  private Card card(Context ctx) {
    return histories.cardOf(ctx.pathParam("round")).orElseThrow(NotFoundResponse::new);
  }
}
