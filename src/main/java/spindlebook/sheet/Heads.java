package spindlebook.sheet;

/**
 * What the two columns are called.
 *
 * @param one "entry 23"
 */
public record Heads(String one, String other) {
  /** Which way round a difference is. */
  public String apart() {
    return other + " less " + one;
  }
}
