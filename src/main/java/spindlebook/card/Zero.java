package spindlebook.card;

import spindlebook.corner.Card;
import spindlebook.corner.SeenHeight;
import spindlebook.travel.TravelFindings;

/**
 * What positions are counted from on a page: ride height where there is one, else the strap's stop,
 * else the lowest position read.
 */
public record Zero(double mm, String words, boolean ride) {
  public static Zero of(Card card, TravelFindings travel) {
    if (travel.rideMm().isPresent()) {
      return new Zero(travel.rideMm().get().value(), "from ride", true);
    }
    if (travel.droop().stop().isPresent()) {
      double stop = travel.droop().stop().get().positionMm().value();
      return new Zero(stop, "from the strap's stop", false);
    }
    double lowest =
        card.heights().stream()
            .filter(SeenHeight::positionCounts)
            .mapToDouble(h -> h.positionMm().value())
            .min()
            .orElse(0);
    return new Zero(lowest, "from the lowest height read", false);
  }

  public double from(double positionMm) {
    return positionMm - mm;
  }
}
