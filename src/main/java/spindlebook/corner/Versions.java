package spindlebook.corner;

import java.util.ArrayList;
import java.util.List;

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

  T last() {
    return versions.get(versions.size() - 1).thing();
  }
}
