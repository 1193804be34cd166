package spindlebook.entry;

/** How a reading came out. These differ and are kept apart. */
public enum GapResult {
  NUMBER("read"),
  GO_NO_GO("go / no-go"),
  WELL_CLEAR("well clear"),
  TOUCHES("touches"),
  BINDS("binds"),
  NOT_LOOKED("not looked"),
  UNREAD("not read yet");

  private final String words;

  GapResult(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
