package spindlebook.card;

import java.util.OptionalDouble;
import spindlebook.entry.HeightName;
import spindlebook.fold.Card;
import spindlebook.fold.Standing;
import spindlebook.travel.TravelFindings;
import spindlebook.uncertainty.Figure;

/**
 * What positions are counted from on a page: ride height, also as it was last read when a change
 * made it stale, so that no position on the page moves for that; where none was ever read, the
 * frame mark. It rests on no stop.
 *
 * @param words "from ride"
 */
public record Zero(double mm, String words) {
  public static final Zero FRAME_MARK = new Zero(0, "from level with the frame mark");

  public static Zero of(Card card, TravelFindings travel) {
    if (travel.rideMm().isPresent()) {
      return new Zero(travel.rideMm().get().value(), "from ride");
    }
    OptionalDouble before =
        card.heights().stream()
            .filter(h -> h.name() == HeightName.RIDE && h.positionCounts())
            .filter(h -> h.stop() != Standing.REPLACED)
            .mapToDouble(h -> h.positionMm().value())
            .average();
    return before.isPresent()
        ? new Zero(before.getAsDouble(), "from ride as last read")
        : FRAME_MARK;
  }

  public boolean ofRide() {
    return !equals(FRAME_MARK);
  }

  public double from(double positionMm) {
    return positionMm - mm;
  }

  public double from(Figure positionMm) {
    return from(positionMm.value());
  }
}
