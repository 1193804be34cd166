package spindlebook.round;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import spindlebook.curve.Nodes;
import spindlebook.entry.GapResult;
import spindlebook.entry.HeightName;
import spindlebook.entry.Pairing;
import spindlebook.entry.Quantity;
import spindlebook.entry.Steering;
import spindlebook.fold.Card;
import spindlebook.fold.SeenHeight;
import spindlebook.fold.SeenReading;
import spindlebook.page.Posted;
import spindlebook.plan.JackPlan;
import spindlebook.plan.Tight;
import spindlebook.travel.CornerTravel;
import spindlebook.travel.End;
import spindlebook.travel.EndLimit;
import spindlebook.travel.Limit;
import spindlebook.uncertainty.Outcome;

/**
 * A round in the order it is walked: place by place as {@link JackPlan} has them, at each first the
 * height itself, then what is asked straight ahead, at one lock and the other, then one look at all
 * others.
 */
record GuidePlan(Sitting sitting, List<Place> places) {
  static final String OTHERS = "others";

  /**
   * One jack setting to come, or already there.
   *
   * @param id stays the same once the height is read: its name and which of that name it is
   * @param nth which of its name it is, from 1, in its pairing; 0 of a height read besides the
   *     plan, −1 of one that an undecided end needs ({@link Closing})
   * @param pairing how the ends of a solid axle stand; null of a wheel hung alone
   * @param otherName where its other end stands; the same both together, null of a wheel hung alone
   * @param height null until it is read
   * @param slots what can be read there, by steering, in order
   */
  record Place(
      String id,
      int nth,
      HeightName name,
      String label,
      Pairing pairing,
      HeightName otherName,
      SeenHeight height,
      Map<Steering, List<Slot>> slots) {
    String words() {
      if (height != null && nth >= 0) {
        return height.words();
      }
      String words =
          label == null
              ? name.words()
              : nth < 0 ? SeenHeight.said(label) : name.words() + ", " + label;
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

    Place with(String newId, int newNth, Map<Steering, List<Slot>> newSlots) {
      return new Place(newId, newNth, name, label, pairing, otherName, height, newSlots);
    }

    String heightKey() {
      return height == null ? null : height.key();
    }
  }

  /** The form of a height that stands so. */
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
   * @param slot null when it is the height itself, or the look at all others
   * @param others whether it is that look
   */
  record Step(Place place, Steering steering, Slot slot, boolean others) {
    String id() {
      String what = others ? OTHERS : slot == null ? "height" : slot.row();
      return place.id() + "/" + Posted.word(steering) + "/" + what;
    }
  }

  static GuidePlan of(Sitting sitting) {
    GuidePlan plan = of(sitting, sitting.card().heightsOf(sitting.key()));
    return JackPlan.whole(sitting.round())
        ? Touched.spared(new GuidePlan(sitting, new Closing(plan).places()))
        : plan;
  }

  /**
   * @param read the heights that are there
   */
  static GuidePlan of(Sitting sitting, List<SeenHeight> read) {
    List<SeenHeight> free = new ArrayList<>(read);
    List<Place> places = new ArrayList<>();
    boolean whole = JackPlan.whole(sitting.round());
    for (JackPlan.Stand stand : JackPlan.of(sitting.round(), sitting.axle())) {
      Place wanted =
          new Place(
              "",
              1,
              stand.name(),
              stand.label(),
              stand.pairing(),
              stand.otherEnd(),
              null,
              Map.of());
      // Of a whole round a height with words of its own is one besides.
      SeenHeight height =
          free.stream()
              .filter(h -> h.name() == wanted.name() && h.pairing() == wanted.stood())
              .filter(
                  h ->
                      wanted.label() == null
                          ? !whole || h.height().label() == null
                          : wanted.label().equals(h.height().label()))
              .findFirst()
              .orElse(null);
      free.remove(height);
      places.add(place(sitting, places, wanted, height));
    }
    for (SeenHeight more : free) {
      HeightName other = sitting.axle() ? more.height().fromOtherEnd().name() : null;
      Pairing pairing = sitting.axle() ? more.pairing() : null;
      Place besides = new Place("", 0, more.name(), null, pairing, other, null, Map.of());
      int at = 0;
      while (at < places.size() && before(places.get(at), besides)) {
        at++;
      }
      places.add(at, place(sitting, places, besides, more));
    }
    return new GuidePlan(sitting, List.copyOf(places));
  }

  /** A height that comes besides. */
  static Place any(Sitting sitting, HeightName name) {
    Place besides = new Place("", 0, name, null, null, null, null, Map.of());
    return place(sitting, List.of(), besides, null);
  }

  private static boolean before(Place one, Place other) {
    int paired = one.stood().compareTo(other.stood());
    return paired < 0 || (paired == 0 && one.name().compareTo(other.name()) <= 0);
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
    long nth = before.stream().filter(p -> p.name() == name && p.stood() == wanted.stood()).count();
    return new Place(
        Posted.word(name) + "-" + (same + 1),
        wanted.nth() == 0 ? 0 : (int) nth + 1,
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
      steps.add(new Step(place, Steering.STRAIGHT, null, false));
      for (Steering steering : place.slots().keySet()) {
        asked(place, steering).forEach(a -> steps.add(new Step(place, steering, a, false)));
      }
      if (looksAtAll(place)) {
        steps.add(new Step(place, Steering.STRAIGHT, null, true));
      }
    }
    return steps;
  }

  /** All that can be read at a place, asked for or not. */
  static List<Step> all(Place place) {
    return place.slots().entrySet().stream()
        .flatMap(e -> e.getValue().stream().map(s -> new Step(place, e.getKey(), s, false)))
        .toList();
  }

  /** What is asked there one after the other, and what was read so. */
  List<Slot> asked(Place place, Steering steering) {
    return place.slots().getOrDefault(steering, List.of()).stream()
        .filter(s -> asks(place, steering, s) || readAlone(place, steering, s))
        .toList();
  }

  private boolean asks(Place place, Steering steering, Slot slot) {
    return further(place, steering, slot)
        .map(r -> !clear(place.nameAt(slot), slot, r))
        .orElseGet(() -> asksFirst(new Step(place, steering, slot, false)));
  }

  /**
   * Whether it is asked for before anything of this round is known of it. A round that sets out to
   * read this or that asks for that; a whole one for its verdict.
   */
  boolean asksFirst(Step step) {
    Place place = step.place();
    Slot slot = step.slot();
    if (!JackPlan.whole(sitting.round())) {
      return true;
    }
    if (place.nth() < 0) {
      return !seenClear(step);
    }
    Card end = sitting.end(slot);
    HeightName name = place.nameAt(slot);
    if (slot.point() == null) {
      return step.steering() == Steering.STRAIGHT
          && place.nth() > 0
          && JackPlan.asks(
              sitting.round(), end, slot.quantity(), name, place.nth(), place.pairing());
    }
    if (!judged(place, slot)) {
      return false;
    }
    // No eye tells an angle or a plunge: past its stop it is always read.
    boolean outermost = JackPlan.furtherOut(name, place.nth()).isEmpty();
    return (outermost && !slot.kind().equals("gap"))
        || Tight.at(
            end,
            slot.otherEnd() == null ? sitting.mirror() : sitting.card(),
            slot.point(),
            step.steering(),
            place.stood(),
            JackPlan.droop(name),
            sitting.seen() == null ? null : sitting.key(),
            // On the way up to the outermost only what was seen to be tight.
            outermost || JackPlan.droop(name));
  }

  /** Whether the look at all others, past the same stop, saw it well clear: one look does again. */
  private boolean seenClear(Step step) {
    return places.stream()
        .filter(p -> p.nth() > 0 && p.name() == step.place().name())
        .filter(p -> p.stood() == step.place().stood())
        .map(p -> read(p, step.steering(), step.slot()))
        .anyMatch(r -> r != null && r.reading().result() == GapResult.WELL_CLEAR);
  }

  private static boolean judged(Place place, Slot slot) {
    return place.nth() > 0 && JackPlan.furtherOut(place.nameAt(slot), place.nth()) != null;
  }

  /** Places of the same end further out, outermost first. */
  List<Place> furtherOut(Place place, Slot slot) {
    return JackPlan.whole(sitting.round()) && settles(slot) && judged(place, slot)
        ? JackPlan.furtherOut(place.nameAt(slot), place.nth()).stream()
            .flatMap(
                n ->
                    places.stream()
                        .filter(p -> p.nth() > 0 && p.stood() == place.stood())
                        .filter(p -> p.nameAt(slot) == n))
            .toList()
        : List.of();
  }

  /** What was read furthest out of what lies further out. */
  private Optional<SeenReading> further(Place place, Steering steering, Slot slot) {
    return furtherOut(place, slot).stream()
        .flatMap(p -> Optional.ofNullable(read(p, steering, slot)).stream())
        .filter(r -> r.reading().result() != GapResult.NOT_LOOKED)
        .findFirst();
  }

  /** Whether a reading further out asks for it, at a height that is there. */
  boolean comesBack(Step step) {
    return step.slot() != null
        && !done(step)
        && step.place().height() != null
        && further(step.place(), step.steering(), step.slot()).isPresent();
  }

  /** Whether a reading past a stop can make those further in needless. */
  private static boolean settles(Slot slot) {
    return slot.point() != null || settlesLength(slot);
  }

  static boolean settlesLength(Slot slot) {
    return slot.quantity() == Quantity.SHOCK_LENGTH;
  }

  /** Whether what was read keeps its rule for sure, of the end that a height is of. */
  boolean clear(HeightName at, Slot slot, SeenReading read) {
    if (slot.point() != null) {
      return read.point() != null && Nodes.outcome(read) == Outcome.CLEAR;
    }
    return slot.quantity() == Quantity.SHOCK_LENGTH
        && CornerTravel.of(sitting.end(slot))
            .at(JackPlan.droop(at) ? End.DROOP : End.BUMP)
            .limits()
            .stream()
            .anyMatch(
                l ->
                    l.kind() == Limit.Kind.SHOCK
                        && l.at() instanceof EndLimit.KeptTo kept
                        && kept.surelyKeptMm().isPresent());
  }

  private boolean readAlone(Place place, Steering steering, Slot slot) {
    SeenReading read = read(place, steering, slot);
    return read != null && (!lookedAt(place) || read.reading().result() != GapResult.WELL_CLEAR);
  }

  /** Whether one look there sees all that is not asked to be well clear. */
  boolean lookedAt(Place place) {
    return JackPlan.whole(sitting.round())
        && !sitting.round().springIn()
        && (place.nth() != 0
            ? place.nth() < 0
                || JackPlan.allLookedAt(place.name())
                || place.otherName() != null && JackPlan.allLookedAt(place.otherName())
            : place.label() == null);
  }

  /** Gaps at one steering that nobody has asked for or read. */
  List<Slot> others(Place place, Steering steering) {
    return notAsked(place, steering).filter(s -> read(place, steering, s) == null).toList();
  }

  private boolean looksAtAll(Place place) {
    return lookedAt(place)
        && place.slots().keySet().stream().anyMatch(s -> notAsked(place, s).findAny().isPresent());
  }

  private Stream<Slot> notAsked(Place place, Steering steering) {
    List<Slot> asked = asked(place, steering);
    return place.slots().getOrDefault(steering, List.of()).stream()
        .filter(s -> s.kind().equals("gap") && !asked.contains(s));
  }

  /** The last reading taken for a step in this round, or null. */
  SeenReading read(Step step) {
    return step.slot() == null ? null : read(step.place(), step.steering(), step.slot());
  }

  SeenReading read(Place place, Steering steering, Slot slot) {
    return place.height() == null
        ? null
        : sitting.readings(place.heightKey(), steering, slot).stream()
            .reduce((first, second) -> second)
            .orElse(null);
  }

  boolean done(Step step) {
    if (step.others()) {
      return step.place().slots().keySet().stream()
          .allMatch(s -> others(step.place(), s).isEmpty());
    }
    return step.slot() == null ? step.place().height() != null : read(step) != null;
  }
}
