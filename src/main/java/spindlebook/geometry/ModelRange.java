package spindlebook.geometry;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import spindlebook.fold.Card;
import spindlebook.linkage.Linkage;
import spindlebook.linkage.Pose;
import spindlebook.measured.CornerModel;
import spindlebook.travel.CornerTravel;
import spindlebook.travel.StopFound;
import spindlebook.travel.TravelFindings;

/**
 * How far a corner is modelled: from the strap to the solid bump stop, where they are known, and as
 * far as was read; heights above the joints' own, mm.
 *
 * @param strapMm, solidMm NaN where not known
 */
record ModelRange(double lowMm, double highMm, double strapMm, double solidMm) {
  /** Each way where nothing tells; common practice, no source. */
  private static final double UNREAD_MM = 100;

  static ModelRange of(Card card, CornerModel model) {
    TravelFindings travel = CornerTravel.of(card);
    double at = model.positionMm(0);
    double strap =
        travel
            .droop()
            .stop()
            .map(StopFound::positionMm)
            .map(p -> p.value() - at)
            .orElse(Double.NaN);
    double solid =
        travel.bump().stop().map(StopFound::positionMm).map(p -> p.value() - at).orElse(Double.NaN);
    boolean placed = model.joints().positionMm() != null;
    double[] read =
        DoubleStream.concat(
                model.readings().stream().mapToDouble(r -> r.heightMm().value()),
                placed ? DoubleStream.of(strap, solid) : DoubleStream.empty())
            .filter(h -> !Double.isNaN(h))
            .toArray();
    double low = DoubleStream.of(read).min().orElse(-UNREAD_MM);
    double high = DoubleStream.of(read).max().orElse(UNREAD_MM);
    return new ModelRange(
        Math.min(low, 0),
        Math.max(high, 0),
        placed ? strap : Double.NaN,
        placed ? solid : Double.NaN);
  }

  /** Evenly over it, those that the linkage reaches. */
  List<Pose> poses(Linkage linkage, int steps) {
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
  double droopMm() {
    return Double.isNaN(strapMm) ? lowMm : strapMm;
  }

  double bumpMm() {
    return Double.isNaN(solidMm) ? highMm : solidMm;
  }
}
