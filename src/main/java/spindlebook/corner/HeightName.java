package spindlebook.corner;

/**
 * What one jack setting is called, from the lowest wheel to the highest. A name of a stop makes the
 * height say where that stop is; the readings that hang on it belong to the wheel position alone.
 */
public enum HeightName {
  STRAP_OFF("strap off, hanging", false),
  ON_THE_STRAP("on the strap (full droop)", true),
  IN_BETWEEN("in between", false),
  RIDE("ride height", true),
  STOP_TOUCH("bump stop touches", true),
  FULL_BUMP("full bump, stop solid", true);

  private final String words;
  private final boolean onePlace;

  HeightName(String words, boolean onePlace) {
    this.words = words;
    this.onePlace = onePlace;
  }

  public String words() {
    return words;
  }

  /** The same name later is the same place (an 'in between' is a place of its own each time). */
  public boolean onePlace() {
    return onePlace;
  }
}
