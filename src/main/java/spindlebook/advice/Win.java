package spindlebook.advice;

import java.util.List;
import spindlebook.travel.Need;
import spindlebook.uncertainty.Figure;

/**
 * What wheel travel curing one rung of a {@link Ladder} wins, everything that acts before it being
 * cured. Rungs are named by their place in the ladder, from 0.
 */
public sealed interface Win {
  /** How much, as far as it is told: at least, or at most; null where it is not. */
  default Figure mm() {
    return null;
  }

  /**
   * That much before the next one rules.
   *
   * @param upTo its own place is planned from a bracket's near end, or is only pushed away: it may
   *     win less
   * @param atLeast the next one's place is planned from a bracket's near end: it may win more
   */
  record Travel(Figure mm, int next, boolean upTo, boolean atLeast) implements Win {}

  /**
   * Nothing: the next one acts at the same place, within the U of how far they are apart.
   *
   * @param together those at the same place, this one among them
   * @param all what curing all of them wins
   */
  record Nothing(Figure apartMm, List<Integer> together, Win all) implements Win {}

  /** Nothing yet: another one acts before all of these. */
  record ActsLater(int first) implements Win {}

  /** That much at least; further out somebody has to look at other rules first. */
  record AsFarAsRead(Figure mm, List<Need> needs) implements Win {}

  /**
   * Not told: a missing or stale term could act anywhere on the way.
   *
   * @param mm at most: as far as the next one that is known; null when none is
   */
  record Withheld(Figure mm, List<Need> needs) implements Win {}

  /** What the other one wins: it is the same strap or bump stop, in the other pairing. */
  record SameStop(int other) implements Win {}

  /** Nothing else was found to limit this end. */
  record NothingBeyond() implements Win {}

  /** There is nothing to cure: its rule is kept as far as it was read. */
  record NotMet() implements Win {}
}
