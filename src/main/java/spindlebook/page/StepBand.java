package spindlebook.page;

import spindlebook.drawing.PlanView;

/**
 * The band over a measuring page that never scrolls away: which corner, where on the travel, which
 * steering, which height of how many.
 *
 * @param plan the car from above
 * @param corner "Left front"
 * @param height "Full droop"
 * @param up where on the travel, in six steps from hanging free to past the bump stop; ride is 3
 * @param turned the steering's word in addresses, by which the wheels are turned; empty where
 *     steering does not matter
 * @param lock "full right"; empty where steering does not matter
 * @param n which height, from 1; 0 of one besides the plan
 * @param of how many there are; 0 where they are not counted
 */
public record StepBand(
    PlanView plan,
    String corner,
    String height,
    int up,
    String turned,
    String lock,
    int n,
    int of) {

  /** How far below the middle the mark on the travel stands, in drawing units. */
  public int down() {
    return 11 * (3 - up);
  }

  public String progress() {
    return n == 0 ? "" : "height " + n + " of " + of;
  }
}
