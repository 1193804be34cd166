package spindlebook.entry;

/** Who or what sat in the car while it was measured at ride. */
public enum Load {
  NOBODY("nobody in"),
  DRIVER("driver in"),
  BALLAST("ballast for the driver");

  private final String words;

  Load(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
