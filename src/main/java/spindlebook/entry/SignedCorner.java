package spindlebook.entry;

import java.util.List;
import java.util.Objects;
import spindlebook.definition.Place;

/**
 * One corner in the copy that a sign-off keeps.
 *
 * @param outcome its worst end, in the words of the day: {@code short}
 * @param zeroMm what positions were counted from on its page, as spindle minus frame mark
 * @param zero the same in words: {@code from ride}
 * @param settings what was set, in the order of its page
 * @param rules what was demanded, held back and given
 * @param figures what came of it
 * @param limits each end's limits, in the order in which they act
 * @param alignment its alignment and the owner's targets; what belongs to the axle at its left
 *     wheel. Null in a copy that was kept before alignment was
 * @param springs what carries it and ends its motion; null where nothing was said of that
 * @param swings of its rod ends and uniballs; null where no linkage tells them
 */
public record SignedCorner(
    String corner,
    Place place,
    String outcome,
    double zeroMm,
    String zero,
    List<SetTo> settings,
    List<Rule> rules,
    List<Figure> figures,
    List<Limit> limits,
    List<Aligned> alignment,
    List<Ride> springs,
    List<Swing> swings) {

  /** Kept before alignment was. */
  public SignedCorner(
      String corner,
      Place place,
      String outcome,
      double zeroMm,
      String zero,
      List<SetTo> settings,
      List<Rule> rules,
      List<Figure> figures,
      List<Limit> limits) {
    this(corner, place, outcome, zeroMm, zero, settings, rules, figures, limits, null, null, null);
  }

  /** As it would have been kept before alignment was. */
  public SignedCorner withoutAlignment() {
    return new SignedCorner(corner, place, outcome, zeroMm, zero, settings, rules, figures, limits);
  }

  /** To be held against another: a copy may keep a hyphen where today a minus is said. */
  public SignedCorner withOneMinus() {
    return new SignedCorner(
        corner,
        place,
        outcome,
        zeroMm,
        zero,
        settings,
        rules.stream().map(Rule::withOneMinus).toList(),
        figures,
        limits,
        alignment,
        springs,
        swings);
  }

  /**
   * @param adjuster short name
   * @param to null when nobody had said
   */
  public record SetTo(String adjuster, String name, String to) {
    public SetTo {
      Objects.requireNonNull(adjuster, "adjuster");
      name = name == null ? adjuster : name;
    }
  }

  /**
   * @param of what it is the rule of: a watch point's short name, or the word of what is held back
   *     or given
   * @param says as the owner typed it: {@code at least 1/4 in}
   */
  public record Rule(String of, String name, String says) {
    public Rule {
      Objects.requireNonNull(of, "of");
      Objects.requireNonNull(says, "says");
      name = name == null ? of : name;
    }

    /** Not the hyphen of 8-1/4. */
    private Rule withOneMinus() {
      return new Rule(of, name, says.replaceAll("(?<!\\S)-", "−"));
    }
  }

  /**
   * @param name in words: {@code droop: margin}
   * @param position a wheel position, shown from the corner's zero; else a length
   * @param expandedMm U, k = 2
   * @param atLeast a limit lay beyond what was read
   */
  public record Figure(
      String name, boolean position, double mm, double expandedMm, boolean atLeast) {
    public Figure {
      Objects.requireNonNull(name, "name");
    }
  }

  /**
   * @param what its name: {@code tie rod to upper arm, full right}
   * @param end {@code droop}, {@code bump} or {@code mid-travel}
   * @param outcome in words
   * @param mm where it was met, or how far it was known to be kept; null when it was not known
   * @param roomMm from where the stop lets the wheel go; null when either was not known
   */
  public record Limit(
      String what,
      String end,
      String outcome,
      Double mm,
      Double expandedMm,
      Double roomMm,
      Double roomExpandedMm) {
    public Limit {
      Objects.requireNonNull(what, "what");
      Objects.requireNonNull(end, "end");
      Objects.requireNonNull(outcome, "outcome");
    }
  }

  /**
   * A figure of alignment, or a target for one that was not known.
   *
   * @param value rad; mm for scrub, trail and track; null when it was not known
   * @param expanded U, k = 2, in the same
   * @param stands what it was worth, in words; null when it was not known
   * @param target as its owner typed it; null without one
   * @param outcome against it, in words; null without one
   */
  public record Aligned(
      AlignedFigure figure,
      Double value,
      Double expanded,
      String stands,
      String target,
      String outcome) {
    public Aligned {
      Objects.requireNonNull(figure, "figure");
    }
  }

  /**
   * A figure of what carries it, ends its motion softly, or of how its strap lasts.
   *
   * @param of a bump stop's short name, and {@code called} its name; null for any other
   * @param counted what a use is counted in; null of any other figure
   * @param value in what the figure is counted in; null when it was not known
   * @param expanded U, k = 2, in the same
   * @param stands what it was worth, in words, where it did not simply hold; {@code outcome} what
   *     was decided of it
   */
  public record Ride(
      SpringFigure figure,
      String of,
      String called,
      UseUnit counted,
      Double value,
      Double expanded,
      String stands,
      String outcome) {
    public Ride {
      Objects.requireNonNull(figure, "figure");
    }
  }

  /**
   * How far a rod end or uniball swings at most, and what its hardware allows.
   *
   * @param rad, expandedRad the most, U, k = 2
   * @param allows as its owner typed it, {@code outcome} against it in words; null where nobody
   *     said
   */
  public record Swing(
      Joint joint, double rad, double expandedRad, String stands, String allows, String outcome) {
    public Swing {
      Objects.requireNonNull(joint, "joint");
    }
  }

  public SignedCorner {
    Objects.requireNonNull(corner, "corner");
    Objects.requireNonNull(place, "place");
    Objects.requireNonNull(outcome, "outcome");
    settings = settings == null ? List.of() : List.copyOf(settings);
    rules = rules == null ? List.of() : List.copyOf(rules);
    figures = figures == null ? List.of() : List.copyOf(figures);
    limits = limits == null ? List.of() : List.copyOf(limits);
    alignment = alignment == null ? null : List.copyOf(alignment);
    springs = springs == null ? null : List.copyOf(springs);
    swings = swings == null ? null : List.copyOf(swings);
  }
}
