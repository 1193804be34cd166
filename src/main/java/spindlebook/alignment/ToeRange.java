package spindlebook.alignment;

import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Outcome;

/**
 * How much toe of one wheel wanders over a stretch of travel.
 *
 * <pre>  range = most − least, rad      across a wheel's edge: D · range, mm</pre>
 *
 * <p>D across which it is said, mm; the small angle costs less than 1e-4 of it. Source: derived in
 * docs/methods-alignment.md. Worked example: 0.5595° across 711.2 mm: 6.945 mm.
 *
 * @param asked the stretch the owner asked for
 * @param read the part of it that was read; toe outside is not guessed
 * @param rad most toe-in less most toe-out; what both readings share cancels
 * @param mostInAtMm wheel position
 * @param mostOutAtMm wheel position
 */
public record ToeRange(
    Window asked, Window read, Figure rad, double mostInAtMm, double mostOutAtMm) {

  public boolean readThroughout() {
    return read.equals(asked);
  }

  /** Said across a wheel's edge, mm. */
  public Figure mm(double acrossMm) {
    return rad.times(acrossMm);
  }

  /** Against the most the owner allows, rad: what was not read may be worse, never better. */
  public AgainstTarget atMost(double limitRad) {
    AgainstTarget read = AgainstTarget.atMost(rad, limitRad);
    return readThroughout() ? read : read.atBest(Outcome.CANT_TELL);
  }
}
