package spindlebook.round;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import spindlebook.entry.GapResult;
import spindlebook.entry.HeightName;
import spindlebook.fold.SeenReading;
import spindlebook.plan.JackPlan;

/**
 * Where something touched in a round the jack is not sent further: what lies further out at that
 * end is not asked, for the touch has decided it.
 */
record Touched(SeenReading reading, GuidePlan.Place place, boolean droop) {
  /** Those of this round, in the order of its places, of each place the first found. */
  static List<Touched> in(GuidePlan plan) {
    Sitting at = plan.sitting();
    List<Touched> all = new ArrayList<>();
    for (GuidePlan.Place place : plan.places()) {
      if (place.height() != null && place.height().positionCounts()) {
        Stream.concat(Stream.of(at.card()), at.otherEnd().stream())
            .flatMap(c -> c.readingsAt(place.heightKey()).stream())
            .filter(r -> r.point() != null && r.counts())
            .filter(
                r ->
                    r.reading().result() == GapResult.TOUCHES
                        || r.reading().result() == GapResult.BINDS)
            .findFirst()
            .ifPresent(r -> all.add(new Touched(r, place, droop(plan, place))));
      }
    }
    return List.copyOf(all);
  }

  /** In between it was met on the way up, unless it lies below where the strap holds the wheel. */
  private static boolean droop(GuidePlan plan, GuidePlan.Place place) {
    if (place.name() != HeightName.IN_BETWEEN) {
      return JackPlan.droop(place.name());
    }
    return plan.places().stream()
        .filter(p -> p.name() == HeightName.ON_THE_STRAP && p.stood() == place.stood())
        .map(GuidePlan.Place::height)
        .filter(h -> h != null && h.positionCounts())
        .anyMatch(h -> mm(place) <= h.positionMm().value());
  }

  private static double mm(GuidePlan.Place place) {
    return place.height().positionMm().value();
  }

  /** Whether a place that is not read yet lies further out. */
  boolean before(Sitting at, GuidePlan.Place next) {
    if (next.height() != null
        || !Objects.equals(next.pairing(), place.pairing())
        || next.name() == HeightName.RIDE
        || (next.name() != HeightName.IN_BETWEEN && JackPlan.droop(next.name()) != droop)) {
      return false;
    }
    OptionalDouble aim = StandWords.aimMm(at, next);
    if (aim.isPresent()) {
      return droop ? aim.getAsDouble() < mm(place) : aim.getAsDouble() > mm(place);
    }
    int further = next.name().compareTo(place.name());
    return droop ? further < 0 : further > 0;
  }

  /** {@code Not past bump stop solid: tie rod to upper arm touches there.} */
  String words() {
    return "Not asked past '" + place.height().words() + "': " + reading.what() + " touches there.";
  }

  /** The plan without what lies past a touch. */
  static GuidePlan spared(GuidePlan plan) {
    List<Touched> touched = in(plan);
    return new GuidePlan(
        plan.sitting(),
        plan.places().stream()
            .filter(p -> touched.stream().noneMatch(t -> t.before(plan.sitting(), p)))
            .toList());
  }
}
