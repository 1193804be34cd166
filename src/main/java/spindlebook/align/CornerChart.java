package spindlebook.align;

import java.util.ArrayList;
import java.util.List;
import spindlebook.card.Zero;
import spindlebook.corner.Card;
import spindlebook.corner.Keep;
import spindlebook.corner.Pairing;
import spindlebook.travel.CornerTravel;
import spindlebook.travel.EndFindings;
import spindlebook.travel.MeasuredCurve;
import spindlebook.travel.Node;
import spindlebook.travel.TravelFindings;
import spindlebook.units.LengthUnit;
import spindlebook.web.Chart;
import spindlebook.web.Chart.Look;
import spindlebook.web.ChartAxis;

/** A corner's curves as the lines, markers and bands of a chart; positions from its own zero. */
final class CornerChart {
  private static final int STEPS = 60;

  private final Card card;
  private final TravelFindings travel;
  private final Zero zero;

  CornerChart(Card card) {
    this.card = card;
    this.travel = CornerTravel.of(card);
    this.zero = Zero.of(card, travel);
  }

  Zero zero() {
    return zero;
  }

  TravelFindings travel() {
    return travel;
  }

  ChartAxis across() {
    return ChartAxis.length("wheel position " + zero.words(), unit(), true);
  }

  static ChartAxis up(CurveRead read, LengthUnit unit) {
    return read.angle()
        ? ChartAxis.degrees(read.of().words())
        : ChartAxis.length(read.of().words(), unit, read.of().equals(Curved.TOE));
  }

  private LengthUnit unit() {
    return card.details().unit();
  }

  Chart.Series series(String name, CurveRead read, boolean hollow) {
    List<Chart.Spot> spots = new ArrayList<>();
    for (Node n : read.nodes()) {
      spots.add(
          new Chart.Spot(
              zero.from(n.positionMm().value()),
              n.positionMm().U(),
              n.value().value(),
              n.value().U()));
    }
    return new Chart.Series(
        name, look(read), hollow, spots, read.curve().map(this::line).orElse(List.of()));
  }

  private List<Chart.At> line(MeasuredCurve curve) {
    List<Chart.At> line = new ArrayList<>();
    for (int i = 0; i <= STEPS; i++) {
      double share = (double) i / STEPS;
      double at = (1 - share) * curve.fromMm() + share * curve.toMm();
      line.add(new Chart.At(zero.from(at), curve.cubic().value(at)));
    }
    return line;
  }

  /**
   * An axle is read straight ahead only: what steering tells apart elsewhere, crossed does there.
   */
  private static Look look(CurveRead read) {
    return switch (read.steering()) {
      case STRAIGHT -> read.pairing() == Pairing.CROSSED ? Look.SECOND : Look.FIRST;
      case FULL_LEFT -> Look.SECOND;
      case FULL_RIGHT -> Look.THIRD;
      case PART_LEFT, PART_RIGHT -> Look.FOURTH;
    };
  }

  /** Where the owner's rule for a watch point is broken. */
  static List<Chart.Band> broken(Curved of) {
    List<Chart.Band> bands = new ArrayList<>();
    if (of.point() == null) {
      return bands;
    }
    Keep keep = of.point().keep();
    if (keep.least() != null) {
      bands.add(new Chart.Band(Double.NEGATIVE_INFINITY, keep.least().mm()));
    }
    if (keep.most() != null) {
      bands.add(new Chart.Band(keep.most().mm(), Double.POSITIVE_INFINITY));
    }
    if (keep.mostAngle() != null) {
      bands.add(new Chart.Band(keep.mostAngle().rad(), Double.POSITIVE_INFINITY));
    }
    return bands;
  }

  /** Ride and the stops as they are set. */
  List<Chart.Post> posts() {
    List<Chart.Post> posts = new ArrayList<>();
    stops(posts, "strap", travel.droop());
    travel.rideMm().ifPresent(p -> add(posts, "ride", p.value()));
    stops(posts, "stop", travel.bump());
    return posts;
  }

  private void stops(List<Chart.Post> posts, String word, EndFindings end) {
    for (EndFindings.Reach reach : end.reaches()) {
      String crossed = reach.pairing() == Pairing.CROSSED ? ", crossed" : "";
      reach.stop().ifPresent(s -> add(posts, word + crossed, s.positionMm().value()));
    }
  }

  private void add(List<Chart.Post> posts, String word, double positionMm) {
    posts.add(new Chart.Post(word, zero.from(positionMm)));
  }
}
