package spindlebook.ride;

/** What is missing for a figure of springs, stops and straps. */
public enum RideNeed {
  SPRING("the spring's rate"),
  LOOSE("how far the spring is pressed together with the shock open"),
  SHOCK_OPEN("the shock's open length"),
  SHOCK_CLOSED("the shock's closed length"),
  SHOCK_LENGTHS("the shock's length at more heights"),
  WEIGHT("the corner's weight, and what of it the spring does not carry"),
  DROOP("where the strap stops the wheel"),
  BUMP("where the bump stop is solid"),
  RIDE("a ride height on the shock lengths read"),
  TOUCH("where the bump stop is first touched"),
  LANDING("a longer chart of the bump stop, or shock lengths further up"),
  STRAP_NEW("the new strap's length and its stretch"),
  DRIVES("how long each drive was, all in one unit"),
  READINGS("the strap's length after more drives"),
  MAY_NEVER("more drives: so far it may never get there"),
  TOO_FAR("more drives: the end is too far ahead to tell");

  private final String words;

  RideNeed(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
