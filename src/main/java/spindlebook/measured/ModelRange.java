package spindlebook.measured;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import spindlebook.definition.Dimension;
import spindlebook.entry.Steering;
import spindlebook.fold.Card;
import spindlebook.linkage.Linkage;
import spindlebook.linkage.Pose;
import spindlebook.travel.CornerTravel;
import spindlebook.travel.GivenFigures;
import spindlebook.travel.StopFound;
import spindlebook.travel.TravelFindings;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Rectangular;
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;

/**
 * How far a corner is modelled: from the strap to the solid bump stop, where they are known, and as
 * far as was read; heights above the joints' own, mm.
 *
 * @param strapMm, solidMm null where not known
 * @param rideMm NaN where not known
 * @param leftMm the rack at full left lock, + to the car's left; exactly 0 where nobody said how
 *     far it goes, and on a corner that is not steered
 */
public record ModelRange(
    double lowMm, double highMm, Figure strapMm, Figure solidMm, double rideMm, Figure leftMm) {
  /** Each way where nothing tells; common practice, no source. */
  private static final double UNREAD_MM = 100;

  /** The rack's travel as a tape reads it, 1/16 in where its owner gave no ±; no source. */
  private static final double RACK_MM = 25.4 / 16;

  private static final Source UNSAID = new Source("given: rack travel", SourceKind.PLACING);

  public static ModelRange of(Card card, CornerModel model) {
    TravelFindings travel = CornerTravel.of(card);
    Figure at = model.joints().positionMm();
    Figure strap = above(at, travel.droop().stop().map(StopFound::positionMm));
    Figure solid = above(at, travel.bump().stop().map(StopFound::positionMm));
    double[] read =
        DoubleStream.concat(
                model.readings().stream().mapToDouble(r -> r.heightMm().value()),
                DoubleStream.of(orNaN(strap), orNaN(solid)))
            .filter(h -> !Double.isNaN(h))
            .toArray();
    double low = DoubleStream.of(read).min().orElse(-UNREAD_MM);
    double high = DoubleStream.of(read).max().orElse(UNREAD_MM);
    return new ModelRange(
        Math.min(low, 0),
        Math.max(high, 0),
        strap,
        solid,
        orNaN(above(at, travel.rideMm())),
        leftMm(card, model.linkage()));
  }

  private static Figure above(Figure at, Optional<Figure> position) {
    return at == null ? null : position.map(p -> p.minus(at)).orElse(null);
  }

  private static double orNaN(Figure of) {
    return of == null ? Double.NaN : of.value();
  }

  /** A rack behind the axle goes to the right for a lock to the left. */
  private static Figure leftMm(Card card, Linkage linkage) {
    double straight = linkage.design(0).orElseThrow().toeRad();
    boolean inward = linkage.design(1).filter(p -> p.toeRad() > straight).isPresent();
    double way = inward == card.place().left() ? -1 : 1;
    return card.layout().steered()
        ? card.given(Dimension.RACK_TRAVEL)
            .map(
                g ->
                    (g.halfWidth() != null
                            ? GivenFigures.of(g)
                            : Figure.of(g.length().mm(), UNSAID, Rectangular.u(RACK_MM)))
                        .times(way))
            .orElse(Figure.exact(0))
        : Figure.exact(0);
  }

  /** At part lock, and at a lock where nobody said how far the rack goes, empty. */
  public static Optional<Figure> rackMm(Card card, Linkage linkage, Steering steering) {
    Figure left = leftMm(card, linkage);
    return switch (steering) {
      case STRAIGHT -> Optional.of(Figure.exact(0));
      case FULL_LEFT -> Optional.of(left).filter(f -> f.value() != 0);
      case FULL_RIGHT -> Optional.of(left.times(-1)).filter(f -> f.value() != 0);
      case PART_LEFT, PART_RIGHT -> Optional.empty();
    };
  }

  /** Full left, straight and full right; straight alone where the locks are not known. */
  public List<Double> racksMm() {
    return leftMm.value() == 0 ? List.of(0.0) : List.of(leftMm.value(), 0.0, -leftMm.value());
  }

  /** Evenly over it, those that the linkage reaches. */
  public List<Pose> poses(Linkage linkage, int steps) {
    List<Pose> poses = new ArrayList<>();
    for (int i = 0; i <= steps; i++) {
      double height = lowMm + (highMm - lowMm) * i / steps;
      if (linkage.at(height, 0) instanceof Pose pose) {
        poses.add(pose);
      }
    }
    return poses;
  }

  /** Where the wheel hangs in the end, and where it is stopped: as set, else as far as was read. */
  public Figure droop() {
    return strapMm == null ? Figure.exact(lowMm) : strapMm;
  }

  public Figure bump() {
    return solidMm == null ? Figure.exact(highMm) : solidMm;
  }

  public double droopMm() {
    return droop().value();
  }

  public double bumpMm() {
    return bump().value();
  }
}
