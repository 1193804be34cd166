package spindlebook.measured;

import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import spindlebook.curve.Bisection;
import spindlebook.definition.WatchPlace;
import spindlebook.entry.Joint;
import spindlebook.fold.Card;
import spindlebook.fold.SeenJoint;
import spindlebook.fold.Standing;
import spindlebook.linkage.CornerJoints;
import spindlebook.linkage.Linkage;
import spindlebook.linkage.ModelFigure;
import spindlebook.linkage.Pose;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.GuardBand;
import spindlebook.uncertainty.Outcome;
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;
import spindlebook.units.TypedAngle;

/**
 * How far a rod end or uniball swings from the middle over the corner's travel and locks, as the
 * linkage makes it, against what its hardware allows. Angles in rad, none below 0.
 *
 * @param joint its bolt or stud, {@link Joint#swings} of it
 * @param atPlaces in droop, as laid out, in bump, each at {@link ModelRange#racksMm}; NaN where the
 *     corner does not get there
 * @param worst over all of the travel and all locks
 * @param meetsMm height above the joints' own, on the way from there to the worst, at which it
 *     comes to what its hardware allows; null where it does not, or is past it as laid out
 * @param position of the wheel there; null where nobody said at which height joints were laid out
 * @param allows null where nobody said
 */
public record JointSwing(
    Joint joint,
    List<List<Double>> atPlaces,
    Figure worst,
    double heightMm,
    double rackMm,
    Figure meetsMm,
    Figure position,
    TypedAngle allows,
    Standing stands,
    List<String> from) {
  private static final int HEIGHTS = 24;
  private static final int HALF_LOCKS = 4;

  /** U of a direction that is typed as three lengths, or by eye; no source. */
  private static final double DIRECTION_RAD = Math.toRadians(1);

  /** Kept with the card. Of those alone whose bolt and housing were laid out. */
  public static List<JointSwing> of(Card card, Optional<Card> mirror) {
    return card.memo()
        .get(
            JointSwing.class,
            () ->
                CornerJoints.of(card).at().keySet().stream().allMatch(j -> j.swings() == null)
                    ? List.of()
                    : CornerModel.of(card, mirror).map(m -> all(card, m)).orElse(List.of()));
  }

  private static List<JointSwing> all(Card card, CornerModel model) {
    ModelRange range = ModelRange.of(card, model);
    return Stream.of(Joint.BOLT_L, Joint.BOLT_U, Joint.STUD_TO, Joint.STUD_TI)
        .filter(model.joints().at()::containsKey)
        .flatMap(joint -> one(card, model, range, joint).stream())
        .toList();
  }

  /** A bolt has no head and no foot here: its line leans at most a right angle. */
  static double rad(Joint joint, Pose pose) {
    double angle =
        switch (joint) {
          case BOLT_L -> pose.lowerUniballRad();
          case BOLT_U -> pose.upperUniballRad();
          case STUD_TO -> Math.abs(pose.outerRodEndRad());
          default -> Math.abs(pose.innerRodEndRad());
        };
    return Math.min(angle, Math.PI - angle);
  }

  private static Optional<JointSwing> one(
      Card card, CornerModel model, ModelRange range, Joint joint) {
    Linkage linkage = model.linkage();
    ToDoubleFunction<Pose> of = pose -> rad(joint, pose);
    List<List<Double>> places =
        DoubleStream.of(range.droopMm(), 0, range.bumpMm())
            .mapToObj(
                h ->
                    range.racksMm().stream()
                        .map(r -> ModelFigure.value(linkage, of, h, r))
                        .toList())
            .toList();
    double lock = range.leftMm().value();
    double height = 0;
    double rack = 0;
    double most = -1;
    for (int i = -1; i <= HEIGHTS; i++) {
      double up = range.bumpMm() - range.droopMm();
      double h = i < 0 ? 0 : i < HEIGHTS ? range.droopMm() + up * i / HEIGHTS : range.bumpMm();
      for (int k = -HALF_LOCKS; k <= HALF_LOCKS; k++) {
        double here = ModelFigure.value(linkage, of, h, lock * k / HALF_LOCKS);
        if (here > most) {
          most = here;
          height = h;
          rack = lock * k / HALF_LOCKS;
        }
      }
    }
    Optional<Figure> there = swings(model, range, joint, height, rack);
    if (there.isEmpty()) {
      return Optional.empty();
    }
    Figure end = height == range.droopMm() ? range.droop() : range.bump();
    double perMm = slope(most, ModelFigure.value(linkage, of, height - 1, rack));
    Figure worst =
        height == end.value() ? there.get().plus(end.plus(-end.value()).times(perMm)) : there.get();
    Figure at = model.joints().positionMm();
    SeenJoint laid =
        card.joints().stream().filter(j -> j.place().joint() == joint).findFirst().orElseThrow();
    TypedAngle allows = laid.place().allows() == null ? byRule(card, joint) : laid.place().allows();
    return Optional.of(
        new JointSwing(
            joint,
            places,
            worst,
            height,
            rack,
            allows == null ? null : meets(model, range, joint, allows.rad(), height, rack),
            at == null ? null : at.plus(height),
            allows,
            card.joints().stream().anyMatch(j -> j.stands() == Standing.PUT_BACK)
                ? Standing.PUT_BACK
                : null,
            List.of(laid.key())));
  }

  /** There, with the doubt of joints, of the rack's travel and of the direction as typed. */
  private static Optional<Figure> swings(
      CornerModel model, ModelRange range, Joint joint, double heightMm, double rackMm) {
    ToDoubleFunction<Pose> of = pose -> rad(joint, pose);
    double lock = range.leftMm().value();
    Figure rack = lock == 0 ? Figure.exact(0) : range.leftMm().plus(-lock).times(rackMm / lock);
    double before = ModelFigure.value(model.linkage(), of, heightMm, rackMm - 1);
    Source direction = new Source("given: " + joint, SourceKind.PLACING);
    return ModelFigure.of(model.linkage(), model.coordinates(), of, heightMm, rackMm)
        .map(f -> f.plus(rack.times(slope(f.value(), before))))
        .map(f -> f.plus(Figure.of(0, direction, DIRECTION_RAD / 2)));
  }

  /**
   * Where it comes to what its hardware allows: α(h) = A by bisection from the joints' own height
   * to the worst, the rack as there; u_h = u_α / |dα/dh|.
   */
  private static Figure meets(
      CornerModel model, ModelRange range, Joint joint, double rad, double worstMm, double rackMm) {
    DoubleUnaryOperator past =
        h -> ModelFigure.value(model.linkage(), pose -> rad(joint, pose), h, rackMm) - rad;
    if (!(past.applyAsDouble(0) < 0 && past.applyAsDouble(worstMm) > 0)) {
      return null;
    }
    double at = Bisection.zero(past, 0, worstMm);
    double perMm = past.applyAsDouble(at + 0.5) - past.applyAsDouble(at - 0.5);
    Figure there = swings(model, range, joint, at, rackMm).orElseThrow();
    return there.plus(-there.value()).times(-1 / perMm).plus(at);
  }

  /** For each mm; 0 where the corner does not get that far. */
  private static double slope(double here, double before) {
    return Double.isNaN(before) ? 0 : here - before;
  }

  /** Of the upper uniball also its watch point says what it allows. */
  private static TypedAngle byRule(Card card, Joint joint) {
    return card.watchPoints().stream()
        .filter(w -> joint == Joint.BOLT_U && w.place() == WatchPlace.UNIBALL_ANGLE)
        .map(w -> w.keep().mostAngle())
        .findFirst()
        .orElse(null);
  }

  /** Null where nobody said what its hardware allows. */
  public Outcome outcome() {
    return allows == null ? null : GuardBand.atMost(worst, allows.rad());
  }
}
