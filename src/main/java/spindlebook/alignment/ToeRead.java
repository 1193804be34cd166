package spindlebook.alignment;

import java.util.Optional;
import spindlebook.corner.Card;
import spindlebook.corner.Dimension;
import spindlebook.corner.SeenReading;
import spindlebook.travel.GivenFigures;
import spindlebook.uncertainty.Figure;

/** Toe as a round reads it: an angle, or a length across what the corner says it is across. */
public final class ToeRead {
  private ToeRead() {}

  /** How far apart the two places of a toe reading are, with its ± when the owner gave one. */
  public static Optional<Figure> acrossMm(Card card) {
    return card.given(Dimension.TOE_ACROSS).filter(g -> g.length().mm() > 0).map(GivenFigures::of);
  }

  /** In rad; empty for a length that is more than what it is across, which is no angle. */
  public static Optional<Figure> rad(SeenReading reading, Figure acrossMm) {
    if (reading.reading().angle() != null) {
      return Optional.of(reading.value());
    }
    return Math.abs(reading.value().value()) < acrossMm.value()
        ? Optional.of(Toe.acrossOneWheel(reading.value(), acrossMm).rad())
        : Optional.empty();
  }
}
