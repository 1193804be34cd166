package spindlebook.travel;

import java.util.List;
import java.util.Optional;
import spindlebook.curve.Node;
import spindlebook.curve.PositionToSetting;
import spindlebook.definition.Adjuster;
import spindlebook.definition.Dimension;
import spindlebook.definition.Setting;
import spindlebook.definition.SettingUnit;
import spindlebook.entry.Pairing;
import spindlebook.fold.Card;
import spindlebook.fold.InForce;
import spindlebook.units.LengthUnit;
import spindlebook.units.TapeFormat;

/**
 * How a stop is to be set so that it acts before the first limit, for sure: the change at the wheel
 * turned into a shorter strap or a thicker spacer, rounded up to what can be set.
 *
 * <pre>
 *   w = max over the limits of (U_room − room)
 * </pre>
 *
 * <p>w the change at the wheel (mm, nearer in +); room from where the stop lets the wheel go to the
 * limit (mm, negative when it gets past), U_room its expanded uncertainty: the guard band by which
 * a margin is clear. Assumes that the room's doubt stays as it is; what the lengths add to it is
 * read with the new stop. Worked: short by 52.07 at the wheel with U 3.66: w = 55.73, at a ratio of
 * 1/2 a strap 27.87 mm shorter, two holes of 1 in.
 *
 * <p>A strap's change is read off its own lengths against wheel position ({@link
 * PositionToSetting}), a spacer's off the gap from stop to pad: a spacer thicker by t is solid
 * where that gap is t more than it is where the stop is solid now. Beyond touch, where the stop
 * only crushes, the gap goes on by its ratio. Where the adjuster has no step of its own, an eighth
 * of an inch is the least that is advised, or 2 mm in a metric book (common practice, no source).
 * Turns are advised to the quarter.
 */
final class StopCure {
  private static final double EIGHTH_MM = 25.4 / 8;
  private static final double QUARTER_TURN = 0.25;

  private StopCure() {}

  /** {@code limits} stand where a stop can keep them, each with its room. */
  static Optional<Cure> of(Card card, End end, Pairing pairing, double stopMm, List<Limit> limits) {
    double nearerMm = limits.stream().mapToDouble(StopCure::nearerMm).max().orElse(0);
    double neededMm = stopMm - end.outward() * nearerMm;
    boolean strap = end == End.DROOP;
    List<Node> lengths = SolidStop.setLengths(card, end, pairing);
    Optional<InForce> inForce = card.adjuster(end.setBy());
    if (inForce.isEmpty() || lengths.size() < 2 || (!strap && !(stopMm > neededMm))) {
      return Optional.empty();
    }
    // A strap gets shorter by it, a spacer thicker.
    int sign = strap ? -1 : 1;
    PositionToSetting.Converted change = PositionToSetting.lengthChange(lengths, stopMm, neededMm);
    double wantedMm = sign * change.changeMm().value();
    if (!(wantedMm > 0)) {
      return Optional.empty();
    }
    Adjuster adjuster = inForce.get().adjuster();
    PositionToSetting.Steps steps =
        PositionToSetting.steps(
            sign * wantedMm,
            stepMm(card, adjuster),
            strap ? PositionToSetting.Rounding.DOWN : PositionToSetting.Rounding.UP);
    double setMm = sign * steps.changeMm();
    double atWheelMm;
    try {
      atWheelMm = -sign * PositionToSetting.atWheel(lengths, stopMm, steps).changeMm().value();
    } catch (IllegalArgumentException noSuchLength) {
      return Optional.empty();
    }
    Double count = counted(adjuster, sign * steps.count());
    return Optional.of(
        new Cure(
            adjuster.adjuster(),
            wantedMm,
            setMm,
            count,
            strap ? strapFrom(card, inForce.get()) : inForce.get().setting(),
            strap
                ? strapTo(card, inForce.get(), setMm, count)
                : spacerTo(card, inForce.get().setting(), setMm),
            atWheelMm,
            null));
  }

  static boolean wantsStopNearer(List<Limit> limits) {
    return limits.stream().anyMatch(l -> nearerMm(l) > 0);
  }

  private static double nearerMm(Limit limit) {
    return limit.roomMm().U() - limit.roomMm().value();
  }

  private static double stepMm(Card card, Adjuster adjuster) {
    double stepMm =
        adjuster.step() != null && adjuster.step().mm() > 0
            ? adjuster.step().mm()
            : card.details().unit() == LengthUnit.INCH ? EIGHTH_MM : 2;
    return stepMm * stepsPerCount(adjuster);
  }

  /** Holes, turns or pieces; null when nobody said what a hole or a turn is worth. */
  private static Double counted(Adjuster adjuster, long count) {
    boolean known = adjuster.unit() == SettingUnit.LENGTH || adjuster.step() != null;
    return known ? count * stepsPerCount(adjuster) : null;
  }

  private static double stepsPerCount(Adjuster adjuster) {
    return adjuster.unit() == SettingUnit.TURNS && adjuster.step() != null ? QUARTER_TURN : 1;
  }

  /** A strap set by its length that nobody ever set is as long as it was new. */
  private static Setting strapFrom(Card card, InForce strap) {
    return strap.setting() != null || strap.adjuster().unit() != SettingUnit.LENGTH
        ? strap.setting()
        : card.given(Dimension.NEW_STRAP_LENGTH)
            .map(given -> lengthSetting(card, given.length().mm()))
            .orElse(null);
  }

  private static Setting strapTo(Card card, InForce strap, double shorterMm, Double count) {
    Adjuster adjuster = strap.adjuster();
    Setting now = strap.setting();
    boolean known = now != null && now.unit() == adjuster.unit();
    if (adjuster.unit() == SettingUnit.LENGTH) {
      Setting from = strapFrom(card, strap);
      return from == null || from.unit() != SettingUnit.LENGTH
          ? null
          : lengthSetting(card, from.amount() - shorterMm);
    }
    if (!known || count == null || adjuster.unit() == SettingUnit.WORDS) {
      return null;
    }
    double amount = now.amount() + count * (adjuster.moreShortens() ? 1 : -1);
    boolean there = adjuster.unit() == SettingUnit.TURNS || amount >= 1;
    return there ? new Setting(plain(amount), adjuster.unit(), amount) : null;
  }

  private static Setting spacerTo(Card card, Setting now, double thickerMm) {
    return now == null || now.unit() != SettingUnit.LENGTH
        ? null
        : lengthSetting(card, now.amount() + thickerMm);
  }

  private static Setting lengthSetting(Card card, double mm) {
    return new Setting(TapeFormat.length(mm, card.details().unit(), 64), SettingUnit.LENGTH, mm);
  }

  private static String plain(double amount) {
    return amount == Math.rint(amount)
        ? Long.toString(Math.round(amount))
        : Double.toString(amount);
  }
}
