package spindlebook.sheet;

import java.util.List;
import spindlebook.card.Shown;
import spindlebook.drawing.FigureText;
import spindlebook.drawing.State;
import spindlebook.finding.Finding;
import spindlebook.page.Link;

/**
 * A figure on a line of its own, and folded beneath it what ought to be known of it.
 *
 * @param figures the figure, then the same said otherwise; empty when there is none
 * @param state of what it rests on where that does not hold, else what was decided of it; null for
 *     what simply holds
 * @param word that state in the words of what it is about; null for its own
 * @param words beneath it, one short sentence each
 * @param from what it rests on
 * @param beside the same as it was read elsewhere, where that does not count here; null without
 */
public record FigureRow(
    String name,
    List<FigureText> figures,
    State state,
    String word,
    List<String> words,
    List<Link> from,
    Beside beside) {
  /**
   * @param words where it was read and how the car stood
   * @param why it does not count here, one sentence each
   */
  public record Beside(
      String words, FigureText figure, State state, List<String> why, List<Link> from) {}

  /** Of which nothing is decided. */
  public FigureRow(String name, FigureText figure, String... words) {
    this(name, List.of(figure), null, null, List.of(words), List.of(), null);
  }

  public static FigureRow of(
      Finding finding,
      String name,
      List<FigureText> figures,
      List<String> words,
      List<Link> from,
      Beside beside) {
    String word = finding.word().isEmpty() ? null : finding.word();
    return new FigureRow(name, figures, Shown.state(finding), word, words, from, beside);
  }
}
