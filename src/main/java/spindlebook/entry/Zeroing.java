package spindlebook.entry;

import spindlebook.definition.Layout;

/**
 * What can be put right before a round is read, so that its readings mean what they say. Each was
 * done or not; a round that names none of them is as good as its owner remembers it.
 */
public enum Zeroing {
  FLOOR("floor level", "The floor is level where the wheel and the frame mark are read."),
  FRAME_MARK(
      "frame mark", "The frame mark stands straight above the spindle and can be seen from it."),
  RACK_CENTRED("rack centred", "The rack is centred and the wheel points straight ahead."),
  STEERING_LINK(
      "steering link", "The steering is linked to the other wheel, or unlinked, as entered."),
  PLAY(
      "no play",
      "Bearing and rod ends have no play; a loose one moves every gap that is read past it."),
  SPRING_AND_STOP_OUT("spring and stop", "Spring and bump stop are out, or in, as entered."),
  ANGLE_FINDER(
      "angle finder",
      "The angle finder was read, turned round and read again; half the difference is noted."),
  SETTLED(
      "rolled and bounced",
      "The car stands on its tyres, rolled and bounced since the jack: what is read at ride may"
          + " count as its alignment.");

  private final String words;
  private final String sentence;

  Zeroing(String words, String sentence) {
    this.words = words;
    this.sentence = sentence;
  }

  public String words() {
    return words;
  }

  /** Whether it can be done at all: on stands a car does not settle. */
  public boolean in(Content.Round round) {
    return this != SETTLED || round.onTyres();
  }

  /** Whether there is anything to put right: the rack and its link are the steered wheels'. */
  public boolean at(Layout layout) {
    return layout.steered() || (this != RACK_CENTRED && this != STEERING_LINK);
  }

  /** What holds once it was done, as one sentence. */
  public String sentence() {
    return sentence;
  }
}
