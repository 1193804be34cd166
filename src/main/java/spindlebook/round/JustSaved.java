package spindlebook.round;

import java.util.Optional;
import spindlebook.card.TakesAlong;
import spindlebook.drawing.Lengths;
import spindlebook.entry.Content;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.fold.SeenReading;
import spindlebook.page.FormKey;
import spindlebook.uncertainty.Figure;
import spindlebook.words.EntryWords;

/**
 * What was just put in the book, and how to undo it.
 *
 * @param against the last time; empty where there was none
 * @param takesAlong what goes with it when it is taken back; empty when nothing does
 * @param repeats whether it can count again or instead; {@code instead} whether it does so now
 */
public record JustSaved(
    String key,
    String words,
    String against,
    String doubt,
    String takesAlong,
    FormKey takeBackKey,
    boolean repeats,
    boolean instead,
    FormKey countsKey) {

  /** Null when nothing was saved, or it is gone again. */
  static JustSaved of(Sitting at, String key) {
    CarBook history = at.book();
    Content content = key == null ? null : history.standing(key).orElse(null);
    if (content == null) {
      return null;
    }
    Card card =
        at.otherEnd()
            .filter(o -> o.reading(key).isPresent() && at.card().reading(key).isEmpty())
            .orElse(at.card());
    Optional<SeenReading> reading = card.reading(key);
    Optional<SeenReading> before = reading.flatMap(card::before);
    String doubt =
        card.doubts().stream()
            .filter(d -> d.key().equals(key))
            .map(d -> d.doubt())
            .findFirst()
            .orElse("");
    boolean instead =
        before.isPresent()
            && reading.map(r -> Boolean.FALSE.equals(r.reading().again())).orElse(false);
    return new JustSaved(
        key,
        new EntryWords(history).of(content),
        reading.flatMap(r -> before.map(b -> against(card, r, b))).orElse(""),
        doubt,
        TakesAlong.before(history, key),
        FormKey.fresh(0),
        before.filter(JustSaved::counts).isPresent() || instead,
        instead,
        FormKey.fresh(0));
  }

  /** Along the travel or, without a wheel position, where it is named. */
  private static boolean counts(SeenReading before) {
    return before.stands().counts() || before.named().counts();
  }

  /** The change against last time, and whether it counts again or instead. */
  private static String against(Card card, SeenReading now, SeenReading before) {
    String counts =
        counts(before) ? "counts again, with the one before" : "counts instead of the one before";
    Figure one = now.value();
    Figure other = before.value();
    boolean lengths =
        one != null
            && other != null
            && now.reading().angle() == null
            && before.reading().angle() == null;
    String read = EntryWords.value(before.reading()) + " · " + counts;
    return lengths
        ? new Lengths(card.details().unit()).signedText(one.value() - other.value())
            + " against last time, "
            + read
        : "last time " + read;
  }
}
