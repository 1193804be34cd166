package spindlebook.trial;

import java.util.List;
import spindlebook.compare.Rows;
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
  /** One corner, today and as the book would know it at once. */
  public record Side(String title, List<Rows.Row> rows) {}
}
