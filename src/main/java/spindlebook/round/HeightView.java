package spindlebook.round;

import java.util.List;
import spindlebook.web.ReadingRow;

/**
 * The readings at one height and steering.
 *
 * @param saved what was just put in the book; null when nothing was
 * @param allHref everything that can be read here, when a plan shows only a part; null otherwise
 */
public record HeightView(
    String height,
    String steering,
    List<Tab> tabs,
    Saved saved,
    List<Row> rows,
    String raw,
    String allHref,
    String roundHref) {

  /** One steering of this height. */
  public record Tab(String word, String href, boolean here, String count) {}

  /** What was just kept, and how to undo it. */
  public record Saved(
      String key, String words, String against, String doubt, boolean repeats, boolean instead) {}

  /** One reading to take. */
  public record Row(String row, String key, long after, ReadingRow reading, List<Said> said) {}

  /** A reading already taken here. */
  public record Said(String words, spindlebook.web.State state, String href) {}
}
