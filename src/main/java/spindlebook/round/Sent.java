package spindlebook.round;

import java.util.Optional;
import spindlebook.corner.CarBook;
import spindlebook.corner.Card;
import spindlebook.corner.Content;
import spindlebook.corner.GapResult;
import spindlebook.corner.Quantity;
import spindlebook.corner.ReadingText;
import spindlebook.corner.SeenHeight;
import spindlebook.corner.SeenRound;
import spindlebook.corner.Steering;
import spindlebook.units.LengthUnit;
import spindlebook.web.Posted;

/**
 * One entry as a phone's outbox sends it. A reading is never sent back: what cannot be read is kept
 * as it was typed and asked about, because whoever typed it may be away from the phone by then.
 */
final class Sent {
  private static final int LONGEST = 200;

  private Sent() {}

  /**
   * What it says, or empty with problems posted.
   *
   * @param book of the round's car: what is withdrawn or answered stands in it
   * @param otherEnd the card of a solid axle's other end
   * @param ask whether somebody is there to be asked about a height without a mark
   */
  static Optional<Content> read(
      Posted posted,
      CarBook book,
      SeenRound round,
      Card card,
      Optional<Card> otherEnd,
      boolean ask) {
    return switch (posted.text("what")) {
      case "height" ->
          HeightForm.read(posted, round, ask) instanceof HeightForm.Accepted accepted
              ? Optional.of(accepted.height())
              : Optional.empty();
      case "reading" -> reading(posted, round, card, otherEnd);
      case "take-back" ->
          target(posted, book).map(t -> new Content.Correction(t, null, "typed by mistake"));
      case "so" -> target(posted, book).map(t -> new Content.Answer(t, true, null));
      case "not" -> target(posted, book).map(t -> new Content.Answer(t, false, null));
      default -> {
        posted.wrong("what", "It does not say whether it is a height or a reading.");
        yield Optional.empty();
      }
    };
  }

  /** A phone may answer before it is asked: what it types it may know to be doubted. */
  private static Optional<String> target(Posted posted, CarBook book) {
    String target = posted.neededLine("target", 80, "It does not say which entry is meant.");
    if (target != null && !book.withdrawable(target)) {
      posted.wrong("target", "Only what was read, set or noted on this car is withdrawn.");
    }
    return Optional.ofNullable(target).filter(t -> posted.ok());
  }

  static Steering steering(String word) {
    for (Steering s : Steering.values()) {
      if (Posted.word(s).equals(word)) {
        return s;
      }
    }
    return Steering.STRAIGHT;
  }

  private static Optional<Content> reading(
      Posted posted, SeenRound round, Card card, Optional<Card> otherEnd) {
    String height = posted.neededLine("height", 80, "It does not say at which height it was read.");
    String text = posted.neededLine("value", LONGEST, "Nothing was typed.");
    if (height == null || text == null) {
      return Optional.empty();
    }
    Steering steering = steering(posted.text("steering"));
    String row = posted.text("row");
    String note = posted.line("note", LONGEST);
    LengthUnit unit = card.height(height).map(SeenHeight::round).orElse(round).round().unit();
    return Optional.of(
        kept(height, unit, steering, row, Asked.byRow(card, otherEnd, steering, row), text, note));
  }

  /**
   * A reading whatever it says: what cannot be read is kept unread.
   *
   * @param asked null when it is not asked for any more
   */
  static Content.Reading kept(
      String height,
      LengthUnit unit,
      Steering steering,
      String row,
      Asked asked,
      String text,
      String note) {
    if (asked == null) {
      return unknown(height, steering, row, text, note);
    }
    ReadingText.Result result = ReadingText.read(text, unit, asked.quantity(), asked.point());
    if (result instanceof ReadingText.Says says) {
      return HeightPages.reading(height, steering, asked, text, says).withNote(note);
    }
    String why =
        result instanceof ReadingText.Refused refused
            ? refused.sentence()
            : "It can be read in more than one way: "
                + String.join(" or ", ((ReadingText.Either) result).choices())
                + ".";
    String point = asked.point() == null ? null : asked.point().point();
    Content.Reading unread = unread(height, steering, asked.quantity(), point, text, why, note);
    return asked.otherEnd() == null ? unread : unread.withAtOtherEnd(true);
  }

  /** Something that is not asked for any more: kept all the same. */
  private static Content.Reading unknown(
      String height, Steering steering, String row, String text, String note) {
    String point = row.startsWith("p-") ? row.substring(2) : row;
    return unread(
        height,
        steering,
        Quantity.WATCH_POINT,
        point.isEmpty() ? "unnamed" : point,
        text,
        "It is a reading of something that is not watched here.",
        note);
  }

  private static Content.Reading unread(
      String height,
      Steering steering,
      Quantity quantity,
      String point,
      String text,
      String why,
      String note) {
    return new Content.Reading(
        height,
        steering,
        quantity,
        point,
        GapResult.UNREAD,
        text,
        null,
        null,
        null,
        null,
        why,
        null,
        note);
  }
}
