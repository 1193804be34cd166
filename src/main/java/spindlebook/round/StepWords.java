package spindlebook.round;

import spindlebook.card.Capital;
import spindlebook.card.Shown;
import spindlebook.entry.HeightName;
import spindlebook.entry.Steering;
import spindlebook.fold.Card;
import spindlebook.page.Posted;
import spindlebook.page.StepBand;

/** Corner, height and steering of a measuring page, in words and in a picture. */
final class StepWords {
  private StepWords() {}

  /** At one of so many heights; {@code of} is 0 where they are not counted. */
  static StepBand band(Card card, HeightName name, String words, Steering steering, int n, int of) {
    boolean steered = card.layout().steered();
    return new StepBand(
        Shown.plan(card),
        Capital.of(card.place().words()),
        Capital.of(words.replaceFirst(" \\(.*?\\)", "")),
        name.ordinal(),
        steered ? Posted.word(steering) : "",
        steered ? steering.words() : "",
        n,
        of);
  }
}
