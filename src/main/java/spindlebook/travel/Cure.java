package spindlebook.travel;

import spindlebook.definition.Setting;

/**
 * The change of a stop that would just keep every rule by the ± of its room, rounded to what can be
 * set and to the cautious side.
 *
 * @param adjuster short name of the strap's or the spacer's adjuster
 * @param wantedMm change wanted at the stop, + is a shorter strap or a thicker spacer
 * @param setMm the same, rounded up to what can be set
 * @param steps how many holes, turns or pieces that is; null when it is not known what a hole or a
 *     turn is worth
 * @param from the present setting, or the new strap's length where none was ever said; null when
 *     neither is known
 * @param to the new setting, ready to be an adjustment; null when the present one is not known
 * @param atWheelMm wheel travel it takes away
 * @param leaves a limit that still cannot be told with the stop set so, because what was read of it
 *     is itself too close to its rule; null when all are clear then
 */
public record Cure(
    String adjuster,
    double wantedMm,
    double setMm,
    Double steps,
    Setting from,
    Setting to,
    double atWheelMm,
    Limit leaves) {

  Cure leaving(Limit open) {
    return new Cure(adjuster, wantedMm, setMm, steps, from, to, atWheelMm, open);
  }
}
