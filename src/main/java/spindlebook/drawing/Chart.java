package spindlebook.drawing;

import java.util.List;
import java.util.Locale;
import java.util.function.DoubleFunction;
import java.util.stream.IntStream;

/**
 * Readings against wheel position, to be drawn. Numbers come as they are kept (mm, rad); the axes
 * say in what they are shown.
 *
 * @param id unique on the page
 * @param travel up the page, droop at the foot and bump on top, as on the tape
 * @param value across the page
 * @param tape the corner's tape, which stands beside the curves; null for numbers instead
 * @param bands where a rule is broken; may be empty
 * @param shaded outlines of what is shaded; may be empty
 * @param posts places worth a line of their own, ride and the stops
 * @param postWords what these lines across are, for the key; empty without one
 */
public record Chart(
    String id,
    String title,
    String description,
    ChartAxis travel,
    ChartAxis value,
    List<Series> series,
    List<Band> bands,
    List<List<At>> shaded,
    List<Post> posts,
    String postWords,
    TapeFace tape) {
  private static final int STEPS = 24;

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
   * @param brief what its ends are called in the chart: "L"
   * @param hollow what it is compared with, or what does not count: a pale broad line, empty marks
   * @param line the curve between the readings; empty when they make none
   */
  public record Series(
      String name, String brief, Look look, boolean hollow, List<Spot> spots, List<At> line) {}

  /**
   * A place of the curve.
   *
   * @param says what it reads there, in words: "−4 1/8 in|25/32 in ± 1/16"
   */
  public record At(double travel, double value, String says) {}

  /** A smooth line from one place to another. */
  public static List<At> line(double from, double to, DoubleFunction<At> at) {
    return IntStream.rangeClosed(0, STEPS)
        .mapToObj(i -> at.apply(i == STEPS ? to : from + (to - from) * i / STEPS))
        .toList();
  }

  /** A reading with its ± both ways. */
  public record Spot(double travel, double travelPm, double value, double valuePm) {}

  /**
   * Where a rule is broken; an end may be infinite.
   *
   * @param rule what it demands: "at least 1/4 in"
   */
  public record Band(double from, double to, String rule) {}

  public record Post(String word, double at) {}
}
