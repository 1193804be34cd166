package spindlebook.drivecheck;

import java.util.List;
import spindlebook.drivecheck.SignOffView.CopyRow;

/**
 * What changed since a sign-off.
 *
 * @param outcome then and now, in a sentence
 * @param turned decisions that are another now
 * @param figures margins and whole travels; {@code others} are what they follow from
 * @param alignment its figures and targets
 * @param notKept what that copy does not hold, a sentence; empty when it holds all
 * @param groups entries that came since, by what they are
 */
public record SinceView(
    String outcome,
    List<CopyRow> turned,
    List<CopyRow> settings,
    List<CopyRow> figures,
    List<CopyRow> others,
    List<CopyRow> alignment,
    String notKept,
    List<CopyRow> rules,
    List<Group> groups) {

  /**
   * @param more how many more there are than are listed
   */
  public record Group(String title, List<Line> lines, int more, String moreHref, boolean open) {
    public Group {
      lines = List.copyOf(lines);
    }
  }

  public record Line(String words, String when, String href) {}

  public SinceView {
    turned = List.copyOf(turned);
    settings = List.copyOf(settings);
    figures = List.copyOf(figures);
    others = List.copyOf(others);
    alignment = List.copyOf(alignment);
    rules = List.copyOf(rules);
    groups = List.copyOf(groups);
  }

  /** Whether every row that would tell of a change is missing. */
  public boolean nothingElse() {
    return turned.isEmpty()
        && settings.isEmpty()
        && figures.isEmpty()
        && others.isEmpty()
        && alignment.isEmpty()
        && rules.isEmpty();
  }
}
