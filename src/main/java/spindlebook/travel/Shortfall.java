package spindlebook.travel;

import java.util.List;
import spindlebook.uncertainty.Figure;

/**
 * A stretch in mid-travel where a rule is broken, kept on both sides: no stop cures it.
 *
 * @param fromMm its end towards droop
 * @param toMm its end towards bump
 * @param worst the worst value read in it
 */
public record Shortfall(Figure fromMm, Figure toMm, Figure worst, List<String> readings) {
  public Shortfall {
    readings = List.copyOf(readings);
  }
}
