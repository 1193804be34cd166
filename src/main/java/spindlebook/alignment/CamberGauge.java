package spindlebook.alignment;

import spindlebook.uncertainty.Figure;

/**
 * Finds camber free of the gauge's zero error by reading it twice, the gauge turned round.
 *
 * <pre>
 *   r1 = γ + e,  r2 = −γ + e     ⇒     γ = (r1 − r2) / 2,   e = (r1 + r2) / 2
 * </pre>
 *
 * r1 read with the gauge's + side outward (+ top outward), r2 on the same wheel with the gauge
 * turned half a turn about the vertical, each with the sign the gauge shows; γ camber, e its zero
 * error; radians, any that the gauge reads.
 *
 * <p>Assumes level ground (a floor that rises outboard by δ makes a true γ read γ − δ) and a gauge
 * set to the same two places of the rim. A rim that runs out is read again half a wheel turn on:
 * take the mean. The zero error is one source in r1 and r2 and cancels in γ; steps and placing
 * halve their variance. Source: the reversal of a level; common practice, no source.
 *
 * <p>Worked example: −0.30° and turned round 0.70°: camber −0.50°, the gauge reads 0.20° too much.
 */
public final class CamberGauge {
  private CamberGauge() {}

  /** Camber, and what must be taken off all that this gauge reads. */
  public record TurnedRound(Figure camberRad, Figure zeroErrorRad) {}

  public static TurnedRound turnedRound(Figure firstRad, Figure turnedRad) {
    return new TurnedRound(
        firstRad.minus(turnedRad).times(0.5), firstRad.plus(turnedRad).times(0.5));
  }

  /** One reading, the zero error found before taken out of it. */
  public static Figure camberRad(Figure readRad, Figure zeroErrorRad) {
    return readRad.minus(zeroErrorRad);
  }
}
