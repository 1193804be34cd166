package spindlebook.compare;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import spindlebook.card.Capital;
import spindlebook.card.Shown;
import spindlebook.card.Zero;
import spindlebook.curve.ReadingPair;
import spindlebook.drawing.FigureText;
import spindlebook.drawing.Lengths;
import spindlebook.drawing.Rounded;
import spindlebook.drawing.State;
import spindlebook.entry.Lock;
import spindlebook.finding.Beside.Found;
import spindlebook.fold.Card;
import spindlebook.fold.Standing;
import spindlebook.sheet.Cell;
import spindlebook.sheet.Rows;
import spindlebook.sheet.Rows.Row;
import spindlebook.sheet.Rows.Titled;
import spindlebook.uncertainty.Difference;
import spindlebook.uncertainty.Figure;
import spindlebook.words.EntryWords;

/** What was read at the two corners of one end of the car, each where the other stood alike. */
record ReadingRows(Card one, Card other, Lengths lengths) {
  ReadingRows(Card one, Card other) {
    this(one, other, new Lengths(one.details().unit()));
  }

  /**
   * Those that differ, then the rest by heights, folded.
   *
   * @param more whether something else that differs stands above them
   */
  List<Titled> titled(boolean more) {
    List<Row> differ = new ArrayList<>();
    Map<String, List<Row>> byHeight = new LinkedHashMap<>();
    for (ReadingPair pair : ReadingPair.of(one, other)) {
      if (pair.difference().map(Difference::beyond).orElse(false)) {
        differ.add(reading(pair, Capital.of(what(pair)) + ", " + height(pair)));
      } else {
        byHeight
            .computeIfAbsent(height(pair), h -> new ArrayList<>())
            .add(reading(pair, Capital.of(what(pair))));
      }
    }
    List<Titled> groups = new ArrayList<>();
    if (!differ.isEmpty()) {
      groups.add(new Titled("Readings", more, differ.size() + " differ", differ));
    }
    byHeight.forEach(
        (height, rows) -> {
          long not = rows.stream().filter(r -> r.found() == Found.NOT_COMPARED).count();
          String counted = Rows.counted(rows.size() - not, "within ±", not);
          groups.add(new Titled(Capital.of(height), true, counted, rows));
        });
    return groups;
  }

  /** The height's name where both have it; else where the wheel stood. */
  private String height(ReadingPair pair) {
    return pair.oneName()
        ? pair.either().height().words()
        : lengths.signedText(pair.positionMm()) + " " + Zero.FRAME_MARK.words();
  }

  private static String what(ReadingPair pair) {
    return pair.lock() == Lock.STRAIGHT ? pair.words() : pair.words() + ", " + pair.lock().words();
  }

  private Row reading(ReadingPair pair, String what) {
    Cell l = cell(pair.left(), pair.angle());
    Cell r = cell(pair.right(), pair.angle());
    return pair.difference()
        .map(
            d ->
                new Row(
                    what,
                    l,
                    r,
                    text(d.apart().times(-1), pair.angle(), true),
                    d.beyond() ? Found.DIFFERS : Found.SAME,
                    d.beyond() ? "differs" : "within ±"))
        .orElseGet(() -> new Row(what, l, r, null, Found.NOT_COMPARED, whyNot(pair)));
  }

  private String whyNot(ReadingPair pair) {
    return Stream.of(pair.left(), pair.right())
        .flatMap(s -> s.read().stream())
        .filter(r -> !r.counts())
        .findFirst()
        .map(
            r ->
                "not compared: " + (r.stands().counts() ? "no wheel position" : r.stands().words()))
        .or(() -> notRead(pair.left(), one).or(() -> notRead(pair.right(), other)))
        .orElse("not compared: not two numbers");
  }

  private static Optional<String> notRead(ReadingPair.Side side, Card at) {
    return side.read().isPresent()
        ? Optional.empty()
        : Optional.of(
            (side.elsewhere() ? "read elsewhere on the " : "not read on the ")
                + at.place().words());
  }

  private Cell cell(ReadingPair.Side side, boolean angle) {
    State state =
        side.read()
            .filter(r -> r.stands() != Standing.LIVE)
            .map(r -> Shown.state(r.stands()))
            .orElse(null);
    return side.value()
        .map(v -> new Cell(text(v, angle, false), side.byCurve() ? "by its curve" : "", state))
        .or(() -> side.read().map(r -> new Cell(null, EntryWords.value(r.reading()), state)))
        .orElse(new Cell(null, "not read", null));
  }

  private FigureText text(Figure f, boolean angle, boolean signed) {
    if (angle) {
      return signed ? Rounded.degrees(f) : Rounded.plainDegrees(f);
    }
    return signed ? lengths.signedFigure(f) : lengths.figure(f);
  }
}
