package spindlebook.sums;

import java.util.List;
import spindlebook.drawing.FigureText;
import spindlebook.drawing.State;
import spindlebook.page.FormPart;

/**
 * A sum tried on paper: what was typed stays beside what comes of it, and nothing of it goes into
 * the book. Its address holds it all, so that it can be kept or sent.
 */
public record OnPaperView(
    String action, List<FormPart> parts, String submit, List<Block> blocks, List<String> notes) {

  /** Whether what was typed is to be seen at once: nothing came of it, or some of it is wrong. */
  public boolean open() {
    return blocks.isEmpty() || FormPart.wrong(parts);
  }

  public record Block(String title, List<Line> lines) {}

  /**
   * @param figure null where words say it all
   * @param words smaller, beneath; may be empty
   * @param state null where nothing is decided
   */
  public record Line(String name, FigureText figure, String words, State state) {
    public Line(String name, FigureText figure, String words) {
      this(name, figure, words, null);
    }
  }
}
