package spindlebook.fold;

import java.util.List;
import java.util.Optional;
import spindlebook.definition.Dimension;
import spindlebook.definition.Given;
import spindlebook.definition.Measure;
import spindlebook.definition.WatchPoint;
import spindlebook.entry.Content;
import spindlebook.entry.GapResult;
import spindlebook.entry.HeightName;
import spindlebook.entry.Quantity;

/**
 * What makes a new height or reading worth asking about: kept, but not counted until the person
 * says that it is so. One sentence each. The thresholds are common practice, no source.
 */
public final class Doubts {
  /** How far a reading may be off the last one of its place, nothing changed since. */
  private static final double FAR_OFF_MM = 12.7;

  private static final double FAR_OFF_RAD = Math.toRadians(2);

  /** No point of a corner moves more than this per movement of its wheel. */
  private static final double FASTEST = 2.0;

  private static final double WIDE_GAP_MM = 304.8;

  private Doubts() {}

  /** Of a height or reading as it stands on a card; empty when it is not there. */
  public static Optional<String> of(Card card, String key) {
    return card.height(key)
        .flatMap(height -> height(height, card.heights()))
        .or(
            () ->
                card.reading(key)
                    .flatMap(reading -> reading(reading, card.readingsOf(reading.thing()), card)));
  }

  /** More than a wheel of a long-travel car moves: common practice, no source. */
  private static final double MOST_TRAVEL_MM = 1000;

  /** Droop below bump, in the book's order of names; on the floor or out of all reach. */
  static Optional<String> height(SeenHeight height, List<SeenHeight> others) {
    if (height.height().spindle() != null && height.height().spindle().mm() <= 0) {
      return Optional.of("A spindle does not lie on the floor.");
    }
    if (height.positionMm() == null) {
      return Optional.empty();
    }
    for (SeenHeight other : others) {
      if (other.key().equals(height.key())
          || !other.positionCounts()
          || other.pairing() != height.pairing()) {
        continue;
      }
      boolean sameRound = other.round().key().equals(height.round().key());
      if (!sameRound && !other.stopCounts()) {
        continue;
      }
      Optional<String> order = order(height, other);
      if (order.isPresent()) {
        return order;
      }
      double far = higher(height, other);
      if (sameRound && Math.abs(far) > MOST_TRAVEL_MM) {
        return Optional.of(
            "It lies " + roughly(far) + " from '" + other.words() + "': no wheel travels so far.");
      }
      boolean samePlace =
          height.name().onePlace() && other.name() == height.name() && other.stopCounts();
      if (samePlace && farOff(other, height)) {
        double off = higher(height, other);
        return Optional.of(
            "It lies "
                + roughly(off)
                + " from where '"
                + height.name().words()
                + "' was read before, and "
                + since(other.stop())
                + past(height.name(), off));
      }
    }
    return Optional.empty();
  }

  /** Whether two heights of one name lie too far apart to be the same place. */
  static boolean farOff(SeenHeight one, SeenHeight other) {
    return one.positionCounts()
        && other.positionCounts()
        && Math.abs(higher(one, other)) > FAR_OFF_MM;
  }

  private static double higher(SeenHeight one, SeenHeight other) {
    return one.positionMm().value() - other.positionMm().value();
  }

  /** What a height further out than its stop is called. */
  private static String past(HeightName stop, double offMm) {
    boolean strap = stop == HeightName.ON_THE_STRAP && offMm < 0;
    boolean bump = offMm > 0 && (stop == HeightName.STOP_TOUCH || stop == HeightName.FULL_BUMP);
    return strap || bump
        ? " Past the stop it is '"
            + (strap ? HeightName.STRAP_OFF : HeightName.STOP_OUT).words()
            + "': correct its name."
        : "";
  }

  private static Optional<String> order(SeenHeight height, SeenHeight other) {
    int named = rank(height.name()) - rank(other.name());
    double higher = higher(height, other);
    boolean wrong =
        rank(height.name()) >= 0
            && rank(other.name()) >= 0
            && ((named > 0 && higher < 0) || (named < 0 && higher > 0))
            && Math.abs(higher) > height.positionMm().minus(other.positionMm()).U();
    return wrong
        ? Optional.of(
            "'"
                + height.name().words()
                + "' came out "
                + (named > 0 ? "below" : "above")
                + " '"
                + other.name().words()
                + "'.")
        : Optional.empty();
  }

  /** From droop to bump; −1 for a height that may lie anywhere. */
  private static int rank(HeightName name) {
    return name == HeightName.IN_BETWEEN ? -1 : name.ordinal();
  }

  /** Past what the parts allow, far off the last one, or faster than the travel allows. */
  static Optional<String> reading(SeenReading reading, List<SeenReading> others, Card card) {
    return againstSpecs(reading, card)
        .or(() -> againstOthers(reading, others))
        .or(() -> bindsAndDoesNot(reading, others));
  }

  /** A first reading has no other to be held against, only what the parts can be. */
  private static Optional<String> againstSpecs(SeenReading reading, Card card) {
    if (reading.value() == null || reading.reading().length() == null) {
      return Optional.empty();
    }
    double mm = reading.value().value();
    double unsure = reading.value().U();
    if (reading.of(Quantity.SHOCK_LENGTH)) {
      Optional<Given> closed = card.given(Dimension.SHOCK_CLOSED);
      Optional<Given> open = card.given(Dimension.SHOCK_OPEN);
      boolean swapped =
          closed.isPresent()
              && open.isPresent()
              && closed.get().length().mm() >= open.get().length().mm();
      return swapped
          ? Optional.empty()
          : open.filter(g -> mm > g.length().mm() + unsure + plusMinus(g))
              .map(g -> "It is longer than the shock fully open, " + g.length().words() + ".")
              .or(
                  () ->
                      closed
                          .filter(g -> mm < g.length().mm() - unsure - plusMinus(g))
                          .map(
                              g ->
                                  "It is shorter than the shock fully closed, "
                                      + g.length().words()
                                      + "."));
    }
    if (reading.of(Quantity.STRAP_LENGTH)) {
      // Its mounts come near each other towards bump; only on the strap is it pulled straight.
      HeightName name = reading.height().name();
      boolean straight = name == HeightName.ON_THE_STRAP || name == HeightName.STRAP_OFF;
      return card.given(Dimension.NEW_STRAP_LENGTH)
          .flatMap(
              g -> {
                double share = mm / g.length().mm();
                String than =
                    share > 1.3
                        ? "more than 1.3 times"
                        : share < 0.2
                            ? "less than a fifth of"
                            : straight && share < 0.5 ? "less than half of" : "";
                return Optional.of("It is " + than + " the new strap, " + g.length().words() + ".")
                    .filter(sentence -> !than.isEmpty());
              });
    }
    WatchPoint point = reading.point();
    if (point == null || point.place().measure() != Measure.GAP) {
      return Optional.empty();
    }
    double least = point.keep().least() == null ? 0 : point.keep().least().mm();
    return mm > Math.max(WIDE_GAP_MM, 2 * least)
        ? Optional.of("It is wider than gaps are: most are under 12 in.")
        : Optional.empty();
  }

  private static double plusMinus(Given given) {
    return given.halfWidth() == null ? 0 : given.halfWidth().mm();
  }

  private static Optional<String> againstOthers(SeenReading reading, List<SeenReading> others) {
    if (reading.value() == null || !reading.counts()) {
      return Optional.empty();
    }
    boolean angle = reading.reading().angle() != null;
    for (SeenReading other : others) {
      if (other.key().equals(reading.key())
          || !other.counts()
          || other.value() == null
          || (other.reading().angle() != null) != angle
          || !sameThing(reading, other)) {
        continue;
      }
      double moved = Math.abs(higher(reading.height(), other.height()));
      double off = Math.abs(reading.value().value() - other.value().value());
      if (reading.samePlace(other)
          && moved < FAR_OFF_MM / 2
          && off > (angle ? FAR_OFF_RAD : FAR_OFF_MM)) {
        return Optional.of(
            "It is "
                + (angle ? degrees(off) : roughly(off))
                + " off the last reading of this place, and "
                + since(other.stands())
                + says(other));
      }
      if (!angle && off > FASTEST * moved + FAR_OFF_MM) {
        return Optional.of(
            "It changed "
                + roughly(off)
                + " while the wheel moved "
                + roughly(moved)
                + ": more than the travel allows."
                + says(other));
      }
    }
    return Optional.empty();
  }

  /** A gap where it binds too is no repeat: one of the two is wrong. */
  private static Optional<String> bindsAndDoesNot(SeenReading reading, List<SeenReading> others) {
    return others.stream()
        .filter(o -> !o.key().equals(reading.key()) && o.counts() && reading.counts())
        .filter(o -> sameThing(reading, o) && reading.samePlace(o))
        .filter(o -> (binds(reading) && open(o)) || (binds(o) && open(reading)))
        .findFirst()
        .map(
            o ->
                (binds(o) ? "It binds here" : "It keeps a gap here")
                    + " as read before, and "
                    + since(o.stands())
                    + says(o));
  }

  private static boolean binds(SeenReading reading) {
    return reading.reading().result() == GapResult.BINDS;
  }

  private static boolean open(SeenReading reading) {
    return reading.point() != null
        && reading.point().place().measure() == Measure.GAP
        && (reading.reading().result() == GapResult.WELL_CLEAR
            || (reading.value() != null && reading.value().value() > reading.value().U()));
  }

  private static String since(Standing earlier) {
    return earlier == Standing.PUT_BACK
        ? "what was changed since was put back."
        : "nothing was changed since.";
  }

  /** Which of two that are far apart is wrong, nobody knows yet. */
  private static String says(SeenReading other) {
    Content.Reading r = other.reading();
    return r.length() != null
        ? " The one before says " + r.length().words() + "."
        : r.angle() != null ? " The one before says " + r.angle().typed() + "." : "";
  }

  private static boolean sameThing(SeenReading one, SeenReading other) {
    return one.height().pairing() == other.height().pairing()
        && one.reading().quantity() == other.reading().quantity()
        && one.reading().steering() == other.reading().steering()
        && java.util.Objects.equals(one.reading().point(), other.reading().point());
  }

  private static String roughly(double mm) {
    return String.format(
        java.util.Locale.ROOT, "%s in (%.0f mm)", inches(Math.abs(mm)), Math.abs(mm));
  }

  private static String inches(double mm) {
    return spindlebook.units.TapeFormat.inches(mm, 8);
  }

  private static String degrees(double rad) {
    return spindlebook.units.AngleFormat.degrees(rad, 1);
  }
}
