package spindlebook.drivecheck;

import java.util.List;
import spindlebook.web.State;

/**
 * The drive check of a car.
 *
 * @param corners how many of each kind a corner has
 * @param notes what the check says nothing of
 * @param groups what is to see to, by kind, the weightiest first
 * @param signed the last sign-off in a line; empty before the first
 * @param signedHref its page; null before the first
 * @param sinceHref what changed since; null before the first
 */
public record CheckView(
    String asOf,
    List<CornerCounts> corners,
    List<String> notes,
    List<Group> groups,
    String signed,
    String signedHref,
    String sinceHref) {

  public record CornerCounts(String name, String href, String printHref, State state, String of) {}

  /** All of one kind. */
  public record Group(String title, State state, List<CheckWords.Line> lines) {
    public Group {
      lines = List.copyOf(lines);
    }
  }

  public CheckView {
    corners = List.copyOf(corners);
    notes = List.copyOf(notes);
    groups = List.copyOf(groups);
  }
}
