package spindlebook.parts;

import java.util.List;
import java.util.Objects;
import java.util.function.ToDoubleFunction;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Propagated;

/**
 * What turns of an arm's rod ends do to camber and caster, and the turns for a wanted change.
 *
 * <pre>
 *   mF = nF pF,  mR = nR pR,  b = a sin α / S + cos α / 2
 *   Δγ = ± (mF + mR) sin α / 2 h    ΔC = ± (mF − mR) b / h
 *   nF = ± (Δγ / sin α + ΔC / 2b) h / pF     nR = ± (Δγ / sin α − ΔC / 2b) h / pR
 * </pre>
 *
 * upper sign for the upper arm, lower for the lower. nF, nR turns of front and rear rod end, + out;
 * p pitches, mm; h upper joint above lower, mm; a arm's length square to its pivot line, mm; S
 * pivot to pivot along the car, mm; α between thread and pivot line, the same at both, over 0 to
 * 90° (square), the threads running together towards the joint; Δγ camber, ΔC caster, rad. Longer
 * upper arm: camber more +; its front end out and rear end in: joint rearward, caster more +.
 *
 * <p>Assumes small changes, a welded arm that stands midway in the slack of its tabs, the joint
 * about midway between the pivots, arms level, the kingpin upright, the other arm still. Against
 * the exact solution of 2,100 invented corners that are none of it ({@link #camberWithinRad}):
 * camber is off by up to {@value #CAMBER_WITHIN} of itself with the upper arm, {@value
 * #CAMBER_WITHIN_LOWER} with the lower, and {@value #CAMBER_OF_CASTER} of the caster that comes
 * along, caster by up to {@value #CASTER_WITHIN} of itself and {@value #CASTER_OF_CAMBER} of
 * camber; toe moves too ({@link ToeKnockOn}). With the pivots measured, {@link ExactTurns}. Source:
 * derived in docs/methods-alignment.md.
 *
 * <p>Worked example: 1/2-20, square, h 300: two turns in at both: −0.4851° camber; h 300, a 385.29,
 * S 350: front half a turn in, rear half out: −0.2670° caster. Threads at 65.9° instead: −0.4428°,
 * −0.2933°.
 */
public record ArmOnRodEnds(
    Arm arm,
    RodThread front,
    RodThread rear,
    Figure jointsApartMm,
    Figure armLengthMm,
    Figure spreadMm,
    Figure threadRad) {
  /** How far camber may be off, as a part of itself: with the upper arm, and with the lower. */
  public static final double CAMBER_WITHIN = 0.4;

  public static final double CAMBER_WITHIN_LOWER = 0.5;

  /** Camber that the formula leaves out, as a part of caster; the other way likewise. */
  public static final double CAMBER_OF_CASTER = 0.25;

  public static final double CASTER_WITHIN = 0.03;
  public static final double CASTER_OF_CAMBER = 0.15;

  /** Threads square to the pivot line. */
  public static final Figure SQUARE = Figure.exact(Math.PI / 2);

  /** Which arm. */
  public enum Arm {
    UPPER,
    LOWER
  }

  public ArmOnRodEnds {
    Objects.requireNonNull(arm, "arm");
    if (!(jointsApartMm.value() > 0 && armLengthMm.value() > 0 && spreadMm.value() > 0)) {
      throw new IllegalArgumentException(
          "an arm's lengths are more than 0: " + List.of(jointsApartMm, armLengthMm, spreadMm));
    }
    if (!(threadRad.value() > 0 && threadRad.value() <= Math.PI / 2)) {
      throw new IllegalArgumentException("no thread leans like " + threadRad);
    }
  }

  public Figure camberChangeRad(Turns turns) {
    double bothMm = frontMm(turns) + rearMm(turns);
    return of(v -> sign() * bothMm * Math.sin(v[3]) / (2 * v[0]));
  }

  public Figure casterChangeRad(Turns turns) {
    double apartMm = frontMm(turns) - rearMm(turns);
    return of(v -> sign() * apartMm * rearwardPerMm(v) / v[0]);
  }

  /**
   * How far the short formula's camber may be off: the worst of 300 corners and both arms, up to
   * 5.6 mm at either end (4 turns of 5/8-18) with the wheel's centre kept at its height. Uprights
   * of 200 to 350 mm, KPI 4 to 14°, caster 0 to 8°, arms within 10° of level, pivot lines within 3°
   * of straight ahead, joints within a tenth of S of midway. Half width in rad, square threads.
   */
  public double camberWithinRad(double camberRad, double casterRad) {
    double ofItself = arm == Arm.UPPER ? CAMBER_WITHIN : CAMBER_WITHIN_LOWER;
    return ofItself * Math.abs(camberRad) + CAMBER_OF_CASTER * Math.abs(casterRad);
  }

  /** The same of caster. */
  public double casterWithinRad(double camberRad, double casterRad) {
    return CASTER_WITHIN * Math.abs(casterRad) + CASTER_OF_CAMBER * Math.abs(camberRad);
  }

  /** Turns of the front rod end for a wanted change, with the doubt of the arm's sizes. */
  public Figure frontTurns(double camberChangeRad, double casterChangeRad) {
    return of(v -> outMm(v, camberChangeRad, casterChangeRad) / front.pitchMm());
  }

  /** Likewise of the rear one: what caster asks of the front it asks of the rear the other way. */
  public Figure rearTurns(double camberChangeRad, double casterChangeRad) {
    return of(v -> outMm(v, camberChangeRad, -casterChangeRad) / rear.pitchMm());
  }

  /** How far the ball joint goes outboard (+) with these turns, mm. */
  public Figure jointOutMm(Turns turns) {
    double bothMm = frontMm(turns) + rearMm(turns);
    return of(v -> bothMm * Math.sin(v[3]) / 2);
  }

  private double outMm(double[] v, double camberChangeRad, double casterChangeRad) {
    return sign()
        * v[0]
        * (camberChangeRad / Math.sin(v[3]) + casterChangeRad / (2 * rearwardPerMm(v)));
  }

  /** How far the joint goes back for each mm that the front thread is further out than the rear. */
  private static double rearwardPerMm(double[] v) {
    return v[1] * Math.sin(v[3]) / v[2] + Math.cos(v[3]) / 2;
  }

  private Figure of(ToDoubleFunction<double[]> formula) {
    return Propagated.of(List.of(jointsApartMm, armLengthMm, spreadMm, threadRad), formula);
  }

  private double frontMm(Turns turns) {
    return turns.front() * front.pitchMm();
  }

  private double rearMm(Turns turns) {
    return turns.rear() * rear.pitchMm();
  }

  private int sign() {
    return arm == Arm.UPPER ? 1 : -1;
  }
}
