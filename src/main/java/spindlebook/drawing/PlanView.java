package spindlebook.drawing;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The car from above, front up, with the corner in hand filled: nobody reads the wrong side.
 *
 * @param corners the wheels the car has
 * @param marked the wheels in hand: one corner, both ends of a solid axle, or none
 */
public record PlanView(Set<DrawnWheel> corners, Set<DrawnWheel> marked) {
  /** A car with four wheels and one corner marked. */
  public static PlanView at(DrawnWheel marked) {
    return new PlanView(Set.of(DrawnWheel.values()), Set.of(marked));
  }

  /** The wheels in the order in which they are drawn. */
  public List<DrawnWheel> wheels() {
    return Stream.of(DrawnWheel.values()).filter(corners::contains).toList();
  }

  /** What the picture says, in words. */
  public String words() {
    return marked.isEmpty()
        ? "The car from above"
        : "The car from above: "
            + Stream.of(DrawnWheel.values())
                .filter(marked::contains)
                .map(DrawnWheel::word)
                .collect(Collectors.joining(" and "));
  }
}
