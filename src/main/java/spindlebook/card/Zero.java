package spindlebook.card;

import java.util.List;
import java.util.Optional;
import spindlebook.entry.HeightName;
import spindlebook.fold.Card;
import spindlebook.fold.SeenHeight;
import spindlebook.fold.Standing;
import spindlebook.travel.TravelFindings;

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
    return rideBefore(card).map(mm -> new Zero(mm, "from ride as last read")).orElse(FRAME_MARK);
  }

  public boolean ofRide() {
    return !equals(FRAME_MARK);
  }

  private static Optional<Double> rideBefore(Card card) {
    List<SeenHeight> rides =
        card.heights().stream()
            .filter(h -> h.name() == HeightName.RIDE && h.positionCounts())
            .filter(h -> h.stop() != Standing.REPLACED)
            .toList();
    return rides.isEmpty()
        ? Optional.empty()
        : Optional.of(
            rides.stream().mapToDouble(h -> h.positionMm().value()).average().orElseThrow());
  }

  public double from(double positionMm) {
    return positionMm - mm;
  }
}
