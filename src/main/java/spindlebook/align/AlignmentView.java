package spindlebook.align;

import java.util.List;
import spindlebook.drawing.FigureText;
import spindlebook.drawing.State;
import spindlebook.page.Link;

/**
 * The page of a corner's alignment.
 *
 * @param measure the forms, one for each way
 * @param other the other wheel's page; null where the car has none
 */
public record AlignmentView(List<Block> blocks, List<Link> measure, Link other) {

  public record Block(String title, List<Row> rows) {}

  /**
   * @param figures the figure, then the same said otherwise; empty when there is none
   * @param state of what it rests on where that does not hold, else against its target; null
   *     without one
   * @param word that state in the words of what it is about; null for its own
   * @param words beside it, one short sentence each: what the sign means, the target
   * @param more beneath it: what else ought to be known
   * @param from what it rests on
   * @param beside the same as a round read it, where that does not count here; null without
   */
  public record Row(
      String name,
      List<FigureText> figures,
      State state,
      String word,
      List<String> words,
      List<String> more,
      List<Link> from,
      Beside beside) {}

  /**
   * @param words where it was read and how the car stood
   * @param why it does not count here, one sentence each
   */
  public record Beside(
      String words, FigureText figure, State state, List<String> why, List<Link> from) {}
}
