package spindlebook.corner;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/**
 * A thing in its versions: each counts from its entry on, the first for whatever came before it.
 */
final class Versions<T> {
  private record Version<T>(long n, T thing) {}

  private final List<Version<T>> versions = new ArrayList<>();

  /** In the book's order. */
  void add(long n, T thing) {
    versions.add(new Version<>(n, thing));
  }

  T at(long n) {
    T then = versions.get(0).thing();
    for (Version<T> version : versions) {
      if (version.n() <= n) {
        then = version.thing();
      }
    }
    return then;
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
    return versions.stream()
        .filter(v -> v.n() > n && holds.test(v.thing()))
        .findFirst()
        .map(Version::thing)
        .orElse(then);
  }

  T last() {
    return versions.get(versions.size() - 1).thing();
  }
}
