package spindlebook.drivecheck;

import java.util.List;
import spindlebook.web.FigureText;
import spindlebook.web.State;

/**
 * A sign-off as it was kept, one corner at a time.
 *
 * @param compare where it is held against today, corner by corner
 * @param putBack what would put its settings back
 * @param why empty when nobody said
 * @param again whether computing it anew gives the same, in a sentence
 * @param differs what is computed otherwise today
 * @param open what was left to see to, in words
 * @param tabs the corners that were kept; {@code corner} is the one shown, null without corners
 * @param chain the hash, as kept; null in a book written by hand
 */
public record SignOffView(
    String key,
    String compare,
    String putBack,
    String outcome,
    String why,
    String since,
    String again,
    List<CopyRow> differs,
    List<Open> open,
    List<Tab> tabs,
    Corner corner,
    String chain) {

  /** One thing, then and now. */
  public record CopyRow(String place, String name, String then, String now) {
    static List<CopyRow> of(List<CopyChanges.Row> rows) {
      return rows.stream().map(r -> new CopyRow(r.place(), r.name(), r.then(), r.now())).toList();
    }
  }

  /**
   * @param place "the whole car" where it is of no corner
   */
  public record Open(String why, String place, String words) {}

  public record Tab(String word, String href, boolean here) {}

  /**
   * @param outcome in words, where its state does not say it; else empty
   * @param alignment null in a copy that was kept before alignment was
   */
  public record Corner(
      String name,
      State state,
      String outcome,
      String positions,
      List<Row> figures,
      List<AlignedRow> alignment,
      List<Text> settings,
      List<Text> rules,
      List<LimitRow> limits) {
    public Corner {
      figures = List.copyOf(figures);
      alignment = alignment == null ? null : List.copyOf(alignment);
      settings = List.copyOf(settings);
      rules = List.copyOf(rules);
      limits = List.copyOf(limits);
    }
  }

  public record Row(String name, boolean atLeast, FigureText figure) {}

  /**
   * @param figure null when it was not known
   * @param state null where there is nothing to say
   */
  public record AlignedRow(String name, String target, FigureText figure, State state) {}

  public record Text(String name, String text) {}

  public record LimitRow(String name, State state, FigureText at, FigureText room) {}

  public SignOffView {
    differs = List.copyOf(differs);
    open = List.copyOf(open);
    tabs = List.copyOf(tabs);
  }
}
