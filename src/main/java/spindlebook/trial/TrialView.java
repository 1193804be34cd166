package spindlebook.trial;

import java.util.List;
import spindlebook.web.FormPart;
import spindlebook.web.Link;

/**
 * A change tried on paper, beside today.
 *
 * @param links what else can be tried
 * @param tried the change in words; empty before anything was tried
 * @param doIt the form that would really write it; null when nothing was tried
 */
public record TrialView(
    String action,
    String adjuster,
    List<FormPart> parts,
    List<Link> links,
    String tried,
    List<Side> sides,
    List<String> predicted,
    List<String> stale,
    boolean readAgain,
    String doIt,
    String doItWord) {
  public TrialView {
    parts = List.copyOf(parts);
    links = List.copyOf(links);
    sides = List.copyOf(sides);
    predicted = List.copyOf(predicted);
    stale = List.copyOf(stale);
  }

  /** One corner, today and as the book would know it at once. */
  public record Side(String title, List<Row> rows) {
    public Side {
      rows = List.copyOf(rows);
    }
  }

  public record Row(String what, String today, String then) {
    public boolean other() {
      return !today.equals(then);
    }
  }
}
