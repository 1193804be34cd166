package spindlebook.advice;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import spindlebook.curve.Node;
import spindlebook.curve.PositionToSetting;
import spindlebook.definition.Adjuster;
import spindlebook.definition.Setting;
import spindlebook.definition.SettingUnit;
import spindlebook.entry.Pairing;
import spindlebook.fold.Card;
import spindlebook.travel.End;
import spindlebook.travel.EndFindings;
import spindlebook.travel.NeededStop;
import spindlebook.travel.SolidStop;
import spindlebook.travel.TravelFindings;
import spindlebook.uncertainty.Figure;

/**
 * Where a stop would be after its strap or spacer is set otherwise, foretold and not read.
 *
 * <pre>
 *   S' = S + w        m' = m + w − p Δ/ρ (droop)        m' = m − w (bump)
 * </pre>
 *
 * <p>S the stop's wheel position now and m the margin of its end (mm, + towards bump; m &lt; 0 is
 * short), on a solid axle each by itself both together and crossed; w how far the wheel goes (mm)
 * when the strap's length, or the gap from stop to pad where it is solid, changes by what is set
 * ({@link PositionToSetting#wheelChange}); Δ how much longer the strap is set and p the share of
 * that which a new strap takes up, at ρ, the strap's ratio where it stops today; no more is given
 * back than is still to come. What is held back for impact stays as it is. Empty when the stop is
 * not known, fewer than two lengths were read, or the curve never has that length. Source: derived
 * here from {@link PositionToSetting}. Worked example: on a straight line of 1 mm strap for 2 mm of
 * wheel, a strap 10 mm shorter stops the wheel 20 mm higher.
 *
 * @param pairing how the ends of a solid axle stand; null for a wheel hung alone
 * @param marginMm empty when there is no margin today
 */
public record StopMoved(
    End end,
    Pairing pairing,
    Figure positionMm,
    Optional<Figure> marginMm,
    PositionToSetting.By by) {

  /** One for each pairing of a solid axle in which it can be foretold; at most one elsewhere. */
  public static List<StopMoved> of(
      Card card, TravelFindings travel, Adjuster adjuster, Setting from, Setting to) {
    if (from == null || from.amount() == null || to.amount() == null || from.unit() != to.unit()) {
      return List.of();
    }
    double changeMm = to.amount() - from.amount();
    if (adjuster.unit() != SettingUnit.LENGTH) {
      if (adjuster.step() == null) {
        return List.of();
      }
      changeMm *= adjuster.step().mm() * (adjuster.moreShortens() ? -1 : 1);
    }
    double byMm = changeMm;
    return Stream.of(End.values())
        .filter(end -> end.setBy() == adjuster.kind())
        .map(travel::at)
        .flatMap(end -> end.reaches().stream().flatMap(r -> moved(card, end, r, byMm).stream()))
        .toList();
  }

  private static Optional<StopMoved> moved(
      Card card, EndFindings end, EndFindings.Reach reach, double changeMm) {
    List<Node> lengths = SolidStop.setLengths(card, end.end(), reach.pairing());
    if (reach.stop().isEmpty() || lengths.size() < 2) {
      return Optional.empty();
    }
    Figure stopMm = reach.stop().get().positionMm();
    Optional<Figure> marginMm = end.marginMm().flatMap(m -> reach.marginMm());
    double furtherMm = end.heldBack().map(h -> NeededStop.furtherMm(card, h, changeMm)).orElse(0.0);
    try {
      PositionToSetting.Converted wheel =
          PositionToSetting.wheelChange(lengths, stopMm.value(), changeMm);
      Figure inwardMm = wheel.changeMm().times(-end.end().outward());
      return Optional.of(
          new StopMoved(
              end.end(),
              reach.pairing(),
              stopMm.plus(wheel.changeMm()),
              marginMm.map(m -> m.plus(inwardMm).plus(-furtherMm)),
              wheel.by()));
    } catch (IllegalArgumentException noSuchLength) {
      return Optional.empty();
    }
  }
}
