package spindlebook.charts;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spindlebook.definition.Measure;
import spindlebook.definition.WatchPoint;
import spindlebook.drawing.FigureText;
import spindlebook.drawing.Lengths;
import spindlebook.drawing.Rounded;
import spindlebook.entry.Quantity;
import spindlebook.fold.Card;
import spindlebook.fold.SeenReading;
import spindlebook.page.Posted;
import spindlebook.uncertainty.Figure;

/**
 * One thing that may be drawn against wheel position.
 *
 * @param point null unless it is a watch point
 */
record Curved(Quantity quantity, WatchPoint point) {
  static final Curved TOE = new Curved(Quantity.TOE, null);

  /** Its name in addresses. */
  String word() {
    return point == null ? Posted.word(quantity) : "p-" + point.point();
  }

  String words() {
    return point == null ? quantity.words() : point.name();
  }

  /** What a + of it means, as its axis and its table say; empty for what has no direction. */
  String plus() {
    return switch (quantity) {
      case TOE -> "front edge inward";
      case CAMBER -> "top outward";
      default -> "";
    };
  }

  /** A value of it, with its sign where that has a meaning. */
  FigureText text(Figure value, boolean angle, Lengths lengths) {
    boolean sign = !plus().isEmpty();
    return angle
        ? sign ? Rounded.degrees(value) : Rounded.plainDegrees(value)
        : sign ? lengths.signedFigure(value) : lengths.figure(value);
  }

  boolean reads(SeenReading reading) {
    return point == null ? reading.of(quantity) : reading.of(point.point());
  }

  /** The place it is read at on another corner; empty where that one does not watch it. */
  Optional<Curved> on(Card other) {
    return point == null
        ? Optional.of(this)
        : other.watchPoint(point.point()).map(p -> new Curved(quantity, p));
  }

  /** Whether it is an angle however it is read. */
  boolean angle() {
    return quantity == Quantity.CAMBER
        || (point != null && point.place().measure() == Measure.ANGLE);
  }

  /** All that can be drawn of a corner, those that were read before those that were not. */
  static List<Curved> all(Card card) {
    List<Curved> all = new ArrayList<>();
    for (Quantity quantity :
        List.of(
            Quantity.TOE,
            Quantity.CAMBER,
            Quantity.STRAP_LENGTH,
            Quantity.SHOCK_LENGTH,
            Quantity.STOP_GAP)) {
      all.add(new Curved(quantity, null));
    }
    card.watchPoints().forEach(p -> all.add(new Curved(Quantity.WATCH_POINT, p)));
    List<Curved> read =
        all.stream().filter(c -> card.readings().stream().anyMatch(c::reads)).toList();
    List<Curved> ordered = new ArrayList<>(read);
    all.stream().filter(c -> !read.contains(c)).forEach(ordered::add);
    return ordered;
  }
}
