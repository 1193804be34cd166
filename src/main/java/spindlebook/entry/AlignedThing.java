package spindlebook.entry;

/** What one measurement of alignment is of: a change moves all of it or none. */
public enum AlignedThing {
  CAMBER("camber", false),
  TOE("toe of this wheel", false),
  TOTAL_TOE("total toe", true),
  STEERING_AXIS("caster and KPI", false),
  GROUND_POINT("scrub and trail", false),
  TRACK("track", true);

  private final String words;
  private final boolean ofAxle;

  AlignedThing(String words, boolean ofAxle) {
    this.words = words;
    this.ofAxle = ofAxle;
  }

  public String words() {
    return words;
  }

  /** Whether it is of both wheels of the axle, whichever corner it was written down at. */
  public boolean ofAxle() {
    return ofAxle;
  }
}
