package spindlebook.align;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import spindlebook.corner.AlignedThing;
import spindlebook.corner.AlignmentWay;
import spindlebook.corner.Card;
import spindlebook.web.Posted;

/** The forms of measuring alignment: one for each way in which a garage takes it. */
enum TakenBy {
  GAUGE(AlignedThing.CAMBER, "Camber by gauge", "camber by gauge"),
  PLATE(AlignedThing.TOE, "Toe by plate", "toe by plate"),
  STRING(AlignedThing.TOE, "Toe by string", "toe by string"),
  SPOT(AlignedThing.TOE, "Toe by a spot of light", "toe by a spot of light"),
  DIAL(AlignedThing.TOE, "Toe by dial", "toe by dial"),
  TAPE(AlignedThing.TOTAL_TOE, "Total toe by tape", "total toe by tape"),
  SWEEP(AlignedThing.STEERING_AXIS, "Caster and KPI by sweep", "caster and KPI by sweep"),
  JOINT(AlignedThing.GROUND_POINT, "For scrub and trail", "lower joint for scrub and trail"),
  ACROSS(AlignedThing.TRACK, "Track", "track");

  private final AlignedThing thing;
  private final String heading;
  private final String link;

  TakenBy(AlignedThing thing, String heading, String link) {
    this.thing = thing;
    this.heading = heading;
    this.link = link;
  }

  AlignedThing thing() {
    return thing;
  }

  String heading() {
    return heading;
  }

  String link() {
    return link;
  }

  /** Which form one was typed in. */
  static TakenBy of(AlignmentWay way) {
    if (way instanceof AlignmentWay.Gauge) {
      return GAUGE;
    }
    if (way instanceof AlignmentWay.Line line) {
      return line.plate() ? PLATE : STRING;
    }
    if (way instanceof AlignmentWay.Spot) {
      return SPOT;
    }
    if (way instanceof AlignmentWay.Dials) {
      return DIAL;
    }
    if (way instanceof AlignmentWay.Tape) {
      return TAPE;
    }
    if (way instanceof AlignmentWay.Swing) {
      return SWEEP;
    }
    return way instanceof AlignmentWay.Joint ? JOINT : ACROSS;
  }

  /** Those that make sense here: only a wheel that steers is swept. */
  static List<TakenBy> at(Card card) {
    return Arrays.stream(values())
        .filter(w -> card.layout().steered() || (w != SWEEP && w != JOINT))
        .toList();
  }

  static Optional<TakenBy> named(String word, Card card) {
    return at(card).stream().filter(w -> Posted.word(w).equals(word)).findFirst();
  }

  boolean readsAngles() {
    return this == GAUGE || this == SWEEP || this == DIAL;
  }

  boolean readsLengths() {
    return this != GAUGE && this != SWEEP;
  }
}
