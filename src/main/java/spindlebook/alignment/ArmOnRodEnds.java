package spindlebook.alignment;

import java.util.List;
import java.util.Objects;
import spindlebook.uncertainty.Figure;

/**
 * What turns of an arm's rod ends do to camber and caster, and the turns for a wanted change.
 *
 * <pre>
 *   mF = nF pF,  mR = nR pR
 *   Δγ = ± (mF + mR) / 2 h          Δ caster = ± (mF − mR) a / (S h)
 *   nF = ± (h Δγ + S h ΔC / 2a) / pF        nR = ± (h Δγ − S h ΔC / 2a) / pR
 * </pre>
 *
 * upper sign for the upper arm, lower for the lower. nF, nR turns of front and rear rod end, + out;
 * p pitches, mm; h upper joint above lower, mm; a arm's length square to its pivot line, mm; S
 * pivot to pivot along the car, mm; Δγ camber, ΔC caster, rad. Longer upper arm: camber more +; its
 * front end out and rear end in: joint rearward, caster more +.
 *
 * <p>Assumes small changes, threads square to the pivot line, the joint about midway between the
 * pivots, the other arm still. Against the exact solution of a usual arm: camber within 4 % for up
 * to 4 turns, caster within 0.3 %; toe moves too ({@link ToeKnockOn}). With the pivots measured,
 * {@link ExactTurns}. Source: derived in docs/methods-alignment.md.
 *
 * <p>Worked example: 1/2-20, h 300: two turns in at both: −0.4851° camber; h 300, a 385.29, S 350:
 * front half a turn in, rear half out: −0.2670° caster.
 */
public record ArmOnRodEnds(
    Arm arm,
    RodThread front,
    RodThread rear,
    Figure jointsApartMm,
    Figure armLengthMm,
    Figure spreadMm) {

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
  }

  public Figure camberChangeRad(Turns turns) {
    double outMm = (turns.front() * front.pitchMm() + turns.rear() * rear.pitchMm()) / 2;
    return Propagated.of(List.of(jointsApartMm), v -> sign() * outMm / v[0]);
  }

  public Figure casterChangeRad(Turns turns) {
    double apartMm = turns.front() * front.pitchMm() - turns.rear() * rear.pitchMm();
    return Propagated.of(
        List.of(jointsApartMm, armLengthMm, spreadMm),
        v -> sign() * apartMm * v[1] / (v[2] * v[0]));
  }

  /** Exact parts of turns; see {@link Turns#settable} for what can be set. */
  public Turns turnsFor(double camberChangeRad, double casterChangeRad) {
    double h = jointsApartMm.value();
    double both = sign() * h * camberChangeRad;
    double each = sign() * spreadMm.value() * h * casterChangeRad / (2 * armLengthMm.value());
    return new Turns((both + each) / front.pitchMm(), (both - each) / rear.pitchMm());
  }

  /** How far the ball joint goes outboard (+) with these turns, mm. */
  public double jointOutMm(Turns turns) {
    return (turns.front() * front.pitchMm() + turns.rear() * rear.pitchMm()) / 2;
  }

  private int sign() {
    return arm == Arm.UPPER ? 1 : -1;
  }
}
