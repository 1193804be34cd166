package spindlebook.plan;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import spindlebook.entry.Content;
import spindlebook.entry.HappeningKind;
import spindlebook.entry.HeightName;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.fold.SeenHeight;

/**
 * What was out of a corner when its last height was read, as the book knows it: a later height with
 * all of it in, or a drive, says that it is back. The other end of an axle is left as its own page
 * says.
 */
public record AsLeft(boolean springOut, boolean strapOff, boolean stopOut) {
  private static final AsLeft WHOLE = new AsLeft(false, false, false);

  public static AsLeft of(CarBook book, Card card) {
    return card.heights().stream()
        .max(Comparator.comparingLong(SeenHeight::n))
        .filter(h -> h.n() > lastDrive(book))
        .map(AsLeft::by)
        .orElse(WHOLE);
  }

  private static AsLeft by(SeenHeight last) {
    Content.Round round = last.round().round();
    return new AsLeft(
        !round.springIn(),
        last.name() == HeightName.STRAP_OFF,
        last.name() == HeightName.STOP_OUT || !round.bumpStopIn());
  }

  private static long lastDrive(CarBook book) {
    Stream<Long> happened =
        book.written(Content.Happening.class).stream()
            .filter(h -> h.content().what() == HappeningKind.DRIVEN)
            .map(h -> h.n());
    return Stream.concat(happened, book.lastUse().map(u -> u.n()).stream())
        .max(Long::compare)
        .orElse(0L);
  }

  /** What was out, in the order in which hands put it back; empty where nothing was. */
  public List<String> out() {
    return Stream.of(
            Optional.of("strap").filter(s -> strapOff),
            Optional.of("bump stop").filter(s -> stopOut),
            Optional.of("spring").filter(s -> springOut))
        .flatMap(Optional::stream)
        .toList();
  }
}
