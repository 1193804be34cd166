package spindlebook.round;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import spindlebook.entry.Content;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.log.Bodies;
import spindlebook.log.Book;
import spindlebook.log.Draft;
import spindlebook.log.Entry;
import spindlebook.log.Histories;
import spindlebook.page.FormKey;

/** Rounds, heights and readings, into the book; each in doubt when it looks wrong. */
public record RoundStore(Book book, Histories histories) {
  /** One entry that waits to be written. */
  record ToKeep(Content content, FormKey form, Instant claimed) {
    ToKeep(Content content, FormKey form) {
      this(content, form, null);
    }
  }

  /**
   * Writes one entry. It may be under another key than its form's in the book, where the same form
   * said otherwise before.
   */
  Entry keep(Card card, Content content, FormKey form, String who) {
    return keep(card, List.of(new ToKeep(content, form)), who).get(0);
  }

  /**
   * Writes several together.
   *
   * @param card of the corner they belong to, or of an end of its axle
   */
  List<Entry> keep(Card card, List<ToKeep> all, String who) {
    return book.append(all.stream().map(e -> draft(card, e, who)).toList());
  }

  private Draft draft(Card card, ToKeep entry, String who) {
    FormKey form = entry.form().within(book.lastN());
    Content typed = entry.content();
    Content said = doubted(card, typed, form);
    return Bodies.draft(form.key(), form.after(), who, said).claimed(entry.claimed());
  }

  /** The same, in doubt where it would be at either end of an axle and is not already. */
  private Content doubted(Card card, Content said, FormKey form) {
    boolean mayBe = said instanceof Content.Height || said instanceof Content.Reading;
    CarBook now = histories.of(card.car());
    return mayBe && said.doubt() == null
        ? doubted(card, said, c -> now.doubt(c.corner(), form.key(), form.after(), said))
        : said;
  }

  private Content doubted(Card card, Content said, Function<Card, Optional<String>> doubt) {
    return Stream.concat(Stream.of(card), histories.of(card.car()).otherEnd(card).stream())
        .flatMap(c -> doubt.apply(c).stream())
        .findFirst()
        .map(said::withDoubt)
        .orElse(said);
  }

  /** What was read of an entry really, in doubt as if it were read first. */
  Content.Correction instead(Card card, String target, Content said, FormKey form) {
    CarBook now = histories.of(card.car());
    Content body =
        said.doubt() == null
            ? doubted(card, said, c -> now.doubtInstead(c.corner(), target, form.after(), said))
            : said;
    return new Content.Correction(target, body, "answered again in the round");
  }

  /** The entry under a key, when it is in the book already. */
  Optional<Entry> written(String key) {
    return book.byKey(key);
  }

  String generation() {
    return book.generation();
  }
}
