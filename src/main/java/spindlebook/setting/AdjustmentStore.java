package spindlebook.setting;

import java.util.List;
import spindlebook.entry.Content;
import spindlebook.fold.InForce;
import spindlebook.log.Bodies;
import spindlebook.log.Book;
import spindlebook.log.Entry;
import spindlebook.log.Histories;
import spindlebook.page.FormKey;

/** Adjustments, into the book. */
public record AdjustmentStore(Book book, Histories histories) {
  /**
   * Writes an adjustment. When somebody set the same adjuster since the writer looked, it is kept
   * in doubt, so that the writer sees both and chooses. One at a time: of two at the same moment
   * one must see the other.
   *
   * @return whether it was written in doubt; of a form sent again, whether it was the first time
   */
  synchronized boolean adjust(Content.Adjustment typed, FormKey shown, String who) {
    FormKey form = shown.within(book.lastN());
    InForce now =
        histories
            .cardOf(typed.corner())
            .flatMap(card -> card.adjuster(typed.adjuster()))
            .orElseThrow();
    List<Entry> kept =
        book.append(Bodies.draft(form.key(), form.after(), who, withDoubt(typed, now, form)));
    return Bodies.read(kept.get(0)) instanceof Content.Adjustment written
        && written.doubt() != null;
  }

  private static Content.Adjustment withDoubt(Content.Adjustment a, InForce now, FormKey form) {
    boolean clash =
        now.since() > form.after() && now.setting() != null && !now.setting().same(a.to());
    String doubt =
        now.adjuster().name()
            + " was set to "
            + (now.setting() == null ? "" : now.setting().inWords())
            + " meanwhile, entry "
            + now.since()
            + ": which holds?";
    return new Content.Adjustment(
        a.corner(), a.adjuster(), a.from(), a.to(), a.why(), clash ? doubt : null);
  }
}
