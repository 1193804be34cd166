package spindlebook.round;

import java.util.List;
import spindlebook.card.Capital;
import spindlebook.card.Shown;
import spindlebook.drawing.Steer;
import spindlebook.entry.HeightName;
import spindlebook.entry.Steering;
import spindlebook.fold.Card;
import spindlebook.page.Html;
import spindlebook.page.StepBand;

/** Corner, height and steering of a measuring page, in words and in a picture. */
final class StepWords {
  private StepWords() {}

  static StepBand band(Card card, GuidePlan.Step step, String progress) {
    return band(card, step.place().name(), step.place().words(), step.steering(), progress);
  }

  static StepBand band(
      Card card, HeightName name, String words, Steering steering, String progress) {
    Steer steer =
        switch (steering) {
          case FULL_LEFT, PART_LEFT -> Steer.LEFT;
          case FULL_RIGHT, PART_RIGHT -> Steer.RIGHT;
          case STRAIGHT -> Steer.STRAIGHT;
        };
    StepBand.Level level =
        switch (name) {
          case STRAP_OFF, ON_THE_STRAP -> StepBand.Level.DOWN;
          case STOP_TOUCH, FULL_BUMP, STOP_OUT -> StepBand.Level.UP;
          case RIDE, IN_BETWEEN -> StepBand.Level.AT_RIDE;
        };
    return new StepBand(
        Shown.plan(card).steered(steer),
        Capital.of(card.place().words()),
        Capital.of(words),
        level,
        card.layout().steered() ? "Steering " + steering.words() : "",
        progress);
  }

  /** The band as a page shows it, for a phone to put up by itself. */
  static String html(Card card, GuidePlan.Step step) {
    return Html.TEMPLATES.webStep(band(card, step, ""), List.of()).render();
  }
}
