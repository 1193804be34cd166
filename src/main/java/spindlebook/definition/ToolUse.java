package spindlebook.definition;

/** What a tool reads. */
public enum ToolUse {
  TAPE("lengths"),
  GAPS("gaps"),
  ANGLES("angles");

  private final String words;

  ToolUse(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
