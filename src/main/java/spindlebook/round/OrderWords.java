package spindlebook.round;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import spindlebook.entry.Content.ToRead;
import spindlebook.entry.Steering;
import spindlebook.plan.RoundOrder;
import spindlebook.plan.RoundOrder.Stop;

/**
 * In which order a round's readings take the fewest moves of jack and steering, in words.
 *
 * @param steps height by height; empty where there is one place to read at
 * @param cost {@code Costs 28 in this order, 39 as listed. …}
 */
public record OrderWords(List<String> steps, String cost) {
  static OrderWords of(List<ToRead> toRead) {
    RoundOrder order = RoundOrder.of(toRead, RoundOrder.Start.hanging());
    return new OrderWords(steps(order.stops()), cost(order, toRead));
  }

  private static List<String> steps(List<Stop> stops) {
    List<String> steps = new ArrayList<>();
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

  private static String cost(RoundOrder order, List<ToRead> toRead) {
    return String.format(
        "Costs %s in this order, %s as listed. Counted as %s for each height the jack is raised"
            + " past, %s lowered past, and %s for each swing of the steering from straight to a"
            + " lock.",
        number(order.cost()),
        number(RoundOrder.costAsListed(toRead, RoundOrder.Start.hanging())),
        number(RoundOrder.UP),
        number(RoundOrder.DOWN),
        number(RoundOrder.SWING));
  }

  private static String label(Stop stop) {
    String pairing = stop.pairing() == null ? "" : ", " + stop.pairing().words();
    return (stop.label() == null || stop.label().isBlank() ? "" : ", " + stop.label()) + pairing;
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
