package spindlebook.ride;

import java.util.List;
import java.util.Optional;
import spindlebook.definition.BumpStop;
import spindlebook.fold.SeenSprings.Said;
import spindlebook.spring.Drop;
import spindlebook.spring.StopChart;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Rectangular;

/**
 * A bump stop where it stands, and what a landing does to it.
 *
 * @param chart at the wheel
 * @param touch the wheel position of its first touch; empty while not known
 * @param drop empty without a drop, or while something else is missing
 * @param rest empty when it does not come to rest on what is known
 */
public record StopOnLanding(
    Said<BumpStop> said,
    StopChart chart,
    Optional<Figure> touch,
    Optional<Drop> drop,
    Optional<Drop.Rest> rest,
    Optional<Drop.Energy> atBump) {

  public BumpStop stop() {
    return said.what();
  }

  static StopChart chart(BumpStop stop) {
    List<BumpStop.Point> points = stop.chart();
    return new StopChart(
        points.stream().mapToDouble(p -> p.crush().mm() / stop.ratio()).toArray(),
        points.stream().mapToDouble(p -> p.force().si(false) * stop.ratio()).toArray());
  }

  /** 1, and what the chart may be off. */
  static Figure factor(BumpStop stop) {
    return Rectangular.within(1, "chart " + stop.stop(), stop.chartWithin() / 100);
  }
}
