package spindlebook.plan;

import java.util.List;
import spindlebook.entry.Content;
import spindlebook.entry.HeightName;

/**
 * The heights a round goes through, in the order in which they are offered: from droop to bump with
 * the spring out, the car's own weight with the spring in. With the stop out nothing is touched or
 * solid: the wheel then goes on past where the stop would end it. Any other height can be read at
 * any time; a wheel hanging with the strap off is a choice, not a step.
 */
public final class HeightOrder {
  private HeightOrder() {}

  /**
   * All of them; a height in between stands here as often as it is to be read. What a round set out
   * to read decides alone, where it set out to read something.
   */
  public static List<HeightName> of(Content.Round round) {
    if (!round.toRead().isEmpty()) {
      return round.toRead().stream().map(Content.ToRead::name).distinct().sorted().toList();
    }
    if (round.springIn()) {
      // A spring lets the wheel be read where it stands, and where it hangs.
      return List.of(round.onTyres() ? HeightName.RIDE : HeightName.ON_THE_STRAP);
    }
    return List.of(
        HeightName.ON_THE_STRAP,
        HeightName.IN_BETWEEN,
        HeightName.IN_BETWEEN,
        round.bumpStopIn() ? HeightName.STOP_TOUCH : HeightName.STOP_OUT);
  }
}
