package spindlebook.entry;

import spindlebook.units.NumberText;

/** In what a drive is counted. */
public enum UseUnit {
  HOURS("hours"),
  MILES("miles"),
  KILOMETRES("kilometres"),
  DAYS("days out");

  private final String words;

  UseUnit(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }

  /** One hour, one day out; two hours. */
  public String words(double amount) {
    return amount == 1
        ? (this == DAYS ? "day out" : words.substring(0, words.length() - 1))
        : words;
  }

  /** {@code 4.5 hours}. */
  public String said(double amount) {
    return NumberText.plain(amount) + " " + words(amount);
  }
}
