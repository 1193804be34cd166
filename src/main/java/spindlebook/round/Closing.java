package spindlebook.round;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import spindlebook.entry.HeightName;
import spindlebook.entry.Pairing;
import spindlebook.entry.Quantity;
import spindlebook.entry.Steering;
import spindlebook.plan.JackPlan;
import spindlebook.travel.CornerTravel;
import spindlebook.travel.End;
import spindlebook.travel.EndFindings;
import spindlebook.travel.Limit;
import spindlebook.uncertainty.Outcome;

/**
 * Heights that an end needs which was read past its stop and is undecided still: first just past
 * where the stop lets the wheel go in the end, with the doubt of both; if what is read there does
 * not decide, just before it. Only what is undecided is read there; kept past it an end is clear,
 * broken before it short, and between the two nobody can tell.
 */
record Closing(GuidePlan plan) {
  /** So that the doubt of the new height, too, is within. */
  private static final double BEYOND_U = 1.25;

  private static final Map<End, List<String>> LABELS =
      Map.of(
          End.DROOP, List.of("where the strap ends up", "just before the strap ends up"),
          End.BUMP, List.of("where a hard landing ends", "just before a hard landing ends"));

  /** The plan's places, with these after those of their end. */
  List<GuidePlan.Place> places() {
    List<GuidePlan.Place> all = new ArrayList<>(plan.places());
    for (End end : End.values()) {
      for (Pairing pairing : plan.sitting().card().pairings()) {
        close(all, end, pairing);
      }
    }
    return List.copyOf(all);
  }

  private void close(List<GuidePlan.Place> all, End end, Pairing pairing) {
    HeightName past = past(end);
    boolean readPast =
        plan.places().stream()
            .anyMatch(
                p ->
                    p.nth() > 0
                        && p.name() == past
                        && p.height() != null
                        && Objects.equals(p.pairing(), pairing));
    if (!readPast) {
      return;
    }
    List<Limit> open = open(end, pairing);
    for (String label : LABELS.get(end)) {
      Optional<GuidePlan.Place> there =
          all.stream()
              .filter(p -> label.equals(p.label()) && Objects.equals(p.pairing(), pairing))
              .findFirst();
      if (there.isEmpty() && open.isEmpty()) {
        return;
      }
      if (there.isEmpty() && end == End.DROOP && past(hung(pairing), asked(past, label, pairing))) {
        continue;
      }
      GuidePlan.Place place = there.orElseGet(() -> asked(past, label, pairing));
      all.remove(place);
      int after = 0;
      for (int i = 0; i < all.size(); i++) {
        GuidePlan.Place p = all.get(i);
        boolean itsEnd =
            p.nth() < 0 || JackPlan.furtherOut(p.name(), p.nth()) != null && p.nth() > 0;
        if (itsEnd
            && Objects.equals(p.pairing(), pairing)
            && JackPlan.droop(p.name()) == (end == End.DROOP)) {
          after = i + 1;
        }
      }
      String id = "closing-" + end.ordinal() + LABELS.get(end).indexOf(label);
      all.add(
          after, place.with(pairing == Pairing.CROSSED ? id + "x" : id, -1, slots(place, open)));
      if (there.isEmpty()) {
        return;
      }
    }
  }

  private static GuidePlan.Place asked(HeightName past, String label, Pairing pairing) {
    HeightName other = pairing == Pairing.CROSSED ? opposite(past) : past;
    return new GuidePlan.Place(
        "", -1, past, label, pairing, pairing == null ? null : other, null, Map.of());
  }

  /** Where the wheel hung free in this round, the strap off: it goes no lower than that. */
  private OptionalDouble hung(Pairing pairing) {
    return plan.places().stream()
        .filter(p -> p.nth() > 0 && p.name() == HeightName.STRAP_OFF)
        .filter(p -> Objects.equals(p.pairing(), pairing))
        .filter(p -> p.height() != null && p.height().positionCounts())
        .mapToDouble(p -> p.height().positionMm().value())
        .min();
  }

  private boolean past(OptionalDouble hung, GuidePlan.Place place) {
    OptionalDouble aim = aimMm(plan.sitting(), place);
    return hung.isPresent() && aim.isPresent() && aim.getAsDouble() < hung.getAsDouble();
  }

  static HeightName past(End end) {
    return end == End.DROOP ? HeightName.STRAP_OFF : HeightName.STOP_OUT;
  }

  private static HeightName opposite(HeightName past) {
    return past == HeightName.STRAP_OFF ? HeightName.STOP_OUT : HeightName.STRAP_OFF;
  }

  private List<Limit> open(End end, Pairing pairing) {
    return CornerTravel.of(plan.sitting().card()).at(end).limits().stream()
        .filter(l -> l.roomMm() != null && Objects.equals(l.pairing(), pairing))
        .filter(l -> l.outcome() == Outcome.CANT_TELL || l.outcome() == Outcome.NEEDS)
        .filter(l -> l.kind() != Limit.Kind.GROUND)
        .toList();
  }

  /** What is undecided, and what was read there. */
  private Map<Steering, List<Slot>> slots(GuidePlan.Place place, List<Limit> open) {
    Map<Steering, List<Slot>> slots = new EnumMap<>(Steering.class);
    for (Steering steering : Steering.values()) {
      List<Slot> here =
          Slot.all(plan.sitting().card(), steering).stream()
              .filter(
                  s ->
                      plan.read(place, steering, s) != null
                          || open.stream().anyMatch(l -> of(l, steering, s)))
              .toList();
      if (!here.isEmpty()) {
        slots.put(steering, here);
      }
    }
    return slots;
  }

  private static boolean of(Limit limit, Steering steering, Slot slot) {
    return limit.kind() == Limit.Kind.SHOCK
        ? slot.quantity() == Quantity.SHOCK_LENGTH && steering == Steering.STRAIGHT
        : limit.point().equals(slot.point())
            && (limit.steering() == null ? Steering.STRAIGHT : limit.steering()) == steering;
  }

  /** Wheel position, mm, + towards bump, at which such a place is wanted. */
  static OptionalDouble aimMm(Sitting at, GuidePlan.Place place) {
    for (End end : End.values()) {
      int which = LABELS.get(end).indexOf(place.label());
      if (which >= 0) {
        EndFindings found = CornerTravel.of(at.card()).at(end);
        return found.limits().stream()
            .filter(l -> l.roomMm() != null && Objects.equals(l.pairing(), place.pairing()))
            .filter(l -> l.outcome() != Outcome.CLEAR && l.outcome() != Outcome.SHORT)
            .mapToDouble(
                l ->
                    l.reachMm().value() * end.outward()
                        + (which == 0 ? 1 : -1) * BEYOND_U * l.roomMm().U())
            .max()
            .stream()
            .map(mm -> mm * end.outward())
            .findFirst();
      }
    }
    return OptionalDouble.empty();
  }
}
