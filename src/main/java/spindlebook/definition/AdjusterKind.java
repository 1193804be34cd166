package spindlebook.definition;

/** What is set on a corner, an axle or a car. */
public enum AdjusterKind {
  LIMIT_STRAP("limit strap"),
  BUMP_STOP_SPACER("bump-stop spacer"),
  UPPER_ROD_ENDS("upper rod ends"),
  LOWER_ROD_ENDS("lower rod ends"),
  TIE_ROD_LENGTH("tie-rod length"),
  TIE_ROD_SHIM("shim under the outer tie-rod end"),
  TOE_LINK_LENGTH("toe-link length"),
  RACK_POSITION("rack position"),
  STEERING_STOP("steering stop"),
  SPRING_PRELOAD("spring preload"),
  SPRING("spring"),
  SHOCK("shock"),
  TYRE("tyre"),
  TYRE_PRESSURE("tyre pressure"),
  WHEEL("wheel"),
  ARM("arm"),
  PIVOT_SHIMS("shims at the arm's pivots"),
  AXLE_LINKS("links of the axle"),
  PANHARD_ROD("panhard rod"),
  KNUCKLE("knuckle"),
  DRIVE_SHAFT("drive shaft and its joints"),
  HOSE("hose");

  private final String words;

  AdjusterKind(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }

  /** Whether a solid axle has it once, for both its ends. */
  public boolean ofTheAxle() {
    return this == PANHARD_ROD || this == DRIVE_SHAFT;
  }

  /** Whether it is held by a thread: a jam nut, a bolt, a collar, a fitting. */
  public boolean threaded() {
    return switch (this) {
      case SPRING, TYRE, TYRE_PRESSURE -> false;
      default -> true;
    };
  }

  /** What holds it where it is set; for what has no thread, its own name. */
  public String fastener() {
    return switch (this) {
      case LIMIT_STRAP -> "strap bolts";
      case BUMP_STOP_SPACER -> "bump-stop bolts";
      case UPPER_ROD_ENDS,
          LOWER_ROD_ENDS,
          TIE_ROD_LENGTH,
          TOE_LINK_LENGTH,
          AXLE_LINKS,
          PANHARD_ROD ->
          "jam nuts";
      case TIE_ROD_SHIM -> "tie-rod end's bolt";
      case RACK_POSITION -> "rack bolts";
      case STEERING_STOP -> "stop's jam nut";
      case SPRING_PRELOAD -> "preload collar";
      case SHOCK -> "shock bolts";
      case WHEEL -> "wheel nuts";
      case ARM -> "arm bolts";
      case PIVOT_SHIMS -> "pivot bolts";
      case DRIVE_SHAFT -> "drive-shaft bolts";
      case KNUCKLE -> "knuckle's bolts";
      case HOSE -> "hose fittings";
      case SPRING, TYRE, TYRE_PRESSURE -> words;
    };
  }
}
