package spindlebook.round;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import spindlebook.card.Capital;
import spindlebook.card.ToReadAddress;
import spindlebook.corner.Card;
import spindlebook.corner.Content;
import spindlebook.corner.HeightName;
import spindlebook.corner.Pairing;
import spindlebook.corner.SeenHeight;
import spindlebook.corner.SeenRound;
import spindlebook.units.LengthUnit;
import spindlebook.units.TypedLength;
import spindlebook.web.Choice;
import spindlebook.web.Field;
import spindlebook.web.FormPart;
import spindlebook.web.Pick;
import spindlebook.web.Posted;

/**
 * A height of a solid axle as typed: both ends' spindle and mark, and how the ends stand. One end
 * alone is kept too: its position is known, the other's is not.
 */
final class AxleHeightForm {
  static final String PAIRING = "pairing";
  static final String OTHER_NAME = "otherName";
  private static final String OTHER_SPINDLE = "otherSpindle";
  private static final String OTHER_MARK = "otherMark";

  private AxleHeightForm() {}

  static HeightForm read(Posted posted, SeenRound round, boolean ask) {
    LengthUnit unit = round.round().unit();
    HeightName name = posted.word("name", HeightName.class, null);
    if (name == null) {
      posted.wrong("name", "Say which height this is.");
    }
    Pairing pairing = posted.word(PAIRING, Pairing.class, null);
    if (pairing == null) {
      posted.wrong(PAIRING, "Say whether both ends are moved together or crossed.");
    }
    TypedLength spindle = height(posted, "spindle", unit);
    TypedLength otherSpindle = height(posted, OTHER_SPINDLE, unit);
    if (spindle == null
        && otherSpindle == null
        && posted.problem("spindle").isEmpty()
        && posted.problem(OTHER_SPINDLE).isEmpty()) {
      posted.wrong("spindle", "Type the spindle's height above the floor, of one end at least.");
    }
    String asAt = posted.line("markAsAt", 80);
    TypedLength mark = height(posted, "mark", unit);
    TypedLength otherMark = height(posted, OTHER_MARK, unit);
    String label = posted.line("label", ToReadAddress.LONGEST_LABEL);
    if (ask && asAt == null && !posted.text(HeightForm.NO_MARK).equals("keep")) {
      withoutMark(posted, "mark", spindle, mark);
      withoutMark(posted, OTHER_MARK, otherSpindle, otherMark);
    }
    if (!posted.ok()) {
      return new HeightForm.Problems();
    }
    HeightName other =
        pairing == Pairing.CROSSED ? posted.word(OTHER_NAME, HeightName.class, null) : null;
    Content.OtherEnd otherEnd =
        other == null && otherSpindle == null && otherMark == null
            ? null
            : new Content.OtherEnd(other, otherSpindle, otherMark);
    return new HeightForm.Accepted(
        new Content.Height(
            round.key(), name, label, spindle, mark, asAt, null, null, otherEnd, pairing));
  }

  private static TypedLength height(Posted posted, String name, LengthUnit unit) {
    TypedLength length = posted.lengthFromZero(name, unit);
    if (length != null && length.mm() > HeightForm.MOST_MM) {
      posted.wrong(name, "'" + length.typed() + "' is higher than a car stands.");
    }
    return length;
  }

  private static void withoutMark(
      Posted posted, String name, TypedLength spindle, TypedLength mark) {
    if (spindle != null && mark == null && posted.problem(name).isEmpty()) {
      posted.wrong(
          name,
          "No mark: its position will not be known, and nothing is worked out from it. Keep it"
              + " so?");
    }
  }

  /**
   * @param before position in the book: only a height above it has a mark to take
   */
  static List<FormPart> parts(
      Posted posted, Card card, SeenRound round, HeightName next, long before) {
    HeightName chosen = posted.word("name", HeightName.class, next);
    Pairing pairing = posted.word(PAIRING, Pairing.class, Pairing.BOTH_TOGETHER);
    HeightName other = posted.word(OTHER_NAME, HeightName.class, null);
    String here = Capital.of(card.place().words());
    String there = Capital.of(card.place().mirror().words());
    String unit = round.round().unit().word();
    boolean spindleWrong = !posted.problem("spindle").isEmpty() || posted.ok();
    List<Pick> marks = marks(posted, card, round, before);
    List<FormPart> parts = new ArrayList<>();
    parts.add(
        new FormPart.Chosen(
            new Choice(
                PAIRING,
                "The two ends are moved",
                "Crossed is one end up and the other down.",
                posted.problem(PAIRING),
                Arrays.stream(Pairing.values())
                    .map(p -> new Choice.Option(Posted.word(p), p.words(), "", p == pairing))
                    .toList())));
    parts.add(
        new FormPart.Chosen(
            new Choice("name", here + " is", "", posted.problem("name"), names(chosen))));
    parts.add(
        new FormPart.More(
            "Where the " + card.place().mirror().words() + " is, when crossed",
            pairing == Pairing.CROSSED,
            List.of(
                new FormPart.Chosen(
                    new Choice(
                        OTHER_NAME,
                        there + " is",
                        "Both together it is where the other end is.",
                        posted.problem(OTHER_NAME),
                        names(other))))));
    parts.add(
        typed(
            posted,
            HeightForm.focused(
                Field.of("spindle", here + ", spindle above the floor")
                    .hint(HeightForm.last(card, chosen).orElse("8 1/4, 8.25 in, 210 mm"))
                    .unit(unit),
                spindleWrong)));
    parts.add(
        typed(
            posted,
            Field.of(OTHER_SPINDLE, there + ", spindle above the floor")
                .hint("Left empty, that end's position is not known.")
                .unit(unit)));
    parts.add(
        typed(
            posted,
            Field.of("mark", here + ", frame mark above the floor")
                .hint("Read both again, or say below that they did not move.")
                .unit(unit)));
    parts.add(
        typed(
            posted,
            Field.of(OTHER_MARK, there + ", frame mark above the floor")
                .unit(unit)
                .picks(marks.toArray(Pick[]::new))));
    parts.add(
        new FormPart.More(
            "Words for a height in between",
            posted.has("label"),
            List.of(typed(posted, Field.of("label", "In your words")))));
    return List.copyOf(parts);
  }

  private static FormPart typed(Posted posted, Field field) {
    return new FormPart.Typed(posted.fill(field));
  }

  private static List<Choice.Option> names(HeightName chosen) {
    return Arrays.stream(HeightName.values())
        .map(n -> new Choice.Option(Posted.word(n), n.words(), "", n == chosen))
        .toList();
  }

  private static List<Pick> marks(Posted posted, Card card, SeenRound round, long before) {
    List<Pick> picks = new ArrayList<>();
    HeightForm.lastMark(card, round, before)
        .ifPresent(
            h ->
                picks.add(
                    new Pick("markAsAt", h.key(), "both as at '" + h.words() + "', " + marks(h))));
    boolean asked =
        List.of("mark", OTHER_MARK).stream()
            .anyMatch(m -> !posted.problem(m).isEmpty() && !posted.has(m));
    if (asked) {
      picks.add(new Pick(HeightForm.NO_MARK, "keep", "keep it without a mark"));
    }
    return picks;
  }

  private static String marks(SeenHeight height) {
    Content.OtherEnd other = height.height().otherEnd();
    return height.height().mark().typed()
        + " and "
        + (other == null || other.mark() == null ? "not read" : other.mark().typed());
  }
}
