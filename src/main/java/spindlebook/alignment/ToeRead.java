package spindlebook.alignment;

import java.util.Optional;
import spindlebook.definition.Dimension;
import spindlebook.definition.Given;
import spindlebook.fold.Card;
import spindlebook.fold.SeenReading;
import spindlebook.travel.GivenFigures;
import spindlebook.uncertainty.Figure;

/**
 * Toe as a round reads it: an angle, or a length across what the owner says it is across.
 *
 * <p>Given for one wheel of an axle it serves the other too until that has its own: one toe plate
 * goes round the car, and rims differ only where the wheels do. Pages say so ({@link #borrowed}).
 */
public final class ToeRead {
  private ToeRead() {}

  /**
   * How far apart the two places of a toe reading are, with its ± when the owner gave one; the
   * other wheel's where this one has none.
   */
  public static Optional<Figure> acrossMm(Card card) {
    return own(card).or(() -> others(card)).map(GivenFigures::of);
  }

  /** Whether what toe is across was given for the other wheel only. */
  public static boolean borrowed(Card card) {
    return own(card).isEmpty() && others(card).isPresent();
  }

  private static Optional<Given> own(Card card) {
    return card.given(Dimension.TOE_ACROSS).filter(g -> g.length().mm() > 0);
  }

  private static Optional<Given> others(Card card) {
    return card.givenAcross(Dimension.TOE_ACROSS).filter(g -> g.length().mm() > 0);
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
