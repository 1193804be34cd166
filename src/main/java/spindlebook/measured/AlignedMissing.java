package spindlebook.measured;

/** Why there is no figure of alignment. */
public enum AlignedMissing {
  NOT_MEASURED("not measured yet"),
  NO_AXIS("no steering axis explains these readings: read the sweep again"),
  AXIS("needs caster and KPI: a sweep"),
  JOINT("needs where the lower joint lies, and the loaded radius"),
  OTHER_WHEEL("needs toe of the other wheel, or a tape across both tyres");

  private final String words;

  AlignedMissing(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
