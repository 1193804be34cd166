package spindlebook.fold;

import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import spindlebook.definition.Place;

/**
 * One change of a setting, or a happening, as a reason why a reading no longer holds.
 *
 * @param place where it was made; null for the whole car
 * @param adjuster the adjuster's short name, null for a happening
 * @param words what was done, ready to be read
 */
public record Change(
    long n, String key, Instant at, String who, Place place, String adjuster, String words) {
  /**
   * What many lists tell, each change once: of lists that tell the same only the longest is read.
   */
  public static Stream<Change> each(Stream<List<Change>> lists) {
    Map<Object, List<Change>> longest = new LinkedHashMap<>();
    lists.forEach(
        list -> {
          if (list instanceof Settings.Because because) {
            longest.merge(because.of(), because, (a, b) -> ((Settings.Because) a).longer(because));
          } else {
            longest.put(list, list);
          }
        });
    return longest.values().stream().flatMap(List::stream).distinct();
  }
}
