package spindlebook.charts;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import spindlebook.alignment.ToeRead;
import spindlebook.curve.Bound;
import spindlebook.curve.MeasuredCurve;
import spindlebook.curve.Node;
import spindlebook.entry.Pairing;
import spindlebook.entry.Quantity;
import spindlebook.entry.Steering;
import spindlebook.fold.Card;
import spindlebook.fold.SeenReading;
import spindlebook.uncertainty.Figure;

/**
 * What was read of one thing at one steering, as points along the travel that still count.
 *
 * <p>Toe typed as a length counts across the distance given for it ({@code sin t = toe/across});
 * without that distance lengths stay lengths, and are not mixed with angles.
 *
 * @param pairing how the ends of a solid axle stood; null for a wheel hung alone
 * @param angle whether the points are in rad and not in mm
 * @param readings of each point, in the same order
 * @param leftOut readings that count but are of the other kind
 */
record CurveRead(
    Curved of,
    Steering steering,
    Pairing pairing,
    boolean angle,
    List<Node> nodes,
    List<SeenReading> readings,
    int leftOut) {

  /** With the ends of a solid axle in one pairing: two pairings are two curves. */
  static CurveRead of(
      Card card, Curved of, Steering steering, Pairing pairing, Optional<Figure> across) {
    List<SeenReading> read =
        card.readings().stream()
            .filter(r -> of.reads(r) && r.reading().steering() == steering)
            .filter(r -> pairing == null || r.height().pairing() == pairing)
            .filter(r -> r.value() != null && counts(of, r))
            .toList();
    boolean lengths =
        of.quantity() == Quantity.TOE
            ? across.isEmpty() && read.stream().anyMatch(r -> r.reading().angle() == null)
            : !of.angle();
    List<Node> nodes = new ArrayList<>();
    List<SeenReading> used = new ArrayList<>();
    for (SeenReading r : read) {
      Figure value = value(of, r, lengths, across);
      if (value != null) {
        used.add(r);
        nodes.add(new Node(r.height().positionMm(), value, Bound.EXACT, List.of(r.key())));
      }
    }
    return new CurveRead(of, steering, pairing, !lengths, nodes, used, read.size() - used.size());
  }

  /** "full left lock"; of a solid axle "crossed"; empty for a wheel that is never steered. */
  String words(Card card) {
    return words(card, steering, pairing);
  }

  static String words(Card card, Steering steering, Pairing pairing) {
    boolean steered = card.layout().steered() || steering.steered();
    return Stream.of(steered ? words(steering) : "", pairing == null ? "" : pairing.words())
        .filter(w -> !w.isEmpty())
        .collect(Collectors.joining(", "));
  }

  /** A lock, so that its right is not taken for the car's right side. */
  static String words(Steering steering) {
    return steering == Steering.STRAIGHT ? "straight ahead" : steering.words() + " lock";
  }

  /**
   * Whether it is drawn: for a strap, how its mounts lie apart, which its setting does not move.
   */
  static boolean counts(Curved of, SeenReading reading) {
    return of.quantity() == Quantity.STRAP_LENGTH ? reading.countsAlongTravel() : reading.counts();
  }

  private static Figure value(Curved of, SeenReading r, boolean lengths, Optional<Figure> across) {
    boolean asAngle = r.reading().angle() != null;
    if (of.quantity() != Quantity.TOE) {
      return r.value();
    }
    if (lengths) {
      return asAngle ? null : r.value();
    }
    return asAngle ? r.value() : ToeRead.rad(r, across.orElseThrow()).orElse(null);
  }

  /** The curve through them; empty with fewer than two places. */
  Optional<MeasuredCurve> curve() {
    return Node.merge(nodes).size() < 2
        ? Optional.empty()
        : Optional.of(MeasuredCurve.through(nodes));
  }
}
