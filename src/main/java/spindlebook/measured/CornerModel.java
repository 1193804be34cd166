package spindlebook.measured;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import spindlebook.alignment.ToeRead;
import spindlebook.entry.AlignedFigure;
import spindlebook.entry.GapResult;
import spindlebook.entry.Joint;
import spindlebook.fold.Card;
import spindlebook.fold.OfEntry;
import spindlebook.fold.SeenReading;
import spindlebook.linkage.Calibration;
import spindlebook.linkage.Calibration.Misfit;
import spindlebook.linkage.Coordinate;
import spindlebook.linkage.CoordinateFigure;
import spindlebook.linkage.CornerJoints;
import spindlebook.linkage.CornerReading;
import spindlebook.linkage.Joints;
import spindlebook.linkage.Linkage;
import spindlebook.linkage.LinkageRefused;
import spindlebook.linkage.ModelFigure;
import spindlebook.linkage.Quantity;
import spindlebook.travel.CornerTravel;
import spindlebook.uncertainty.Figure;

/**
 * A corner's linkage brought into agreement with what was read of it: camber, toe, strap and shock
 * along the travel, straight ahead and at full lock where the rack's travel was given, and
 * alignment as measured at ride. Every coordinate may be other than laid out, by as much as a tape
 * is off there. One reading, or one coordinate, that is probably wrong is left out of it, and
 * named.
 *
 * @param joints as laid out
 * @param linkage that agrees best; as laid out where nothing was read
 * @param readings what it was held against
 * @param from the entry behind each, by its key
 * @param all held against all of them; null where nothing was read
 * @param refused why the readings lead to no corner; null where they do
 * @param coordinates of the linkage, each with its doubt
 */
public record CornerModel(
    CornerJoints joints,
    Linkage linkage,
    List<CornerReading> readings,
    Map<String, OfEntry> from,
    Calibration all,
    String refused,
    List<CoordinateFigure> coordinates) {
  /** Kept with the card. Empty where the joints make no corner. */
  public static Optional<CornerModel> of(Card card, Optional<Card> mirror) {
    return card.memo()
        .get(
            "model of the corner",
            () ->
                Optional.ofNullable(CornerJoints.of(card).linkage()).map(l -> of(card, mirror, l)));
  }

  private static CornerModel of(Card card, Optional<Card> mirror, Linkage laidOut) {
    CornerJoints joints = CornerJoints.of(card);
    Map<String, OfEntry> from = new LinkedHashMap<>();
    List<CornerReading> readings = new ArrayList<>();
    if (joints.positionMm() != null) {
      rounds(card, joints, laidOut, readings, from);
      atRide(card, mirror, joints, readings, from);
    }
    List<CoordinateFigure> given =
        joints.coordinates().stream().map(c -> given(c, laidOut.joints(), readings)).toList();
    if (readings.isEmpty()) {
      return new CornerModel(joints, laidOut, readings, from, null, null, given);
    }
    Fit all = fit(card, laidOut.joints(), given, readings);
    boolean one = all.refused == null && all.found.wrong().size() == 1;
    Fit without = one ? without(card, all.found, given, readings) : all;
    return without.refused != null
        ? new CornerModel(joints, laidOut, readings, from, null, without.refused, given)
        : new CornerModel(
            joints,
            new Linkage(without.found.joints()),
            readings,
            from,
            all.found,
            null,
            without.found.coordinates());
  }

  /** Of the wheel's angle nothing is known but what was read of it: no tape laid it out. */
  private static CoordinateFigure given(
      Coordinate coordinate, Joints joints, List<CornerReading> readings) {
    CoordinateFigure given = CoordinateFigure.asGiven(coordinate, joints);
    return coordinate instanceof Coordinate.WheelAngle angle
            && readings.stream().anyMatch(r -> r.quantity() == angle.quantity)
        ? new CoordinateFigure(coordinate, given.anywhere())
        : given;
  }

  /** One of both is null. */
  private record Fit(Calibration found, String refused) {}

  private static Fit fit(
      Card card, Joints joints, List<CoordinateFigure> given, List<CornerReading> readings) {
    return card.memo()
        .lasting(
            List.of(Calibration.class, card.corner()),
            List.of(joints, given, readings),
            () -> {
              try {
                return new Fit(Calibration.of(joints, given, readings), null);
              } catch (LinkageRefused e) {
                return new Fit(null, e.getMessage());
              }
            });
  }

  private static Fit without(
      Card card, Calibration all, List<CoordinateFigure> given, List<CornerReading> readings) {
    String wrong = all.wrong().get(0).key();
    List<CoordinateFigure> loose =
        given.stream()
            .map(
                c ->
                    c.coordinate().words().equals(wrong)
                        ? new CoordinateFigure(c.coordinate(), c.anywhere())
                        : c)
            .toList();
    return fit(
        card, all.joints(), loose, readings.stream().filter(r -> !r.key().equals(wrong)).toList());
  }

  private static void rounds(
      Card card,
      CornerJoints joints,
      Linkage laidOut,
      List<CornerReading> readings,
      Map<String, OfEntry> from) {
    Optional<Figure> across = ToeRead.acrossMm(card);
    for (SeenReading r : card.readings()) {
      Quantity quantity = quantity(r.reading().quantity(), joints);
      Optional<Figure> rackMm = ModelRange.rackMm(card, laidOut, r.reading().steering());
      boolean counts = quantity == Quantity.STRAP ? r.countsAlongTravel() : r.counts();
      if (quantity == null
          || !counts
          || r.value() == null
          || r.reading().result() != GapResult.NUMBER
          || rackMm.isEmpty()
          || r.height().crossed()) {
        continue;
      }
      Optional<Figure> value =
          quantity != Quantity.TOE
              ? Optional.of(r.value())
              : r.reading().angle() != null
                  ? Optional.of(r.value())
                  : across.flatMap(a -> ToeRead.rad(r, a));
      value.ifPresent(
          v -> {
            Figure height = r.height().positionMm().minus(joints.positionMm());
            Figure rack = rackMm.get();
            double slope =
                rack.value() == 0
                    ? 0
                    : ModelFigure.value(laidOut, quantity::of, height.value(), rack.value())
                        - ModelFigure.value(
                            laidOut, quantity::of, height.value(), rack.value() - 1);
            // Where the joints as laid out do not get to the lock, it tells nothing of them.
            if (!Double.isNaN(slope)) {
              Figure off = rack.plus(-rack.value()).times(-slope);
              readings.add(new CornerReading(r.key(), quantity, height, rack.value(), v.plus(off)));
              from.put(r.key(), r);
            }
          });
    }
  }

  private static Quantity quantity(spindlebook.entry.Quantity of, CornerJoints joints) {
    return switch (of) {
      case CAMBER -> Quantity.CAMBER;
      case TOE -> Quantity.TOE;
      case SHOCK_LENGTH -> joints.at().containsKey(Joint.SU) ? Quantity.SHOCK : null;
      case STRAP_LENGTH -> joints.at().containsKey(Joint.KU) ? Quantity.STRAP : null;
      case WATCH_POINT, STOP_GAP -> null;
    };
  }

  private static void atRide(
      Card card,
      Optional<Card> mirror,
      CornerJoints joints,
      List<CornerReading> readings,
      Map<String, OfEntry> from) {
    Optional<Figure> ride = CornerTravel.of(card).rideMm();
    if (ride.isEmpty()) {
      return;
    }
    Figure height = ride.get().minus(joints.positionMm());
    MeasuredAlignment measured = new MeasuredAlignment(card, mirror);
    for (Quantity quantity :
        card.layout().steered()
            ? List.of(Quantity.CAMBER, Quantity.TOE, Quantity.CASTER, Quantity.KPI)
            : List.of(Quantity.CAMBER, Quantity.TOE)) {
      AlignedFigure figure = AlignedFigure.valueOf(quantity.name());
      AlignedFinding found = measured.of(figure);
      if (found.counts() && !found.from().isEmpty()) {
        String key = figure.words() + " at ride";
        readings.add(new CornerReading(key, quantity, height, 0, found.value()));
        from.put(key, found.from().get(0));
      }
    }
  }

  /** The reading, or coordinate, that is probably wrong; several where nothing tells them apart. */
  public List<Misfit> wrong() {
    return all == null ? List.of() : all.wrong();
  }

  /** Wheel position at the height of a pose. */
  public double positionMm(double heightMm) {
    return joints.positionMm() == null ? heightMm : heightMm + joints.positionMm().value();
  }

  /**
   * What the model says there, with its doubt; empty where the corner does not get there or lacks
   * the mounts.
   */
  public Optional<Figure> modelled(Quantity quantity, double heightMm, double rackMm) {
    return ModelFigure.of(linkage, coordinates, quantity::of, heightMm, rackMm);
  }
}
