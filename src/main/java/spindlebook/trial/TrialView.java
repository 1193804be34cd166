package spindlebook.trial;

import java.util.List;
import spindlebook.fold.Card;
import spindlebook.page.FormPart;
import spindlebook.sheet.Rows;

/**
 * A change tried on paper, beside today.
 *
 * @param tried the change in words; empty before anything was tried
 * @param doIt the form that would really write it; null when nothing was tried
 */
public record TrialView(
    Card card,
    String adjuster,
    List<FormPart> parts,
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
