package spindlebook.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import spindlebook.card.Capital;
import spindlebook.card.Counted;
import spindlebook.corner.CarBook;
import spindlebook.corner.Card;
import spindlebook.corner.Place;
import spindlebook.sides.SidesView.Found;
import spindlebook.sides.SidesView.Group;
import spindlebook.sides.SidesView.Row;
import spindlebook.units.LengthUnit;
import spindlebook.web.Lengths;

/**
 * One corner of the car against what is beside it.
 *
 * @param cannot why it is not compared, a sentence; empty when it is
 * @param lacking what its figures lack on either side, a sentence each
 * @param groups what differs first, then the rest
 */
record Compared(Place place, Heads heads, String cannot, List<String> lacking, List<Group> groups) {
  Compared {
    lacking = List.copyOf(lacking);
    groups = List.copyOf(groups);
  }

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
      return new Compared(
          place,
          heads,
          "Not compared: there is no " + lacking.words() + " in the book, " + where + ".",
          List.of(),
          List.of());
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
    SettingRows said = new SettingRows(a, b, heads);
    FigureRows figures = new FigureRows(CornerPair.of(a, b), heads, new Lengths(unit));
    AlignmentRows alignment = AlignmentRows.of(one, a, other, b, heads, unit);
    return new Compared(place, heads, "", figures.lacking(), groups(said, figures, alignment));
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

  private static List<Group> groups(SettingRows said, FigureRows figures, AlignmentRows alignment) {
    List<Group> differing = new ArrayList<>();
    List<Group> folded = new ArrayList<>();
    add("Settings", said.settings(), differing, folded);
    add("Figures", figures.figures(), differing, folded);
    add("Room to each limit", figures.limits(), differing, folded);
    add("Alignment", alignment.rows(), differing, folded);
    add("Rules and numbers", said.rules(), differing, folded);
    differing.addAll(folded);
    return differing;
  }

  private static void add(String title, List<Row> rows, List<Group> differing, List<Group> folded) {
    List<Row> differ = rows.stream().filter(Row::differs).toList();
    List<Row> rest = rows.stream().filter(r -> !r.differs()).toList();
    if (!differ.isEmpty()) {
      differing.add(new Group(title, false, "", differ));
    }
    if (!rest.isEmpty()) {
      long same = rest.stream().filter(r -> r.found() == Found.SAME).count();
      String counted =
          Stream.of(same + " alike", (rest.size() - same) + " not compared")
              .filter(c -> !c.startsWith("0 "))
              .collect(Collectors.joining(", "));
      folded.add(new Group(title, true, counted, rest));
    }
  }

  long differing() {
    return groups.stream().flatMap(g -> g.rows().stream()).filter(Row::differs).count();
  }

  /** For its tab. */
  String found() {
    return !cannot.isEmpty()
        ? "not compared"
        : differing() == 0 ? "no difference" : Counted.of(differing(), "differs", "differ");
  }

  String said() {
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
