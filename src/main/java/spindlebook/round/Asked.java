package spindlebook.round;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spindlebook.corner.Card;
import spindlebook.corner.Content.Round;
import spindlebook.corner.Content.ToRead;
import spindlebook.corner.HeightName;
import spindlebook.corner.Pairing;
import spindlebook.corner.Place;
import spindlebook.corner.Quantity;
import spindlebook.corner.SeenHeight;
import spindlebook.corner.SeenRound;
import spindlebook.corner.Steering;
import spindlebook.corner.WatchPoint;

/**
 * One thing asked for at a height and steering.
 *
 * @param point null unless it is a watch point
 * @param otherEnd the end of a solid axle it is read at, when that is not the one its round names;
 *     null otherwise
 */
record Asked(Quantity quantity, WatchPoint point, Place otherEnd) {
  private static final String OTHER_END = "o-";

  Asked(Quantity quantity, WatchPoint point) {
    this(quantity, point, null);
  }

  /** Its name in forms and addresses, unique on a page. */
  String row() {
    String what =
        point == null ? "q-" + spindlebook.web.Posted.word(quantity) : "p-" + point.point();
    return otherEnd == null ? what : OTHER_END + what;
  }

  String words() {
    String what = point == null ? quantity.words() : point.name();
    return otherEnd == null ? what : otherEnd.words() + ": " + what;
  }

  boolean gap() {
    return quantity == Quantity.WATCH_POINT || quantity == Quantity.STOP_GAP;
  }

  /** All that can be read at a height and steering, gaps first, as one works around the corner. */
  static List<Asked> all(Card card, Steering steering) {
    List<Asked> asked = new ArrayList<>();
    if (steering.steered() && !card.layout().steered()) {
      return asked;
    }
    for (WatchPoint point : card.watchPoints()) {
      if (steering == Steering.STRAIGHT || point.place().steered()) {
        asked.add(new Asked(Quantity.WATCH_POINT, point));
      }
    }
    if (steering == Steering.STRAIGHT) {
      for (Quantity quantity :
          List.of(
              Quantity.STRAP_LENGTH,
              Quantity.SHOCK_LENGTH,
              Quantity.STOP_GAP,
              Quantity.CAMBER,
              Quantity.TOE)) {
        asked.add(new Asked(quantity, null));
      }
    } else {
      asked.add(new Asked(Quantity.TOE, null));
    }
    return asked;
  }

  /** The same at the other end of a solid axle; not what is at its middle, which is read once. */
  static List<Asked> allAt(Card otherEnd, Steering steering) {
    return all(otherEnd, steering).stream()
        .filter(a -> a.point() == null || !a.point().place().ofTheAxle())
        .map(a -> new Asked(a.quantity(), a.point(), otherEnd.place()))
        .toList();
  }

  /**
   * What a round set out to read there; all of it when it set out to read nothing in particular.
   */
  static List<Asked> planned(Card card, SeenRound round, SeenHeight height, Steering steering) {
    return planned(card, round.round(), height.name(), height.asked(), steering);
  }

  /** The same of a round that may not be in the book. */
  static List<Asked> planned(Card card, Round round, HeightName height, Steering steering) {
    return planned(card, round, height, null, steering);
  }

  /**
   * @param pairing crossed on a solid axle; null otherwise
   */
  static List<Asked> planned(
      Card card, Round round, HeightName height, Pairing pairing, Steering steering) {
    List<Asked> all = all(card, steering);
    List<ToRead> plan = round.toRead();
    if (plan.isEmpty()) {
      return all;
    }
    return all.stream()
        .filter(
            a -> plan.stream().anyMatch(t -> t.pairing() == pairing && a.is(t, height, steering)))
        .toList();
  }

  boolean is(ToRead toRead, HeightName name, Steering steering) {
    return toRead.name() == name
        && toRead.steering() == steering
        && toRead.quantity() == quantity
        && (point == null || point.point().equals(toRead.point()));
  }

  boolean readBy(spindlebook.corner.SeenReading reading) {
    return point == null ? reading.of(quantity) : reading.of(point.point());
  }

  static Asked byRow(Card card, Steering steering, String row) {
    return all(card, steering).stream().filter(a -> a.row().equals(row)).findFirst().orElse(null);
  }

  /** The same of a card and the one of its axle's other end. */
  static Asked byRow(Card card, Optional<Card> otherEnd, Steering steering, String row) {
    return row.startsWith(OTHER_END)
        ? otherEnd.stream()
            .flatMap(o -> allAt(o, steering).stream())
            .filter(a -> a.row().equals(row))
            .findFirst()
            .orElse(null)
        : byRow(card, steering, row);
  }
}
