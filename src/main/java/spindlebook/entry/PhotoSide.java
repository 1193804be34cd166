package spindlebook.entry;

/** Which side of a change a photo shows. */
public enum PhotoSide {
  BEFORE("before"),
  AFTER("after");

  private final String words;

  PhotoSide(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
