package spindlebook.fold;

import java.util.List;
import spindlebook.entry.Content;

/**
 * A joint of the linkage as it was laid out last.
 *
 * @param because the changes that moved it since
 */
public record SeenJoint(
    Noted entry, Content.JointPlace place, Standing stands, List<Change> because)
    implements OfEntry {}
