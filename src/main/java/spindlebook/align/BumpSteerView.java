package spindlebook.align;

import java.util.List;
import spindlebook.drawing.ChartDrawing;
import spindlebook.drawing.FigureText;
import spindlebook.drawing.State;
import spindlebook.page.Field;

/**
 * The bump steer page.
 *
 * @param needs what must be read or given first, each with where
 * @param meaning what the shape says of the tie rod
 * @param next readings that would tell its cases apart, or more
 * @param chart null with nothing to draw
 * @param window which stretch of travel the figures are of, one sentence
 * @param ranges toe's range over the usable travel, and over its middle
 * @param shape slope and bow at ride; empty while something is needed for them
 * @param shim null on a wheel that is not steered
 */
public record BumpSteerView(
    String action,
    List<Need> needs,
    String rack,
    List<Meaning> meaning,
    List<String> next,
    ChartDrawing chart,
    String window,
    List<Range> ranges,
    List<Fact> shape,
    Shim shim,
    Field middle,
    String curvesHref) {

  /**
   * @param length the same across the wheel's edge; null where that distance was not given
   * @param state against the owner's limit; null without one
   * @param words what was read of it, and what would settle it
   */
  public record Range(
      String name, FigureText angle, FigureText length, State state, String words) {}

  public record Fact(String name, FigureText figure, String words) {}

  /**
   * @param sureness how sure that is, and by what
   * @param effect what it does to toe; may be empty
   */
  public record Meaning(String fault, String sureness, String effect) {}

  /**
   * A shim under the outer tie-rod end, as it was tried.
   *
   * @param more how much more would level toe; null while that cannot be told
   * @param href the change in the book; null before one
   */
  public record Shim(FigureText more, String words, String href) {}

  /**
   * @param href where that is done
   */
  public record Need(String words, String href) {}
}
