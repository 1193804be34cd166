package spindlebook.life;

import java.util.List;
import spindlebook.drawing.TapeFace.Area;
import spindlebook.drawing.TapeSheet.Line;

/**
 * A corner's life as a drawing: time across, in percent of the width, and down in sixteenths of the
 * reader's text size.
 */
public record LifeSheet(
    String title,
    double height,
    List<Area> areas,
    List<Line> lines,
    List<Words> words,
    List<Day> days) {

  /** A label with its classes; {@code x} is where it begins, or ends. */
  public record Words(String mark, double x, double y, String text) {}

  /** A stretch of time, a way to how it stood at its end. */
  public record Day(double x, double width, String href, String words) {}
}
