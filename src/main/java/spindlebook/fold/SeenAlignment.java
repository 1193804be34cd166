package spindlebook.fold;

import java.util.List;
import spindlebook.definition.Place;
import spindlebook.definition.Tool;
import spindlebook.entry.AlignedThing;
import spindlebook.entry.AlignmentWay;
import spindlebook.entry.Content;

/**
 * One measurement of alignment as the card sees it.
 *
 * @param place the corner it was written down at
 * @param lengthTool with which lengths were read
 * @param angleTool with which cambers were read
 * @param lockTool with which the locks of a sweep were read
 * @param because the changes that moved it since
 */
public record SeenAlignment(
    Noted entry,
    Content.Alignment alignment,
    Place place,
    Tool lengthTool,
    Tool angleTool,
    Tool lockTool,
    Standing stands,
    List<Change> because)
    implements OfEntry {

  public AlignmentWay way() {
    return alignment.way();
  }

  public AlignedThing thing() {
    return way().thing();
  }

  public boolean counts() {
    return stands.counts();
  }

  /** The same thing taken the same way with the same tools, nothing moved in between. */
  public boolean repeats(SeenAlignment other) {
    return way().words().equals(other.way().words())
        && thing() == other.thing()
        && lengthTool.tool().equals(other.lengthTool.tool())
        && angleTool.tool().equals(other.angleTool.tool())
        && lockTool.tool().equals(other.lockTool.tool())
        && alignment.load() == other.alignment.load();
  }

  SeenAlignment replaced() {
    return new SeenAlignment(
        entry, alignment, place, lengthTool, angleTool, lockTool, Standing.REPLACED, because);
  }
}
