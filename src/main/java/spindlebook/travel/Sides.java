package spindlebook.travel;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import spindlebook.corner.Place;
import spindlebook.uncertainty.Difference;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;

/**
 * Two corners beside each other, as a rule the left one of an end of the car and its right one:
 * each figure, with the difference and whether it is beyond its uncertainty.
 *
 * <p>What the two share, such as one tape's own error, cancels in a difference; what was given or
 * is held back is each corner's own. Only what counts is compared; what went stale, is in doubt or
 * has no wheel position is not in a figure.
 *
 * @param figures in the order of {@link What}; only those that one side has at least
 */
public record Sides(TravelFindings left, TravelFindings right, List<Compared> figures) {

  /** A figure of a corner. */
  public enum What {
    AS_SET("travel as set", t -> t.asSet().mm()),
    AS_SET_DROOP("as set, ride down to the strap", t -> t.asSet().droopMm()),
    AS_SET_BUMP("as set, ride up to the stop", t -> t.asSet().bumpMm()),
    AS_IT_COULD_BE("travel as it could be", t -> t.asItCouldBe().mm()),
    COULD_BE_DROOP("as it could be, ride down", t -> t.asItCouldBe().droopMm()),
    COULD_BE_BUMP("as it could be, ride up", t -> t.asItCouldBe().bumpMm()),
    DROOP_MARGIN("margin in droop", t -> t.droop().marginMm()),
    BUMP_MARGIN("margin in bump", t -> t.bump().marginMm());

    private final String words;
    private final Function<TravelFindings, Optional<Figure>> figure;

    What(String words, Function<TravelFindings, Optional<Figure>> figure) {
      this.words = words;
      this.figure = figure;
    }

    public String words() {
      return words;
    }

    /** Counted only as far as was read, so that it is at least this much. */
    public boolean atLeast(TravelFindings travel) {
      return switch (this) {
        case AS_SET, AS_SET_DROOP, AS_SET_BUMP -> travel.asSet().atLeast();
        case AS_IT_COULD_BE -> travel.asItCouldBe().atLeast();
        case COULD_BE_DROOP, DROOP_MARGIN -> travel.droop().marginAtLeast();
        case COULD_BE_BUMP, BUMP_MARGIN -> travel.bump().marginAtLeast();
      };
    }
  }

  /**
   * One figure of both sides.
   *
   * @param difference left less right; empty unless both have it, and when one of them is known to
   *     be at least so much only
   */
  public record Compared(
      What what, Optional<Figure> left, Optional<Figure> right, Optional<Difference> difference) {}

  /** Whether the same thing acts first on both sides, at the same lock as each wheel sees it. */
  public boolean sameRule(Place leftPlace, Limit ofLeft, Limit ofRight) {
    return LimitPair.same(leftPlace, ofLeft, leftPlace.mirror(), ofRight);
  }

  public Sides {
    figures = List.copyOf(figures);
  }

  public static Sides of(TravelFindings left, TravelFindings right) {
    return of(left, right, source -> source.kind() != SourceKind.ALLOWANCE);
  }

  /**
   * @param shared whether a source of one id is the same error in both
   */
  public static Sides of(TravelFindings left, TravelFindings right, Predicate<Source> shared) {
    List<Compared> figures = new ArrayList<>();
    for (What what : What.values()) {
      Optional<Figure> l = what.figure.apply(left);
      Optional<Figure> r = what.figure.apply(right);
      boolean bound = what.atLeast(left) || what.atLeast(right);
      if (l.isPresent() || r.isPresent()) {
        Optional<Difference> difference =
            bound ? Optional.empty() : l.flatMap(a -> r.map(b -> Difference.of(a, b, shared)));
        figures.add(new Compared(what, l, r, difference));
      }
    }
    return new Sides(left, right, figures);
  }
}
