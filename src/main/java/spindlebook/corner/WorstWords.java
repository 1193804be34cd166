package spindlebook.corner;

import spindlebook.advice.ThingFirst;
import spindlebook.advice.ThingFirst.Why;
import spindlebook.card.Capital;
import spindlebook.card.Counted;
import spindlebook.card.TravelWords;
import spindlebook.drawing.Lengths;
import spindlebook.travel.EndLimit;
import spindlebook.travel.Limit;

/** Why a corner is the worst of its car, short enough to be read in passing. */
record WorstWords(TravelWords words) {

  /** "Tie rod to upper arm, full right: past its rule in the last 11/16 in of droop". */
  String cause(ThingFirst thing) {
    if (thing instanceof ThingFirst.OfLimit of) {
      return limit(of);
    }
    if (thing instanceof ThingFirst.NotReadFarEnough of) {
      return of.count() + " limits not read as far as the wheel may go at " + of.end().words();
    }
    if (thing instanceof ThingFirst.OfMidTravel of) {
      String how = of.why() == Why.SHORT ? TravelWords.past(of.mid().point()) : "can’t tell";
      return Capital.of(words.name(of.mid())) + ": " + how + " in mid-travel";
    }
    if (thing instanceof ThingFirst.StopsDisagree) {
      return "Full bump as read and as worked out disagree";
    }
    if (thing instanceof ThingFirst.Missing missing) {
      return "Needs " + words.needs(missing.needs());
    }
    return (thing.why() == Why.STALE ? "Measure again: " : "Set back, check: ")
        + Counted.of(thing.count(), "reading");
  }

  private String limit(ThingFirst.OfLimit of) {
    Limit limit = of.limit();
    String name = Capital.of(words.name(limit));
    if (limit.at() instanceof EndLimit.BrokenThroughout) {
      return name + ": " + TravelWords.past(limit.point()) + " at every height read";
    }
    if (of.why() == Why.SHORT) {
      return name + ": " + TravelWords.past(limit.point());
    }
    Lengths lengths = words.lengths();
    String within =
        limit.roomMm() == null
            ? ""
            : " within ± " + lengths.plusMinus(limit.roomMm().U()) + " " + lengths.unit().word();
    return name + ": can’t tell" + within + " at " + of.end().words();
  }
}
