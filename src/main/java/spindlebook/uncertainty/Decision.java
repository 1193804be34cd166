package spindlebook.uncertainty;

/** What may be said of a figure and its rule. */
public enum Decision {
  /** The rule is kept, by at least the uncertainty. */
  CLEAR,
  /** The rule is broken, by more than the uncertainty. */
  SHORT,
  /** The rule lies within the uncertainty. */
  CANT_TELL
}
