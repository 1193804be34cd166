package spindlebook.card;

import spindlebook.advice.ThingFirst;
import spindlebook.curve.Nodes;
import spindlebook.definition.Place;
import spindlebook.drawing.PlanView;
import spindlebook.drawing.State;
import spindlebook.finding.Finding;
import spindlebook.fold.Card;
import spindlebook.fold.SeenReading;
import spindlebook.fold.Standing;
import spindlebook.uncertainty.Outcome;

/** States of the card and of travel, as the pages show them. */
public final class Shown {
  private Shown() {}

  public static State state(Outcome outcome) {
    return switch (outcome) {
      case SHORT -> State.SHORT;
      case CANT_TELL -> State.CANT_TELL;
      case NEEDS -> State.NOT_MEASURED;
      case CLEAR -> State.CLEAR;
    };
  }

  /** Of what is to see to before a drive. */
  public static State state(ThingFirst.Why why) {
    return switch (why) {
      case SHORT, WENT_PAST, USED_UP -> State.SHORT;
      case CANT_TELL -> State.CANT_TELL;
      case IN_DOUBT -> State.IN_DOUBT;
      case STALE -> State.STALE;
      case NOT_CONFIRMED -> State.PUT_BACK;
      case NOT_MEASURED, MISSING, OPENED, RE_CHECK, PART_DUE, TO_DO -> State.NOT_MEASURED;
    };
  }

  public static State state(Standing standing) {
    return switch (standing) {
      case LIVE -> State.LIVE;
      case PUT_BACK -> State.PUT_BACK;
      case WORKED_OUT -> State.WORKED_OUT;
      case STALE, REPLACED -> State.STALE;
      case IN_DOUBT -> State.IN_DOUBT;
      case OUTSIDE -> State.NOT_MEASURED;
    };
  }

  /**
   * Of what a finding rests on where that does not hold, else of what was decided; null for what
   * simply holds, or is not known: only alignment has no other word for that.
   */
  public static State state(Finding of) {
    if (of.stands() != null) {
      return state(of.stands());
    }
    return of.verdict() == null || of.verdict() == Outcome.NEEDS
        ? of.group() == Finding.Group.ALIGNMENT && of.figure() == null ? State.NOT_MEASURED : null
        : state(of.verdict());
  }

  /** A gap against its rule where it was read; its standing where that is not live. */
  public static State state(SeenReading reading) {
    if (reading.stands() != Standing.LIVE) {
      return state(reading.stands());
    }
    if (reading.point() == null) {
      return State.LIVE;
    }
    return state(Nodes.outcome(reading));
  }

  public static PlanView plan(Card card) {
    return PlanView.at(place(card.place()));
  }

  public static spindlebook.drawing.DrawnWheel place(Place place) {
    return spindlebook.drawing.DrawnWheel.valueOf(place.name());
  }
}
