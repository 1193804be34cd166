package spindlebook.round;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import spindlebook.card.Capital;
import spindlebook.drawing.Lengths;
import spindlebook.entry.HeightName;
import spindlebook.fold.SeenHeight;
import spindlebook.plan.JackPlan;
import spindlebook.travel.CornerTravel;
import spindlebook.travel.End;
import spindlebook.travel.EndFindings;
import spindlebook.units.LengthUnit;

/** How the car is made ready for a height, and where the jack is aimed, in words. */
final class StandWords {
  private static final String PRESSURE = "Springs, shocks and gas stops store pressure.";

  private StandWords() {}

  /**
   * What is done before a height can be read.
   *
   * @param say what changes; empty where nothing does
   * @param caution what may hurt whoever does it
   * @param set how strap and stop are then, to come back to
   */
  record Ready(String say, String caution, String set) {}

  /**
   * @param before the place read before; null of the first
   */
  static Ready ready(Sitting at, GuidePlan.Place before, GuidePlan.Place place) {
    if (at.round().springIn()) {
      String how =
          at.round().onTyres() ? "car on its tyres, spring in" : "spring in, wheel hanging";
      return new Ready("", "", how);
    }
    List<String> say = new ArrayList<>();
    List<String> cautions = new ArrayList<>();
    if (before == null && JackPlan.whole(at.round())) {
      say.add("Stands under, spring out");
      cautions.add("Rated stands, level ground, wheels chocked. " + PRESSURE);
    }
    return changed(at, before, place, say, cautions);
  }

  /** What makes the car as it is driven again, from where a place left it. */
  static Ready driven(Sitting at, GuidePlan.Place place) {
    List<String> say = new ArrayList<>();
    List<String> cautions = new ArrayList<>();
    Ready stops = changed(at, place, null, say, cautions);
    if (at.round().springIn()) {
      return stops;
    }
    say.add("spring back in");
    cautions.add(PRESSURE);
    return said(say, cautions, stops.set());
  }

  /**
   * @param before null where strap and stop are as the round has them
   * @param place null where they are as the car is driven: strap on, bump stop in
   */
  private static Ready changed(
      Sitting at,
      GuidePlan.Place before,
      GuidePlan.Place place,
      List<String> say,
      List<String> cautions) {
    List<String> set = new ArrayList<>();
    GuidePlan.Place either = place == null ? before : place;
    boolean axle = either.otherName() != null;
    for (boolean own : axle ? new boolean[] {true, false} : new boolean[] {true}) {
      HeightName name = place == null ? null : own ? place.name() : place.otherName();
      HeightName was = before == null ? null : own ? before.name() : before.otherName();
      String end =
          axle && either.name() != either.otherName()
              ? (own ? at.card().place() : at.card().place().mirror()).words() + ": "
              : "";
      boolean off = name == HeightName.STRAP_OFF;
      boolean out = name == HeightName.STOP_OUT || (place != null && !at.round().bumpStopIn());
      boolean wasOff = was == HeightName.STRAP_OFF;
      boolean wasOut = was == HeightName.STOP_OUT || !at.round().bumpStopIn();
      set.add(
          end + (off ? "strap off" : "strap on") + (out ? ", bump stop out" : ", bump stop in"));
      if (off != wasOff) {
        say.add(end + (off ? "take the limit strap off" : "put the limit strap back on"));
        cautions.add(
            off
                ? "The arm drops when the strap comes off: jack under it, hands out of the pinch."
                : "Take the weight on the jack first.");
      }
      if (out != wasOut) {
        say.add(end + (out ? "take the bump stop out now" : "put the bump stop back in"));
        cautions.add(
            out
                ? "Only the jack holds the wheel from here on. Hands out of the pinch."
                : "Lower first, then reach in.");
      }
    }
    return said(say, cautions, String.join("; ", set.stream().distinct().toList()));
  }

  private static Ready said(List<String> say, List<String> cautions, String set) {
    return new Ready(
        Capital.of(String.join("; ", say.stream().distinct().toList())),
        String.join(" ", cautions.stream().distinct().toList()),
        set);
  }

  /** What to find where no height is known: what one sees or feels there. */
  static String find(Sitting at, GuidePlan.Place place) {
    return switch (place.name()) {
      case STRAP_OFF -> "hangs free, strap off";
      case ON_THE_STRAP -> "lower until the strap is tight";
      case IN_BETWEEN -> place.nth() == 1 ? "a third of the way up" : "two thirds of the way up";
      case RIDE -> "as it stands, rolled and bounced";
      case STOP_TOUCH -> "jack until the stop just touches";
      case FULL_BUMP -> "jack until the stop is solid";
      case STOP_OUT ->
          "jack on, " + about(at.unit(), JackPlan.PAST_MM) + " past where a hard landing ends";
    };
  }

  /** Wheel position to aim at, mm, + towards bump. */
  static OptionalDouble aimMm(Sitting at, GuidePlan.Place place) {
    if (place.nth() < 0) {
      return Closing.aimMm(at, place);
    }
    EndFindings end =
        CornerTravel.of(at.card()).at(JackPlan.droop(place.name()) ? End.DROOP : End.BUMP);
    OptionalDouble reach =
        end.reaches().stream()
            .filter(r -> r.pairing() == place.pairing() && r.mm() != null)
            .mapToDouble(r -> r.mm().value())
            .findFirst();
    JackPlan.Stand stand =
        new JackPlan.Stand(place.name(), place.label(), place.pairing(), place.otherName());
    return JackPlan.aimMm(at.card(), stand, place.nth(), reach);
  }

  /**
   * How far the spindle's read point stands over the mark there: as at the nearest height read, by
   * so much more than its wheel position as the read point and the frame leaned then.
   */
  static OptionalDouble overMarkMm(Sitting at, GuidePlan.Place place) {
    OptionalDouble aim = aimMm(at, place);
    if (aim.isEmpty()) {
      return aim;
    }
    double mm = aim.getAsDouble();
    return OptionalDouble.of(
        at.card().heights().stream()
            .filter(SeenHeight::positionCounts)
            .min(Comparator.comparingDouble(h -> Math.abs(h.positionMm().value() - mm)))
            .map(h -> mm + (h.height().spindle().mm() - h.markMm()) - h.positionMm().value())
            .orElse(mm));
  }

  /** {@code spindle about 36 5/8 above the floor}; else what to find instead. */
  static String aim(Sitting at, GuidePlan.Place place) {
    OptionalDouble aim = place.height() == null ? overMarkMm(at, place) : OptionalDouble.empty();
    Optional<Double> mark =
        HeightForm.lastMark(at, Long.MAX_VALUE).map(h -> h.height().mark().mm());
    return aim.isEmpty() || mark.isEmpty()
        ? find(at, place)
        : "spindle about " + about(at.unit(), aim.getAsDouble() + mark.get()) + " above the floor";
  }

  private static String about(LengthUnit unit, double mm) {
    return new Lengths(unit).about(mm, 8) + " " + unit.word();
  }

  /** All heights to come, a line each. */
  static Stream<String> heights(Sitting at, GuidePlan plan) {
    return plan.places().stream()
        .filter(p -> p.height() == null)
        .map(p -> Capital.of(p.words()) + ": " + aim(at, p));
  }
}
