package spindlebook.definition;

/** How a wheel is hung. Only a steered corner is swung lock to lock. */
public enum Layout {
  STEERED_DOUBLE_A_ARM("steered double A-arm", true),
  UNSTEERED_DOUBLE_A_ARM("unsteered double A-arm", false),
  TRAILING_ARM("trailing arm", false),
  SOLID_AXLE_END("end of a solid axle", false);

  private final String words;
  private final boolean steered;

  Layout(String words, boolean steered) {
    this.words = words;
    this.steered = steered;
  }

  public String words() {
    return words;
  }

  public boolean steered() {
    return steered;
  }
}
