package spindlebook.page;

import spindlebook.drawing.PlanView;

/**
 * The band over a measuring page that never scrolls away: which corner, which height, which
 * steering.
 *
 * @param plan the same in a picture
 * @param corner "Left front"
 * @param height "Full droop"
 * @param level the arrow beside the height
 * @param steering "Steering full right"; empty where steering does not matter
 * @param progress "7 of 31"; may be empty
 */
public record StepBand(
    PlanView plan, String corner, String height, Level level, String steering, String progress) {
  /** Which way the wheel hangs from ride height. */
  public enum Level {
    DOWN,
    AT_RIDE,
    UP
  }
}
