package spindlebook.sums;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import spindlebook.parts.WheelGap;
import spindlebook.parts.WheelOnPaper;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Propagated;

/** The wheel that is on and the one tried, with the doubt of every size in all that comes of it. */
final class WheelTried {
  private static final int CAMBER = 2 * WheelTyped.SIZES;
  private static final int KPI = CAMBER + 1;
  private static final int GAP = CAMBER + 2;

  private final WheelTyped now;
  private final WheelTyped then;
  private final List<Figure> inputs;

  WheelTried(WheelTyped now, WheelTyped then, Figure camberRad, Figure kpiRad) {
    this.now = now;
    this.then = then;
    this.inputs = new ArrayList<>(now.figures());
    inputs.addAll(then.figures());
    inputs.add(camberRad);
    inputs.add(kpiRad);
  }

  Figure of(ToDoubleFunction<WheelOnPaper> what) {
    return Propagated.of(inputs, v -> what.applyAsDouble(tried(v, Map.of())));
  }

  /** A gap measured around the wheel that is on, as it will be. */
  Figure gap(WheelGap gap, Figure measuredMm) {
    List<Figure> all = new ArrayList<>(inputs);
    all.add(measuredMm);
    return Propagated.of(
        all, v -> tried(v, Map.of(gap, Figure.exact(v[GAP]))).gapsMm().get(gap).value());
  }

  private WheelOnPaper tried(double[] v, Map<WheelGap, Figure> gaps) {
    return WheelOnPaper.tried(now.of(v, 0), then.of(v, WheelTyped.SIZES), gaps, v[CAMBER], v[KPI]);
  }
}
