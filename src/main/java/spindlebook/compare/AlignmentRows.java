package spindlebook.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spindlebook.align.AlignedText;
import spindlebook.alignment.AlignedFinding;
import spindlebook.alignment.AlignedPair;
import spindlebook.alignment.MeasuredAlignment;
import spindlebook.card.Capital;
import spindlebook.corner.CarBook;
import spindlebook.corner.Card;
import spindlebook.sides.SidesView.Cell;
import spindlebook.sides.SidesView.Found;
import spindlebook.sides.SidesView.Row;
import spindlebook.uncertainty.Difference;
import spindlebook.uncertainty.Figure;
import spindlebook.units.LengthUnit;

/**
 * Alignment of two cards, figure by figure.
 *
 * @param oneMirror the other wheel of its axle in the same book; empty where the car has none
 */
record AlignmentRows(
    Card one,
    Optional<Card> oneMirror,
    Card other,
    Optional<Card> otherMirror,
    Heads heads,
    LengthUnit unit) {
  /** A hundredth of what is ever shown: less is the arithmetic of a machine. */
  private static final double SAME_RAD = 1e-6;

  private static final double SAME_MM = 1e-3;

  static AlignmentRows of(
      CarBook book, Card one, CarBook otherBook, Card other, Heads heads, LengthUnit unit) {
    return new AlignmentRows(one, book.mirror(one), other, otherBook.mirror(other), heads, unit);
  }

  /** Those that one side has at least; of the two wheels of one axle not what is the axle's. */
  List<Row> rows() {
    MeasuredAlignment first = new MeasuredAlignment(one, oneMirror);
    MeasuredAlignment second = new MeasuredAlignment(other, otherMirror);
    List<Row> rows = new ArrayList<>();
    for (AlignedFinding a : first.findings()) {
      AlignedFinding b = second.of(a.figure());
      boolean twice = a.figure().thing().ofAxle() && one.place() != other.place();
      if (!twice && (a.value() != null || b.value() != null)) {
        rows.add(row(a, b));
      }
    }
    return rows;
  }

  private Row row(AlignedFinding a, AlignedFinding b) {
    String name = Capital.of(a.figure().words());
    Optional<Difference> difference =
        new AlignedPair(a, b).difference(one.car().equals(other.car()));
    if (difference.isEmpty()) {
      String lacks = a.counts() ? lacks(b, heads.other()) : lacks(a, heads.one());
      return new Row(name, cell(a), cell(b), null, Found.NOT_COMPARED, lacks);
    }
    boolean beyond = difference.get().beyond();
    // The second less the first: what became of it.
    Figure apart = difference.get().apart().times(-1);
    boolean same = Math.abs(apart.value()) <= (a.figure().angle() ? SAME_RAD : SAME_MM);
    boolean otherwise =
        a.against() != null
            && b.against() != null
            && a.against().decision() != b.against().decision();
    String word =
        otherwise ? "decided otherwise" : same ? "the same" : beyond ? "differs" : "within ±";
    return new Row(
        name,
        cell(a),
        cell(b),
        same ? null : AlignedText.apart(a.figure(), apart, unit),
        otherwise || (!same && beyond) ? Found.DIFFERS : Found.SAME,
        word);
  }

  private static String lacks(AlignedFinding found, String head) {
    String why = found.value() == null ? "not known" : found.stands().words();
    return "not compared: " + why + ", " + head;
  }

  private Cell cell(AlignedFinding found) {
    return found.value() == null
        ? new Cell(null, "not known", null, null)
        : new Cell(
            AlignedText.of(found.figure(), found.value(), unit),
            AlignedText.acrossEdge(found, unit).orElse(""),
            AlignedText.state(found),
            null);
  }
}
