package spindlebook.parts;

import spindlebook.alignment.AgainstTarget;
import spindlebook.uncertainty.Figure;

/**
 * Whether enough thread is left in the arm.
 *
 * <pre>  e' = e − n p        rule: e' ≥ q d,  q = 1.5 unless the owner says else</pre>
 *
 * e thread engaged now, mm (shank less what shows, not counting the chamfer); n turns out, p pitch,
 * d diameter, mm. Source: of 1.5 diameters (1 at least, in steel) common practice, no source; the
 * maker's drawing wins.
 *
 * <p>Worked example: 5/8-18, 30 mm in, two turns out: 27.18 mm, rule 23.81 mm: clear by 3.37 mm;
 * from the 30 mm it may come out 4.4 turns.
 */
public record ThreadEngaged(RodThread thread, Figure engagedMm, double diametersWanted) {
  /** Common practice, no source; the owner's to change. */
  public static final double USUAL_DIAMETERS = 1.5;

  public double ruleMm() {
    return diametersWanted * thread.diameterMm();
  }

  /** Against the rule after so many turns out. */
  public AgainstTarget after(double turnsOut) {
    return AgainstTarget.atLeast(engagedMm.plus(-turnsOut * thread.pitchMm()), ruleMm());
  }

  /** Turns it may still come out with the rule surely kept; negative: it must go in by as many. */
  public double turnsLeft() {
    return (engagedMm.value() - engagedMm.U() - ruleMm()) / thread.pitchMm();
  }
}
