package spindlebook.round;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import spindlebook.card.Capital;
import spindlebook.card.Counted;
import spindlebook.corner.Card;
import spindlebook.corner.EntryWords;
import spindlebook.corner.HeightName;
import spindlebook.corner.HeightOrder;
import spindlebook.corner.SeenHeight;
import spindlebook.corner.SeenReading;
import spindlebook.corner.SeenRound;
import spindlebook.corner.Steering;
import spindlebook.web.Field;
import spindlebook.web.FormKey;
import spindlebook.web.Posted;

/**
 * The heights of a sheet from paper: what each is offered as, what was typed there and what of it
 * is in the book. Their keys come from the sheet's, so that a sheet sent twice is stored once.
 */
record SheetBlocks(Card card, SeenRound round, Posted posted, FormKey key) {
  static final int HOW_MANY = 6;

  /** As shown: the first that is not in the book is open. */
  List<SheetView.Block> all() {
    List<SheetView.Block> blocks = new ArrayList<>();
    for (int i = 0; i < HOW_MANY; i++) {
      blocks.add(block(i));
    }
    openFirstUnread(blocks);
    return blocks;
  }

  /** Which height a block is, as chosen or as offered. */
  HeightName name(int i) {
    return posted.word("h" + i + "-name", HeightName.class, names().get(i));
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
  int missing() {
    return (int)
        IntStream.range(0, HOW_MANY)
            .mapToObj(i -> "h" + i + "-spindle")
            .filter(spindle -> !posted.problem(spindle).isEmpty() && !posted.has(spindle))
            .count();
  }

  /** What each block is offered as: what the round still lacks, then heights in between. */
  private List<HeightName> names() {
    List<HeightName> read = before().stream().map(SeenHeight::name).toList();
    return Stream.concat(
            HeightOrder.left(round.round(), read).stream(),
            Stream.generate(() -> HeightName.IN_BETWEEN))
        .limit(HOW_MANY)
        .toList();
  }

  /** Heights of the round that were there before this sheet. */
  List<SeenHeight> before() {
    return card.heightsOf(round.key()).stream()
        .filter(h -> !h.key().startsWith(key.key() + "-h"))
        .toList();
  }

  private SheetView.Block block(int i) {
    String prefix = "h" + i;
    Optional<SeenHeight> said = card.height(heightKey(i));
    HeightName chosen = name(i);
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
        Optional<SeenReading> read = card.reading(readingKey(i, steering, asked));
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

  static String cellName(int i, Steering steering, Asked asked) {
    return "h" + i + "-" + Posted.word(steering) + "-" + asked.row();
  }

  String heightKey(int i) {
    return key.key() + "-h" + i;
  }

  /** Short, whatever the watch point is called: keys are at most 80 letters. */
  String readingKey(int i, Steering steering, Asked asked) {
    return heightKey(i)
        + "-"
        + steering.ordinal()
        + "-"
        + UUID.nameUUIDFromBytes(asked.row().getBytes(StandardCharsets.UTF_8));
  }

  /** Whether anything was typed there. */
  boolean begun(int i) {
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
}
