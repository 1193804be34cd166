package spindlebook.charts;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import spindlebook.alignment.ToeRead;
import spindlebook.card.Capital;
import spindlebook.card.Counted;
import spindlebook.card.Days;
import spindlebook.card.NeedAddress;
import spindlebook.card.ToReadAddress;
import spindlebook.charts.CurveView.Told;
import spindlebook.definition.Dimension;
import spindlebook.drawing.Lengths;
import spindlebook.entry.Content.ToRead;
import spindlebook.entry.Lock;
import spindlebook.entry.Quantity;
import spindlebook.entry.Steering;
import spindlebook.fold.Card;
import spindlebook.fold.Change;
import spindlebook.fold.ReadAgain;
import spindlebook.fold.SeenReading;
import spindlebook.fold.Standing;
import spindlebook.page.Link;
import spindlebook.uncertainty.Figure;

/** What must be said of a curve: what is not drawn and why, and how to read what is. */
record CurveNotes(CurvePair pair, List<Steering> steerings) {
  private static final int CHANGES_NAMED = 2;

  /** What is drawn and what went stale, each with what to do about it. */
  List<Told> told() {
    List<Told> told = new ArrayList<>();
    compared().ifPresent(words -> told.add(new Told(words, null)));
    stale(pair.card(), pair.of(), pair.drawnHere().count(), "").ifPresent(told::add);
    Compared other = pair.other();
    Card there = other == null ? pair.card() : other.card();
    Stream.of(unlike(pair.card(), pair.here()), unlike(there, pair.there()))
        .flatMap(Optional::stream)
        .distinct()
        .forEach(told::add);
    if (other != null && !other.before()) {
      long drawn = pair.there().stream().mapToLong(r -> r.readings().size()).sum();
      stale(other.card(), other.of(), drawn, Capital.of(other.name()) + ": ").ifPresent(told::add);
    }
    return told;
  }

  private Optional<String> compared() {
    Compared other = pair.other();
    if (other == null) {
      return Optional.empty();
    }
    if (!other.before()) {
      return pair.there().isEmpty()
          ? Optional.of("Of " + other.name() + " there is nothing to draw.")
          : Optional.empty();
    }
    Change change = other.change();
    String what = Days.day(change.at()) + ": " + change.words() + ".";
    if (pair.same()) {
      return Optional.of(
          what
              + " Such a change moves none of these readings, and none was taken since: before and"
              + " now are one curve, drawn once.");
    }
    if (pair.there().isEmpty()) {
      return Optional.of(what + " Nothing to draw was read before it.");
    }
    return Optional.of(
        pair.here().isEmpty()
            ? what
            : what
                + " Pale: what held just before it. Full: what holds now, "
                + pair.since()
                + " of "
                + Counted.of(pair.drawnHere().count(), "reading")
                + " taken since.");
  }

  /** Toe alone is read either way; what is lacking is at the corner that has lengths. */
  private Optional<Told> unlike(Card at, List<CurveRead> reads) {
    return reads.stream()
        .filter(r -> !pair.alike(r))
        .findFirst()
        .map(
            r ->
                new Told(
                    Capital.of(at.place().words())
                        + (r.angle()
                            ? ": toe read as an angle cannot be drawn beside lengths."
                            : ": toe read as a length cannot be drawn beside angles."),
                    new Link(
                        "Give how far apart its two places are",
                        NeedAddress.given(
                            (r.angle() && !pair.here().isEmpty() ? pair.card() : at).corner(),
                            Dimension.TOE_ACROSS))));
  }

  private Optional<Told> stale(Card card, Curved of, long drawn, String whose) {
    List<SeenReading> stale =
        readings(card, of).filter(r -> stands(of, r) == Standing.STALE).toList();
    if (stale.isEmpty()) {
      return Optional.empty();
    }
    String went = whose + gone(stale.size(), drawn) + because(card, stale);
    String so =
        drawn > 0
            ? " Those are in the table only."
            : pair.there().isEmpty() || !whose.isEmpty()
                ? " So there is no line of today."
                : " So there is no line of today: what is drawn is "
                    + (pair.before() ? "what held before." : pair.other().name() + ".");
    return Optional.of(new Told(went + so, again(card, of)));
  }

  private static String gone(int stale, long drawn) {
    return drawn > 0
        ? stale + " of " + Counted.of(stale + drawn, "reading") + " no longer hold"
        : "No reading of today stands: "
            + (stale == 1 ? "the only one no longer holds" : "all " + stale + " no longer hold");
  }

  private static String because(Card card, List<SeenReading> stale) {
    List<String> changes =
        stale.stream()
            .flatMap(r -> r.because().stream())
            .distinct()
            .sorted(Comparator.comparingLong(Change::n))
            .map(c -> Compared.happened(card, c))
            .toList();
    if (changes.isEmpty()) {
      return ".";
    }
    int named = Math.min(CHANGES_NAMED, changes.size());
    int more = changes.size() - named;
    return ": "
        + String.join(" and ", changes.subList(0, named))
        + (more == 0 ? "" : " and " + Counted.of(more, "more change"))
        + ".";
  }

  /** A round that asks for exactly these; null where all of them were read elsewhere meanwhile. */
  private Link again(Card card, Curved of) {
    List<ToRead> toRead =
        card.readAgain().stream()
            .filter(r -> r.stands() == Standing.STALE)
            .map(ReadAgain::toRead)
            .filter(r -> r.quantity() == of.quantity() && steerings.contains(r.steering()))
            .filter(r -> of.point() == null || of.point().point().equals(r.point()))
            .toList();
    return toRead.isEmpty()
        ? null
        : new Link("Read them again", ToReadAddress.newRound(card.corner(), toRead));
  }

  private Stream<SeenReading> readings(Card card, Curved of) {
    return card.readings().stream()
        .filter(r -> of.reads(r) && steerings.contains(r.reading().steering()))
        .filter(r -> r.value() != null && !CurveRead.counts(of, r));
  }

  private static Standing stands(Curved of, SeenReading r) {
    if (!r.height().positionCounts()) {
      return Standing.OUTSIDE;
    }
    return of.quantity() == Quantity.STRAP_LENGTH ? r.mounts() : r.stands();
  }

  /** How to read the chart and the table. */
  List<String> notes() {
    List<String> notes = new ArrayList<>();
    if (pair.of().quantity() == Quantity.TOE) {
      notes.add(toe());
    }
    for (CurveRead read : pair.here()) {
      String words = read.words(pair.card());
      if (read.leftOut() > 0) {
        notes.add(
            Counted.of(read.leftOut(), "reading")
                + (words.isEmpty() ? "" : ", " + words + ",")
                + " cannot be drawn beside the others and stand in the table only.");
      }
      if (read.curve().isEmpty()) {
        notes.add(
            Capital.of(words + (words.isEmpty() ? "" : ": "))
                + "read at one place only, no line yet.");
      }
    }
    if (pair.here().stream().anyMatch(r -> r.curve().isPresent())) {
      notes.add(
          "Between readings the line is drawn smooth and overshoots none of them; it ends at the"
              + " last.");
    }
    List<String> without = pair.withoutRide();
    if (!without.isEmpty()) {
      notes.add(
          "Ride was never read at "
              + String.join(" and ", without)
              + ": both sides are counted from level with the frame mark.");
    }
    boolean locks = pair.there().stream().anyMatch(r -> r.steering().steered());
    if (pair.other() != null && !pair.before() && locks) {
      notes.add(
          "A lock has one name on both sides: full left is "
              + Lock.of(pair.card().place(), Steering.FULL_LEFT).words()
              + " for "
              + pair.card().place().words()
              + " and "
              + Lock.of(pair.other().card().place(), Steering.FULL_LEFT).words()
              + " for "
              + pair.other().name()
              + ".");
    }
    long waits =
        readings(pair.card(), pair.of())
            .filter(r -> r.stands() != Standing.REPLACED)
            .filter(r -> stands(pair.of(), r) != Standing.STALE)
            .count();
    if (waits > 0) {
      notes.add(
          Counted.of(waits, "reading")
              + (waits == 1 ? " waits" : " wait")
              + " for an answer or for a wheel position: in the table only.");
    }
    return notes;
  }

  private String toe() {
    Optional<Figure> across = ToeRead.acrossMm(pair.card());
    if (across.isEmpty()) {
      return "Toe read as a length stays one until it is given how far apart its two places are; an"
          + " angle is not drawn beside it.";
    }
    Lengths lengths = new Lengths(pair.card().details().unit());
    return "Toe as a length: how much further in the wheel's front edge stands than its rear edge,"
        + " measured "
        + lengths.text(across.get().value())
        + " apart."
        + ToeWords.acrossBorrowed(pair.card());
  }
}
