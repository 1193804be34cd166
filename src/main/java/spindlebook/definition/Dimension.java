package spindlebook.definition;

/** A length of the corner that is given once, not read at a height. Millimetres, all positive. */
public enum Dimension {
  NEW_STRAP_LENGTH("new strap, mount to mount, at its first setting"),
  STOP_CRUSH("bump stop's crush, touch to solid"),
  SHOCK_OPEN("shock fully open, eye to eye"),
  SHOCK_CLOSED("shock fully closed, eye to eye"),
  MARK_TO_LOWEST_FRAME("frame mark down to the lowest frame point"),
  MARK_INBOARD("frame mark inboard of the spindle"),
  READ_POINT_OUTBOARD("read point outboard of the wheel centre"),
  TYRE_LOADED_RADIUS("tyre's loaded radius"),
  TYRE_SQUASHED_RADIUS("tyre's squashed radius, hard landing"),
  TOE_ACROSS("toe read as a length: how far apart its two places are"),
  TOE_RANGE("most that toe of this wheel may wander over the usable travel, across that"),
  RACK_TRAVEL("rack, from straight ahead to a lock");

  private final String words;

  Dimension(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
