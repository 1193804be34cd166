package spindlebook.card;

import spindlebook.fold.CarBook;

/** What goes with an entry when it is taken back. */
public final class TakesAlong {
  private TakesAlong() {}

  /** One sentence before it is done; empty when nothing hangs on the entry. */
  public static String before(CarBook history, String entry) {
    long readings = history.readingsOf(entry);
    return readings == 0
        ? ""
        : Counted.of(readings, "reading hangs", "readings hang")
            + " on it and "
            + (readings == 1 ? "goes" : "go")
            + " with it.";
  }

  /** One sentence once it was done; empty when nothing hung on the entry. */
  public static String after(CarBook history, String entry) {
    long readings = history.readingsOf(entry);
    return readings == 0
        ? ""
        : Counted.of(readings, "reading") + " went with it; put back, it all counts again.";
  }
}
