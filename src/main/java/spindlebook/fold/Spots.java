package spindlebook.fold;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.Predicate;
import spindlebook.entry.Content;
import spindlebook.entry.HeightName;
import spindlebook.entry.Pairing;
import spindlebook.entry.Quantity;
import spindlebook.entry.Steering;

/**
 * Readings, by their places in a list, where they are found by whoever may be a reading of the same
 * place: at the same height, of the same name or label, within half an inch in between. More may be
 * found than are.
 */
final class Spots {
  /** Of no era: left alone by none. */
  static final long ANY = -1;

  private record Spot(
      Quantity quantity, Steering steering, Pairing pairing, String point, Object where) {}

  private record Labelled(HeightName name, String label) {}

  private record HalfInch(HeightName name, long which) {}

  private final Map<Spot, Map<Long, List<Integer>>> there = new HashMap<>();

  /**
   * @param era those of one era are left alone by one another
   */
  void add(SeenReading reading, long era, int i) {
    eachSpot(
        reading,
        0,
        spot ->
            there
                .computeIfAbsent(spot, s -> new HashMap<>())
                .computeIfAbsent(era, e -> new ArrayList<>())
                .add(i));
  }

  /** All that are near, but of that era; one that is at several of its spots as often. */
  List<Integer> near(SeenReading reading, long era) {
    List<Integer> near = new ArrayList<>();
    eachMap(
        reading,
        of ->
            of.forEach(
                (e, list) -> {
                  if (e != era || e == ANY) {
                    near.addAll(list);
                  }
                }));
    return near;
  }

  /** Forgets those near a reading that nobody looks for any more. */
  void forget(SeenReading reading, Predicate<Integer> gone) {
    eachMap(
        reading,
        of -> {
          of.values().forEach(list -> list.removeIf(gone));
          of.values().removeIf(List::isEmpty);
        });
  }

  private void eachMap(SeenReading reading, Consumer<Map<Long, List<Integer>>> with) {
    for (int aside = -1; aside <= 1; aside++) {
      eachSpot(
          reading,
          aside,
          spot -> {
            Map<Long, List<Integer>> found = there.get(spot);
            if (found != null) {
              with.accept(found);
            }
          });
    }
  }

  /**
   * @param aside by how many half inches beside its own position
   */
  private static void eachSpot(SeenReading reading, int aside, Consumer<Spot> with) {
    SeenHeight height = reading.height();
    HeightName name = height.name();
    if (aside == 0) {
      String label = height.height().label();
      with.accept(spot(reading, height.key()));
      if (name.onePlace()) {
        with.accept(spot(reading, name));
      } else if (label != null && !label.isBlank()) {
        with.accept(spot(reading, new Labelled(name, label)));
      }
    }
    if (!name.onePlace() && height.positionMm() != null) {
      long halfInches =
          (long) Math.floor(height.positionMm().value() / SeenReading.NEAR_MM) + aside;
      with.accept(spot(reading, new HalfInch(name, halfInches)));
    }
  }

  private static Spot spot(SeenReading reading, Object where) {
    Content.Reading r = reading.reading();
    return new Spot(r.quantity(), r.steering(), reading.height().pairing(), r.point(), where);
  }
}
