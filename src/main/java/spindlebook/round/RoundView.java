package spindlebook.round;

import java.util.List;
import spindlebook.web.FigureText;
import spindlebook.web.State;

/** One round: conditions, what it set out to read, its heights. */
public record RoundView(
    String round,
    String conditions,
    List<HeightLine> heights,
    List<PlanLine> plan,
    String raw,
    String nextHeight,
    String nextHref,
    String mirror) {

  public record HeightLine(
      String name, FigureText position, State state, String detail, String href) {}

  /** One thing to read; {@code done} when this round has it. */
  public record PlanLine(String words, boolean done, String href) {}
}
