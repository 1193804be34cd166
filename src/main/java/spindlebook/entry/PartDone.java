package spindlebook.entry;

/** What was done with a part. */
public enum PartDone {
  FITTED("fitted"),
  LOOKED_AT("looked at"),
  TAKEN_OFF("taken off");

  private final String words;

  PartDone(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
