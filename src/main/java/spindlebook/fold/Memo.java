package spindlebook.fold;

import java.util.Collections;
import java.util.LinkedHashMap;
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

  /** Of costly things: as many as somebody tries one after another. */
  private static final int FEW = 8;

  private final Map<Object, Lazy> known = new ConcurrentHashMap<>();

  /** Of the book and all that follow it; of a book itself there is none. */
  private final Memo lasting;

  public Memo() {
    this(null);
  }

  Memo(Memo lasting) {
    this.lasting = lasting;
  }

  /**
   * @param what names it, among all that is kept with the same book or card
   */
  @SuppressWarnings("unchecked")
  public <T> T get(Object what, Supplier<T> work) {
    return (T) known.computeIfAbsent(what, w -> new Lazy()).get(work);
  }

  /**
   * What costs much and rests on a few things alone, kept also for the books that follow as long as
   * those are equal.
   *
   * @param what names it, among all that is kept with a book
   * @param things all that it is worked out from
   */
  public <T> T lasting(Object what, Object things, Supplier<T> work) {
    if (lasting == null) {
      return work.get();
    }
    Map<Object, Lazy> few = lasting.get(what, () -> Collections.synchronizedMap(new Few()));
    @SuppressWarnings("unchecked")
    T found = (T) few.computeIfAbsent(things, t -> new Lazy()).get(work);
    return found;
  }

  private static final class Few extends LinkedHashMap<Object, Lazy> {
    private static final long serialVersionUID = 1;

    Few() {
      super(FEW, 0.75f, true);
    }

    @Override
    protected boolean removeEldestEntry(Map.Entry<Object, Lazy> eldest) {
      return size() > FEW;
    }
  }

  /** Nothing of it, but what lasts. */
  Memo anew() {
    return new Memo(lasting);
  }

  /** What of it holds when one thing was read once more: all that rests on other things alone. */
  Memo afterReading(Object thing) {
    Memo still = anew();
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
