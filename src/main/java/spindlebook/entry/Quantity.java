package spindlebook.entry;

/** What one reading is of. {@code WATCH_POINT} readings name their point. */
public enum Quantity {
  WATCH_POINT("watch point"),
  STRAP_LENGTH("strap, mount to mount"),
  SHOCK_LENGTH("shock, eye to eye"),
  STOP_GAP("bump stop to its pad"),
  CAMBER("camber"),
  TOE("toe of this wheel");

  private final String words;

  Quantity(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
