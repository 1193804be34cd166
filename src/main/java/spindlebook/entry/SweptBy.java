package spindlebook.entry;

/** What the angle of a caster sweep counts. The two differ by about 1 % of caster or more. */
public enum SweptBy {
  /** Where the wheel heads over the floor, as turn plates show it; 0 is straight along the car. */
  WHEEL_HEADING("the wheel's heading on the turn plates"),
  /** How far the knuckle has turned about the kingpin since straight ahead. */
  KINGPIN_TURN("the turn about the kingpin");

  private final String words;

  SweptBy(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
