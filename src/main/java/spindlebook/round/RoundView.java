package spindlebook.round;

import java.util.List;
import spindlebook.drawing.FigureText;
import spindlebook.drawing.State;
import spindlebook.page.Link;

/**
 * One round: conditions, what it set out to read, its heights.
 *
 * @param notZeroed what was not said to be zeroed; empty when all was
 * @param notWatched readings of places this corner does not watch
 * @param watchHref where such a place is added; null when there is none
 * @param mirror the corner of the other side; null when the car has none
 * @param otherGapTool the other way to read gaps, one tap away; null when the car has no tool for
 *     it
 */
public record RoundView(
    String round,
    String conditions,
    String notZeroed,
    List<HeightLine> heights,
    List<PlanLine> plan,
    List<Link> notWatched,
    String watchHref,
    String raw,
    String nextHeight,
    String nextHref,
    String mirror,
    String otherGapTool) {

  public record HeightLine(
      String name, FigureText position, State state, String detail, String href) {}

  /** One thing to read; {@code done} when this round has it. */
  public record PlanLine(String words, boolean done, String href) {}
}
