package spindlebook.life;

import java.util.List;
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

  /** A rectangle with its class, and the pattern that fills it; null where its class does. */
  public record Area(String mark, String fill, double x, double y, double width, double height) {}

  /** A label with its classes; {@code x} is where it begins, or ends. */
  public record Words(String mark, double x, double y, String text) {}

  /** A stretch of time, a way to how it stood at its end. */
  public record Day(double x, double width, String href, String words) {}
}
