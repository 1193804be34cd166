package spindlebook.alignment;

import java.util.List;
import java.util.function.ToDoubleFunction;
import spindlebook.entry.SweptBy;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Propagated;

/**
 * Finds caster and KPI from a sweep, exactly, whatever the locks.
 *
 * <pre>
 *   sin γL − sin γR = what a knuckle with this C and K would show between the locks
 *   and one of:  K as known  |  sin pL − sin pR likewise  |  sin γL + sin γR likewise
 * </pre>
 *
 * γ camber at left and right lock, p pitch of a line on the wheel (brake held), rad; the knuckle
 * turned as in docs/methods-alignment.md, 'Caster by sweep'. Left wheel and + caster: camber grows
 * towards + when steered left; the line's front end rises when steered left and KPI is +. Mirrored
 * on the right.
 *
 * <p>Assumes turn plates and a body that does not lean with the lock. KPI enters caster weakly: 3°
 * wrong changes 6° of caster by 0.05°. From cambers alone KPI hangs on 1 − cos of the lock and is
 * worth little: its ± says so. A gauge's zero error cancels in the difference of cambers, not in
 * the sum. Readings that no axis explains are an IllegalArgumentException.
 *
 * <p>Source: derived in docs/methods-alignment.md; the small-angle form is the trade's, from
 * memory.
 *
 * <p>Worked example: left wheel, heading ± 20°, camber 1.0484° and −0.3210°, straight 0, toe 0:
 * caster 2° with KPI 6° known, and both from the cambers alone.
 */
public final class CasterSweep {
  private CasterSweep() {}

  /** With KPI known from elsewhere. */
  public static SteeringAxis withKpi(Sweep sweep, Figure kpiRad) {
    Sweep left = sweep.asLeft();
    List<Figure> inputs = inputs(left, kpiRad);
    return new SteeringAxis(Propagated.of(inputs, v -> knownKpi(left.by(), v)[0]), kpiRad);
  }

  /** With a gauge along the wheel read at the same locks. */
  public static SteeringAxis withPitch(Sweep sweep, PitchSwept pitch) {
    Sweep left = sweep.asLeft();
    PitchSwept p = pitch.asLeft(sweep);
    return axis(
        inputs(left, p.leftRad(), p.straightRad(), p.rightRad()), v -> byPitch(left.by(), v));
  }

  /** From cambers alone; see how wide the ± of KPI is. */
  public static SteeringAxis fromCambers(Sweep sweep) {
    Sweep left = sweep.asLeft();
    return axis(inputs(left), v -> byCambers(left.by(), v));
  }

  /** The trade's small-angle caster: difference of cambers over the swing. */
  public static Figure smallAngleRad(Sweep sweep) {
    return Propagated.of(inputs(sweep.asLeft()), v -> (v[2] - v[4]) / (v[0] - v[1]));
  }

  private interface Solver {
    double[] axis(double[] v);
  }

  private static SteeringAxis axis(List<Figure> inputs, Solver solver) {
    ToDoubleFunction<double[]> caster = v -> solver.axis(v)[0];
    ToDoubleFunction<double[]> kpi = v -> solver.axis(v)[1];
    return new SteeringAxis(Propagated.of(inputs, caster), Propagated.of(inputs, kpi));
  }

  /** 0 left lock, 1 right lock, 2 camber left, 3 straight, 4 right, 5 toe, then the others. */
  private static List<Figure> inputs(Sweep s, Figure... more) {
    List<Figure> inputs =
        new java.util.ArrayList<>(
            List.of(
                s.leftLockRad(),
                s.rightLockRad(),
                s.camberLeftRad(),
                s.camberStraightRad(),
                s.camberRightRad(),
                s.toeStraightRad()));
    inputs.addAll(List.of(more));
    return inputs;
  }

  private static double[] knownKpi(SweptBy by, double[] v) {
    return AxisSolution.rad(
        a -> new double[] {camberDifference(by, v, a, 0), a[1] - Math.tan(v[6])});
  }

  private static double[] byPitch(SweptBy by, double[] v) {
    return AxisSolution.rad(
        a -> {
          SweptKnuckle knuckle = new SweptKnuckle(a[0], a[1], v[3], v[5], v[7]);
          double swept = knuckle.pitchSine(by, v[0]) - knuckle.pitchSine(by, v[1]);
          return new double[] {
            camberDifference(by, v, a, v[7]), swept - (Math.sin(v[6]) - Math.sin(v[8]))
          };
        });
  }

  private static double[] byCambers(SweptBy by, double[] v) {
    return AxisSolution.rad(
        a -> {
          SweptKnuckle knuckle = new SweptKnuckle(a[0], a[1], v[3], v[5], 0);
          double sum = knuckle.camberSine(by, v[0]) + knuckle.camberSine(by, v[1]);
          return new double[] {
            camberDifference(by, v, a, 0), sum - (Math.sin(v[2]) + Math.sin(v[4]))
          };
        });
  }

  private static double camberDifference(SweptBy by, double[] v, double[] a, double pitchRad) {
    SweptKnuckle knuckle = new SweptKnuckle(a[0], a[1], v[3], v[5], pitchRad);
    double swept = knuckle.camberSine(by, v[0]) - knuckle.camberSine(by, v[1]);
    return swept - (Math.sin(v[2]) - Math.sin(v[4]));
  }
}
