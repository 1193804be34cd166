package spindlebook.fold;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import spindlebook.definition.Place;
import spindlebook.entry.Content;
import spindlebook.entry.PartDone;

/**
 * A part that is on the car now.
 *
 * @param place null for the whole car
 * @param said as it was fitted, with its latest figures
 * @param fitted the entry that fitted it
 * @param looked the entry that last said that it was looked at; empty for never
 * @param used how much it was used in all, and {@code since} since it was fitted or looked at, in
 *     its own unit
 * @param counted whether every drive since it was fitted said how much, and in that unit
 */
public record SeenPart(
    Place place,
    Content.Part said,
    Noted fitted,
    Optional<Noted> looked,
    double used,
    double since,
    boolean counted) {

  /** How much use is left until its owner wants it looked at; empty without a figure. */
  public Optional<Double> left() {
    return Optional.ofNullable(said.lookAfter()).map(after -> after - since);
  }

  /** Whether it is to be looked at now. */
  public boolean due() {
    return left().filter(left -> left <= 0).isPresent();
  }

  private record Name(String corner, String part) {}

  /** In the order in which they came into the book. */
  static List<SeenPart> in(CarBook book) {
    Map<Name, Written<Content.Part>> on = new LinkedHashMap<>();
    Map<Name, Noted> looked = new LinkedHashMap<>();
    for (Noted entry : book.entries()) {
      if (book.standing(entry.key()).orElse(null) instanceof Content.Part part) {
        Name name = new Name(part.corner(), part.part());
        if (part.done() == PartDone.FITTED) {
          on.put(name, new Written<>(entry, part));
          looked.remove(name);
        } else if (part.done() == PartDone.TAKEN_OFF) {
          on.remove(name);
        } else {
          looked.put(name, entry);
        }
      }
    }
    return on.entrySet().stream()
        .map(p -> seen(book, p.getValue(), Optional.ofNullable(looked.get(p.getKey()))))
        .toList();
  }

  private static SeenPart seen(CarBook book, Written<Content.Part> raw, Optional<Noted> looked) {
    Content.Part part = raw.content();
    double before = part.usedBefore() == null ? 0 : part.usedBefore();
    double used = used(book, part, raw.n());
    return new SeenPart(
        book.placeOf(part.corner()).orElse(null),
        part,
        raw.entry(),
        looked,
        before + used,
        looked.map(l -> used(book, part, l.n())).orElse(before + used),
        book.uses().stream().filter(u -> u.n() > raw.n()).allMatch(u -> of(part, u)));
  }

  private static double used(CarBook book, Content.Part part, long from) {
    return book.uses().stream()
        .filter(u -> u.n() > from && of(part, u))
        .mapToDouble(u -> u.use().amount())
        .sum();
  }

  private static boolean of(Content.Part part, SeenUse use) {
    return use.use() != null && use.use().unit() == part.unit();
  }
}
