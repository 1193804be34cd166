package spindlebook.definition;

import java.util.Objects;
import java.util.stream.Stream;
import spindlebook.units.TypedAmount;
import spindlebook.units.TypedLength;

/**
 * The spring of a corner, or two in series: the main spring, and a tender that a crossover stop
 * takes out.
 *
 * @param rate of the main spring, or the only one
 * @param tender the rate of the second, {@code crossover} what it is pressed together when the stop
 *     takes it out; null for one spring
 * @param looseAt how long the shock is, eye to eye, when the spring is just loose; null where that
 *     is told by {@code preload}, how far it is pressed together with the shock open
 * @param free the main spring's length by itself, {@code solid} with its turns touching; null where
 *     not known
 * @param tyre the rate of the tyre; null where not known
 * @param sitAt the wheel position, from the frame mark, at which the owner wants the car to sit,
 *     and {@code hz} how fast to bounce there; null for no wish
 */
public record Spring(
    TypedAmount rate,
    TypedAmount tender,
    TypedLength crossover,
    TypedLength looseAt,
    TypedLength preload,
    TypedLength free,
    TypedLength solid,
    TypedAmount tyre,
    TypedLength sitAt,
    Double hz)
    implements Defined {
  public Spring {
    Objects.requireNonNull(rate, "rate");
    Stream.of(rate, tender, tyre).filter(Objects::nonNull).forEach(Spring::rate);
    if ((tender == null) != (crossover == null)) {
      throw new IllegalArgumentException("two springs are told by 'tender' and 'crossover'");
    }
    if (looseAt != null && preload != null) {
      throw new IllegalArgumentException("a spring is told by 'looseAt' or 'preload', not both");
    }
    if (free != null && solid != null && !(free.mm() > solid.mm())) {
      throw new IllegalArgumentException("a spring's solid length is shorter than its free one");
    }
    if (hz != null && !(hz >= 0.1 && hz <= 20)) {
      throw new IllegalArgumentException("a car bounces between 0.1 and 20 times a second");
    }
  }

  private static void rate(TypedAmount rate) {
    if (!(rate.si(true) > 0)) {
      throw new IllegalArgumentException("a rate of nothing carries nothing");
    }
  }

  @Override
  public String inWords() {
    return "spring " + rate.typed() + (tender == null ? "" : " with a tender of " + tender.typed());
  }
}
