package spindlebook.round;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import spindlebook.card.Capital;
import spindlebook.card.Counted;
import spindlebook.entry.Content;
import spindlebook.entry.HeightName;
import spindlebook.entry.Pairing;
import spindlebook.entry.Steering;
import spindlebook.fold.Card;
import spindlebook.fold.SeenHeight;
import spindlebook.fold.SeenReading;
import spindlebook.page.Asked;
import spindlebook.page.Field;
import spindlebook.page.FormKey;
import spindlebook.page.Posted;
import spindlebook.words.EntryWords;

/**
 * The heights of a sheet from paper: what each is offered as, what was typed there and what of it
 * is in the book. Their keys come from the sheet's, so that a sheet sent twice is stored once.
 */
record SheetBlocks(Sitting at, Posted posted, FormKey key) {
  private static final int USUAL = 8;

  /** Of a round that lacks nothing: one nobody planned, or two. */
  private static final int BESIDES = 2;

  private static final int MOST = 40;

  /** What the round lacks has room; so has all that was sent, whatever others wrote meanwhile. */
  int howMany() {
    int lacks =
        (int) GuidePlan.of(at, before()).places().stream().filter(p -> p.height() == null).count();
    int sent = lacks == 0 ? BESIDES : Math.max(USUAL, lacks);
    for (int i = sent; i < MOST; i++) {
      sent = said(i) || posted.has(prefix(i) + "name") ? i + 1 : sent;
    }
    return sent;
  }

  /** As shown: the first that is not in the book is open. */
  List<SheetView.Block> all() {
    List<SheetView.Block> blocks = new ArrayList<>();
    boolean opened = false;
    int howMany = howMany();
    for (int i = 0; i < howMany; i++) {
      boolean first = !opened && at.card().height(heightKey(i)).isEmpty();
      opened |= first;
      blocks.add(block(i, first));
    }
    return blocks;
  }

  static String prefix(int i) {
    return "h" + i + "-";
  }

  private Set<String> boxes() {
    return HeightForm.labels(at).keySet();
  }

  /** Heights that were begun without their spindle: nothing there could be misread. */
  int missing() {
    return (int)
        IntStream.range(0, howMany())
            .mapToObj(i -> prefix(i) + "spindle")
            .filter(spindle -> !posted.problem(spindle).isEmpty() && !posted.has(spindle))
            .count();
  }

  /** What a block is offered as: what the round still lacks, then heights in between. */
  private GuidePlan.Place offered(int i) {
    return Stream.concat(
            GuidePlan.of(at, before()).places().stream().filter(p -> p.height() == null),
            Stream.generate(() -> GuidePlan.any(at, HeightName.IN_BETWEEN)))
        .skip(i)
        .findFirst()
        .orElseThrow();
  }

  /** Heights of the round that were there before this sheet. */
  List<SeenHeight> before() {
    return at.card().heightsOf(at.key()).stream()
        .filter(h -> !h.key().startsWith(key.key() + "-h"))
        .toList();
  }

  /**
   * The height as typed; null with problems posted to its boxes.
   *
   * @param markAsAt where its mark is taken from; null when it has one of its own
   */
  Content.Height height(int i, String markAsAt) {
    GuidePlan.Place place = offered(i);
    Content.Height start =
        HeightForm.at(at, place.name(), null, place.pairing(), place.otherName());
    Asked a = Asked.of(posted, at.unit(), key.after());
    Content.Height height =
        new HeightForm(a, at, prefix(i), markAsAt, false).ask(start, false, Long.MAX_VALUE);
    return wrong(i, "pairing") || boxes().stream().anyMatch(b -> wrong(i, b)) ? null : height;
  }

  private boolean wrong(int i, String box) {
    return !posted.problem(prefix(i) + box).isEmpty();
  }

  /** Whether a mark is said to be that of the height before. */
  boolean same(int i) {
    return boxes().stream()
        .anyMatch(b -> posted.text(prefix(i) + b).strip().equalsIgnoreCase(HeightForm.SAME));
  }

  private SheetView.Block block(int i, boolean open) {
    Card card = at.card();
    Optional<SeenHeight> said = card.height(heightKey(i));
    GuidePlan.Place place = offered(i);
    List<SheetView.SteeringBlock> steerings = new ArrayList<>();
    List<Steering> swung =
        card.layout().steered()
            ? List.of(Steering.STRAIGHT, Steering.FULL_LEFT, Steering.FULL_RIGHT)
            : List.of(Steering.STRAIGHT);
    int typed = 0;
    int inBook = 0;
    boolean wrong = boxes().stream().anyMatch(b -> wrong(i, b));
    for (Steering steering : swung) {
      List<SheetView.Cell> cells = new ArrayList<>();
      boolean shown = steering == Steering.STRAIGHT;
      for (Slot slot : slots(i, steering)) {
        String name = cellName(i, steering, slot);
        Optional<SeenReading> read = at.end(slot).reading(readingKey(i, steering, slot));
        boolean waits = posted.has(name) && read.isEmpty();
        cells.add(
            new SheetView.Cell(
                posted.fill(Field.of(name, slot.words())),
                read.map(r -> EntryWords.value(r.reading())).orElse(null)));
        shown |= waits;
        typed += waits ? 1 : 0;
        inBook += read.isPresent() ? 1 : 0;
        wrong |= !posted.problem(name).isEmpty();
      }
      steerings.add(new SheetView.SteeringBlock(steering.words(), shown, cells));
    }
    HeightName chosen = posted.word(prefix(i) + "name", HeightName.class, place.name());
    Pairing pairing = posted.word(prefix(i) + "pairing", Pairing.class, place.stood());
    String offered =
        pairing == Pairing.CROSSED ? chosen.words() + ", " + pairing.words() : chosen.words();
    return new SheetView.Block(
        "Height " + (i + 1) + " · " + said.map(SeenHeight::words).orElse(offered),
        count(said.isPresent(), inBook, typed),
        wrong || open,
        selects(i, place),
        boxes().stream().map(b -> box(i, b)).toList(),
        said.map(h -> Capital.of(h.words()) + ", in the book").orElse(null),
        othersName(i),
        posted.has(othersName(i)),
        steerings);
  }

  private List<SheetView.Select> selects(int i, GuidePlan.Place place) {
    String here = Capital.of(at.card().place().words()) + " is";
    String there = Capital.of(at.card().place().mirror().words()) + " is, when crossed";
    return at.axle()
        ? List.of(
            select(i, "pairing", "The two ends are moved", place.stood(), Pairing::words),
            select(i, "name", here, place.name(), HeightName::words),
            select(
                i,
                "otherName",
                there,
                place.otherName() == null ? place.name() : place.otherName(),
                HeightName::words))
        : List.of(select(i, "name", "This height is", place.name(), HeightName::words));
  }

  private <E extends Enum<E>> SheetView.Select select(
      int i, String name, String label, E offered, Function<E, String> words) {
    E chosen = posted.word(prefix(i) + name, offered.getDeclaringClass(), offered);
    return new SheetView.Select(
        prefix(i) + name,
        label,
        Arrays.stream(offered.getDeclaringClass().getEnumConstants())
            .map(v -> new SheetView.Option(Posted.word(v), words.apply(v), v == chosen))
            .toList());
  }

  private Field box(int i, String name) {
    String label = HeightForm.labels(at).get(name);
    return posted.fill(Field.of(prefix(i) + name, label).unit(at.unit().word()));
  }

  private static String count(boolean said, int inBook, int typed) {
    String waits = typed == 0 ? "" : Counted.of(typed, "reading") + " typed";
    if (!said) {
      return waits.isEmpty() ? "empty" : waits;
    }
    return "in the book, " + Counted.of(inBook, "reading") + (waits.isEmpty() ? "" : "; " + waits);
  }

  /** What is asked for there, what was typed and what is in the book. */
  List<Slot> slots(int i, Steering steering) {
    return at.slots(
        steering,
        s ->
            posted.has(cellName(i, steering, s))
                || at.end(s).reading(readingKey(i, steering, s)).isPresent());
  }

  static String cellName(int i, Steering steering, Slot slot) {
    return prefix(i) + Posted.word(steering) + "-" + slot.row();
  }

  static String othersName(int i) {
    return prefix(i) + GuidePlan.OTHERS;
  }

  /** Whether it was seen in one look to be well clear: a gap nobody typed or read alone. */
  boolean lookedAt(int i, Steering steering, Slot slot) {
    return posted.has(othersName(i))
        && slot.kind().equals("gap")
        && steering != Steering.PART_LEFT
        && steering != Steering.PART_RIGHT
        && !posted.has(cellName(i, steering, slot))
        && at.end(slot).reading(readingKey(i, steering, slot)).isEmpty();
  }

  String heightKey(int i) {
    return key.key() + "-h" + i;
  }

  /** Short, whatever the watch point is called: keys are at most 80 letters. */
  String readingKey(int i, Steering steering, Slot slot) {
    return heightKey(i)
        + "-"
        + steering.ordinal()
        + "-"
        + UUID.nameUUIDFromBytes(slot.row().getBytes(StandardCharsets.UTF_8));
  }

  /** Whether the height itself was typed, at either end. */
  boolean said(int i) {
    return boxes().stream().anyMatch(b -> posted.has(prefix(i) + b));
  }

  /** Whether anything was typed there. */
  boolean begun(int i) {
    return Stream.concat(
            Stream.concat(boxes().stream().map(b -> prefix(i) + b), Stream.of(othersName(i))),
            Arrays.stream(Steering.values())
                .flatMap(s -> slots(i, s).stream().map(slot -> cellName(i, s, slot))))
        .anyMatch(posted::has);
  }
}
