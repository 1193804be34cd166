package spindlebook.suspension;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import spindlebook.drawing.Chart;
import spindlebook.drawing.ChartAxis;
import spindlebook.drawing.ChartDrawing;
import spindlebook.drawing.Lengths;
import spindlebook.ride.StrapLasts;
import spindlebook.spring.StrapFit;
import spindlebook.spring.StrapLife;
import spindlebook.units.LengthUnit;

/** How long the strap that is fitted was under its pull, up the page, against its use. */
final class StrapChart {
  private StrapChart() {}

  /**
   * Its readings; the likeliest way it grows, and where one more reading lies 19 times in 20; from
   * when to when its stretch is used up, where that is forecast. Empty where a drive was not
   * counted.
   */
  static Optional<ChartDrawing> of(StrapLasts strap, LengthUnit unit) {
    if (strap.strap().read().size() < 2 || !strap.strap().counted()) {
      return Optional.empty();
    }
    List<Chart.Series> series = new ArrayList<>();
    List<List<Chart.At>> shaded = new ArrayList<>();
    List<Chart.At> likeliest = new ArrayList<>();
    double to = Math.max(1.25 * strap.used(), strap.gone().map(g -> g.lateHours()).orElse(0.0));
    Optional<StrapFit> fit = strap.life().flatMap(StrapLife::likeliest);
    fit.ifPresent(
        f -> {
          likeliest.addAll(line(f::at, 0, to));
          List<Chart.At> band = new ArrayList<>(line(t -> f.at(t) + f.nextWithin(t), 0, to));
          band.addAll(line(t -> f.at(t) - f.nextWithin(t), to, 0));
          shaded.add(band);
        });
    List<Chart.Spot> read =
        strap.strap().read().stream()
            .map(r -> new Chart.Spot(r.lengthMm().value(), r.lengthMm().U(), r.use(), 0))
            .toList();
    String as =
        fit.isEmpty() ? "as read" : "as read, and as it " + SpringView.says(fit.get().shape());
    series.add(new Chart.Series(as, "", Chart.Look.SQUARE, false, read, likeliest));
    strap
        .gone()
        .map(g -> line(t -> strap.goneAtMm().orElseThrow(), g.earlyHours(), g.lateHours()))
        .map(l -> new Chart.Series("when it is used up", "", Chart.Look.CROSS, true, List.of(), l))
        .ifPresent(series::add);
    Lengths lengths = new Lengths(unit);
    return Optional.of(
        ChartDrawing.of(
            new Chart(
                "strap",
                "Strap length against use",
                "How long the strap was after each drive, and when its stretch is used up.",
                ChartAxis.length("strap under its pull", unit, ""),
                new ChartAxis("use, " + strap.unit().words(), 1, false, false),
                series,
                List.of(),
                shaded,
                strap.goneAtMm().stream()
                    .map(mm -> new Chart.Post("used up at " + lengths.text(mm), mm))
                    .toList(),
                shaded.isEmpty() ? "" : "shaded: where the next reading lies, 19 times in 20",
                null)));
  }

  private static List<Chart.At> line(DoubleUnaryOperator mm, double from, double to) {
    return Chart.line(from, to, t -> new Chart.At(mm.applyAsDouble(t), t, ""));
  }
}
