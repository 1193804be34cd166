package spindlebook.advice;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.DoubleStream;
import spindlebook.curve.Crossing;
import spindlebook.curve.MeasuredCurve;
import spindlebook.curve.Node;
import spindlebook.curve.Nodes;
import spindlebook.definition.Starter;
import spindlebook.entry.Content;
import spindlebook.entry.HeightName;
import spindlebook.entry.Quantity;
import spindlebook.entry.Steering;
import spindlebook.fold.Card;
import spindlebook.fold.SeenReading;
import spindlebook.fold.Written;
import spindlebook.travel.EndFindings;
import spindlebook.travel.Limit;
import spindlebook.travel.TravelFindings;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Rectangular;
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;
import spindlebook.units.TypedLength;

/**
 * How far a wheel went into bump on a drive, told by the ring left on the shock's shaft: the only
 * measured dynamic bump.
 *
 * <pre>
 *   l = s − d        x: the wheel position at which the shock is l long
 *   to the solid stop  B − x        to the limit of bump  U − x
 * </pre>
 *
 * <p>d how far the ring sits from the shock's body, along the shaft; s the shock's length eye to
 * eye as the ring was read (both mm, more than nothing); l its length at the deepest; x, B and U
 * wheel positions in mm, + towards bump, so that both differences are positive while something was
 * left. s is typed beside the ring, or taken from the book as read at the height where the wheel
 * stood. x is on the curve through the shock lengths that were read; where two heights have the
 * same length, the higher. It assumes that only the body pushed the ring, and that the shock's eyes
 * are as stiff at speed as on the stands: rubber in them makes x too deep by what it gives.
 *
 * <p>d and a typed s bring the starting tape's graduation and placing; what x, B and U share (the
 * mark) cancels in the differences. Never beyond what was read: a shock shorter than at any height
 * read was at least as deep as the highest of them. Source: derived here.
 *
 * <p>Worked example: shock 573 mm eye to eye on the strap, ring 148 mm from its body: 425 mm at the
 * deepest. With a shock of 700 − z/2 mm that is z = 550 mm; a stop solid at 500 mm was passed by 50
 * mm.
 */
public sealed interface DeepestBump {

  /** What is missing for a wheel position. */
  enum Missing {
    /** How far the ring sits from the body. */
    RING,
    /** The shock's length as the ring was read. */
    SHOCK_THEN,
    /** Shock lengths at two heights or more, or any at all that make a curve there. */
    SHOCK_LENGTHS
  }

  /**
   * It is known where the wheel was.
   *
   * @param toSolidMm empty where the solid stop is not known
   * @param toLimitMm empty where no limit of bump was found
   * @param limit the limit of bump that acts first
   * @param beyond deeper than the highest height whose shock length was read; the rest as from
   *     there
   */
  record At(
      Figure positionMm,
      Optional<Figure> toSolidMm,
      Optional<Figure> toLimitMm,
      Optional<Limit> limit,
      boolean beyond)
      implements DeepestBump {}

  record Needs(Missing missing) implements DeepestBump {}

  static DeepestBump of(Card card, TravelFindings travel, Written<Content.Telltale> ring) {
    Content.Telltale t = ring.content();
    if (t.length() == null) {
      return new Needs(Missing.RING);
    }
    Optional<Figure> then = shockThen(card, ring);
    if (then.isEmpty()) {
      return new Needs(Missing.SHOCK_THEN);
    }
    List<Node> nodes = Nodes.merged(card, Quantity.SHOCK_LENGTH, card.pairings().get(0));
    if (nodes.size() < 2) {
      return new Needs(Missing.SHOCK_LENGTHS);
    }
    MeasuredCurve curve = MeasuredCurve.through(nodes);
    Figure lengthMm = then.get().minus(taped(t.length(), ring.key() + " ring"));
    Figure shortest =
        nodes.stream()
            .map(Node::value)
            .min(Comparator.comparingDouble(Figure::value))
            .orElseThrow();
    Figure under = lengthMm.minus(shortest);
    if (under.value() < 0 && -under.value() > under.U()) {
      return against(travel, nodes.get(nodes.size() - 1).positionMm(), true);
    }
    double level = Math.max(lengthMm.value(), shortest.value());
    return curve.cubic().crossings(level).stream()
        .flatMapToDouble(DeepestBump::places)
        .boxed()
        .max(Comparator.naturalOrder())
        .filter(x -> curve.cubic().slope(x) != 0)
        .<DeepestBump>map(x -> against(travel, position(curve, x, lengthMm), false))
        .orElse(new Needs(Missing.SHOCK_LENGTHS));
  }

  private static DoubleStream places(Crossing crossing) {
    if (crossing instanceof Crossing.Plateau plateau) {
      return DoubleStream.of(plateau.to());
    }
    return DoubleStream.of(
        crossing instanceof Crossing.At at ? at.x() : ((Crossing.Touch) crossing).x());
  }

  /** By the curve's slope there: what the lengths are unsure of, in wheel travel. */
  private static Figure position(MeasuredCurve curve, double xMm, Figure lengthMm) {
    double slope = curve.cubic().slope(xMm);
    return Figure.linear(
        xMm, List.of(lengthMm, curve.at(xMm)), new double[] {1 / slope, -1 / slope});
  }

  private static At against(TravelFindings travel, Figure xMm, boolean beyond) {
    EndFindings bump = travel.bump();
    return new At(
        xMm,
        bump.stop().map(s -> s.positionMm().minus(xMm)),
        bump.rules().map(l -> l.positionMm().minus(xMm)),
        bump.rules(),
        beyond);
  }

  private static Optional<Figure> shockThen(Card card, Written<Content.Telltale> ring) {
    Content.Telltale t = ring.content();
    if (t.shockLength() != null) {
      return Optional.of(taped(t.shockLength(), ring.key() + " shock"));
    }
    return t.at() == null ? Optional.empty() : inTheBook(card, t.at());
  }

  private static Optional<Figure> inTheBook(Card card, HeightName at) {
    return card.readings().stream()
        .filter(r -> r.of(Quantity.SHOCK_LENGTH) && r.countsAlongTravel() && r.value() != null)
        .filter(r -> r.reading().steering() == Steering.STRAIGHT)
        .filter(r -> r.height().name() == at && r.height().stopCounts())
        .map(SeenReading::value)
        .reduce((earlier, later) -> later);
  }

  private static Figure taped(TypedLength length, String id) {
    Map<Source, Double> parts = new LinkedHashMap<>();
    parts.put(
        new Source(id, SourceKind.RESOLUTION),
        Rectangular.resolutionU(Starter.tape().graduation().mm()));
    parts.put(
        new Source(id, SourceKind.PLACING), Rectangular.u(Starter.tape().placingHalfWidth().mm()));
    return Figure.of(length.mm(), parts);
  }
}
