package spindlebook.finding;

import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import spindlebook.travel.End;
import spindlebook.travel.TravelFindings;
import spindlebook.uncertainty.Figure;

/** A figure of a corner's travel. */
public enum CornerFigure {
  AS_SET("travel as set", t -> t.asSet().mm(), t -> t.asSet().atLeast()),
  AS_SET_DROOP(
      "as set, ride down to the strap", t -> t.asSet().droopMm(), t -> t.asSet().atLeast()),
  AS_SET_BUMP("as set, ride up to the stop", t -> t.asSet().bumpMm(), t -> t.asSet().atLeast()),
  AS_IT_COULD_BE(
      "travel as it could be", t -> t.asItCouldBe().mm(), t -> t.asItCouldBe().atLeast()),
  COULD_BE_DROOP(
      "as it could be, ride down", t -> t.asItCouldBe().droopMm(), t -> t.droop().marginAtLeast()),
  COULD_BE_BUMP(
      "as it could be, ride up", t -> t.asItCouldBe().bumpMm(), t -> t.bump().marginAtLeast()),
  DROOP_MARGIN("margin in droop", t -> t.droop().marginMm(), t -> t.droop().marginAtLeast()),
  BUMP_MARGIN("margin in bump", t -> t.bump().marginMm(), t -> t.bump().marginAtLeast());

  private final String words;
  private final Function<TravelFindings, Optional<Figure>> figure;
  private final Predicate<TravelFindings> atLeast;

  CornerFigure(
      String words,
      Function<TravelFindings, Optional<Figure>> figure,
      Predicate<TravelFindings> atLeast) {
    this.words = words;
    this.figure = figure;
    this.atLeast = atLeast;
  }

  public static CornerFigure margin(End end) {
    return end == End.DROOP ? DROOP_MARGIN : BUMP_MARGIN;
  }

  public String words() {
    return words;
  }

  Optional<Figure> of(TravelFindings travel) {
    return figure.apply(travel);
  }

  /** Counted only as far as was read, so that it is at least this much. */
  boolean atLeast(TravelFindings travel) {
    return atLeast.test(travel);
  }
}
