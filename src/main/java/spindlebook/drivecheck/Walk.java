package spindlebook.drivecheck;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import spindlebook.advice.DriveCheck;
import spindlebook.card.Capital;
import spindlebook.card.Shown;
import spindlebook.definition.Place;
import spindlebook.drawing.DrawnWheel;
import spindlebook.drawing.PlanView;
import spindlebook.drawing.State;
import spindlebook.page.Bar;
import spindlebook.page.Link;

/**
 * A drive check as a walk round the car: what there is to do, by where one stands.
 *
 * @param stops in the order in which one walks, the whole car last
 * @param here the stop at which one stands; null where there is none
 */
public record Walk(String car, List<Stop> stops, Stop here) {
  private static final List<Place> ROUND =
      List.of(Place.LEFT_FRONT, Place.RIGHT_FRONT, Place.RIGHT_REAR, Place.LEFT_REAR);
  static final String WHOLE_CAR = "car";

  /**
   * A place to stand.
   *
   * @param corner null for the whole car
   * @param state what the corner comes to; null for the whole car
   */
  public record Stop(
      String id,
      String corner,
      String place,
      State state,
      Set<DrawnWheel> wheels,
      List<Task> tasks) {
    public String title() {
      return Capital.of(place);
    }
  }

  /**
   * @param at where one stands; where that is no stop, the first that has something to do
   */
  static Walk of(CheckView view, String at) {
    DriveCheck check = view.check();
    Map<String, List<Task>> tasks =
        view.tasks().stream()
            .collect(
                Collectors.groupingBy(
                    t -> t.thing().corner() == null ? WHOLE_CAR : t.thing().corner()));
    List<Stop> stops = new ArrayList<>();
    check.corners().stream()
        .sorted(Comparator.comparing(c -> ROUND.indexOf(c.card().place())))
        .forEach(
            c -> {
              String key = c.card().corner();
              stops.add(
                  new Stop(
                      key,
                      key,
                      c.card().place().words(),
                      view.state(c),
                      Set.of(Shown.place(c.card().place())),
                      tasks.getOrDefault(key, List.of())));
            });
    if (tasks.containsKey(WHOLE_CAR)) {
      stops.add(new Stop(WHOLE_CAR, null, "the whole car", null, Set.of(), tasks.get(WHOLE_CAR)));
    }
    Stop first = stops.stream().filter(s -> !s.tasks().isEmpty()).findFirst().orElse(null);
    Stop here = stops.stream().filter(s -> s.id().equals(at)).findFirst().orElse(first);
    return new Walk(
        view.history().car().orElseThrow(),
        stops,
        here == null && !stops.isEmpty() ? stops.get(0) : here);
  }

  public int number(Stop stop) {
    return stops.indexOf(stop) + 1;
  }

  public String href(Stop stop) {
    return "/cars/" + car + "/drive-check?at=" + stop.id();
  }

  PlanView plan() {
    return new PlanView(Set.of(DrawnWheel.values()), here == null ? Set.of() : here.wheels());
  }

  /** The next stop in Measure's place, and at the last of them the sign-off. */
  Bar bar() {
    Link sign = new Link("Sign off", "/cars/" + car + "/sign-offs/new");
    int next = stops.indexOf(here) + 1;
    return next >= stops.size()
        ? new Bar(sign, List.of(), "")
        : new Bar(
            new Link("Next: " + stops.get(next).place() + " ›", href(stops.get(next))),
            List.of(sign),
            "");
  }
}
