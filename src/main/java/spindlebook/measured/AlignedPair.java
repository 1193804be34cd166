package spindlebook.measured;

import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import spindlebook.uncertainty.Difference;
import spindlebook.uncertainty.Source;

/**
 * One figure of alignment at two points of the book, of two wheels or of two cars.
 *
 * <p>Of one car a tool's own error cancels in the difference, and so does each reading on which
 * both rest, with the steps of its scale. What a scale's steps hide of two different readings does
 * not: the wheel was moved between them. Nor does what was counted for want of a reading, since
 * what is not known may have changed.
 */
public record AlignedPair(AlignedFinding one, AlignedFinding other) {

  /**
   * The first less the second; empty unless both count.
   *
   * @param oneCar whether a tool of one name is one tool
   */
  public Optional<Difference> difference(boolean oneCar) {
    if (!one.counts() || !other.counts()) {
      return Optional.empty();
    }
    Set<String> inBoth =
        one.readings().stream().filter(other.readings()::contains).collect(Collectors.toSet());
    Set<String> steps =
        Stream.concat(
                one.from().stream().filter(a -> inBoth.contains(a.key())).map(ReadAlignment::place),
                one.inRound().stream()
                    .filter(r -> inBoth.contains(r.key()))
                    .flatMap(r -> r.value().parts().keySet().stream())
                    .map(Source::id))
            .collect(Collectors.toSet());
    return Optional.of(
        Difference.of(one.value(), other.value(), source -> oneCar && shared(source, steps)));
  }

  private static boolean shared(Source source, Set<String> steps) {
    return switch (source.kind()) {
      case RESOLUTION -> steps.stream().anyMatch(source.id()::startsWith);
      case ALLOWANCE -> false;
      default -> true;
    };
  }
}
