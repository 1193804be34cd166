package spindlebook.entry;

/**
 * What one jack setting is called, from the lowest wheel to the highest. A name of a stop makes the
 * height say where that stop is; the readings that hang on it belong to the wheel position alone.
 * Past where a stop ends the motion, with the stop off or out, is a height of its own: whatever is
 * read there says nothing of where the stop is.
 */
public enum HeightName {
  STRAP_OFF("strap off, hanging", false),
  ON_THE_STRAP("on the strap (full droop)", true),
  IN_BETWEEN("in between", false),
  RIDE("ride height", true),
  STOP_TOUCH("bump stop touches", true),
  FULL_BUMP("full bump, stop solid", true),
  STOP_OUT("stop out, past solid", false);

  private final String words;
  private final boolean onePlace;

  HeightName(String words, boolean onePlace) {
    this.words = words;
    this.onePlace = onePlace;
  }

  public String words() {
    return words;
  }

  /** The same name later is the same place (in between and past a stop each is one of its own). */
  public boolean onePlace() {
    return onePlace;
  }

  /** Past where a stop ends the motion: no wheel drives there. */
  public boolean pastAStop() {
    return this == STRAP_OFF || this == STOP_OUT;
  }
}
