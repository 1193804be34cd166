package spindlebook.page;

import spindlebook.drawing.FigureText;

/**
 * A key that answers with one tap: a submit button of the form it stands in.
 *
 * @param name the form name it sends
 * @param value what it sends
 * @param word what it says; "11/16" is set as a fraction
 * @param chosen whether this is the answer in force
 */
public record Pick(String name, String value, String word, boolean chosen) {
  public Pick(String name, String value, String word) {
    this(name, value, word, false);
  }

  public FigureText face() {
    return FigureText.of(word, "");
  }
}
