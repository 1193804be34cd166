package spindlebook.round;

import java.util.List;

/**
 * A round as a blank sheet, to be printed and filled in beside the car: a column a height in the
 * jack plan's order, a row a reading in the order it is typed in afterwards.
 *
 * @param lines what is written at the head: each a label and what is known of it already
 * @param zeroing what can be zeroed first, each with a box
 */
public record PaperView(
    List<Line> lines,
    List<Ticks> conditions,
    List<Tick> zeroing,
    List<Height> heights,
    List<Group> groups) {
  /** {@code said} empty: a line to write on. */
  public record Line(String label, String said) {}

  public record Ticks(String legend, List<Tick> ticks) {}

  public record Tick(String word, boolean ticked) {}

  /**
   * One jack setting.
   *
   * @param title in full
   * @param column the same in a few words
   * @param aim how high to jack, or what to find
   * @param ready what is done to the car before, with its caution; may be empty
   */
  public record Height(String title, String column, String aim, String ready) {}

  /** Readings at one steering; the heights themselves first. */
  public record Group(String title, List<Row> rows) {}

  /**
   * @param hint its rule, or what may be written instead; may be empty
   */
  public record Row(String what, String hint, List<Cell> cells) {}

  /**
   * One box.
   *
   * @param asked else shaded: only where something further out was not clear
   * @param before as it was read last; may be empty
   */
  public record Cell(boolean asked, String before) {}
}
