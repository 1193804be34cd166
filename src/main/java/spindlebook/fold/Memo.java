package spindlebook.fold;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;

/**
 * What was worked out from a book or a card, kept as long as that is: asked for twice, by whomever,
 * it is worked out once. It tells nothing that is not in them, so any two are equal.
 */
public final class Memo {
  /**
   * Names what rests on the readings of one thing alone.
   *
   * @param thing the key of a watch point, or a quantity
   */
  public record Of(Object thing, Object what) {}

  private static final class Lazy {
    private Object known;

    synchronized Object get(Supplier<?> work) {
      if (known == null) {
        known = work.get();
      }
      return known;
    }
  }

  private final Map<Object, Lazy> known = new ConcurrentHashMap<>();

  /**
   * @param what names it, among all that is kept with the same book or card
   */
  @SuppressWarnings("unchecked")
  public <T> T get(Object what, Supplier<T> work) {
    return (T) known.computeIfAbsent(what, w -> new Lazy()).get(work);
  }

  /** What of it holds when one thing was read once more: all that rests on other things alone. */
  Memo afterReading(Object thing) {
    Memo still = new Memo();
    known.forEach(
        (what, lazy) -> {
          if (what instanceof Of of && !of.thing().equals(thing)) {
            still.known.put(what, lazy);
          }
        });
    return still;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Memo;
  }

  @Override
  public int hashCode() {
    return 0;
  }

  @Override
  public String toString() {
    return "";
  }
}
