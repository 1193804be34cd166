package spindlebook.alignment;

import spindlebook.uncertainty.Figure;

/**
 * What a gauge laid fore and aft along the wheel read in a sweep, the brake held so that the wheel
 * cannot roll: + front end up, in rad.
 */
public record PitchSwept(Figure leftRad, Figure straightRad, Figure rightRad) {
  PitchSwept asLeft(Sweep sweep) {
    return sweep.wheel().left() ? this : new PitchSwept(rightRad, straightRad, leftRad);
  }
}
