package spindlebook.web;

import java.util.List;

/**
 * Readings against wheel position, to be drawn. Numbers come as they are kept (mm, rad); the axes
 * say in what they are shown.
 *
 * @param id unique on the page
 * @param across along the page, droop left and bump right
 * @param up up the page
 * @param bands where a rule is broken; may be empty
 * @param posts places worth a line of their own, ride and the stops
 */
public record Chart(
    String id,
    String title,
    String description,
    ChartAxis across,
    ChartAxis up,
    List<Series> series,
    List<Band> bands,
    List<Post> posts) {
  public Chart {
    series = List.copyOf(series);
    bands = List.copyOf(bands);
    posts = List.copyOf(posts);
  }

  /** Which pattern, marker and colour a line has: never colour alone. */
  public enum Look {
    FIRST,
    SECOND,
    THIRD,
    FOURTH
  }

  /**
   * One curve.
   *
   * @param hollow the one it is compared with: thin, with empty markers
   * @param line the curve between the readings; empty when they make none
   */
  public record Series(String name, Look look, boolean hollow, List<Spot> spots, List<At> line) {
    public Series {
      spots = List.copyOf(spots);
      line = List.copyOf(line);
    }
  }

  public record At(double across, double up) {}

  /** A reading with its ± both ways. */
  public record Spot(double across, double acrossPm, double up, double upPm) {}

  /** Where a rule is broken; an end may be infinite. */
  public record Band(double from, double to) {}

  public record Post(String word, double at) {}
}
