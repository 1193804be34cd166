package spindlebook.alignment;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import spindlebook.curve.MeasuredCurve;
import spindlebook.curve.Node;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;

/**
 * What toe of one wheel does as it goes up and down: slope and bend at ride, and range over a
 * stretch of travel.
 *
 * <pre>
 *   shape   toe(z) ≈ c0 + c1 ζ + c2 ζ² (+ c3 ζ³),  ζ = z − ride;  least squares, all alike
 *           degree 3 from 5 places on, 2 with 3 or 4;  slope = c1, curvature = 2 c2
 *   range   most − least of the shape-preserving curve through the readings, on the stretch
 * </pre>
 *
 * z wheel position, mm, + bump; toe in rad, + in, of this wheel, steering straight and held. Each
 * reading's doubt goes in by its weight, its position's by weight × slope there. Readings that
 * scatter about the curve by more than their ± can explain (variance more than {@value
 * #SCATTER_ALLOWED} times) widen the figures by that scatter: a source of its own.
 *
 * <p>Assumes that toe has no fourth-order bend worth naming on the window used: it costs 2 to 10 %
 * of a curvature on ± 120 mm and 2 to 5 % on ± 90 (60 invented corners, rods 20 to 100 mm off;
 * RigidCornerTest), and is not in its ±. Range never leaves the readings: what lies outside is
 * named by {@link ToeRange#read}. Source: derived in docs/methods-alignment.md.
 *
 * <p>Worked example: 0.6075°, 0.3669°, 0.1°, −0.1926°, −0.5107° at −120, −60, 0, 60, 120 mm: slope
 * −0.004664 °/mm at 0, range 1.1182°.
 */
public final class BumpSteer {
  /** How many times larger than expected the variance about the curve may be by chance. */
  public static final double SCATTER_ALLOWED = 3.0;

  private final MeasuredCurve curve;

  /** Toe readings of one wheel, in rad; exact numbers at two or more places, else refused. */
  public BumpSteer(List<Node> toeRad) {
    this.curve = MeasuredCurve.through(toeRad);
  }

  /** The stretch that was read. */
  public Window read() {
    return new Window(curve.fromMm(), curve.toMm());
  }

  /** Range over the part of a stretch that was read; empty when none of it was. */
  public Optional<ToeRange> range(Window asked) {
    return asked.within(read()).map(w -> range(asked, w));
  }

  private ToeRange range(Window asked, Window w) {
    Stream<Double> inside =
        curve.nodes().stream().map(n -> n.positionMm().value()).filter(w::holds);
    List<Double> places =
        Stream.concat(Stream.of(w.fromMm(), w.toMm()), inside).distinct().toList();
    Comparator<Double> byToe = Comparator.comparingDouble(curve.cubic()::value);
    double in = places.stream().max(byToe).orElseThrow();
    // Of level toe the other end: nothing less itself would be known for sure.
    double out = places.stream().min(byToe.thenComparing(p -> -p)).orElseThrow();
    return new ToeRange(asked, w, curve.at(in).minus(curve.at(out)), in, out);
  }

  /**
   * Slope and bend at ride from the readings inside a stretch; empty with fewer than three places
   * there or when ride does not lie between them.
   */
  public Optional<BumpShape> shape(Window window, double rideMm) {
    List<Node> used =
        curve.nodes().stream().filter(n -> window.holds(n.positionMm().value())).toList();
    if (used.size() < 3) {
      return Optional.empty();
    }
    double from = used.get(0).positionMm().value();
    double to = used.get(used.size() - 1).positionMm().value();
    return rideMm >= from && rideMm <= to
        ? Optional.of(shape(used, new Window(from, to), rideMm))
        : Optional.empty();
  }

  private static BumpShape shape(List<Node> used, Window w, double rideMm) {
    double[] x = numbers(used, n -> n.positionMm().value() - rideMm);
    double[] y = numbers(used, n -> n.value().value());
    int degree = used.size() >= 5 ? 3 : 2;
    PolynomialFit fit = new PolynomialFit(x, y, degree);
    double extraU = scatterU(used, fit);
    return new BumpShape(
        w,
        used.size(),
        degree,
        rideMm,
        drawn(used, fit, x, fit.value(0), 0, extraU),
        drawn(used, fit, x, fit.slope(0), 1, extraU),
        drawn(used, fit, x, fit.curvature(0), 2, extraU));
  }

  private static Figure drawn(
      List<Node> used, PolynomialFit fit, double[] x, double value, int order, double extraU) {
    double[] weights = fit.weights(0, order);
    List<Figure> inputs = new ArrayList<>();
    double[] sensitivities = new double[2 * x.length];
    double squares = 0;
    for (int j = 0; j < x.length; j++) {
      inputs.add(used.get(j).value());
      sensitivities[j] = weights[j];
      squares += weights[j] * weights[j];
    }
    for (int j = 0; j < x.length; j++) {
      inputs.add(used.get(j).positionMm());
      sensitivities[x.length + j] = -weights[j] * fit.slope(x[j]);
    }
    Figure figure = Figure.linear(value, inputs, sensitivities);
    Source scatter = new Source("scatter about the toe curve, " + order, SourceKind.INTERPOLATION);
    return extraU == 0 ? figure : figure.withSource(scatter, extraU * Math.sqrt(squares));
  }

  /** What each reading is worse than it says, by the scatter about the curve. */
  private static double scatterU(List<Node> used, PolynomialFit fit) {
    double said = used.stream().mapToDouble(n -> n.value().u() * n.value().u()).average().orElse(0);
    double seen = fit.residualSd() * fit.residualSd();
    return seen > SCATTER_ALLOWED * said ? Math.sqrt(seen - said) : 0;
  }

  private static double[] numbers(List<Node> nodes, ToDoubleFunction<Node> number) {
    return nodes.stream().mapToDouble(number).toArray();
  }
}
