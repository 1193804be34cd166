package spindlebook.compare;

import java.util.List;

/**
 * A list to pick from.
 *
 * @param first options before the groups
 */
public record PointSelect(String name, String label, List<Option> first, List<Group> groups) {
  /** Options of one kind, under a title. */
  public record Group(String title, List<Option> options) {}

  public record Option(String value, String words, boolean chosen) {}
}
