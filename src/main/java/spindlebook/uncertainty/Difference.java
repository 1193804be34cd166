package spindlebook.uncertainty;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Predicate;

/**
 * Says whether two figures of the same kind really differ, or only as far as they are doubtful.
 *
 * <pre>
 *   d = y − z      U(d) = k √(Σs (part_s(y) − part_s(z))²), k = 2      beyond:  |d| &gt; U(d)
 * </pre>
 *
 * <p>y, z, d in one unit, d + where the first is larger. What both share, such as one tape's own
 * error, cancels in d; what each has of its own does not. Exactly U apart is not beyond; two equal
 * figures never are; two exact figures are as soon as they are not equal.
 *
 * <p>Assumes that U covers the error as stated. Source: JCGM 100:2008, eq. 13 and 16 for the
 * difference of figures that share sources; ISO 14253-1's guard band for the verdict; both from
 * memory.
 *
 * <p>Worked example: 12.7 mm and 9.525 mm, each placed with u = 0.458 mm of its own and both read
 * on a tape with u = 0.3 mm: d = 3.175 mm, U = 2 · √(0.458² + 0.458²) = 1.295 mm: beyond. The tape
 * is gone from it. Were they read on two tapes that happen to have one name: U = 2 · √(2 · 0.458² +
 * 2 · 0.3²) = 1.548 mm, still beyond.
 */
public record Difference(Figure apart, boolean beyond) {
  public static Difference of(Figure first, Figure second) {
    Figure apart = first.minus(second);
    return new Difference(apart, Math.abs(apart.value()) > apart.U());
  }

  /**
   * The same where an id may name two different errors, as when two cars each have a tape called
   * 'tape': only what is the one error in both may cancel.
   *
   * @param shared whether a source of this id is the same error in both
   */
  public static Difference of(Figure first, Figure second, Predicate<Source> shared) {
    Map<Source, Double> own = new LinkedHashMap<>();
    second
        .parts()
        .forEach(
            (source, part) ->
                own.put(
                    shared.test(source)
                        ? source
                        : new Source(source.id() + " of the second", source.kind()),
                    part));
    return of(first, Figure.of(second.value(), own));
  }
}
