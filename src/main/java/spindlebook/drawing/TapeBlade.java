package spindlebook.drawing;

import java.util.List;

/**
 * The one picture of travel: a piece of tape laid along a corner's motion. All positions are wheel
 * positions in millimetres from one zero, usually ride height; up (bump) is positive.
 *
 * @param id unique on the page, letters, digits and hyphens: the SVG's own ids are made from it
 * @param fromMm lower end of the tape, below {@code toMm}
 * @param toMm upper end of the tape
 * @param scale what the ticks count
 * @param bands what each stretch of tape means; where two overlap the later one shows
 * @param marks positions worth a label; one beyond the tape is drawn at its end
 * @param title what a screen reader calls the picture
 * @param description the picture in a sentence or two
 */
public record TapeBlade(
    String id,
    double fromMm,
    double toMm,
    LengthScale scale,
    List<Band> bands,
    List<Mark> marks,
    String title,
    String description) {

  public TapeBlade {
    if (!(fromMm < toMm) || !Double.isFinite(fromMm) || !Double.isFinite(toMm)) {
      throw new IllegalArgumentException("a tape runs upward, not from " + fromMm + " to " + toMm);
    }
    if (!id.matches("[A-Za-z][A-Za-z0-9-]*")) {
      throw new IllegalArgumentException("not fit for an id: " + id);
    }
    bands = List.copyOf(bands);
    marks = List.copyOf(marks);
  }

  /** Where a position lies along the tape: 0 at the lower end, 1 at the upper; held at the ends. */
  double share(double positionMm) {
    return Math.max(0, Math.min(1, (positionMm - fromMm) / (toMm - fromMm)));
  }

  /** A stretch of tape, millimetres from zero, up positive. */
  public record Band(double fromMm, double toMm, Kind kind) {
    /** What the stretch is for. */
    public enum Kind {
      USABLE,
      HELD_BACK,
      BEYOND,
      OFF
    }

    String mark() {
      return "b-" + kind.name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
    }
  }

  /**
   * A position worth a label.
   *
   * @param positionMm millimetres from zero, up positive
   * @param figure the position as text to be set; null for none
   * @param words what is there
   * @param uncertaintyMm half-width of the bracket drawn around it, millimetres, 0 for none
   * @param state the state of the margin there; null where none is meant
   */
  public record Mark(
      double positionMm,
      FigureText figure,
      String words,
      Kind kind,
      double uncertaintyMm,
      State state) {
    /** What ends, limits or divides the travel there. RULES is the limit that acts first. */
    public enum Kind {
      STOP,
      LIMIT,
      RULES,
      RIDE,
      END
    }

    public Mark {
      if (!Double.isFinite(positionMm) || !(uncertaintyMm >= 0)) {
        throw new IllegalArgumentException(
            "no place on a tape: " + positionMm + " ± " + uncertaintyMm);
      }
    }

    String mark() {
      return "m-" + kind.name().toLowerCase(java.util.Locale.ROOT);
    }
  }
}
