package spindlebook.round;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import spindlebook.corner.Content.ToRead;
import spindlebook.corner.RoundOrder;
import spindlebook.corner.RoundOrder.Stop;
import spindlebook.corner.Steering;

/** In which order a round's readings take the fewest moves of jack and steering, in words. */
final class OrderWords {
  private static final String MODEL =
      "Counted as 3 for each height the jack is raised past, 3.5 lowered past, and 1 for each swing"
          + " of the steering from straight to a lock.";

  private OrderWords() {}

  /** Height by height; empty where there is one place to read at. */
  static List<String> steps(List<ToRead> toRead) {
    List<String> steps = new ArrayList<>();
    List<Stop> stops = order(toRead).stops();
    for (int i = 0; i < stops.size(); i++) {
      Stop stop = stops.get(i);
      boolean same =
          i > 0
              && stops.get(i - 1).name() == stop.name()
              && label(stops.get(i - 1)).equals(label(stop));
      if (same) {
        steps.add(steps.remove(steps.size() - 1) + ", " + at(stop));
      } else {
        steps.add(stop.name().words() + label(stop) + ": " + at(stop));
      }
    }
    return stops.size() < 2 ? List.of() : steps;
  }

  /** "Costs 28 in this order, 39 as listed above. …". */
  static String cost(List<ToRead> toRead) {
    double listed = RoundOrder.costAsListed(toRead, RoundOrder.Start.hanging());
    return "Costs "
        + number(order(toRead).cost())
        + " in this order, "
        + number(listed)
        + " as listed. "
        + MODEL;
  }

  private static RoundOrder order(List<ToRead> toRead) {
    return RoundOrder.of(toRead, RoundOrder.Start.hanging());
  }

  private static String label(Stop stop) {
    return stop.label() == null || stop.label().isBlank() ? "" : ", " + stop.label();
  }

  /** The height itself is taken straight ahead. */
  private static String at(Stop stop) {
    long readings = stop.readings().stream().filter(r -> r.quantity() != null).count();
    boolean height = stop.steering() == Steering.STRAIGHT;
    String what = readings == 0 ? (height ? "the height" : "nothing") : String.valueOf(readings);
    return stop.steering().words() + " " + what;
  }

  private static String number(double cost) {
    return cost == Math.rint(cost)
        ? String.valueOf((long) cost)
        : String.format(Locale.ROOT, "%.1f", cost);
  }
}
