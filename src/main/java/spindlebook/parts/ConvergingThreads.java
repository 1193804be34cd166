package spindlebook.parts;

/**
 * How much farther apart the two balls of a welded arm go when its rod ends are turned.
 *
 * <pre>
 *   Δ = nF pF cos αF + nR pR cos αR            threads in line with the tubes
 *   Δ = √(S² + (mF − mR)²) − S                 threads square to the pivot line, mF = nF pF …
 * </pre>
 *
 * n turns out, p pitch, mm; α between thread and pivot line, rad, so that cos α > 0 where the
 * thread leans away from the other; S between the balls, mm. The frame's tabs do not move: Δ beyond
 * the slack there is binding, and the bolts must go in without force. Two hinged links instead of a
 * welded arm take it up freely.
 *
 * <p>Source: derived in docs/methods-alignment.md. Worked example: 1/2-20, cos 0.4076 and 0.4194,
 * one turn out at both: 1.050 mm; square, 350 mm apart, front one turn out and rear one in: 0.0092
 * mm.
 */
public final class ConvergingThreads {
  private ConvergingThreads() {}

  public static double spreadMm(
      Turns turns, RodThread front, RodThread rear, double frontRad, double rearRad) {
    return turns.front() * front.pitchMm() * Math.cos(frontRad)
        + turns.rear() * rear.pitchMm() * Math.cos(rearRad);
  }

  /** What is left when the threads stand square to the pivot line: little, one in and one out. */
  public static double squareSpreadMm(
      Turns turns, RodThread front, RodThread rear, double spreadMm) {
    double apart = turns.front() * front.pitchMm() - turns.rear() * rear.pitchMm();
    return Math.hypot(spreadMm, apart) - spreadMm;
  }
}
