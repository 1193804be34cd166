package spindlebook.drawing;

import java.util.List;
import java.util.Locale;

/**
 * Readings against wheel position, to be drawn. Numbers come as they are kept (mm, rad); the axes
 * say in what they are shown.
 *
 * @param id unique on the page
 * @param across along the page, droop left and bump right
 * @param up up the page
 * @param bands where a rule is broken; may be empty
 * @param posts places worth a line of their own, ride and the stops
 * @param postWords what these upright lines are, for the key; empty without one
 */
public record Chart(
    String id,
    String title,
    String description,
    ChartAxis across,
    ChartAxis up,
    List<Series> series,
    List<Band> bands,
    List<Post> posts,
    String postWords) {
  /**
   * Which mark, pattern and colour a line has: never colour alone. No mark is one of {@link
   * State}'s, which stand in the same page's table and mean something else.
   */
  public enum Look {
    SQUARE,
    LEFT_POINT,
    RIGHT_POINT,
    LEFT_HALF,
    RIGHT_HALF,
    CROSS;

    /** The class that sets pattern and colour, for example {@code look-left-point}. */
    String mark() {
      return "look-" + name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
  }

  /**
   * One curve.
   *
   * @param hollow what it is compared with, or what does not count: a pale broad line, empty marks
   * @param line the curve between the readings; empty when they make none
   */
  public record Series(String name, Look look, boolean hollow, List<Spot> spots, List<At> line) {}

  public record At(double across, double up) {}

  /** A reading with its ± both ways. */
  public record Spot(double across, double acrossPm, double up, double upPm) {}

  /**
   * Where a rule is broken; an end may be infinite.
   *
   * @param rule what it demands: "at least 1/4 in"
   */
  public record Band(double from, double to, String rule) {}

  public record Post(String word, double at) {}
}
