package spindlebook.corner;

/** What is set on a corner, an axle or a car. */
public enum AdjusterKind {
  LIMIT_STRAP("limit strap"),
  BUMP_STOP_SPACER("bump-stop spacer"),
  UPPER_ROD_ENDS("upper rod ends"),
  LOWER_ROD_ENDS("lower rod ends"),
  TIE_ROD_LENGTH("tie-rod length"),
  TIE_ROD_SHIM("shim under the outer tie-rod end"),
  RACK_POSITION("rack position"),
  STEERING_STOP("steering stop"),
  SPRING_PRELOAD("spring preload"),
  SPRING("spring"),
  SHOCK("shock"),
  TYRE("tyre"),
  TYRE_PRESSURE("tyre pressure"),
  WHEEL("wheel"),
  ARM("arm"),
  KNUCKLE("knuckle"),
  HOSE("hose");

  private final String words;

  AdjusterKind(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
