package spindlebook.compare;

import java.util.List;
import spindlebook.card.TravelWords;
import spindlebook.corner.Card;
import spindlebook.travel.CornerTravel;
import spindlebook.travel.LimitPair;
import spindlebook.travel.Sides;
import spindlebook.travel.TravelFindings;
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;

/** Two cards of corners of one layout, and what comes of holding them against each other. */
record CornerPair(Card one, Card other, Sides sides, List<LimitPair> limits) {
  CornerPair {
    limits = List.copyOf(limits);
  }

  static CornerPair of(Card one, Card other) {
    TravelFindings first = CornerTravel.of(one);
    TravelFindings second = CornerTravel.of(other);
    return new CornerPair(
        one,
        other,
        Sides.of(first, second, source -> shared(one, other, source)),
        LimitPair.of(
            one.place(), first, other.place(), second, source -> shared(one, other, source)));
  }

  /**
   * Whether a source is the same error on both: of two cars nothing is, a tape of the same name may
   * be another tape; what was given or is held back is each corner's own.
   */
  private static boolean shared(Card one, Card other, Source source) {
    return source.kind() == SourceKind.ALLOWANCE
        ? one.corner().equals(other.corner())
        : one.car().equals(other.car());
  }

  /** Whether both wheels see one lock under one name. */
  boolean samePlace() {
    return one.place() == other.place();
  }

  TravelWords wordsOfOne() {
    return new TravelWords(one, sides.left());
  }

  TravelWords wordsOfOther() {
    return new TravelWords(other, sides.right());
  }
}
