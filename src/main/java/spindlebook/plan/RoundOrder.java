package spindlebook.plan;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import spindlebook.entry.Content.ToRead;
import spindlebook.entry.HeightName;
import spindlebook.entry.Pairing;
import spindlebook.entry.Steering;

/**
 * Tells in which order to take a round's readings with the fewest moves of jack and steering.
 *
 * <pre>
 *   cost = 3 · places the jack passes  (3.5 downwards)  +  1 · swings from straight to a lock
 * </pre>
 *
 * <p>Places are the heights that have something to be read, along the travel from droop to bump,
 * those in between as they are listed; from lock to lock is two swings, to part lock half of one.
 * The weights are common practice, no source: a jack is slow beside a steering wheel, and raising
 * is kinder than lowering. Every height is visited once, for a second visit would be another
 * height, and straight ahead is visited at each, for that is where its position is read; readings
 * at a lock may come before it.
 *
 * <p>The least cost is found exactly, over all sets of places done and where the steering was left
 * (Held and Karp, from memory), up to {@link #EXACT} places; beyond that the jack goes straight up.
 *
 * <p>Worked example: straight, left and right at three heights, the jack at the lowest, steering
 * straight: left, straight, right (3), up (3), right, straight, left (2), up (3), left, straight,
 * right (2): 13. Straight, left, right at each: 3 + 3 + 4 + 3 + 4 = 17.
 *
 * @param stops in order: one height and steering each
 */
public record RoundOrder(List<Stop> stops, double cost) {
  public static final double UP = 3;
  public static final double DOWN = 3.5;
  public static final double SWING = 1;

  /** As many places are ordered exactly. */
  static final int EXACT = 12;

  /** What is read at one place and steering; empty when only the position is. */
  public record Stop(
      HeightName name, String label, Pairing pairing, Steering steering, List<ToRead> readings) {}

  /**
   * Where jack and steering stand before the first reading.
   *
   * @param name null where the jack is not at a named height: then at the lowest to be read
   */
  public record Start(HeightName name, String label, Steering steering) {
    public static Start hanging() {
      return new Start(null, null, Steering.STRAIGHT);
    }
  }

  /** Crossed it is another jack setting than both together. */
  record Height(HeightName name, String label, Pairing pairing) {
    static Height of(ToRead read) {
      return new Height(read.name(), read.label() == null ? "" : read.label(), read.pairing());
    }
  }

  public static RoundOrder of(Collection<ToRead> readings, Start start) {
    return new RoundSearch(readings, start).best();
  }

  /** What it costs to take readings in the order in which they stand. */
  public static double costAsListed(List<ToRead> readings, Start start) {
    Line line = new Line(readings, start);
    int at = line.start;
    int wheel = axis(start.steering());
    double cost = 0;
    Height height = null;
    for (ToRead read : readings) {
      Height next = Height.of(read);
      if (!next.equals(height)) {
        cost += jack(at, line.index.get(next)) + swings(wheel, 0);
        wheel = 0;
        at = line.index.get(next);
        height = next;
      }
      cost += swings(wheel, axis(read.steering()));
      wheel = axis(read.steering());
    }
    return cost;
  }

  static double jack(int from, int to) {
    return to >= from ? UP * (to - from) : DOWN * (from - to);
  }

  /** In half swings from straight, + towards right lock. */
  static int axis(Steering steering) {
    return switch (steering) {
      case FULL_LEFT -> -2;
      case PART_LEFT -> -1;
      case STRAIGHT -> 0;
      case PART_RIGHT -> 1;
      case FULL_RIGHT -> 2;
    };
  }

  static double swings(int from, int to) {
    return SWING * Math.abs(to - from) / 2;
  }

  /** The heights along the travel, the one the jack stands at among them. */
  static final class Line {
    final Map<Height, Integer> index = new LinkedHashMap<>();
    final int start;

    Line(Collection<ToRead> readings, Start start) {
      List<Height> heights = new ArrayList<>(readings.stream().map(Height::of).distinct().toList());
      Height first = null;
      if (start.name() != null) {
        first = new Height(start.name(), start.label() == null ? "" : start.label(), null);
        if (!heights.contains(first)) {
          heights.add(first);
        }
      }
      heights.sort(
          Comparator.comparing((Height h) -> h.pairing() != null).thenComparing(Height::name));
      heights.forEach(h -> index.put(h, index.size()));
      this.start = first == null ? 0 : index.get(first);
    }
  }
}
