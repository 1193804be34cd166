package spindlebook.fold;

import spindlebook.definition.Tool;
import spindlebook.entry.Content;

/**
 * A round with the tools it was read with, in the version that counted then. Where the round names
 * no tool, or one that cannot read such a thing, the starting one stands in.
 */
public record SeenRound(Noted entry, Content.Round round, Tool tape, Tool gapTool, Tool angleTool)
    implements OfEntry {

  /**
   * What a gap was read with: shanks below the thickest of their set, from there the tape. That the
   * thickest goes says only that the gap is no narrower; that it is no wider, only the tape can
   * say.
   */
  public Tool toolOfGap(double mm) {
    return mm < gapTool.largestMm() ? gapTool : tape;
  }
}
