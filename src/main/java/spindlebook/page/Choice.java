package spindlebook.page;

import java.util.List;

/**
 * One of a few, as big keys.
 *
 * @param name form name; also makes the ids, so it is unique on the page
 * @param legend what is asked
 * @param hint a line under it; may be empty
 * @param problem one sentence; empty when all is well
 */
public record Choice(
    String name, String legend, String hint, String problem, List<Option> options) {
  /**
   * @param note a smaller line under the word; may be empty
   */
  public record Option(String value, String word, String note, boolean chosen) {}

  public String id() {
    return "f-" + name;
  }

  public String describedBy() {
    return Field.of(name, legend).hint(hint).problem(problem).describedBy();
  }
}
