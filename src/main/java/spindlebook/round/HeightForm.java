package spindlebook.round;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Stream;
import spindlebook.card.Capital;
import spindlebook.card.Days;
import spindlebook.card.ToReadAddress;
import spindlebook.entry.Content;
import spindlebook.entry.HeightName;
import spindlebook.entry.Pairing;
import spindlebook.fold.Card;
import spindlebook.fold.SeenHeight;
import spindlebook.page.Asked;
import spindlebook.page.Pick;
import spindlebook.page.Posted;
import spindlebook.units.TypedLength;

/**
 * A height as it is asked for: its name, the spindle, the frame mark or where the mark is taken
 * from. On a solid axle of both ends, and how they stand; one end alone is kept too, and the
 * other's position is then not known.
 *
 * @param prefix before every name, where several heights are on one form
 * @param markAsAt the height its mark is taken from; null when that is not said
 * @param settled whether its place is sent along unasked
 */
record HeightForm(Asked a, Sitting sitting, String prefix, String markAsAt, boolean settled) {
  /** What stands in a mark's box on a sheet when it is that of the height before. */
  static final String SAME = "same";

  /** What answers the question whether a height is to be kept without a mark. */
  private static final String NO_MARK = "noMark";

  /** Longer than any spindle stands above a floor. */
  private static final double MOST_MM = 3000;

  private static final Content.OtherEnd NOT_READ = new Content.OtherEnd(null, null, null);

  static HeightForm of(Asked a, Sitting sitting, boolean settled) {
    return new HeightForm(a, sitting, "", a.posted().line("markAsAt", 80), settled);
  }

  /** A height of which only its place is known. */
  static Content.Height at(
      Sitting sitting, HeightName name, String label, Pairing pairing, HeightName otherName) {
    Content.OtherEnd other = otherName == null ? null : new Content.OtherEnd(otherName, null, null);
    return new Content.Height(
        sitting.key(), name, label, null, null, null, null, null, other, pairing);
  }

  /**
   * What was answered; it counts where nothing is wrong.
   *
   * @param start what its boxes start with
   * @param marked whether a height without a mark is asked about, once: its position will not be
   *     known
   * @param before position in the book: only a height above it has a mark to take
   */
  Content.Height ask(Content.Height start, boolean marked, long before) {
    boolean axle = sitting.axle();
    Content.OtherEnd other = start.otherEnd() == null ? NOT_READ : start.otherEnd();
    Pairing pairing = axle ? pairing(start) : null;
    HeightName name =
        place(
            "name",
            axle ? Capital.of(sitting.card().place().words()) + " is" : "This height is",
            "",
            start.name());
    if (name == null) {
      a.wrong(prefix + "name", "Say which height this is.");
    }
    HeightName otherName = axle ? otherName(pairing, other) : null;

    // Which box is next is known before they are shown: the spindle, or else its mark.
    boolean there = a.sent() && a.posted().lengthFromZero(prefix + "spindle", a.unit()) != null;
    String last = lastSpindle(name == null ? start.name() : name);
    TypedLength spindle = length("spindle", last, start.spindle(), !there).read();
    TypedLength otherSpindle =
        axle
            ? length(
                    "otherSpindle",
                    "Left empty, that end's position is not known.",
                    other.spindle(),
                    false)
                .read()
            : null;
    if (spindle == null && otherSpindle == null && !a.wrong(prefix + "otherSpindle")) {
      a.wrong(prefix + "spindle", needed());
    }
    boolean asks = a.sent() && marked && markAsAt == null && !a.text(NO_MARK).equals("keep");
    Pick[] picks = picks(before, asks && !(a.has("mark") && (!axle || a.has("otherMark"))));
    String hint = "Read it again, or say that it did not move.";
    Asked.Box<TypedLength> box = length("mark", hint, start.mark(), there);
    TypedLength mark = (axle ? box : box.picks(picks)).read();
    TypedLength otherMark =
        axle ? length("otherMark", "", other.mark(), false).picks(picks).read() : null;
    if (prefix.isEmpty() && markAsAt != null && !stoodBefore(before)) {
      a.wrong("mark", "Take the mark of an earlier height of this corner, or type it.");
    }
    if (asks) {
      needsMark("mark", spindle, mark);
      needsMark("otherMark", otherSpindle, otherMark);
    }
    String label = label(start);
    boolean said = otherName != null || otherSpindle != null || otherMark != null;
    return name == null
        ? null
        : new Content.Height(
            sitting.key(),
            name,
            label,
            spindle,
            mark,
            markAsAt,
            null,
            null,
            said ? new Content.OtherEnd(otherName, otherSpindle, otherMark) : null,
            pairing);
  }

  /**
   * Whether the height whose mark is taken is one of this corner, and no later one. Withdrawn
   * meanwhile it is taken too: a phone may have offered it.
   */
  private boolean stoodBefore(long before) {
    Card card = sitting.card();
    return sitting.book().original(markAsAt).orElse(null) instanceof Content.Height taken
        && sitting.book().original(taken.round()).orElse(null) instanceof Content.Round round
        && (round.corner().equals(card.corner())
            || sitting.axle() && round.corner().equals(sitting.mirror().corner()))
        && card.heights().stream().noneMatch(h -> h.n() >= before && h.key().equals(markAsAt));
  }

  private String needed() {
    if (!prefix.isEmpty()) {
      return "The readings of this height need its spindle above the floor.";
    }
    return "Type the spindle's height above the floor"
        + (sitting.axle() ? ", of one end at least." : ".");
  }

  private Pairing pairing(Content.Height start) {
    Pairing first = start.pairing() == null ? Pairing.BOTH_TOGETHER : start.pairing();
    if (settled) {
      a.hidden("pairing", Posted.word(first));
      return first;
    }
    return a.one(prefix + "pairing", "The two ends are moved", Pairing.class, Pairing::words)
        .hint("Crossed is one end up and the other down.")
        .first(first)
        .unknown("Say whether both ends are moved together or crossed.")
        .read();
  }

  /** Both together the other end stands where this one does. */
  private HeightName otherName(Pairing pairing, Content.OtherEnd other) {
    String there = sitting.card().place().mirror().words();
    boolean crossed = pairing == Pairing.CROSSED;
    Supplier<HeightName> asked =
        () ->
            place(
                "otherName",
                Capital.of(there) + " is",
                "Both together it is where the other end is.",
                other.name());
    HeightName name =
        settled || crossed
            ? asked.get()
            : a.more("Where the " + there + " is, when crossed", asked);
    return crossed ? name : null;
  }

  private HeightName place(String field, String legend, String hint, HeightName start) {
    if (settled) {
      a.hidden(field, start == null ? "" : Posted.word(start));
      return start;
    }
    return a.one(prefix + field, legend, HeightName.class, HeightName::words)
        .hint(hint)
        .first(a.sent() && prefix.isEmpty() ? null : start)
        .read();
  }

  private String label(Content.Height start) {
    if (settled) {
      a.hidden("label", start.label() == null ? "" : start.label());
      return start.label();
    }
    return a.more(
        "Words for a height in between",
        () ->
            a.line(prefix + "label", "In your words", ToReadAddress.LONGEST_LABEL)
                .was(start.label())
                .read());
  }

  /** What a height's boxes are called, in the order in which the tape is held to them. */
  static Map<String, String> labels(Sitting at) {
    Map<String, String> labels = new LinkedHashMap<>();
    if (!at.axle()) {
      labels.put("spindle", "Spindle above the floor");
      labels.put("mark", "Frame mark above the floor");
      return labels;
    }
    String here = Capital.of(at.card().place().words());
    String there = Capital.of(at.card().place().mirror().words());
    labels.put("spindle", here + ", spindle above the floor");
    labels.put("otherSpindle", there + ", spindle above the floor");
    labels.put("mark", here + ", frame mark above the floor");
    labels.put("otherMark", there + ", frame mark above the floor");
    return labels;
  }

  private Asked.Box<TypedLength> length(
      String field, String hint, TypedLength start, boolean focused) {
    String name = prefix + field;
    String label = labels(sitting).get(field);
    boolean taken = field.endsWith("ark") && takenFromElsewhere(name);
    Asked.Box<TypedLength> box =
        taken
            ? a.<TypedLength>typed(name, label, t -> null).unit(a.unit().word())
            : a.length(name, label)
                .check(
                    l -> l.mm() <= MOST_MM,
                    "'" + a.text(name).strip() + "' is higher than a car stands.");
    box = box.hint(settled ? "" : hint).was(start);
    return focused ? box.focused() : box;
  }

  /** Whether what stands in a mark's box is not read: the mark is that of another height. */
  private boolean takenFromElsewhere(String name) {
    return (markAsAt != null && !sitting.axle())
        || (!prefix.isEmpty() && a.text(name).strip().equalsIgnoreCase(SAME));
  }

  private void needsMark(String field, TypedLength spindle, TypedLength mark) {
    if (spindle != null && mark == null) {
      a.wrong(
          field,
          a.text(NO_MARK).equals("read")
              ? "Type the frame mark's height above the floor."
              : "No mark: its position will not be known, and nothing is worked out from it."
                  + " Keep it so?");
    }
  }

  private Pick[] picks(long before, boolean without) {
    List<Pick> picks = new ArrayList<>();
    lastMark(sitting, before)
        .ifPresent(
            h ->
                picks.add(new Pick("markAsAt", h.key(), "as at '" + h.words() + "', " + marks(h))));
    if (without) {
      picks.add(new Pick(NO_MARK, "keep", "keep it without a mark"));
      picks.add(new Pick(NO_MARK, "read", "I read the mark first"));
    }
    return picks.toArray(Pick[]::new);
  }

  /** As typed; of both ends where there are two. */
  static String marks(SeenHeight height) {
    Content.OtherEnd other = height.height().otherEnd();
    String mark = height.height().mark().typed();
    return height.height().ofAxle()
        ? mark
            + " and "
            + (other == null || other.mark() == null ? "not read" : other.mark().typed())
        : mark;
  }

  /** The latest mark that was read, first in this round. */
  static Optional<SeenHeight> lastMark(Sitting sitting, long before) {
    Card card = sitting.card();
    Stream<SeenHeight> elsewhere =
        card.heights().stream()
            .filter(h -> h.round().round().onTyres() == sitting.round().onTyres());
    Stream<SeenHeight> here =
        sitting.seen() == null ? Stream.of() : card.heightsOf(sitting.key()).stream();
    return Stream.concat(elsewhere, here)
        .filter(h -> h.n() < before && h.height().mark() != null && h.stands().counts())
        .reduce((first, second) -> second);
  }

  private String lastSpindle(HeightName name) {
    return sitting.card().heights().stream()
        .filter(h -> h.name() == name && name != HeightName.IN_BETWEEN)
        .filter(h -> h.height().spindle() != null)
        .reduce((first, second) -> second)
        .map(h -> "Last time " + h.height().spindle().typed() + ", " + Days.day(h.at()) + ".")
        .orElse("8 1/4, 8.25 in, 210 mm");
  }
}
