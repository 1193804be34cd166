package spindlebook.entry;

/** How the two ends of a solid axle stood to each other at a height. */
public enum Pairing {
  /** Both ends up or down by the same: the axle level. */
  BOTH_TOGETHER("both together"),
  /** One end up, the other down. */
  CROSSED("crossed");

  private final String words;

  Pairing(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
