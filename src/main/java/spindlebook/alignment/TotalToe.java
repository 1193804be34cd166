package spindlebook.alignment;

import spindlebook.uncertainty.Figure;

/**
 * Total toe by a tape in front of and behind the axle, across the tyres or between two toe plates.
 *
 * <pre>
 *   T = rear − front = D (sin tL + sin tR)      each wheel, if alike: t = asin(T / 2D)
 * </pre>
 *
 * T, D in mm, + toe-in; D is the diameter where the tape was held, or the plates' length. Half of a
 * total is no reading of a wheel: see {@link #HIDES_SIDES}. The tape's own error cancels in T.
 *
 * <p>Assumes both readings at the height of the hubs, on the same marks of the tread rolled from
 * front to rear. Source: derived in docs/methods-alignment.md.
 *
 * <p>Worked example: 1577.0 in front, 1583.35 mm behind, across 711.2 mm: 6.35 mm (1/4 in) in,
 * 0.2558° a wheel if alike, 0.5116° in all.
 */
public record TotalToe(Figure mm, Figure acrossMm) {
  public static final String HIDES_SIDES =
      "A tape across both tyres tells the total only: one wheel may toe in and the other out.";

  public static TotalToe byTape(Figure frontMm, Figure rearMm, Figure acrossMm) {
    return new TotalToe(rearMm.minus(frontMm), acrossMm);
  }

  /** Toe of each wheel if the two are alike. */
  public Toe perWheelIfAlike() {
    return Toe.acrossOneWheel(mm.times(0.5), acrossMm);
  }

  /** The total as an angle; right to 1e-5 of it even when the wheels differ. */
  public Figure rad() {
    return perWheelIfAlike().rad().times(2);
  }
}
