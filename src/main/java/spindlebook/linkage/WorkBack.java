package spindlebook.linkage;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.linear.SingularMatrixException;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;
import spindlebook.curve.Bisection;
import spindlebook.linkage.Change.Longer;
import spindlebook.linkage.Change.Rod;
import spindlebook.uncertainty.Figure;

/**
 * From what is wanted to what has to be set.
 *
 * <p>Bump steer: a coordinate moved (a shim moves TO up or down, the rack TI), toe at the design
 * set again with the tie rod, whose new length is that from TI to TO.
 */
public final class WorkBack {
  private static final double SCAN_MM = 2;
  private static final double STEP_MM = 1e-3;
  private static final double NEAR_ENOUGH = 1e-11;
  private static final int MOST_STEPS = 30;

  private WorkBack() {}

  /**
   * How far the coordinate is to be moved so that toe does not change with height at the design;
   * the least of several, none within the given distance each way.
   */
  public static OptionalDouble noBumpSteer(Joints joints, Coordinate coordinate, double within) {
    DoubleUnaryOperator slope =
        by -> {
          try {
            return new Linkage(coordinate.moved(joints, by)).design(0).orElseThrow().toePerMm();
          } catch (LinkageRefused noCorner) {
            return Double.NaN;
          }
        };
    double here = slope.applyAsDouble(0);
    double best = Double.NaN;
    for (int way = -1; way <= 1; way += 2) {
      double before = here;
      for (double by = SCAN_MM; by < within + SCAN_MM; by += SCAN_MM) {
        double to = way * Math.min(by, within);
        double from = way * (by - SCAN_MM);
        double after = slope.applyAsDouble(to);
        if (before * after <= 0) {
          double sign = Math.signum(after - before);
          double zero = Bisection.zero(x -> sign * slope.applyAsDouble(x), from, to);
          // Where rod and steering arm come into line the slope changes sign without being 0.
          if (Math.abs(slope.applyAsDouble(zero)) <= Math.min(Math.abs(before), Math.abs(after))) {
            best = Math.abs(zero) < Math.abs(best) || Double.isNaN(best) ? zero : best;
            break;
          }
        }
        before = after;
      }
    }
    return Double.isNaN(best) ? OptionalDouble.empty() : OptionalDouble.of(best);
  }

  /**
   * How far it is to be moved so that toe stays within the least from one height to another; at
   * most the given distance each way. To a micrometre.
   *
   * @throws LinkageRefused where the linkage as it is does not get there
   */
  public static double leastBumpSteer(
      Joints joints, Coordinate coordinate, double fromMm, double toMm, double within) {
    // Where today's linkage does not get there, this refuses in words.
    bumpSteerRad(joints, fromMm, toMm);
    return new BrentOptimizer(1e-9, 1e-4)
        .optimize(
            new MaxEval(500),
            GoalType.MINIMIZE,
            new SearchInterval(-within, within, 0),
            new UnivariateObjectiveFunction(
                by -> {
                  try {
                    return bumpSteerRad(coordinate.moved(joints, by), fromMm, toMm);
                  } catch (LinkageRefused doesNotGetThere) {
                    return Math.PI;
                  }
                }))
        .getPoint();
  }

  /** By how much toe of the one wheel changes between two heights, straight ahead. */
  public static double bumpSteerRad(Joints joints, double fromMm, double toMm) {
    return Span.of(new Linkage(joints), Quantity.TOE, fromMm, toMm, 0).range();
  }

  /**
   * By how much rod ends are to be turned so that figures at the design height, straight ahead, are
   * what is wanted: camber and caster with an arm's two, toe with the tie rod; as many as figures.
   *
   * <pre>  J Δ = wanted − had,  Δ the lengths;  J by differences of 0.001 mm  </pre>
   *
   * @throws LinkageRefused where no lengths bring it about
   */
  public static List<Longer> lengthsFor(
      Joints today, List<Rod> rods, Map<Quantity, Double> wanted) {
    List<Quantity> quantities = List.copyOf(wanted.keySet());
    int n = rods.size();
    RealVector goal = new ArrayRealVector(n);
    for (int i = 0; i < n; i++) {
      goal.setEntry(i, wanted.get(quantities.get(i)));
    }
    double[] by = new double[n];
    for (int steps = 0; steps < MOST_STEPS; steps++) {
      RealVector had = figures(today, longer(rods, by), quantities);
      RealVector missing = goal.subtract(had);
      if (missing.getLInfNorm() < NEAR_ENOUGH) {
        return longer(rods, by);
      }
      RealMatrix slopes = new Array2DRowRealMatrix(n, n);
      for (int j = 0; j < n; j++) {
        double[] more = by.clone();
        more[j] += STEP_MM;
        RealVector then = figures(today, longer(rods, more), quantities);
        slopes.setColumnVector(j, then.subtract(had).mapDivide(STEP_MM));
      }
      try {
        RealVector step = new LUDecomposition(slopes).getSolver().solve(missing);
        by = step.add(new ArrayRealVector(by)).toArray();
      } catch (SingularMatrixException e) {
        break;
      }
    }
    throw new LinkageRefused("No turns of these rod ends bring that about.");
  }

  /**
   * By how much the spacer of a bump stop that sits on the shock is to be thicker, − thinner, so
   * that the wheel is stopped at another height.
   *
   * <pre>  t = L(z) − L(B)     u² = joints'² + (MR(z) u_z)² + (MR(B) u_B)², less what these share
   * </pre>
   *
   * <p>L shock eye to eye, mm; B the wheel's height where the stop is solid today, z where it is to
   * be, mm, + bump; MR mm of shock per mm of wheel. Not MR × (B − z): MR changes along the travel.
   * Assumes a stop along the shock that is solid after the same crush: its pad then meets it where
   * the shock is t longer. B and z of the same mark, and joints, are as wrong at either: that
   * cancels. Derived in docs/methods-linkage.md. Worked: the reference corner solid at 160 mm, L
   * 541.167, is to be at 100 mm, L 581.710: 40.542 mm thicker; MR at 160 mm says 41.085.
   *
   * @param joints coordinates of this linkage, each with its doubt
   * @return empty where the corner does not get there or nobody laid out the shock's mounts
   */
  public static Optional<Figure> spacerOnShock(
      Linkage linkage, List<CoordinateFigure> joints, Figure solidMm, Figure wantedMm) {
    ToDoubleFunction<Linkage> thicker =
        of ->
            ModelFigure.value(of, Pose::shockMm, wantedMm.value(), 0)
                - ModelFigure.value(of, Pose::shockMm, solidMm.value(), 0);
    return ModelFigure.of(linkage, joints, thicker)
        .map(t -> t.plus(doubt(linkage, wantedMm)).minus(doubt(linkage, solidMm)));
  }

  /** What a height's doubt does to the shock's length there; its value 0. */
  private static Figure doubt(Linkage linkage, Figure heightMm) {
    double ratio = ModelFigure.value(linkage, Pose::shockRatio, heightMm.value(), 0);
    return heightMm.plus(-heightMm.value()).times(-ratio);
  }

  private static RealVector figures(Joints today, List<Longer> lengths, List<Quantity> quantities) {
    Linkage tried = new Linkage(Reassembly.of(today, List.copyOf(lengths)));
    Pose pose = tried.design(0).orElseThrow();
    return new ArrayRealVector(quantities.stream().mapToDouble(q -> q.of(pose)).toArray());
  }

  private static List<Longer> longer(List<Rod> rods, double[] by) {
    return IntStream.range(0, by.length).mapToObj(i -> new Longer(rods.get(i), by[i])).toList();
  }
}
