package spindlebook.drawing;

import java.util.List;

/**
 * Gaps by height and steering, a block a height, so that a phone never scrolls sideways and a
 * desktop reads the blocks beside the standing tape in the same order.
 *
 * @param steerings column heads, left lock first: "left", "straight", "right"
 * @param heights blocks, highest wheel position first
 */
public record GapSheet(String caption, List<String> steerings, List<Height> heights) {
  public GapSheet {
    steerings = List.copyOf(steerings);
    heights = List.copyOf(heights);
    for (Height height : heights) {
      for (Row row : height.rows()) {
        if (row.cells().size() != steerings.size()) {
          throw new IllegalArgumentException(
              row.what() + ": " + row.cells().size() + " cells, " + steerings.size() + " columns");
        }
      }
    }
  }

  /**
   * @param name "Full droop"
   * @param position wheel position from ride, up positive; null when not known
   */
  public record Height(String name, FigureText position, List<Row> rows) {}

  /**
   * @param what the watch point
   * @param rule "at least 1/4"; may be empty
   */
  public record Row(String what, String rule, List<Cell> cells) {}

  /**
   * @param figure what was read; null when it is a word or nothing
   * @param word "well clear", "binds" …, or empty
   */
  public record Cell(State state, FigureText figure, String word) {
    public static Cell of(State state, String figure) {
      return new Cell(state, FigureText.of(figure, ""), "");
    }

    public static Cell word(State state, String word) {
      return new Cell(state, null, word);
    }
  }
}
