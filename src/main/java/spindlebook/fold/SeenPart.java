package spindlebook.fold;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import spindlebook.definition.Place;
import spindlebook.entry.Content;
import spindlebook.entry.HappeningKind;
import spindlebook.entry.UseUnit;

/**
 * A part that is on the car now.
 *
 * @param place null for the whole car
 * @param said as it was fitted, with its latest figures
 * @param fitted the entry that fitted it
 * @param used how much it was used in all, and {@code since} since it was fitted or looked at, in
 *     its own unit
 * @param counted whether every drive since it was fitted said how much, and in that unit
 */
public record SeenPart(
    Place place, Content.Part said, Noted fitted, double used, double since, boolean counted) {

  /** {@code left front}, or the whole car. */
  public String where() {
    return place == null ? "the whole car" : place.words();
  }

  /** How much use is left until its owner wants it looked at; empty without a figure. */
  public Optional<Double> left() {
    return Optional.ofNullable(said.lookAfter()).map(after -> after - since);
  }

  /** Whether it is to be looked at now. */
  public boolean due() {
    return left().filter(left -> left <= 0).isPresent();
  }

  /** Drives up to an entry: how many, and of one unit how many and how much. */
  private record Driven(int drives, int counted, double amount) {}

  private record On(Written<Content.Part> raw, Driven then, Driven lookedThen) {}

  /** In the order in which they came into the book; of a corner that is not in it nothing. */
  static List<SeenPart> in(CarBook book) {
    Map<List<String>, On> on = new LinkedHashMap<>();
    Map<UseUnit, Driven> by = new EnumMap<>(UseUnit.class);
    int drives = 0;
    for (Noted entry : book.entries()) {
      Content content = book.standing(entry.key()).orElse(null);
      if (content instanceof Content.Use use) {
        Driven was = by.getOrDefault(use.unit(), new Driven(0, 0, 0));
        by.put(use.unit(), new Driven(0, was.counted() + 1, was.amount() + use.amount()));
        drives++;
      } else if (content instanceof Content.Happening h && h.what() == HappeningKind.DRIVEN) {
        drives++;
      } else if (content instanceof Content.Part part) {
        List<String> name = Arrays.asList(part.corner(), part.part());
        On was = on.get(name);
        switch (part.done()) {
          case FITTED -> {
            Driven then = driven(by, part.unit(), drives);
            on.put(name, new On(new Written<>(entry, part), then, null));
          }
          case TAKEN_OFF -> on.remove(name);
          case LOOKED_AT -> {
            if (was != null) {
              Driven now = driven(by, was.raw().content().unit(), drives);
              on.put(name, new On(was.raw(), was.then(), now));
            }
          }
        }
      }
    }
    int all = drives;
    return on.values().stream()
        .filter(o -> o.raw().content().corner() == null || place(book, o).isPresent())
        .map(o -> seen(o, place(book, o), driven(by, o.raw().content().unit(), all)))
        .toList();
  }

  private static Optional<Place> place(CarBook book, On on) {
    return book.placeOf(on.raw().content().corner());
  }

  private static Driven driven(Map<UseUnit, Driven> by, UseUnit unit, int drives) {
    Driven counted = by.getOrDefault(unit, new Driven(0, 0, 0));
    return new Driven(drives, counted.counted(), counted.amount());
  }

  private static SeenPart seen(On on, Optional<Place> place, Driven now) {
    Content.Part part = on.raw().content();
    double before = part.usedBefore() == null ? 0 : part.usedBefore();
    double used = now.amount() - on.then().amount();
    return new SeenPart(
        place.orElse(null),
        part,
        on.raw().entry(),
        before + used,
        on.lookedThen() == null ? before + used : now.amount() - on.lookedThen().amount(),
        now.drives() - on.then().drives() == now.counted() - on.then().counted());
  }
}
