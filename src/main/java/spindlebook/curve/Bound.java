package spindlebook.curve;

/** What a reading says about the value at its place. */
public enum Bound {
  /** The value, within its uncertainty. */
  EXACT,
  /** No less than this: well clear, or a drill that goes with none that does not. */
  AT_LEAST,
  /**
   * No more than this: it touches or binds (0), or a drill that does not go with none that does.
   */
  AT_MOST
}
