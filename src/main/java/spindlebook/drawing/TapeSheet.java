package spindlebook.drawing;

import java.util.List;

/**
 * The standing tape as a workshop drawing: labels to both sides of it, every place worked out.
 * Heights count down from the top in sixteenths of the reader's text size, so that the drawing
 * grows with the text; places across are shares of the page's width, in percent.
 *
 * @param tapeFrom where the tape stands, percent of the width
 * @param tapeWide how wide it is, percent
 * @param faceTop where the tape begins
 * @param keyTop where beside it its fills are told apart; null where there is no room
 */
public record TapeSheet(
    String title,
    double height,
    double tapeFrom,
    double tapeWide,
    TapeFace face,
    double faceTop,
    List<Line> lines,
    List<Note> notes,
    Double keyTop) {
  /** Heights of a figure, of a line of words and of one of quiet words. */
  public static final double FIGURE = 25;

  public static final double WORDS = 21;
  public static final double SMALL = 18;

  /** Of the fills' key, its border with it. */
  public static final double FILLS = 3 * SMALL + 20;

  /**
   * A straight line.
   *
   * @param mark its classes
   * @param ends the arrow head at both ends; null for none
   */
  public record Line(String mark, String ends, double x1, double y1, double x2, double y2) {}

  /**
   * A label.
   *
   * @param mark its classes
   * @param size the class that sets its figure
   * @param words bold; may be empty
   * @param sub quiet, on a line of its own; may be empty
   * @param state the shape before its words; null for none
   * @param lock the way the wheels are turned, as an arrow; null for none
   * @param href where what it rests on is told, or where it is done; null for neither
   */
  public record Note(
      String mark,
      double x,
      double y,
      double width,
      double height,
      FigureText figure,
      String size,
      String words,
      String sub,
      State state,
      Steer lock,
      String href) {
    /** An empty one in its place. */
    public static Note at(String mark, double x, double y, double width, double height) {
      return new Note(
          ("note " + mark).strip(), x, y, width, height, null, "t2", "", "", null, null, null);
    }

    public Note figure(FigureText text, String size) {
      return new Note(mark, x, y, width, height, text, size, words, sub, state, lock, href);
    }

    public Note words(String bold, String quiet) {
      return new Note(mark, x, y, width, height, figure, size, bold, quiet, state, lock, href);
    }

    public Note state(State shape, Steer turned) {
      return new Note(mark, x, y, width, height, figure, size, words, sub, shape, turned, href);
    }

    public Note href(String to) {
      return new Note(mark, x, y, width, height, figure, size, words, sub, state, lock, to);
    }
  }

  /** Drawing units as a length of the page. */
  public static String rem(double units) {
    return Math.round(units / 16 * 100) / 100.0 + "rem";
  }
}
