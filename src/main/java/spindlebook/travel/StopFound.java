package spindlebook.travel;

import java.util.List;
import spindlebook.uncertainty.Figure;

/**
 * Where an end's stop stands.
 *
 * @param positionMm wheel position, + towards bump
 * @param computed worked out from touch and crush, not reached by hand
 * @param notConfirmed rests on a setting that was put back and not read since
 */
public record StopFound(
    Figure positionMm, boolean computed, boolean notConfirmed, List<String> readings) {
  public StopFound {
    readings = List.copyOf(readings);
  }
}
