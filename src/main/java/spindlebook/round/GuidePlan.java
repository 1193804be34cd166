package spindlebook.round;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import spindlebook.corner.Card;
import spindlebook.corner.Content;
import spindlebook.corner.HeightName;
import spindlebook.corner.HeightOrder;
import spindlebook.corner.SeenHeight;
import spindlebook.corner.SeenReading;
import spindlebook.corner.SeenRound;
import spindlebook.corner.Steering;

/**
 * A round in the order it is walked: place by place as the wheel comes up, at each first the height
 * itself, then what is read straight ahead, then at one lock and the other.
 */
record GuidePlan(List<Place> places) {
  /**
   * One jack setting to come, or already there.
   *
   * @param id stays the same once the height is read: its name and which of that name it is
   * @param height null until it is read
   * @param asked what is read there, by steering, in order
   */
  record Place(
      String id,
      HeightName name,
      String label,
      SeenHeight height,
      Map<Steering, List<Asked>> asked) {
    String words() {
      if (height != null) {
        return height.words();
      }
      return label == null ? name.words() : name.words() + ", " + label;
    }
  }

  /**
   * One thing to do.
   *
   * @param asked null when it is the height itself
   */
  record Step(Place place, Steering steering, Asked asked) {
    String id() {
      String what = asked == null ? "height" : asked.row();
      return place.id() + "/" + spindlebook.web.Posted.word(steering) + "/" + what;
    }

    boolean done(Card card) {
      if (place.height() == null) {
        return false;
      }
      return asked == null
          || card.readingsAt(place.height().key()).stream()
              .anyMatch(r -> r.reading().steering() == steering && asked.readBy(r));
    }
  }

  static GuidePlan of(Card card, SeenRound round) {
    List<SeenHeight> free = new ArrayList<>(card.heightsOf(round.key()));
    List<Place> places = new ArrayList<>();
    for (Content.ToRead wanted : wanted(round.round())) {
      SeenHeight height =
          free.stream()
              .filter(h -> h.name() == wanted.name())
              .filter(h -> wanted.label() == null || wanted.label().equals(h.height().label()))
              .findFirst()
              .orElse(null);
      free.remove(height);
      places.add(place(card, round, places, wanted.name(), wanted.label(), height));
    }
    for (SeenHeight more : free) {
      int at = 0;
      while (at < places.size() && places.get(at).name().compareTo(more.name()) <= 0) {
        at++;
      }
      places.add(at, place(card, round, places, more.name(), more.height().label(), more));
    }
    return new GuidePlan(List.copyOf(places));
  }

  /** The heights a round sets out to read; when it names none, those of a whole round. */
  private static List<Content.ToRead> wanted(Content.Round round) {
    List<Content.ToRead> heights =
        round.toRead().isEmpty()
            ? HeightOrder.of(round).stream()
                .map(n -> new Content.ToRead(n, null, Steering.STRAIGHT, null, null))
                .toList()
            : round.toRead().stream()
                .map(t -> new Content.ToRead(t.name(), t.label(), Steering.STRAIGHT, null, null))
                .distinct()
                .toList();
    return heights;
  }

  private static Place place(
      Card card,
      SeenRound round,
      List<Place> before,
      HeightName name,
      String label,
      SeenHeight height) {
    long same = before.stream().filter(p -> p.name() == name).count();
    Map<Steering, List<Asked>> asked = new EnumMap<>(Steering.class);
    for (Steering steering : Steering.values()) {
      boolean part = steering == Steering.PART_LEFT || steering == Steering.PART_RIGHT;
      boolean planned =
          round.round().toRead().stream()
              .anyMatch(t -> t.name() == name && t.steering() == steering);
      boolean usual = !part && (steering == Steering.STRAIGHT || card.layout().steered());
      if (planned || usual) {
        asked.put(steering, asked(card, round, name, label, steering));
      }
    }
    return new Place(
        spindlebook.web.Posted.word(name) + "-" + (same + 1), name, label, height, asked);
  }

  private static List<Asked> asked(
      Card card, SeenRound round, HeightName name, String label, Steering steering) {
    List<Content.ToRead> plan = round.round().toRead();
    List<Asked> all = Asked.all(card, steering);
    if (plan.isEmpty()) {
      return all;
    }
    return all.stream()
        .filter(
            a ->
                plan.stream()
                    .filter(t -> t.label() == null || label == null || t.label().equals(label))
                    .anyMatch(t -> a.is(t, name, steering)))
        .toList();
  }

  List<Step> steps() {
    List<Step> steps = new ArrayList<>();
    for (Place place : places) {
      steps.add(new Step(place, Steering.STRAIGHT, null));
      place.asked().forEach((s, rows) -> rows.forEach(a -> steps.add(new Step(place, s, a))));
    }
    return steps;
  }

  /** The last reading taken for a step in this round, or null. */
  static SeenReading read(Card card, Step step) {
    return step.place().height() == null || step.asked() == null
        ? null
        : card.readingsAt(step.place().height().key()).stream()
            .filter(r -> r.reading().steering() == step.steering() && step.asked().readBy(r))
            .reduce((first, second) -> second)
            .orElse(null);
  }
}
