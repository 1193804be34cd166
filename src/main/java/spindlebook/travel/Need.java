package spindlebook.travel;

import java.util.List;
import spindlebook.definition.Allowance;
import spindlebook.definition.Dimension;
import spindlebook.entry.Content.ToRead;
import spindlebook.entry.HeightName;
import spindlebook.entry.Pairing;
import spindlebook.entry.Quantity;
import spindlebook.entry.Steering;
import spindlebook.fold.Card;
import spindlebook.fold.Change;
import spindlebook.uncertainty.Figure;

/**
 * A term that is missing, so that a figure says 'needs …' instead of a number. One of the three is
 * there: a reading to take, a dimension to give, or an allowance to choose.
 *
 * @param because why it is missing when it once was there, in words; may be empty
 * @param noHigherThanMm with a reading that must lie beyond a wheel position: that position, on the
 *     side of the end it is needed for; null when any height of the name serves
 */
public record Need(
    ToRead toRead,
    Dimension dimension,
    Allowance allowance,
    List<String> because,
    Double noHigherThanMm) {
  /** Without why it is missing. */
  public Need bare() {
    return new Need(toRead, dimension, allowance, List.of(), noHigherThanMm);
  }

  public static Need read(ToRead toRead, List<String> because) {
    return new Need(toRead, null, null, because, null);
  }

  /** The height itself, or a length at it, straight ahead. {@code what} is null for the height. */
  static Need read(HeightName at, Quantity what, Pairing pairing, List<String> because) {
    Pairing asked = CornerLimits.asked(pairing);
    return read(new ToRead(at, null, Steering.STRAIGHT, what, null, asked), because);
  }

  /**
   * Not at an end's stop, so not by its name: past where it lets the wheel go, or short of that.
   */
  public static Need readBeyond(ToRead toRead, End end, double positionMm, Figure reachMm) {
    HeightName past = end == End.DROOP ? HeightName.STRAP_OFF : HeightName.STOP_OUT;
    boolean stopped = reachMm == null || (positionMm - reachMm.value()) * end.outward() < 0;
    ToRead there = toRead.at(stopped ? HeightName.IN_BETWEEN : past);
    return new Need(there, null, null, List.of(), positionMm);
  }

  /** The same reading, as far out as a position in mm, or beyond. */
  Need outTo(double positionMm) {
    return new Need(toRead, null, null, because, positionMm);
  }

  /** Never given, or given of a part that was changed since. */
  static Need give(Card card, Dimension dimension) {
    List<String> because =
        card.givenBefore(dimension).stream()
            .flatMap(g -> g.because().stream())
            .map(Change::words)
            .distinct()
            .toList();
    return new Need(null, dimension, null, because, null);
  }

  public static Need choose(Allowance allowance) {
    return new Need(null, null, allowance, List.of(), null);
  }
}
