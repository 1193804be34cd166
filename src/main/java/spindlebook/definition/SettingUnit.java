package spindlebook.definition;

/** In what an adjuster is set. */
public enum SettingUnit {
  LENGTH("length"),
  HOLES("holes"),
  TURNS("turns"),
  WORDS("words");

  private final String words;

  SettingUnit(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
