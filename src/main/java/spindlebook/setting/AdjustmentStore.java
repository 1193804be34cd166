package spindlebook.setting;

import spindlebook.corner.CarBook;
import spindlebook.corner.Card;
import spindlebook.corner.Content;
import spindlebook.corner.InForce;
import spindlebook.corner.Setting;
import spindlebook.log.Bodies;
import spindlebook.log.Book;
import spindlebook.web.FormKey;

/** Adjustments and happenings, into the book. */
public final class AdjustmentStore {
  private final Book book;

  public AdjustmentStore(Book book) {
    this.book = book;
  }

  /**
   * Writes an adjustment. When somebody set the same adjuster since the writer looked, it is kept
   * in doubt, so that the writer sees both and chooses.
   *
   * @return whether it waits for an answer
   */
  boolean adjust(
      Card now, InForce adjuster, Setting from, Setting to, String why, FormKey form, String who) {
    boolean clash =
        adjuster.since() > form.after()
            && adjuster.setting() != null
            && !adjuster.setting().same(to);
    String doubt =
        clash
            ? adjuster.adjuster().name()
                + " was set to "
                + adjuster.setting().inWords()
                + " meanwhile, entry "
                + adjuster.since()
                + ": which holds?"
            : null;
    book.append(
        Bodies.draft(
            form.key(),
            form.after(),
            who,
            new Content.Adjustment(
                now.corner(), adjuster.adjuster().adjuster(), from, to, why, doubt)));
    return clash;
  }

  void happened(Content.Happening happening, FormKey form, String who) {
    book.append(Bodies.draft(form.key(), form.after(), who, happening));
  }

  /** The card as it would be with one adjustment more: nothing is written. */
  static Card onPaper(CarBook history, String corner, Content.Adjustment adjustment) {
    long n = history.n() + 1;
    return history
        .with(
            new spindlebook.corner.Noted(
                n, "on-paper", history.entries().get(0).at(), "nobody", n, adjustment))
        .card(corner);
  }

  /** The same for a happening. */
  static Card onPaper(CarBook history, String corner, Content.Happening happening) {
    long n = history.n() + 1;
    return history
        .with(
            new spindlebook.corner.Noted(
                n, "on-paper", history.entries().get(0).at(), "nobody", n, happening))
        .card(corner);
  }
}
