package spindlebook.round;

import java.util.Optional;
import spindlebook.definition.WatchPoint;
import spindlebook.entry.Content;
import spindlebook.entry.GapResult;
import spindlebook.entry.Quantity;
import spindlebook.entry.ReadingText;
import spindlebook.entry.Steering;
import spindlebook.page.Posted;
import spindlebook.units.LengthUnit;

/**
 * One reading as somebody typed it, on whatever page or phone: here alone it becomes an entry.
 *
 * @param height the key of the height it was read at
 * @param row which slot it fills
 * @param note what was seen besides; null when nothing was
 */
record SentReading(String height, Steering steering, String row, String text, String note) {
  static final int LONGEST = 200;
  static final String NOTHING = "Type what the tape says, or tap one of the words.";

  /** As an outbox sends it, and the form of a step; null with a problem. */
  static SentReading of(Posted posted) {
    String height = posted.neededLine("height", 80, "It does not say at which height it was read.");
    String text = posted.neededLine("value", LONGEST, "Nothing was typed.");
    return height == null || text == null
        ? null
        : new SentReading(
            height, steering(posted), posted.text("row"), text, posted.line("note", LONGEST));
  }

  static Steering steering(Posted posted) {
    return posted.word("steering", Steering.class, Steering.STRAIGHT);
  }

  /**
   * Where somebody is there to be asked: empty, with a problem under the field, when it cannot be
   * read.
   */
  Optional<Content.Reading> asked(Slot slot, LengthUnit bare, Posted posted, String field) {
    return says(posted, field, bare, slot.quantity(), slot.point())
        .map(says -> entry(slot.quantity(), slot.key(), says, null, slot.otherEnd() != null));
  }

  /** What a text says of one quantity, or empty with a problem posted to its field. */
  static Optional<ReadingText.Says> says(
      Posted posted, String field, LengthUnit bare, Quantity quantity, WatchPoint point) {
    String text = posted.text(field).strip();
    if (text.isEmpty()) {
      posted.wrong(field, NOTHING);
      return Optional.empty();
    }
    ReadingText.Result result = ReadingText.read(text, bare, quantity, point);
    if (result instanceof ReadingText.Says says) {
      return Optional.of(says);
    }
    if (result instanceof ReadingText.Either either) {
      posted.ask(field, either.choices());
    } else if (result instanceof ReadingText.Refused refused) {
      posted.wrong(field, refused.sentence());
    }
    return Optional.empty();
  }

  /**
   * Whatever it says: whoever typed it may be away from the phone by now, so what cannot be read is
   * kept as it was typed and asked about.
   *
   * @param slot empty when it is not asked for any more
   */
  Content.Reading kept(Optional<Slot> slot, LengthUnit bare) {
    if (slot.isEmpty()) {
      boolean far = row.startsWith(Slot.OTHER_END);
      String what = far ? row.substring(Slot.OTHER_END.length()) : row;
      String point = what.startsWith("p-") ? what.substring(2) : what;
      return unread(
          Quantity.WATCH_POINT,
          point.isEmpty() ? "unnamed" : point,
          "It is a reading of something that is not watched here.",
          far);
    }
    Slot into = slot.get();
    boolean other = into.otherEnd() != null;
    ReadingText.Result result = ReadingText.read(text, bare, into.quantity(), into.point());
    if (result instanceof ReadingText.Says says) {
      return entry(into.quantity(), into.key(), says, null, other);
    }
    String why =
        result instanceof ReadingText.Refused refused
            ? refused.sentence()
            : "It can be read in more than one way: "
                + String.join(" or ", ((ReadingText.Either) result).choices())
                + ".";
    return unread(into.quantity(), into.key(), why, other);
  }

  private Content.Reading unread(Quantity quantity, String point, String why, boolean otherEnd) {
    ReadingText.Says nothing = new ReadingText.Says(GapResult.UNREAD, null, null, null, null);
    return entry(quantity, point, nothing, why, otherEnd);
  }

  private Content.Reading entry(
      Quantity quantity, String point, ReadingText.Says says, String doubt, boolean otherEnd) {
    return new Content.Reading(
        height,
        steering,
        quantity,
        point,
        says.result(),
        text.strip(),
        says.length(),
        says.angle(),
        says.go(),
        says.noGo(),
        doubt,
        null,
        note,
        otherEnd ? Boolean.TRUE : null);
  }
}
