package spindlebook.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import spindlebook.card.Capital;
import spindlebook.card.Counted;
import spindlebook.card.TravelWords;
import spindlebook.definition.Place;
import spindlebook.drawing.Lengths;
import spindlebook.finding.Findings;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.sheet.Heads;
import spindlebook.sheet.Rows;
import spindlebook.sheet.Rows.Row;
import spindlebook.sheet.Rows.Titled;
import spindlebook.travel.Need;
import spindlebook.travel.TravelFindings;
import spindlebook.units.LengthUnit;

/**
 * One corner of the car against what is beside it.
 *
 * @param cannot why it is not compared, a sentence; empty when it is
 * @param lacking what its figures lack on either side, a sentence each
 * @param groups what differs first, then the rest
 */
public record Compared(
    Place place, Heads heads, String cannot, List<String> lacking, List<Titled> groups) {

  /**
   * @param one the car's book at the one point, {@code other} what is beside it at the other
   * @param unit in which both are shown
   */
  static Compared of(Asked asked, CarBook one, CarBook other, Place place, LengthUnit unit) {
    Place beside = asked.otherSide() ? place.mirror() : place;
    Heads heads = heads(asked, place);
    var first = one.cornerAt(place);
    var second = other.cornerAt(beside);
    if (first.isEmpty() || second.isEmpty()) {
      String where = first.isEmpty() ? heads.one() : heads.other();
      Place lacking = first.isEmpty() ? place : beside;
      return not(
          place,
          heads,
          "Not compared: there is no " + lacking.words() + " in the book, " + where + ".");
    }
    Card a = one.card(first.get());
    Card b = other.card(second.get());
    if (a.layout() != b.layout()) {
      return new Compared(
          place,
          heads,
          "Not compared, two layouts: "
              + heads.one()
              + ", "
              + a.layout().words()
              + "; "
              + heads.other()
              + ", "
              + b.layout().words()
              + ".",
          List.of(),
          List.of());
    }
    boolean byLock = place != beside;
    Findings ofOne = Findings.of(a, one.mirror(a), byLock);
    Findings ofOther = Findings.of(b, other.mirror(b), byLock);
    List<Titled> groups =
        new ArrayList<>(new Rows(ofOne, ofOther, new Lengths(unit)).titled(heads));
    if (byLock) {
      groups.addAll(new ReadingRows(a, b).titled(groups.stream().anyMatch(Titled::differs)));
    }
    return new Compared(place, heads, "", lacking(heads, ofOne, ofOther), groups);
  }

  private static Compared not(Place place, Heads heads, String why) {
    return new Compared(place, heads, why, List.of(), List.of());
  }

  private static Heads heads(Asked asked, Place place) {
    if (asked.beside().isEmpty()) {
      boolean oneName = asked.one().name().equals(asked.other().name());
      return oneName && !asked.one().equals(asked.other())
          ? new Heads("entry " + asked.one().at(), "entry " + asked.other().at())
          : new Heads(asked.one().name(), asked.other().name());
    }
    String first = asked.otherSide() ? place.words() : name(asked.book());
    String second = asked.otherSide() ? place.mirror().words() : name(asked.otherBook());
    return new Heads(at(first, asked.one()), at(second, asked.other()));
  }

  private static String name(CarBook book) {
    return book.details().orElseThrow().name();
  }

  private static String at(String what, Point point) {
    return point.isNow() ? what : what + ", " + point.name();
  }

  // --- what is missing

  /** What either side lacks for its figures, a sentence each; one for both where it is the same. */
  private static List<String> lacking(Heads heads, Findings one, Findings other) {
    String first = lacking(one);
    String second = lacking(other);
    if (first.equals(second)) {
      return first.isEmpty() ? List.of() : List.of(sentence("Both need ", first));
    }
    return Stream.of(
            first.isEmpty() ? "" : sentence(Capital.of(heads.one()) + ": needs ", first),
            second.isEmpty() ? "" : sentence(Capital.of(heads.other()) + ": needs ", second))
        .filter(s -> !s.isEmpty())
        .toList();
  }

  private static String sentence(String who, String what) {
    return who + what + ". What rests on it is not compared.";
  }

  private static String lacking(Findings of) {
    TravelFindings travel = of.travel();
    List<Need> needs =
        Stream.of(
                travel.droop().needs(),
                travel.bump().needs(),
                travel.asSet().needs(),
                travel.asItCouldBe().needs())
            .flatMap(List::stream)
            .distinct()
            .toList();
    return needs.isEmpty() ? "" : new TravelWords(of.card(), travel).needs(needs);
  }

  long differing() {
    return groups.stream().flatMap(g -> g.rows().stream()).filter(Row::differs).count();
  }

  /** For its tab. */
  public String found() {
    return !cannot.isEmpty()
        ? "not compared"
        : differing() == 0 ? "no difference" : Counted.of(differing(), "differs", "differ");
  }

  public String said() {
    if (!cannot.isEmpty()) {
      return cannot;
    }
    long differing = differing();
    return differing == 0
        ? Capital.of(place.words()) + ": nothing differs that can be told."
        : Capital.of(place.words())
            + ": "
            + Counted.of(differing, "thing differs", "things differ")
            + ".";
  }
}
