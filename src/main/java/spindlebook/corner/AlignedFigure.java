package spindlebook.corner;

/** A figure of alignment that an owner may set a target for. Signs are ISO 8855's. */
public enum AlignedFigure {
  CAMBER("camber", "+ top outward", AlignedThing.CAMBER),
  TOE("toe of this wheel", "+ front edge inward", AlignedThing.TOE),
  TOTAL_TOE("total toe", "+ front edges inward", AlignedThing.TOTAL_TOE),
  CASTER("caster", "+ top of the axis rearward", AlignedThing.STEERING_AXIS),
  KPI("KPI", "+ top of the axis inboard", AlignedThing.STEERING_AXIS),
  SCRUB("scrub", "+ axis meets the ground inboard of the contact", AlignedThing.GROUND_POINT),
  TRAIL("trail", "+ axis meets the ground ahead of the contact", AlignedThing.GROUND_POINT),
  TRACK("track", "wheel centre to wheel centre", AlignedThing.TRACK);

  private final String words;
  private final String sign;
  private final AlignedThing thing;

  AlignedFigure(String words, String sign, AlignedThing thing) {
    this.words = words;
    this.sign = sign;
    this.thing = thing;
  }

  public String words() {
    return words;
  }

  /** Which way + is. */
  public String sign() {
    return sign;
  }

  /** What it is measured by; scrub and trail need the axis, camber and toe as well. */
  public AlignedThing thing() {
    return thing;
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
