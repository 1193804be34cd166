package spindlebook.round;

import java.util.List;
import java.util.Optional;
import spindlebook.corner.Card;
import spindlebook.corner.Content;
import spindlebook.log.Accepted;
import spindlebook.log.Bodies;
import spindlebook.log.Book;
import spindlebook.log.Draft;
import spindlebook.log.Entry;
import spindlebook.log.Histories;
import spindlebook.web.FormKey;

/** Rounds, heights and readings, into the book; each in doubt when it looks wrong. */
public final class RoundStore {
  private final Book book;
  private final Histories histories;

  public RoundStore(Book book, Histories histories) {
    this.book = book;
    this.histories = histories;
  }

  /** The key it is in the book under: another than the form's where that one said otherwise. */
  String start(Content.Round round, FormKey form, String who) {
    return keep(Bodies.draft(form.key(), form.after(), who, round));
  }

  /** Writes a height, in doubt when its wheel position cannot well be. */
  String height(Card card, Content.Height height, FormKey form, String who) {
    return keep(draft(card, height, form, who));
  }

  Draft draft(Card card, Content.Height height, FormKey form, String who) {
    Optional<String> doubt =
        doubt(card, form, height)
            .or(
                () ->
                    histories
                        .otherEnd(card)
                        .filter(o -> height.ofAxle())
                        .flatMap(o -> doubt(o, form, height)));
    return Bodies.draft(form.key(), form.after(), who, height.withDoubt(doubt.orElse(null)));
  }

  /** Writes a reading, in doubt when it is far off. */
  String reading(Card card, Content.Reading reading, FormKey form, String who) {
    return keep(draft(card, reading, form, who));
  }

  private String keep(Draft draft) {
    return book.append(draft).entries().get(0).key();
  }

  Draft draft(Card card, Content.Reading reading, FormKey form, String who) {
    Optional<String> doubt =
        reading.doubt() != null ? Optional.of(reading.doubt()) : doubt(card, form, reading);
    return Bodies.draft(form.key(), form.after(), who, reading.withDoubt(doubt.orElse(null)));
  }

  /** The entry under a key, when it is in the book already. */
  Optional<Entry> written(String key) {
    return book.byKey(key);
  }

  long lastN() {
    return book.lastN();
  }

  String generation() {
    return book.generation();
  }

  Accepted append(List<Draft> drafts) {
    return book.append(drafts);
  }

  void correct(String target, Content body, String reason, FormKey form, String who) {
    book.append(
        Bodies.draft(form.key(), form.after(), who, new Content.Correction(target, body, reason)));
  }

  private Optional<String> doubt(Card card, FormKey form, Content content) {
    return histories.of(card.car()).doubt(card.corner(), form.key(), form.after(), content);
  }
}
