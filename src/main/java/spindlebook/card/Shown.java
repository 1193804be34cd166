package spindlebook.card;

import spindlebook.corner.Card;
import spindlebook.corner.Place;
import spindlebook.corner.SeenReading;
import spindlebook.corner.Standing;
import spindlebook.travel.Outcome;
import spindlebook.uncertainty.Decision;
import spindlebook.uncertainty.GuardBand;
import spindlebook.web.PlanView;
import spindlebook.web.State;

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

  public static State state(Decision decision) {
    return switch (decision) {
      case CLEAR -> State.CLEAR;
      case SHORT -> State.SHORT;
      case CANT_TELL -> State.CANT_TELL;
    };
  }

  public static State state(Standing standing) {
    return switch (standing) {
      case LIVE -> State.LIVE;
      case PUT_BACK -> State.PUT_BACK;
      case STALE, REPLACED -> State.STALE;
      case IN_DOUBT -> State.IN_DOUBT;
      case OUTSIDE -> State.NOT_MEASURED;
    };
  }

  /** A gap against its rule where it was read; its standing where that is not live. */
  public static State state(SeenReading reading) {
    if (reading.stands() != Standing.LIVE) {
      return state(reading.stands());
    }
    if (reading.point() == null) {
      return State.LIVE;
    }
    return switch (reading.reading().result()) {
      case WELL_CLEAR -> State.CLEAR;
      case TOUCHES, BINDS -> State.SHORT;
      case NOT_LOOKED, UNREAD -> State.NOT_MEASURED;
      case NUMBER, GO_NO_GO -> decided(reading);
    };
  }

  private static State decided(SeenReading reading) {
    var keep = reading.point().keep();
    if (reading.value() == null) {
      // A drill alone: it goes, or it does not.
      boolean goes = reading.reading().go() != null;
      double mm = goes ? reading.reading().go().mm() : reading.reading().noGo().mm();
      if (keep.least() == null) {
        return State.CANT_TELL;
      }
      if (goes) {
        return mm >= keep.least().mm() ? State.CLEAR : State.CANT_TELL;
      }
      return mm <= keep.least().mm() ? State.SHORT : State.CANT_TELL;
    }
    Decision decision = Decision.CLEAR;
    if (keep.least() != null) {
      decision = worse(decision, GuardBand.atLeast(reading.value(), keep.least().mm()));
    }
    if (keep.most() != null) {
      decision = worse(decision, GuardBand.atMost(reading.value(), keep.most().mm()));
    }
    if (keep.mostAngle() != null) {
      decision = worse(decision, GuardBand.atMost(reading.value(), keep.mostAngle().rad()));
    }
    return state(decision);
  }

  private static Decision worse(Decision one, Decision other) {
    if (one == Decision.SHORT || other == Decision.SHORT) {
      return Decision.SHORT;
    }
    return one == Decision.CANT_TELL ? one : other;
  }

  public static PlanView plan(Card card) {
    return PlanView.at(place(card.place()));
  }

  public static spindlebook.web.Place place(Place place) {
    return spindlebook.web.Place.valueOf(place.name());
  }
}
