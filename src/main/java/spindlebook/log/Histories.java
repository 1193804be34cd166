package spindlebook.log;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicLong;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.fold.Memo;

/**
 * The cars' books, folded as far as the log goes. What is kept here is only speed: a fold from
 * scratch says the same.
 */
public final class Histories {
  /** So many entries more are kept and folded one by one; of more, all is read and folded anew. */
  private static final int FEW = 50;

  private final Book book;
  private final Map<String, Known> cars = new ConcurrentHashMap<>();
  private final AtomicLong taken = new AtomicLong();

  /**
   * A car's book (null before it is first folded), what was written since, and {@link
   * Book#lastMove} when it was asked for. Who folds holds {@code turn}; a save waits for nobody.
   * What was known of it at earlier entries is held longer than the fold.
   */
  private record Known(Object turn, CarBook car, List<Entry> later, long lastMove, Memo asKnown) {
    static Known nothing() {
      return new Known(new Object(), null, List.of(), 0, new Memo());
    }

    Known toFoldAnew() {
      return new Known(new Object(), null, List.of(), lastMove, asKnown);
    }

    boolean holds(long move) {
      return car != null && lastMove == move;
    }

    Known and(Entry entry) {
      List<Entry> all = new ArrayList<>(later);
      all.add(entry);
      return new Known(turn, car, all, lastMove, asKnown);
    }

    /** What came while {@code longer} was folded is still to be folded. */
    Known with(CarBook longer, long move) {
      List<Entry> rest = later.stream().filter(entry -> entry.n() > longer.n()).toList();
      return new Known(turn, longer, rest, move, longer.asKnown());
    }

    CarBook folded() {
      CarBook longer = car;
      for (Entry entry : later) {
        longer = entry.n() > longer.n() ? longer.with(Bodies.noted(entry)) : longer;
      }
      return longer;
    }
  }

  public Histories(Book book) {
    this.book = book;
    book.followedBy(this::take);
  }

  private void take(List<Entry> entries) {
    for (Entry entry : entries) {
      book.locate(entry.key())
          .filter(there -> there.car() != null)
          .ifPresent(
              there ->
                  cars.computeIfPresent(
                      there.car(),
                      (car, k) -> k.later().size() < FEW ? k.and(entry) : k.toFoldAnew()));
    }
    taken.incrementAndGet();
  }

  /** Another number whenever something was written. */
  public long taken() {
    return taken.get();
  }

  /** One car's book up to now; empty when no such car was written. */
  public CarBook of(String car) {
    Known known = cars.get(car);
    if (known == null) {
      if (book.locate(car).isEmpty()) {
        return CarBook.empty(); // made-up keys leave nothing behind
      }
      known = cars.computeIfAbsent(car, k -> Known.nothing());
    }
    if (known.later().isEmpty() && known.holds(book.lastMove())) {
      return known.car();
    }
    synchronized (known.turn()) {
      return folded(car, known.turn());
    }
  }

  private CarBook folded(String car, Object turn) {
    long lastMove = book.lastMove();
    Known known = cars.get(car);
    CarBook now =
        known != null && known.turn() == turn && known.holds(lastMove)
            ? known.folded()
            : CarBook.of(
                book.ofCar(car).stream().map(Bodies::noted).toList(),
                known != null && known.lastMove() == lastMove ? known.asKnown() : new Memo());
    cars.computeIfPresent(car, (c, k) -> k.turn() == turn ? k.with(now, lastMove) : k);
    return now;
  }

  /** Where an entry belongs. {@code corner} is null for what concerns the whole car. */
  public record Located(String key, String kind, String car, String corner) {}

  public Optional<Located> locate(String key) {
    return book.locate(key);
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
        : of(card.car())
            .otherEnd(card)
            .filter(o -> o.reading(located.key()).isPresent())
            .orElse(card);
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
