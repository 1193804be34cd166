package spindlebook.round;

import java.util.List;
import spindlebook.corner.Content;
import spindlebook.corner.HeightName;

/** Which places a whole round reads, from droop to bump. */
final class HeightOrder {
  private HeightOrder() {}

  static List<HeightName> of(Content.Round round) {
    if (round.springIn()) {
      return List.of(HeightName.RIDE);
    }
    return round.bumpStopIn()
        ? List.of(
            HeightName.ON_THE_STRAP,
            HeightName.IN_BETWEEN,
            HeightName.IN_BETWEEN,
            HeightName.STOP_TOUCH)
        : List.of(HeightName.ON_THE_STRAP, HeightName.IN_BETWEEN, HeightName.IN_BETWEEN);
  }
}
