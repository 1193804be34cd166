package spindlebook.travel;

import java.util.List;
import java.util.OptionalDouble;
import spindlebook.uncertainty.Figure;

/** How far the wheel may go towards one end before a rule is broken, as far as it was read. */
public sealed interface EndLimit {
  /** How a crossing was found. */
  enum How {
    /** On the curve through three or more exact readings. */
    CUBIC,
    /** Between two neighbouring readings, planned from the one that keeps the rule. */
    BRACKET
  }

  /** Where it is met, or the last place where it is known to be kept; null when neither is. */
  default Figure positionMm() {
    return null;
  }

  /** What it stands on. */
  default List<String> readings() {
    return List.of();
  }

  /**
   * The rule is met here.
   *
   * @param positionMm where it is met; U holds everything, the positions' own doubt too
   * @param surelyKeptMm nearest position on the kept side where the value keeps the rule by its U;
   *     NaN when no such position was read
   * @param surelyBrokenMm nearest position on the other side where the value breaks the rule by its
   *     U; NaN when no such position was read
   * @param aboutMm where the straight line between the two neighbouring readings meets the rule;
   *     NaN when one of them is no number
   * @param brokenMm the other end of a bracket, the reading that breaks the rule; null on the curve
   * @param readings what it stands on
   */
  record Crosses(
      Figure positionMm,
      double surelyKeptMm,
      double surelyBrokenMm,
      How how,
      double aboutMm,
      Figure brokenMm,
      List<String> readings)
      implements EndLimit {}

  /**
   * The rule is kept at the last reading on this side: the limit lies beyond.
   *
   * @param positionMm the last reading's
   * @param surelyKeptMm furthest position towards this end where the value keeps the rule by its U;
   *     empty when there is none
   */
  record KeptTo(Figure positionMm, OptionalDouble surelyKeptMm, List<String> readings)
      implements EndLimit {}

  /** The rule is broken at every reading. */
  record BrokenThroughout(List<String> readings) implements EndLimit {}

  /**
   * Nothing was read that tells about this rule, or nothing could be worked out from it.
   *
   * @param because why it could not be; empty when nothing was read
   */
  record NotRead(List<String> because) implements EndLimit {}
}
