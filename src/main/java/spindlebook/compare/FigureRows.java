package spindlebook.compare;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import spindlebook.card.Capital;
import spindlebook.card.Shown;
import spindlebook.card.TravelWords;
import spindlebook.sides.SidesView.Cell;
import spindlebook.sides.SidesView.Found;
import spindlebook.sides.SidesView.Row;
import spindlebook.travel.End;
import spindlebook.travel.EndFindings;
import spindlebook.travel.EndLimit;
import spindlebook.travel.Limit;
import spindlebook.travel.LimitPair;
import spindlebook.travel.MidTravel;
import spindlebook.travel.Need;
import spindlebook.travel.Sides;
import spindlebook.travel.TravelFindings;
import spindlebook.uncertainty.Difference;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Outcome;
import spindlebook.web.FigureText;
import spindlebook.web.Lengths;
import spindlebook.web.State;

/** What comes of two cards: travel, margins, what rules, and each limit's room. */
final class FigureRows {
  /** A hundredth of what the finest steel rule shows: less is the arithmetic of a machine. */
  private static final double SAME_MM = 1e-3;

  private static final String SAME_AS_READ = "the same, as far as was read";

  private final CornerPair pair;
  private final Heads heads;
  private final Lengths lengths;
  private final TravelWords one;
  private final TravelWords other;

  FigureRows(CornerPair pair, Heads heads, Lengths lengths) {
    this.pair = pair;
    this.heads = heads;
    this.lengths = lengths;
    this.one = pair.wordsOfOne();
    this.other = pair.wordsOfOther();
  }

  // --- figures

  List<Row> figures() {
    List<Row> rows = new ArrayList<>();
    rows.add(rules(End.DROOP));
    rows.add(rules(End.BUMP));
    pair.sides().figures().forEach(f -> rows.add(figure(f)));
    return rows;
  }

  private Row figure(Sides.Compared f) {
    boolean leastOne = f.what().atLeast(pair.sides().left());
    boolean leastOther = f.what().atLeast(pair.sides().right());
    return row(
        Capital.of(f.what().words()),
        cell(f.left(), leastOne),
        cell(f.right(), leastOther),
        f.difference(),
        alike(f.left(), f.right(), leastOne && leastOther),
        f.left().isPresent() && f.right().isPresent()
            ? "not compared: "
                + (leastOne && leastOther
                    ? "both are at least so much"
                    : (leastOne ? heads.one() : heads.other()) + " is at least so much")
            : notKnown(f.left().isEmpty() ? heads.one() : heads.other()));
  }

  private static String notKnown(String head) {
    return "not compared: not known, " + head;
  }

  /** What either side lacks for its figures, a sentence each; one for both where it is the same. */
  List<String> lacking() {
    String first = lacking(one, pair.sides().left());
    String second = lacking(other, pair.sides().right());
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

  private static String lacking(TravelWords words, TravelFindings travel) {
    List<Need> needs =
        Stream.of(
                travel.droop().needs(),
                travel.bump().needs(),
                travel.asSet().needs(),
                travel.asItCouldBe().needs())
            .flatMap(List::stream)
            .distinct()
            .toList();
    return needs.isEmpty() ? "" : words.needs(needs);
  }

  private Cell cell(Optional<Figure> figure, boolean atLeast) {
    return figure
        .map(f -> new Cell(lengths.figure(f), atLeast ? "at least" : "", null, null))
        .orElse(new Cell(null, "not known", null, null));
  }

  private Row rules(End end) {
    EndFindings a = pair.sides().left().at(end);
    EndFindings b = pair.sides().right().at(end);
    String name = "What rules " + end.words();
    Cell x = rules(one, a);
    Cell y = rules(other, b);
    if (a.outcome() == Outcome.NEEDS || b.outcome() == Outcome.NEEDS) {
      boolean first = a.outcome() == Outcome.NEEDS;
      return new Row(
          name, x, y, null, Found.NOT_COMPARED, notKnown(first ? heads.one() : heads.other()));
    }
    if (a.outcome() != b.outcome()) {
      return new Row(name, x, y, null, Found.DIFFERS, "decided otherwise");
    }
    boolean same =
        a.rules().isPresent() == b.rules().isPresent()
            && a.rules().map(l -> sameThing(l, b.rules().orElseThrow())).orElse(true);
    return new Row(
        name,
        x,
        y,
        null,
        same ? Found.SAME : Found.DIFFERS,
        same ? "the same" : "another one rules");
  }

  private boolean sameThing(Limit a, Limit b) {
    return LimitPair.same(pair.one().place(), a, pair.other().place(), b);
  }

  private Cell rules(TravelWords words, EndFindings end) {
    String name = end.rules().map(l -> name(words, l)).orElse("none found");
    return new Cell(null, name, state(end.outcome()), null);
  }

  private String name(TravelWords words, Limit limit) {
    return pair.samePlace() ? words.name(limit) : words.nameByLock(limit);
  }

  // --- limits

  List<Row> limits() {
    List<Row> rows = new ArrayList<>();
    pair.limits().forEach(p -> rows.add(limit(p)));
    Map<String, MidTravel> first = midTravel(one, pair.sides().left());
    Map<String, MidTravel> second = midTravel(other, pair.sides().right());
    Set<String> names = new LinkedHashSet<>(first.keySet());
    names.addAll(second.keySet());
    names.forEach(name -> rows.add(midTravel(name, first.get(name), second.get(name))));
    return rows;
  }

  private Map<String, MidTravel> midTravel(TravelWords words, TravelFindings travel) {
    Map<String, MidTravel> mid = new LinkedHashMap<>();
    travel
        .midTravel()
        .forEach(m -> mid.putIfAbsent(pair.samePlace() ? words.name(m) : words.nameByLock(m), m));
    return mid;
  }

  private static Row midTravel(String name, MidTravel a, MidTravel b) {
    boolean same = a != null && b != null && a.outcome() == b.outcome();
    return new Row(
        "Mid-travel: " + name,
        cell(a),
        cell(b),
        null,
        same ? Found.SAME : Found.DIFFERS,
        same ? "the same" : "decided otherwise");
  }

  private static Cell cell(MidTravel mid) {
    return mid == null
        ? new Cell(null, "nothing found", null, null)
        : new Cell(null, "in mid-travel", Shown.state(mid.outcome()), null);
  }

  private Row limit(LimitPair p) {
    String name =
        Capital.of(p.end().words())
            + ": "
            + p.other().map(l -> name(other, l)).or(() -> p.one().map(l -> name(one, l))).get();
    Cell x = cell(p.one());
    Cell y = cell(p.other());
    if (p.one().isEmpty() || p.other().isEmpty()) {
      return new Row(name, x, y, null, Found.DIFFERS, "differs");
    }
    Limit a = p.one().get();
    Limit b = p.other().get();
    if (a.outcome() == Outcome.NEEDS || b.outcome() == Outcome.NEEDS) {
      String lacking =
          a.outcome() == b.outcome()
              ? "both need a reading"
              : (a.outcome() == Outcome.NEEDS ? heads.one() : heads.other()) + " needs a reading";
      return new Row(name, x, y, null, Found.NOT_COMPARED, "not compared: " + lacking);
    }
    Row row =
        row(
            name,
            x,
            y,
            p.room(),
            alike(a, b),
            "not compared: "
                + (a.found() ? heads.other() : heads.one())
                + (brokenThroughout(a.found() ? b : a)
                    ? " is broken at every height read"
                    : " lies beyond what was read"));
    return a.outcome() == b.outcome()
        ? row
        : new Row(name, x, y, row.apart(), Found.DIFFERS, "decided otherwise");
  }

  private static boolean alike(Limit a, Limit b) {
    return (brokenThroughout(a) && brokenThroughout(b))
        || alike(
            Optional.ofNullable(a.roomMm()),
            Optional.ofNullable(b.roomMm()),
            !a.found() && !b.found());
  }

  private static boolean brokenThroughout(Limit limit) {
    return limit.at() instanceof EndLimit.BrokenThroughout;
  }

  private Cell cell(Optional<Limit> limit) {
    if (limit.isEmpty()) {
      return new Cell(null, "not there", null, null);
    }
    Limit l = limit.get();
    State state = state(l.outcome());
    if (l.roomMm() == null) {
      return new Cell(
          null, brokenThroughout(l) ? "at every height read" : "not known", state, null);
    }
    return new Cell(lengths.signedFigure(l.roomMm()), l.found() ? "" : "at least", state, null);
  }

  // --- both

  /** What was not read says so in words: its sign is too wide for a column of three. */
  private static State state(Outcome outcome) {
    return outcome == Outcome.NEEDS ? null : Shown.state(outcome);
  }

  /** Two bounds that say the same: nothing was read between. */
  private static boolean alike(Optional<Figure> a, Optional<Figure> b, boolean bothBounds) {
    return bothBounds
        && a.isPresent()
        && b.isPresent()
        && Math.abs(a.get().value() - b.get().value()) <= SAME_MM;
  }

  private Row row(
      String what, Cell x, Cell y, Optional<Difference> difference, boolean alike, String whyNot) {
    if (alike) {
      return new Row(what, x, y, null, Found.SAME, SAME_AS_READ);
    }
    if (difference.isEmpty()) {
      return new Row(what, x, y, null, Found.NOT_COMPARED, whyNot);
    }
    // The second less the first: what became of it.
    Figure apart = difference.get().apart().times(-1);
    if (Math.abs(apart.value()) <= SAME_MM) {
      return new Row(what, x, y, null, Found.SAME, "the same");
    }
    FigureText shown = lengths.signedFigure(apart);
    boolean beyond = difference.get().beyond();
    boolean told = !lengths.bare(apart.value()).equals(lengths.bare(0));
    return new Row(
        what,
        x,
        y,
        shown,
        beyond && told ? Found.DIFFERS : Found.SAME,
        !beyond ? "within ±" : told ? "differs" : "by less than is shown");
  }
}
