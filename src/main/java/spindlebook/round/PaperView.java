package spindlebook.round;

import java.util.List;

/**
 * A round as a blank sheet, to be printed and filled in beside the car in the order of the screen.
 *
 * @param lines what is written at the head: each a label and what is known of it already
 * @param zeroing what can be zeroed first, each with a box
 */
public record PaperView(
    List<Line> lines, List<Ticks> conditions, List<Tick> zeroing, List<Height> heights) {
  /** {@code said} empty: a line to write on. */
  public record Line(String label, String said) {}

  public record Ticks(String legend, List<Tick> ticks) {}

  public record Tick(String word, boolean ticked) {}

  /** One jack setting; a solid axle has two spindles there. */
  public record Height(String title, List<Spindle> spindles, List<Swing> swings) {}

  /**
   * Boxes for a spindle and its mark.
   *
   * @param end whose it is, as "left rear: "; empty for a wheel hung alone
   * @param before its spindle as last read; may be empty
   */
  public record Spindle(String end, String before) {}

  /** The readings at one steering. */
  public record Swing(String title, List<Row> rows) {}

  /** One box to fill, with its rule and the value last time; both may be empty. */
  public record Row(String what, String rule, String before) {}
}
