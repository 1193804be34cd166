package spindlebook.travel;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import spindlebook.corner.Card;
import spindlebook.uncertainty.Settles;

/**
 * A reading to take, or a number to give, and why it matters; the one that matters most comes
 * first.
 *
 * <pre>
 *   1. what withholds a total or a margin: the more figures wait for it the earlier;
 *      a stop's height before a gap, a gap before a number to give or to choose
 *   2. what decides a limit that cannot be told: the further an end's margin could move the earlier;
 *      then what is too close to call in mid-travel
 *   3. ride height, without which travel is not split about it
 *   4. what no longer holds, or was put back and not confirmed, where it rules, or where a stop is
 *   5. the same elsewhere
 * </pre>
 *
 * <p>How far a margin could move: room ± U of the limit (to the other end of a bracket) in place of
 * its room, against the least room of the others. Equals stand droop before bump, from the lowest
 * height up. What repeating will not settle is asked for at one more height where the doubt lies
 * between readings, and not at all where it does not. Derived in docs/methods-travel.md.
 *
 * @param end null where it belongs to neither, as in mid-travel
 * @param need what to read, give or choose
 * @param limit what it decides; null when it is no limit
 * @param settles how often, or with what, it has to be read; null when once is enough
 * @param nearMm wheel position near which it is to be read; null when its height's name says that
 * @param withholds how many totals and margins wait for it
 * @param atStakeMm how far the end's margin could move by it; 0 where that is not known
 */
public record NextReading(
    Why why,
    End end,
    Need need,
    Limit limit,
    Settles settles,
    Double nearMm,
    int withholds,
    double atStakeMm) {

  /** Why it matters, the weightiest first. */
  public enum Why {
    WITHHOLDS("a total or a margin waits for it"),
    UNDECIDED("a limit cannot be told without it"),
    NO_SPLIT("without it travel is not split about ride"),
    UNSURE_WHERE_IT_RULES("what rules there no longer holds, or was put back and not confirmed"),
    UNSURE("it no longer holds, or was put back and not confirmed");

    private final String words;

    Why(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  /** By what they weigh, also of several corners. */
  public static Comparator<NextReading> theOneThatMattersMostFirst() {
    return ReadingsToTake.theOneThatMattersMostFirst();
  }

  /** All that there is to read or give, the one that matters most first. */
  public static List<NextReading> ranked(Card card, TravelFindings travel) {
    return new ReadingsToTake(card, travel).ranked();
  }

  /** The one that matters most; empty when everything is there, holds, and is decided. */
  public static Optional<NextReading> of(Card card, TravelFindings travel) {
    return ranked(card, travel).stream().findFirst();
  }
}
