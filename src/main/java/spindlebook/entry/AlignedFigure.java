package spindlebook.entry;

/** A figure of alignment that an owner may set a target for. Signs are ISO 8855's. */
public enum AlignedFigure {
  CAMBER("camber", "top outward", "top inward", AlignedThing.CAMBER),
  TOE(
      "toe of this wheel",
      "toe-in, front edge inward",
      "toe-out, front edge outward",
      AlignedThing.TOE),
  TOTAL_TOE(
      "total toe",
      "toe-in, front edges inward",
      "toe-out, front edges outward",
      AlignedThing.TOTAL_TOE),
  CASTER(
      "caster", "top of the axis rearward", "top of the axis forward", AlignedThing.STEERING_AXIS),
  KPI("KPI", "top of the axis inboard", "top of the axis outboard", AlignedThing.STEERING_AXIS),
  SCRUB(
      "scrub",
      "axis meets the ground inboard of the contact",
      "axis meets the ground outboard of the contact",
      AlignedThing.GROUND_POINT),
  TRAIL(
      "trail",
      "axis meets the ground ahead of the contact",
      "axis meets the ground behind the contact",
      AlignedThing.GROUND_POINT),
  TRACK("track", "wheel centre to wheel centre", "", AlignedThing.TRACK);

  private final String words;
  private final String plus;
  private final String minus;
  private final AlignedThing thing;

  AlignedFigure(String words, String plus, String minus, AlignedThing thing) {
    this.words = words;
    this.plus = plus;
    this.minus = minus;
    this.thing = thing;
  }

  public String words() {
    return words;
  }

  /** What a value above 0 means. */
  public String plus() {
    return plus;
  }

  /** What a value below 0 means; empty where there is none. */
  public String minus() {
    return minus;
  }

  /** What it is measured by; scrub and trail need the axis, camber and toe as well. */
  public AlignedThing thing() {
    return thing;
  }

  /** Whether only a wheel that steers has it. */
  public boolean ofSteeringAxis() {
    return thing == AlignedThing.STEERING_AXIS || thing == AlignedThing.GROUND_POINT;
  }

  /** Whether a target for it may be an angle. */
  public boolean angle() {
    return thing != AlignedThing.GROUND_POINT && thing != AlignedThing.TRACK;
  }

  /** Whether a target for it may be a length: toe may be either. */
  public boolean length() {
    return !angle() || this == TOE || this == TOTAL_TOE;
  }
}
