package spindlebook.align;

import java.util.Optional;
import spindlebook.alignment.FarOff;
import spindlebook.corner.CarBook;
import spindlebook.corner.Card;
import spindlebook.corner.Content;
import spindlebook.corner.Noted;
import spindlebook.log.Bodies;
import spindlebook.log.Book;
import spindlebook.log.Histories;
import spindlebook.web.FormKey;

/** Alignment as measured, into the book. */
public final class AlignmentStore {
  private final Book book;
  private final Histories histories;

  public AlignmentStore(Book book, Histories histories) {
    this.book = book;
    this.histories = histories;
  }

  /** Writes a measurement, in doubt when it is far off what was known. */
  void add(Card card, Content.Alignment alignment, FormKey form, String who) {
    Optional<String> doubt =
        alignment.doubt() != null
            ? Optional.of(alignment.doubt())
            : FarOff.doubt(
                card, onPaper(card, alignment, form), histories.mirror(card), form.key());
    Content.Alignment told = alignment.withDoubt(doubt.orElse(null));
    book.append(Bodies.draft(form.key(), form.after(), who, told));
  }

  /** The card as it would be with this entry, so that it can be doubted before it is written. */
  private Card onPaper(Card card, Content.Alignment alignment, FormKey form) {
    CarBook history = histories.of(card.car());
    long n = history.n() + 1;
    Noted noted = new Noted(n, form.key(), null, "", Math.min(form.after(), n - 1), alignment);
    return history.with(noted).card(card.corner());
  }
}
