package spindlebook.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static spindlebook.entry.HeightName.FULL_BUMP;
import static spindlebook.entry.HeightName.IN_BETWEEN;
import static spindlebook.entry.HeightName.ON_THE_STRAP;
import static spindlebook.entry.HeightName.RIDE;
import static spindlebook.entry.HeightName.STOP_TOUCH;
import static spindlebook.entry.HeightName.STRAP_OFF;
import static spindlebook.entry.Steering.FULL_LEFT;
import static spindlebook.entry.Steering.FULL_RIGHT;
import static spindlebook.entry.Steering.PART_LEFT;
import static spindlebook.entry.Steering.PART_RIGHT;
import static spindlebook.entry.Steering.STRAIGHT;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import spindlebook.entry.Content.ToRead;
import spindlebook.entry.HeightName;
import spindlebook.entry.Quantity;
import spindlebook.entry.Steering;

/** Against every order there is, walked step by step; no table outside. */
class RoundOrderTest {
  private static final RoundOrder.Start HANGING = RoundOrder.Start.hanging();

  private static ToRead gap(HeightName height, Steering steering, String point) {
    return new ToRead(height, null, steering, Quantity.WATCH_POINT, point);
  }

  private static List<ToRead> gaps(HeightName height, Steering... steerings) {
    return java.util.Arrays.stream(steerings).map(s -> gap(height, s, "tie-rod")).toList();
  }

  @SafeVarargs
  private static List<ToRead> all(List<ToRead>... some) {
    return java.util.Arrays.stream(some).flatMap(List::stream).toList();
  }

  private static List<String> told(RoundOrder order) {
    return order.stops().stream().map(s -> s.name() + " " + s.steering()).toList();
  }

  @Test
  void the_steering_is_left_at_a_lock_for_the_next_height() {
    List<ToRead> asked =
        all(
            gaps(ON_THE_STRAP, STRAIGHT, FULL_LEFT, FULL_RIGHT),
            gaps(RIDE, STRAIGHT, FULL_LEFT, FULL_RIGHT),
            gaps(STOP_TOUCH, STRAIGHT, FULL_LEFT, FULL_RIGHT));
    RoundOrder order = RoundOrder.of(asked, HANGING);
    // 3 swings, then 2 at each of the others, and twice the jack: 3 + 3 + 2 + 3 + 2.
    assertEquals(13, order.cost());
    assertEquals(17, RoundOrder.costAsListed(asked, HANGING));
    assertTrue(order.stops().get(2).steering().full());
    assertEquals(order.stops().get(2).steering(), order.stops().get(3).steering());
    assertEquals(
        List.of(ON_THE_STRAP, ON_THE_STRAP, ON_THE_STRAP, RIDE, RIDE, RIDE),
        order.stops().stream().map(RoundOrder.Stop::name).limit(6).toList());
  }

  @Test
  void straight_ahead_is_visited_at_every_height_for_its_position() {
    RoundOrder order = RoundOrder.of(gaps(RIDE, FULL_LEFT), HANGING);
    assertEquals(List.of("RIDE STRAIGHT", "RIDE FULL_LEFT"), told(order));
    assertEquals(List.of(), order.stops().get(0).readings());
    assertEquals(1, order.cost());
  }

  @Test
  void from_a_jack_at_ride_the_nearer_end_comes_first() {
    List<ToRead> asked =
        all(gaps(ON_THE_STRAP, STRAIGHT), gaps(STOP_TOUCH, STRAIGHT), gaps(FULL_BUMP, STRAIGHT));
    RoundOrder order = RoundOrder.of(asked, new RoundOrder.Start(RIDE, null, STRAIGHT));
    // Down first: 3.5 + 2 · 3 + 3 = 12.5. Up first: 2 · 3 + 3 · 3.5 = 16.5.
    assertEquals(
        List.of("ON_THE_STRAP STRAIGHT", "STOP_TOUCH STRAIGHT", "FULL_BUMP STRAIGHT"), told(order));
    assertEquals(12.5, order.cost());
  }

  @Test
  void nothing_to_read_is_no_round_and_costs_nothing() {
    assertEquals(new RoundOrder(List.of(), 0), RoundOrder.of(List.of(), HANGING));
  }

  @Test
  void a_list_after_a_changed_tie_rod_takes_fewer_moves_than_as_it_is_sorted() {
    // What the book asks for again: every gap that steering moves, both locks and straight, at the
    // six heights of the demo car's first round, listed by height and steering.
    List<ToRead> asked = new ArrayList<>();
    for (HeightName height :
        List.of(STRAP_OFF, ON_THE_STRAP, IN_BETWEEN, RIDE, STOP_TOUCH, FULL_BUMP)) {
      for (Steering steering : List.of(STRAIGHT, FULL_LEFT, FULL_RIGHT)) {
        for (String point : List.of("tie-rod-upper-arm", "tie-rod-end", "tyre-frame")) {
          asked.add(gap(height, steering, point));
        }
      }
      asked.add(new ToRead(height, null, STRAIGHT, Quantity.TOE, null));
    }
    RoundOrder order = RoundOrder.of(asked, HANGING);
    // 5 · 3 of jack either way; 3 + 5 · 2 of steering against 5 · 6 with toe last of all: each
    // height
    // straight, left, right, straight.
    assertEquals(28, order.cost());
    assertEquals(39, RoundOrder.costAsListed(asked, HANGING));
    assertEquals(18, order.stops().size());
    assertEquals(asked.size(), readings(order).size());
  }

  @Test
  void every_order_of_small_rounds_costs_at_least_as_much() {
    Random random = new Random(20261125);
    double saved = 0;
    for (int i = 0; i < 150; i++) {
      List<ToRead> asked = any(random, 1 + random.nextInt(3), 3);
      RoundOrder.Start start = anyStart(random);
      RoundOrder order = RoundOrder.of(asked, start);
      assertEquals(cheapest(asked, start), order.cost(), 1e-9, asked + " from " + start);
      soundly(asked, start, order);
      saved += RoundOrder.costAsListed(asked, start) - order.cost();
    }
    assertTrue(saved > 300, "as listed costs more: " + saved);
  }

  @Test
  void eight_heights_are_ordered_soundly_and_never_worse_than_straight_up() {
    Random random = new Random(8);
    for (int i = 0; i < 60; i++) {
      List<ToRead> asked = any(random, 8, 4);
      RoundOrder order = RoundOrder.of(asked, HANGING);
      soundly(asked, HANGING, order);
      assertTrue(order.cost() <= RoundOrder.costAsListed(sorted(asked), HANGING) + 1e-9);
    }
  }

  @Test
  void more_heights_than_can_be_tried_are_taken_straight_up() {
    List<ToRead> asked = new ArrayList<>();
    for (int i = 0; i < 15; i++) {
      for (Steering steering : List.of(STRAIGHT, FULL_LEFT, FULL_RIGHT)) {
        asked.add(new ToRead(IN_BETWEEN, "h" + i, steering, Quantity.WATCH_POINT, "tie-rod"));
      }
    }
    RoundOrder order = RoundOrder.of(asked, HANGING);
    assertEquals(14 * 3 + 3 + 14 * 2, order.cost());
    soundly(asked, HANGING, order);
  }

  // --- the other way of counting

  private static List<ToRead> any(Random random, int heights, int most) {
    List<ToRead> asked = new ArrayList<>();
    List<Steering> steerings =
        new ArrayList<>(List.of(STRAIGHT, FULL_LEFT, FULL_RIGHT, PART_LEFT, PART_RIGHT));
    for (int h = 0; h < heights; h++) {
      HeightName name = h < 6 ? HeightName.values()[h] : IN_BETWEEN;
      Collections.shuffle(steerings, random);
      for (Steering steering : steerings.subList(0, 1 + random.nextInt(most))) {
        asked.add(new ToRead(name, h < 6 ? null : "h" + h, steering, Quantity.TOE, null));
      }
    }
    Collections.shuffle(asked, random);
    return asked;
  }

  private static RoundOrder.Start anyStart(Random random) {
    HeightName[] names = HeightName.values();
    Steering[] steerings = Steering.values();
    return random.nextBoolean()
        ? HANGING
        : new RoundOrder.Start(
            names[random.nextInt(names.length)], null, steerings[random.nextInt(steerings.length)]);
  }

  /** By height as listed, then by steering. */
  private static List<ToRead> sorted(List<ToRead> asked) {
    List<Place> places = places(asked, HANGING);
    return asked.stream()
        .sorted(
            java.util.Comparator.comparing((ToRead r) -> places.indexOf(place(r)))
                .thenComparing(ToRead::steering))
        .toList();
  }

  private record Place(HeightName name, String label) {}

  private static Place place(ToRead read) {
    return new Place(read.name(), read.label());
  }

  /** Every order of heights, and at each every order of its steerings. */
  private static double cheapest(List<ToRead> asked, RoundOrder.Start start) {
    List<Place> places = places(asked, start);
    List<Place> left = asked.stream().map(RoundOrderTest::place).distinct().toList();
    int at = start.name() == null ? 0 : places.indexOf(new Place(start.name(), null));
    return heights(asked, places, left, at, degrees(start.steering()));
  }

  private static List<Place> places(List<ToRead> asked, RoundOrder.Start start) {
    List<Place> all = new ArrayList<>(asked.stream().map(RoundOrderTest::place).toList());
    if (start.name() != null) {
      all.add(new Place(start.name(), null));
    }
    return all.stream().distinct().sorted(java.util.Comparator.comparing(Place::name)).toList();
  }

  private static double heights(
      List<ToRead> asked, List<Place> places, List<Place> left, int at, double wheel) {
    double least = left.isEmpty() ? 0 : Double.POSITIVE_INFINITY;
    for (Place next : left) {
      int to = places.indexOf(next);
      double jack = to > at ? 3 * (to - at) : 3.5 * (at - to);
      List<Place> rest = left.stream().filter(p -> !p.equals(next)).toList();
      Set<Double> there = new HashSet<>(List.of(0.0));
      asked.stream()
          .filter(r -> place(r).equals(next))
          .forEach(r -> there.add(degrees(r.steering())));
      least = Math.min(least, jack + swings(asked, places, rest, to, wheel, there));
    }
    return least;
  }

  private static double swings(
      List<ToRead> asked,
      List<Place> places,
      List<Place> rest,
      int at,
      double wheel,
      Set<Double> there) {
    if (there.isEmpty()) {
      return heights(asked, places, rest, at, wheel);
    }
    double least = Double.POSITIVE_INFINITY;
    for (double next : there) {
      Set<Double> others = new HashSet<>(there);
      others.remove(next);
      least =
          Math.min(least, Math.abs(next - wheel) + swings(asked, places, rest, at, next, others));
    }
    return least;
  }

  private static double degrees(Steering steering) {
    return switch (steering) {
      case FULL_LEFT -> -1;
      case PART_LEFT -> -0.5;
      case STRAIGHT -> 0;
      case PART_RIGHT -> 0.5;
      case FULL_RIGHT -> 1;
    };
  }

  /** Every reading once, every height in one piece, and as dear as it says. */
  private static void soundly(List<ToRead> asked, RoundOrder.Start start, RoundOrder order) {
    assertEquals(new HashSet<>(asked), new HashSet<>(readings(order)));
    assertEquals(asked.size(), readings(order).size());
    List<Place> places = places(asked, start);
    int at = start.name() == null ? 0 : places.indexOf(new Place(start.name(), null));
    double wheel = degrees(start.steering());
    double cost = 0;
    List<Place> visited = new ArrayList<>();
    for (RoundOrder.Stop stop : order.stops()) {
      Place place = new Place(stop.name(), stop.label());
      int to = places.indexOf(place);
      cost += to > at ? 3 * (to - at) : 3.5 * (at - to);
      cost += Math.abs(degrees(stop.steering()) - wheel);
      at = to;
      wheel = degrees(stop.steering());
      if (visited.isEmpty() || !visited.get(visited.size() - 1).equals(place)) {
        visited.add(place);
      }
    }
    assertEquals(order.cost(), cost, 1e-9);
    assertEquals(visited.size(), new HashSet<>(visited).size(), "each height once");
  }

  private static List<ToRead> readings(RoundOrder order) {
    return order.stops().stream().flatMap(s -> s.readings().stream()).toList();
  }
}
