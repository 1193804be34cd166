package spindlebook.log;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import spindlebook.corner.CarBook;
import spindlebook.corner.Card;
import spindlebook.corner.Layout;

/**
 * The cars' books, folded as far as the log goes. What is kept here is only speed: a fold from
 * scratch says the same.
 */
public final class Histories {
  private final Book book;
  private final Map<String, Known> cars = new ConcurrentHashMap<>();

  /** A car's book, and {@link Book#lastMove} when its entries were asked for. */
  private record Known(CarBook car, long lastMove) {}

  public Histories(Book book) {
    this.book = book;
  }

  /** One car's book up to now; empty when no such car was written. */
  public CarBook of(String car) {
    Known now =
        cars.compute(
            car,
            (key, known) -> {
              long lastMove = book.lastMove();
              CarBook history =
                  known == null || known.lastMove() != lastMove ? CarBook.empty() : known.car();
              List<Entry> later = book.ofCar(car, history.n());
              // Made-up keys leave nothing behind.
              return known == null && later.isEmpty()
                  ? null
                  : new Known(history.with(later.stream().map(Bodies::noted).toList()), lastMove);
            });
    return now == null ? CarBook.empty() : now.car();
  }

  /** Where an entry belongs. {@code corner} is null for what concerns the whole car. */
  public record Located(String key, String kind, String car, String corner) {}

  public Optional<Located> locate(String key) {
    return book.read(
        handle ->
            handle
                .createQuery(
                    """
                    select key, kind, car, corner from entry where key = :key
                    """)
                .bind("key", key)
                .map(
                    (row, ctx) ->
                        new Located(
                            row.getString("key"),
                            row.getString("kind"),
                            row.getString("car"),
                            row.getString("corner")))
                .findOne());
  }

  /** The card of a corner, or of the corner a round, height or reading belongs to; now. */
  public Optional<Card> cardOf(String key) {
    return locate(key)
        .filter(l -> l.car() != null && l.corner() != null)
        .map(l -> cardWith(l, card(l.car(), l.corner())));
  }

  /** A reading taken at the other end of a solid axle is on that end's card. */
  private Card cardWith(Located located, Card card) {
    return !located.kind().equals("reading") || card.reading(located.key()).isPresent()
        ? card
        : otherEnd(card).filter(o -> o.reading(located.key()).isPresent()).orElse(card);
  }

  /** The card of the other end of a solid axle; empty for a wheel hung alone. */
  public Optional<Card> otherEnd(Card card) {
    return card.layout() != Layout.SOLID_AXLE_END
        ? Optional.empty()
        : mirror(card).filter(o -> o.layout() == Layout.SOLID_AXLE_END);
  }

  /** The card of the corner on the car's other side, where the car has it; now. */
  public Optional<Card> mirror(Card card) {
    return of(card.car()).mirror(card);
  }

  /** The card of a corner by its own key; now. */
  public Optional<Card> cornerCard(String corner) {
    return cardOf(corner).filter(card -> card.corner().equals(corner));
  }

  /**
   * One corner's card, now.
   *
   * @throws IllegalArgumentException when the car has no such corner
   */
  public Card card(String car, String corner) {
    return of(car).card(corner);
  }
}
