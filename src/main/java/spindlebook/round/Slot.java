package spindlebook.round;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import spindlebook.card.Capital;
import spindlebook.definition.Dimension;
import spindlebook.definition.Layout;
import spindlebook.definition.Measure;
import spindlebook.definition.Place;
import spindlebook.definition.WatchPoint;
import spindlebook.entry.Content.ToRead;
import spindlebook.entry.HeightName;
import spindlebook.entry.Pairing;
import spindlebook.entry.Quantity;
import spindlebook.entry.ReadingText;
import spindlebook.entry.Steering;
import spindlebook.fold.Card;
import spindlebook.fold.SeenReading;
import spindlebook.page.Field;
import spindlebook.page.Pick;
import spindlebook.page.Posted;
import spindlebook.units.LengthUnit;

/**
 * One thing that can be read at a height and steering.
 *
 * @param point null unless it is a watch point
 * @param otherEnd the end of a solid axle it is read at, when that is not the one its round names;
 *     null otherwise
 */
record Slot(Quantity quantity, WatchPoint point, Place otherEnd) {
  static final String OTHER_END = "o-";

  /** Its name in forms and addresses, unique on a page. */
  String row() {
    String what = point == null ? "q-" + Posted.word(quantity) : "p-" + point.point();
    return otherEnd == null ? what : OTHER_END + what;
  }

  String words() {
    String what = point == null ? quantity.words() : point.name();
    return otherEnd == null ? what : otherEnd.words() + ": " + what;
  }

  /** The watch point's short name; null unless it is one. */
  String key() {
    return point == null ? null : point.point();
  }

  /** {@code keep at least 1/4 in}, or what its signs mean; empty where nothing is asked. */
  String rule() {
    if (quantity == Quantity.CAMBER) {
      return "+ top out, − top in";
    }
    return point == null ? "" : "keep " + point.keep().inWords();
  }

  boolean angle() {
    return ReadingText.angle(quantity, point);
  }

  /**
   * Which keys read it: a gap's sixteenths and words, a tape's inches (a stop stands as far from
   * its pad as a strap is long), a length with a side, degrees.
   */
  String kind() {
    if (angle()) {
      return "angle";
    }
    if (quantity == Quantity.TOE) {
      return "toe";
    }
    if (point != null && point.place().measure() == Measure.PLUNGE) {
      return "signed";
    }
    return quantity == Quantity.WATCH_POINT ? "gap" : "tape";
  }

  /** A box for it; a gap has keys for what is no number. */
  Field field(String name, LengthUnit unit) {
    Field field = Field.of(name, Capital.of(words())).unit(angle() ? "°" : unit.word());
    boolean gap = quantity == Quantity.WATCH_POINT || quantity == Quantity.STOP_GAP;
    return gap && !angle()
        ? field.picks(
            Stream.of("well clear", "touches", "binds", "not looked")
                .map(w -> new Pick(name, w, w))
                .toArray(Pick[]::new))
        : field;
  }

  boolean is(ToRead toRead, HeightName name, Pairing crossed, Steering steering) {
    return toRead.name() == name
        && toRead.pairing() == crossed
        && toRead.steering() == steering
        && toRead.quantity() == quantity
        && (point == null || point.point().equals(toRead.point()));
  }

  boolean readBy(SeenReading reading) {
    return point == null ? reading.of(quantity) : reading.of(point.point());
  }

  /** All that can be read at a corner or end, gaps first, as one works around it. */
  static List<Slot> all(Card card, Steering steering) {
    List<Slot> slots = new ArrayList<>();
    if (steering.steered() && !card.layout().steered()) {
      return slots;
    }
    for (WatchPoint point : card.watchPoints()) {
      if (steering == Steering.STRAIGHT
          ? card.steeringsFor(point).contains(steering)
          : point.place().steered()) {
        slots.add(new Slot(Quantity.WATCH_POINT, point, null));
      }
    }
    if (steering == Steering.STRAIGHT) {
      slots.add(new Slot(Quantity.STRAP_LENGTH, null, null));
      slots.add(new Slot(Quantity.SHOCK_LENGTH, null, null));
      slots.add(new Slot(Quantity.STOP_GAP, null, null));
      slots.add(new Slot(Quantity.CAMBER, null, null));
    }
    slots.add(new Slot(Quantity.TOE, null, null));
    return slots;
  }

  /** The same at the other end of a solid axle; not what is at its middle, which is read once. */
  static List<Slot> allAt(Card otherEnd, Steering steering) {
    return all(otherEnd, steering).stream()
        .filter(a -> a.point() == null || !a.point().place().ofTheAxle())
        .map(a -> new Slot(a.quantity(), a.point(), otherEnd.place()))
        .toList();
  }

  /**
   * Whether it is asked for: an axle has camber and toe built in. Where its spindle is read
   * outboard of the wheel, how it leans moves the point that is read.
   */
  boolean asked(Card end) {
    return end.layout() != Layout.SOLID_AXLE_END
        || switch (quantity) {
          case TOE -> false;
          case CAMBER -> end.given().containsKey(Dimension.READ_POINT_OUTBOARD);
          default -> true;
        };
  }

  /** The one of that name at a corner, or at either end of its axle. */
  static Optional<Slot> byRow(Card card, Optional<Card> otherEnd, Steering steering, String row) {
    List<Slot> slots =
        row.startsWith(OTHER_END)
            ? otherEnd.map(o -> allAt(o, steering)).orElse(List.of())
            : all(card, steering);
    return slots.stream().filter(a -> a.row().equals(row)).findFirst();
  }
}
