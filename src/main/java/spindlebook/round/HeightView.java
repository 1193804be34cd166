package spindlebook.round;

import java.util.List;
import spindlebook.page.ReadingRow;

/**
 * The readings at one height and steering.
 *
 * @param saved what was just put in the book; null when nothing was
 * @param own how the height itself was read
 * @param others readings of places this corner does not watch: kept, and not counted
 * @param allHref everything that can be read here, when a plan shows only a part; null otherwise
 */
public record HeightView(
    String height,
    String steering,
    List<Tab> tabs,
    JustSaved saved,
    List<Row> rows,
    List<Said> others,
    String own,
    String raw,
    String allHref,
    String roundHref) {

  /** One steering of this height. */
  public record Tab(String word, String href, boolean here, String count) {}

  /** One reading to take. */
  public record Row(String row, String key, long after, ReadingRow reading, List<Said> said) {}

  /** A reading already taken here. */
  public record Said(String words, spindlebook.drawing.State state, String href) {}
}
