package spindlebook.uncertainty;

/** How a figure, an end or one of its limits stands against its rule: the one verdict there is. */
public enum Outcome {
  /** The rule is broken, by more than the uncertainty. */
  SHORT("short"),
  /** The rule lies within the uncertainty. */
  CANT_TELL("can't tell"),
  /** A term is missing; no figure alone comes to this. */
  NEEDS("needs a reading"),
  /** The rule is kept, by at least the uncertainty. */
  CLEAR("clear");

  private final String keptAs;

  Outcome(String keptAs) {
    this.keptAs = keptAs;
  }

  /** In the copy that a sign-off keeps; a page words it by what it is about. */
  public String keptAs() {
    return keptAs;
  }

  /** The one that weighs more: short, then can't tell, then needs, then clear. */
  public Outcome worse(Outcome other) {
    return ordinal() <= other.ordinal() ? this : other;
  }
}
