package spindlebook.fold;

import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import java.util.function.Predicate;

/**
 * A thing in its versions: each counts from its entry on, the first for whatever came before it.
 */
final class Versions<T> {
  private final NavigableMap<Long, T> versions = new TreeMap<>();

  void add(long n, T thing) {
    versions.put(n, thing);
  }

  T at(long n) {
    Map.Entry<Long, T> then = versions.floorEntry(n);
    return then == null ? versions.firstEntry().getValue() : then.getValue();
  }

  /**
   * The same where the part it was measured on may have been changed between the two: then the
   * first one that holds later, given only once somebody had measured it.
   */
  T at(long n, Predicate<T> holds) {
    T then = at(n);
    if (versions.size() == 1 || holds.test(then)) {
      return then;
    }
    return versions.tailMap(n, false).values().stream().filter(holds).findFirst().orElse(then);
  }

  T last() {
    return versions.lastEntry().getValue();
  }
}
