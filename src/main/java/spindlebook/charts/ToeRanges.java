package spindlebook.charts;

import java.util.Optional;
import spindlebook.alignment.AgainstTarget;
import spindlebook.alignment.BumpSteer;
import spindlebook.alignment.ToeRange;
import spindlebook.alignment.Window;
import spindlebook.card.SettleWords;
import spindlebook.card.Shown;
import spindlebook.charts.BumpSteerView.Range;
import spindlebook.definition.Dimension;
import spindlebook.definition.Given;
import spindlebook.drawing.Rounded;
import spindlebook.drawing.State;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Outcome;

/** How much toe wanders over a stretch, and how that stands against the owner's limit. */
record ToeRanges(ToeWords words, Optional<Figure> acrossMm) {

  Range range(String name, BumpSteer steer, Window asked) {
    Optional<ToeRange> found = steer.range(asked);
    if (found.isEmpty()) {
      return new Range(name, null, null, State.NOT_MEASURED, "Toe was not read there.");
    }
    ToeRange range = found.get();
    Optional<AgainstTarget> limit = limit(range);
    return new Range(
        name,
        Rounded.plainDegrees(range.rad()),
        acrossMm.map(a -> words.across(range.mm(a.value()))).orElse(null),
        limit.map(l -> Shown.state(l.decision())).orElse(needsAcross() ? State.CANT_TELL : null),
        words(range, limit));
  }

  private Optional<AgainstTarget> limit(ToeRange range) {
    return given().flatMap(g -> acrossMm.map(a -> range.atMost(g.length().mm() / a.value())));
  }

  private Optional<Given> given() {
    return words.card().given(Dimension.TOE_RANGE);
  }

  /** Whether the owner's limit, a length, cannot be held against toe, an angle. */
  boolean needsAcross() {
    return given().isPresent() && acrossMm.isEmpty();
  }

  private String words(ToeRange range, Optional<AgainstTarget> limit) {
    String angle =
        needsAcross()
            ? standing(State.CANT_TELL)
                + atMost()
                + "; what angle that is needs how far apart its two places are. "
            : "";
    return limit.map(l -> standing(Shown.state(l.decision())) + limitWords(l) + " ").orElse(angle)
        + "Front edge furthest inward at "
        + words.place(range.mostInAtMm())
        + ", furthest outward at "
        + words.place(range.mostOutAtMm())
        + "."
        + (range.readThroughout()
            ? ""
            : " At least that much: toe was not read " + unread(range) + ".")
        + limit
            .filter(l -> l.decision() == Outcome.CANT_TELL)
            .map(l -> " " + settles(l, range))
            .orElse("");
  }

  /** "below −7 7/8 in", or above, or both. */
  private String unread(ToeRange range) {
    Window asked = range.asked();
    Window read = range.read();
    String below = read.fromMm() > asked.fromMm() ? "below " + words.place(read.fromMm()) : "";
    String above = read.toMm() < asked.toMm() ? "above " + words.place(read.toMm()) : "";
    return below + (below.isEmpty() || above.isEmpty() ? "" : " and ") + above;
  }

  /** 'Short' alone could be taken for a range that falls short of its limit. */
  private static String standing(State state) {
    return switch (state) {
      case SHORT -> "Over your limit: ";
      case CLEAR -> "Within your limit: ";
      default -> "Your limit: ";
    };
  }

  /** As it was given, across the wheel, and the angle that is. */
  private String limitWords(AgainstTarget limit) {
    return atMost() + ", " + Rounded.number(limit.upper() / ToeWords.DEGREE, 2) + "°.";
  }

  private String atMost() {
    String length = given().map(g -> words.lengths().text(g.length().mm())).orElseThrow();
    return "at most " + length + " across the wheel";
  }

  private static String settles(AgainstTarget limit, ToeRange range) {
    return range.readThroughout()
        ? SettleWords.words(limit.settles())
        : "Read toe at the ends that are missing.";
  }
}
