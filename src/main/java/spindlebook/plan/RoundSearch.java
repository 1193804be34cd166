package spindlebook.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.TreeMap;
import spindlebook.entry.Content.ToRead;
import spindlebook.entry.Steering;

/** Least cost over places done, the last of them, and at which end of its swings it was left. */
final class RoundSearch {
  private final RoundOrder.Start start;
  private final RoundOrder.Line line;
  private final List<RoundOrder.Height> places;
  private final List<TreeMap<Integer, List<ToRead>>> bySteering = new ArrayList<>();
  private final int n;
  private double[] cost;
  private int[] from;

  RoundSearch(Collection<ToRead> readings, RoundOrder.Start start) {
    this.start = start;
    this.line = new RoundOrder.Line(readings, start);
    this.places =
        line.index.keySet().stream()
            .filter(h -> readings.stream().anyMatch(r -> RoundOrder.Height.of(r).equals(h)))
            .toList();
    this.n = places.size();
    for (RoundOrder.Height place : places) {
      TreeMap<Integer, List<ToRead>> there = new TreeMap<>();
      there.put(0, new ArrayList<>());
      readings.stream()
          .filter(r -> RoundOrder.Height.of(r).equals(place))
          .forEach(
              r ->
                  there
                      .computeIfAbsent(RoundOrder.axis(r.steering()), a -> new ArrayList<>())
                      .add(r));
      bySteering.add(there);
    }
  }

  RoundOrder best() {
    if (n == 0) {
      return new RoundOrder(List.of(), 0);
    }
    int states = n > RoundOrder.EXACT ? n + 1 : 1 << n;
    cost = new double[states * n * 2];
    from = new int[states * n * 2];
    Arrays.fill(cost, Double.POSITIVE_INFINITY);
    for (int place = 0; place < n; place++) {
      if (n <= RoundOrder.EXACT || place == 0) {
        reach(-1, 0, line.start, RoundOrder.axis(start.steering()), place, 0);
      }
    }
    for (int state = 0; state < cost.length; state++) {
      if (cost[state] < Double.POSITIVE_INFINITY) {
        int done = state / (2 * n);
        int last = state / 2 % n;
        for (int place = 0; place < n; place++) {
          if (mayFollow(done, last, place)) {
            reach(state, done, at(last), left(state), place, cost[state]);
          }
        }
      }
    }
    return walk(cheapestAtTheEnd());
  }

  private boolean mayFollow(int done, int last, int place) {
    return n > RoundOrder.EXACT ? place == last + 1 : (done & (1 << place)) == 0;
  }

  private void reach(int state, int done, int at, int wheel, int place, double soFar) {
    int then = n > RoundOrder.EXACT ? done + 1 : done | (1 << place);
    double jack = soFar + RoundOrder.jack(at, at(place));
    double across = RoundOrder.swings(low(place), high(place));
    for (int side = 0; side < 2; side++) {
      int far = side == 0 ? high(place) : low(place);
      double whole = jack + RoundOrder.swings(wheel, far) + across;
      int next = (then * n + place) * 2 + side;
      if (whole < cost[next] - 1e-9) {
        cost[next] = whole;
        from[next] = state;
      }
    }
  }

  private int cheapestAtTheEnd() {
    int all = n > RoundOrder.EXACT ? n : (1 << n) - 1;
    int best = all * n * 2;
    for (int state = best; state < (all + 1) * n * 2; state++) {
      if (cost[state] < cost[best] - 1e-9) {
        best = state;
      }
    }
    return best;
  }

  private RoundOrder walk(int end) {
    List<Integer> states = new ArrayList<>();
    for (int state = end; state >= 0; state = from[state]) {
      states.add(0, state);
    }
    List<RoundOrder.Stop> stops = new ArrayList<>();
    int wheel = RoundOrder.axis(start.steering());
    for (int state : states) {
      int place = state / 2 % n;
      for (int steering : swung(place, wheel, left(state))) {
        RoundOrder.Height height = places.get(place);
        stops.add(
            new RoundOrder.Stop(
                height.name(),
                height.label().isEmpty() ? null : height.label(),
                height.pairing(),
                steering(steering),
                bySteering.get(place).get(steering)));
      }
      wheel = left(state);
    }
    return new RoundOrder(stops, cost[end]);
  }

  /** First what is passed on the way to the far end, then the rest on the way back. */
  private List<Integer> swung(int place, int wheel, int leftAt) {
    TreeMap<Integer, List<ToRead>> there = bySteering.get(place);
    boolean leftHigh = leftAt == high(place);
    List<Integer> passed =
        new ArrayList<>(
            leftHigh
                ? there.headMap(wheel, true).descendingKeySet()
                : there.tailMap(wheel, true).keySet());
    List<Integer> back =
        new ArrayList<>(
            leftHigh
                ? there.tailMap(wheel, false).keySet()
                : there.headMap(wheel, false).descendingKeySet());
    passed.addAll(back);
    return passed;
  }

  private int at(int place) {
    return line.index.get(places.get(place));
  }

  private int low(int place) {
    return bySteering.get(place).firstKey();
  }

  private int high(int place) {
    return bySteering.get(place).lastKey();
  }

  /** Side 0 leaves the steering at its low end, having gone to the high one first. */
  private int left(int state) {
    int place = state / 2 % n;
    return state % 2 == 0 ? low(place) : high(place);
  }

  private static Steering steering(int axis) {
    for (Steering steering : Steering.values()) {
      if (RoundOrder.axis(steering) == axis) {
        return steering;
      }
    }
    throw new IllegalArgumentException("no steering at " + axis);
  }
}
