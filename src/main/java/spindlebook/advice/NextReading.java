package spindlebook.advice;

import java.util.Comparator;
import java.util.List;
import spindlebook.fold.Card;
import spindlebook.travel.End;
import spindlebook.travel.Limit;
import spindlebook.travel.Need;
import spindlebook.travel.TravelFindings;
import spindlebook.uncertainty.Settles;

/**
 * A reading to take, or a number to give, and why it matters; the one that settles most for least
 * work comes first: by how many figures wait for it, or how many limits it decides, taken once and
 * coming out at its middle ({@link Supposed}); what withholds a total or a margin before all that
 * decides a limit. Equals stand in this order:
 *
 * <pre>
 *   1. what withholds a total or a margin: the more figures wait for it the earlier;
 *      a stop's height before a gap, a gap before a number to give or to choose
 *   2. what decides a limit that cannot be told: the further an end's margin could move the earlier;
 *      then what is too close to call in mid-travel
 *   3. the middle of a bracket that costs travel, by what it may win
 *   4. ride height, without which travel is not split about it
 *   5. what no longer holds, or was put back and not confirmed, where it rules, or where a stop is
 *   6. the same elsewhere
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
 * @param decides open limits that one such reading decides, where it comes out at its middle
 */
public record NextReading(
    Why why,
    End end,
    Need need,
    Limit limit,
    Settles settles,
    Double nearMm,
    int withholds,
    double atStakeMm,
    List<Limit> decides) {

  /** Why it matters, the weightiest first. */
  public enum Why {
    WITHHOLDS("a total or a margin waits for it"),
    UNDECIDED("a limit cannot be told without it"),
    COSTS_TRAVEL("nobody looked between two heights, and the nearer in is planned with"),
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

  NextReading deciding(List<Limit> limits) {
    return new NextReading(why, end, need, limit, settles, nearMm, withholds, atStakeMm, limits);
  }

  /** Whether it is asked for because of a limit, or decides it. */
  public boolean about(Limit limit) {
    return limit.equals(this.limit) || decides.contains(limit);
  }

  /** What it settles, taken once. */
  int settled() {
    return Math.max(withholds, decides.size());
  }

  /** By what they weigh, also of several corners. */
  public static Comparator<NextReading> theOneThatMattersMostFirst() {
    return ReadingsToTake.theOneThatMattersMostFirst();
  }

  /** All that there is to read or give, the one that matters most first. */
  public static List<NextReading> ranked(Card card, TravelFindings travel) {
    return card.memo().get(NextReading.class, () -> new ReadingsToTake(card, travel).ranked());
  }

  /** What a total, a margin or the split about ride waits for, the one that matters most first. */
  static List<NextReading> missing(Card card, TravelFindings travel) {
    return new ReadingsToTake(card, travel).missing();
  }
}
