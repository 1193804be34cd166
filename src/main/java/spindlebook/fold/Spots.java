package spindlebook.fold;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import spindlebook.entry.Content;
import spindlebook.entry.Pairing;
import spindlebook.entry.Quantity;
import spindlebook.entry.Steering;

/**
 * Readings, by their places in a list, where they are found by whoever may be a reading of the same
 * place: at the same height, of the same name or label, within half an inch in between. More may be
 * found than are.
 */
final class Spots {
  private record Spot(
      Quantity quantity, Steering steering, Pairing pairing, String point, Object where) {}

  private final Map<Spot, List<Integer>> there = new HashMap<>();

  void add(SeenReading reading, int i) {
    spots(reading, 0).forEach(spot -> there.computeIfAbsent(spot, s -> new ArrayList<>()).add(i));
  }

  Stream<Integer> near(SeenReading reading) {
    return lists(reading).flatMap(List::stream);
  }

  /** Forgets those near a reading that nobody looks for any more. */
  void forget(SeenReading reading, Predicate<Integer> gone) {
    lists(reading).forEach(found -> found.removeIf(gone));
  }

  private Stream<List<Integer>> lists(SeenReading reading) {
    return IntStream.rangeClosed(-1, 1)
        .boxed()
        .flatMap(aside -> spots(reading, aside))
        .map(spot -> there.getOrDefault(spot, List.of()))
        .filter(found -> !found.isEmpty());
  }

  /**
   * @param aside by how many half inches beside its own position
   */
  private static Stream<Spot> spots(SeenReading reading, int aside) {
    SeenHeight height = reading.height();
    String label = height.height().label();
    Stream.Builder<Object> where = Stream.builder();
    if (aside == 0) {
      where.add(height.key());
      if (height.name().onePlace()) {
        where.add(height.name());
      } else if (label != null && !label.isBlank()) {
        where.add(List.of(height.name(), label));
      }
    }
    if (!height.name().onePlace() && height.positionMm() != null) {
      double halfInches = Math.floor(height.positionMm().value() / SeenReading.NEAR_MM);
      where.add(List.of(height.name(), halfInches + aside));
    }
    Content.Reading r = reading.reading();
    return where
        .build()
        .map(w -> new Spot(r.quantity(), r.steering(), height.pairing(), r.point(), w));
  }
}
