package spindlebook.sides;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import spindlebook.card.Capital;
import spindlebook.card.Counted;
import spindlebook.card.Shown;
import spindlebook.card.TravelWords;
import spindlebook.card.Zero;
import spindlebook.corner.Card;
import spindlebook.corner.EntryWords;
import spindlebook.corner.Lock;
import spindlebook.corner.Standing;
import spindlebook.sides.SidesView.Cell;
import spindlebook.sides.SidesView.Found;
import spindlebook.sides.SidesView.Group;
import spindlebook.sides.SidesView.Row;
import spindlebook.travel.CornerTravel;
import spindlebook.travel.EndFindings;
import spindlebook.travel.Limit;
import spindlebook.travel.ReadingPair;
import spindlebook.travel.Sides;
import spindlebook.travel.TravelFindings;
import spindlebook.uncertainty.Difference;
import spindlebook.uncertainty.Figure;
import spindlebook.web.FigureText;
import spindlebook.web.Lengths;
import spindlebook.web.State;

/** Lays the two corners of one end of the car beside each other. */
final class SidesViews {
  private final Card left;
  private final Card right;
  private final Sides sides;
  private final Lengths lengths;

  SidesViews(Card left, Card right) {
    this.left = left;
    this.right = right;
    this.sides = Sides.of(CornerTravel.of(left), CornerTravel.of(right));
    this.lengths = new Lengths(left.details().unit());
  }

  SidesView view(List<SidesView.Tab> tabs, String compareHref) {
    List<Row> figures = new ArrayList<>();
    sides.figures().forEach(f -> figures.add(figure(f)));
    rules("nearest limit in droop", sides.left().droop(), sides.right().droop())
        .ifPresent(figures::add);
    rules("nearest limit in bump", sides.left().bump(), sides.right().bump())
        .ifPresent(figures::add);
    List<Row> differ = new ArrayList<>();
    Map<String, List<Row>> byHeight = new LinkedHashMap<>();
    for (ReadingPair pair : ReadingPair.of(left, right)) {
      if (pair.difference().map(Difference::beyond).orElse(false)) {
        differ.add(reading(pair, Capital.of(what(pair)) + ", " + height(pair)));
      } else {
        byHeight
            .computeIfAbsent(height(pair), h -> new ArrayList<>())
            .add(reading(pair, Capital.of(what(pair))));
      }
    }
    List<Group> groups = new ArrayList<>();
    groups.add(group("Travel", false, figures));
    groups.add(group("Readings that differ", false, differ));
    byHeight.forEach((h, rows) -> groups.add(group(Capital.of(h), true, rows)));
    List<Group> told = groups.stream().filter(g -> !g.rows().isEmpty()).toList();
    return new SidesView(tabs, summary(told), told, compareHref);
  }

  private static Group group(String title, boolean folded, List<Row> rows) {
    long not = rows.stream().filter(r -> !r.measured()).count();
    String counted =
        Stream.of(rows.size() - not + " within ±", not + " not compared")
            .filter(c -> !c.startsWith("0 "))
            .collect(Collectors.joining(", "));
    return new Group(title, folded, counted, rows);
  }

  private static String summary(List<Group> groups) {
    List<Row> compared =
        groups.stream().flatMap(g -> g.rows().stream()).filter(Row::measured).toList();
    long differ = compared.stream().filter(Row::differs).count();
    if (compared.isEmpty()) {
      return "Nothing can be compared yet: no figure or reading counts on both sides.";
    }
    return differ
        + " of "
        + Counted.of(compared.size(), "figure or reading", "figures and readings")
        + (differ == 1 ? " differs by more than its ±." : " differ by more than their ±.");
  }

  // --- figures

  private Row figure(Sides.Compared f) {
    String corner = "/corners/";
    return row(
        Capital.of(f.what().words()),
        cell(f.left(), f.what().atLeast(sides.left()), corner + left.corner()),
        cell(f.right(), f.what().atLeast(sides.right()), corner + right.corner()),
        f.difference().orElse(null),
        false,
        f.left().isPresent() && f.right().isPresent()
            ? "one is at least so much"
            : f.left().isPresent()
                ? "needs a reading on the right"
                : "needs a reading on the left");
  }

  private Cell cell(Optional<Figure> figure, boolean atLeast, String href) {
    return figure
        .map(f -> new Cell(lengths.figure(f), atLeast ? "at least" : "", null, href))
        .orElse(new Cell(null, "not known", State.NOT_MEASURED, href));
  }

  private Optional<Row> rules(String what, EndFindings l, EndFindings r) {
    if (l.rules().isEmpty() && r.rules().isEmpty()) {
      return Optional.empty();
    }
    boolean both = l.rules().isPresent() && r.rules().isPresent();
    boolean same = both && sides.sameRule(left.place(), l.rules().get(), r.rules().get());
    return Optional.of(
        new Row(
            Capital.of(what),
            rule(left, sides.left(), l.rules()),
            rule(right, sides.right(), r.rules()),
            null,
            !both ? Found.NOT_COMPARED : same ? Found.SAME : Found.DIFFERS,
            !both ? "not known on one side" : same ? "the same" : "not the same"));
  }

  private static Cell rule(Card card, TravelFindings travel, Optional<Limit> rules) {
    String href = "/corners/" + card.corner();
    return rules
        .map(limit -> new Cell(null, new TravelWords(card, travel).nameByLock(limit), null, href))
        .orElse(new Cell(null, "not known", State.NOT_MEASURED, href));
  }

  // --- readings

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
    return row(
        what,
        cell(pair.left(), pair.angle()),
        cell(pair.right(), pair.angle()),
        pair.difference().orElse(null),
        pair.angle(),
        whyNot(pair));
  }

  private static String whyNot(ReadingPair pair) {
    return Stream.of(pair.left(), pair.right())
        .flatMap(s -> s.read().stream())
        .filter(r -> !r.counts())
        .findFirst()
        .map(
            r ->
                "not compared: " + (r.stands().counts() ? "no wheel position" : r.stands().words()))
        .or(() -> notRead(pair.left(), "left").or(() -> notRead(pair.right(), "right")))
        .orElse("not compared: not two numbers");
  }

  private static Optional<String> notRead(ReadingPair.Side side, String where) {
    return side.read().isPresent()
        ? Optional.empty()
        : Optional.of((side.elsewhere() ? "read elsewhere on the " : "not read on the ") + where);
  }

  private Cell cell(ReadingPair.Side side, boolean angle) {
    State state =
        side.read()
            .filter(r -> r.stands() != Standing.LIVE)
            .map(r -> Shown.state(r.stands()))
            .orElse(null);
    return side.value()
        .map(
            v -> new Cell(text(v, angle, false), side.byCurve() ? "by its curve" : "", state, null))
        .or(() -> side.read().map(r -> new Cell(null, EntryWords.value(r.reading()), state, null)))
        .orElse(new Cell(null, "not read", null, null));
  }

  // --- both

  private Row row(
      String what, Cell l, Cell r, Difference difference, boolean angle, String whyNot) {
    if (difference == null) {
      return new Row(what, l, r, null, Found.NOT_COMPARED, whyNot);
    }
    return new Row(
        what,
        l,
        r,
        text(difference.apart(), angle, true),
        difference.beyond() ? Found.DIFFERS : Found.SAME,
        difference.beyond() ? "differs" : "within ±");
  }

  private FigureText text(Figure f, boolean angle, boolean signed) {
    if (angle) {
      String degrees =
          String.format(Locale.ROOT, signed ? "%+.2f" : "%.2f", Math.toDegrees(f.value()));
      double up = Math.ceil(Math.toDegrees(f.U()) * 100 - 1e-9) / 100;
      FigureText text = FigureText.of(degrees, "°");
      return f.U() > 0 ? text.within(String.format(Locale.ROOT, "%.2f", up)) : text;
    }
    return signed ? lengths.signedFigure(f) : lengths.figure(f);
  }
}
