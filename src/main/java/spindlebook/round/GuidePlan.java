package spindlebook.round;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import spindlebook.entry.Content;
import spindlebook.entry.HeightName;
import spindlebook.entry.Pairing;
import spindlebook.entry.Steering;
import spindlebook.fold.SeenHeight;
import spindlebook.fold.SeenReading;
import spindlebook.page.Posted;
import spindlebook.plan.AxleOrder;
import spindlebook.plan.HeightOrder;

/**
 * A round in the order it is walked: place by place as the wheel comes up (an axle first with both
 * ends together, then crossed), at each first the height itself, then what is read straight ahead,
 * then at one lock and the other.
 */
record GuidePlan(Sitting sitting, List<Place> places) {
  /**
   * One jack setting to come, or already there.
   *
   * @param id stays the same once the height is read: its name and which of that name it is
   * @param pairing how the ends of a solid axle stand; null of a wheel hung alone
   * @param otherName where its other end stands; the same both together, null of a wheel hung alone
   * @param height null until it is read
   * @param slots what is read there, by steering, in order
   */
  record Place(
      String id,
      HeightName name,
      String label,
      Pairing pairing,
      HeightName otherName,
      SeenHeight height,
      Map<Steering, List<Slot>> slots) {
    String words() {
      if (height != null) {
        return height.words();
      }
      String words = label == null ? name.words() : name.words() + ", " + label;
      return pairing == null ? words : words + ", " + pairing.words();
    }

    /** The pairing by which readings are found again. */
    Pairing stood() {
      return pairing == null ? Pairing.BOTH_TOGETHER : pairing;
    }

    /** Where the end stands that something is read at. */
    HeightName nameAt(Slot slot) {
      return slot.otherEnd() == null ? name : otherName;
    }

    String heightKey() {
      return height == null ? null : height.key();
    }

    /** The form of a height that is this place. */
    String newHeight(Sitting sitting) {
      return GuidePlan.newHeight(sitting, name, pairing, otherName);
    }
  }

  static String newHeight(Sitting sitting, HeightName name, Pairing pairing, HeightName otherName) {
    return sitting.href()
        + "/heights/new?name="
        + Posted.word(name)
        + (pairing == null ? "" : "&pairing=" + Posted.word(pairing))
        + (pairing == Pairing.CROSSED ? "&otherName=" + Posted.word(otherName) : "");
  }

  /**
   * One thing to do.
   *
   * @param slot null when it is the height itself
   */
  record Step(Place place, Steering steering, Slot slot) {
    String id() {
      String what = slot == null ? "height" : slot.row();
      return place.id() + "/" + Posted.word(steering) + "/" + what;
    }
  }

  static GuidePlan of(Sitting sitting) {
    return of(sitting, sitting.card().heightsOf(sitting.key()));
  }

  /**
   * @param read the heights that are there
   */
  static GuidePlan of(Sitting sitting, List<SeenHeight> read) {
    List<SeenHeight> free = new ArrayList<>(read);
    List<Place> places = new ArrayList<>();
    for (Place wanted : wanted(sitting)) {
      SeenHeight height =
          free.stream()
              .filter(h -> h.name() == wanted.name() && h.pairing() == wanted.stood())
              .filter(h -> wanted.label() == null || wanted.label().equals(h.height().label()))
              .findFirst()
              .orElse(null);
      free.remove(height);
      places.add(place(sitting, places, wanted, height));
    }
    for (SeenHeight more : free) {
      Place wanted =
          sitting.axle()
              ? place(more.name(), more.pairing(), more.height().fromOtherEnd().name())
              : place(more.name(), null, null);
      int at = 0;
      while (at < places.size() && before(places.get(at), wanted)) {
        at++;
      }
      places.add(at, place(sitting, places, wanted, more));
    }
    return new GuidePlan(sitting, List.copyOf(places));
  }

  /** A height that comes besides. */
  static Place any(Sitting sitting, HeightName name) {
    return place(sitting, List.of(), place(name, null, null), null);
  }

  private static boolean before(Place one, Place other) {
    int paired = one.stood().compareTo(other.stood());
    return paired < 0 || (paired == 0 && one.name().compareTo(other.name()) <= 0);
  }

  /** The heights a round sets out to read; when it names none, those of a whole round. */
  private static List<Place> wanted(Sitting sitting) {
    Content.Round round = sitting.round();
    if (sitting.axle()) {
      return AxleOrder.of(round).stream()
          .map(o -> place(o.name(), o.pairing(), o.otherEnd()))
          .toList();
    }
    return round.toRead().isEmpty()
        ? HeightOrder.of(round).stream().map(n -> place(n, null, null)).toList()
        : round.toRead().stream()
            .map(t -> new Place("", t.name(), t.label(), null, null, null, Map.of()))
            .distinct()
            .sorted(Comparator.comparing(Place::name))
            .toList();
  }

  private static Place place(HeightName name, Pairing pairing, HeightName otherName) {
    return new Place("", name, null, pairing, otherName, null, Map.of());
  }

  private static Place place(Sitting sitting, List<Place> before, Place wanted, SeenHeight height) {
    HeightName name = wanted.name();
    String label = height == null ? wanted.label() : height.height().label();
    Pairing crossed = wanted.stood() == Pairing.CROSSED ? Pairing.CROSSED : null;
    long same = before.stream().filter(p -> p.name() == name).count();
    Map<Steering, List<Slot>> slots = new EnumMap<>(Steering.class);
    for (Steering steering : Steering.values()) {
      boolean part = steering == Steering.PART_LEFT || steering == Steering.PART_RIGHT;
      boolean planned =
          sitting.round().toRead().stream()
              .anyMatch(t -> t.name() == name && t.steering() == steering);
      boolean usual = !part && (steering == Steering.STRAIGHT || sitting.card().layout().steered());
      if (planned || usual) {
        slots.put(steering, sitting.planned(name, label, crossed, steering));
      }
    }
    return new Place(
        Posted.word(name) + "-" + (same + 1),
        name,
        label,
        wanted.pairing(),
        wanted.otherName(),
        height,
        slots);
  }

  /** The first that is not there yet. */
  Optional<Place> next() {
    return places.stream().filter(p -> p.height() == null).findFirst();
  }

  List<Step> steps() {
    List<Step> steps = new ArrayList<>();
    for (Place place : places) {
      steps.add(new Step(place, Steering.STRAIGHT, null));
      place.slots().forEach((s, slots) -> slots.forEach(a -> steps.add(new Step(place, s, a))));
    }
    return steps;
  }

  /** The last reading taken for a step in this round, or null. */
  SeenReading read(Step step) {
    return step.place().height() == null || step.slot() == null
        ? null
        : sitting.readings(step.place().heightKey(), step.steering(), step.slot()).stream()
            .reduce((first, second) -> second)
            .orElse(null);
  }

  boolean done(Step step) {
    return step.slot() == null ? step.place().height() != null : read(step) != null;
  }
}
