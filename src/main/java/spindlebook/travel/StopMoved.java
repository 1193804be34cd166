package spindlebook.travel;

import java.util.List;
import java.util.Optional;
import spindlebook.corner.Adjuster;
import spindlebook.corner.Card;
import spindlebook.corner.Quantity;
import spindlebook.corner.Setting;
import spindlebook.corner.SettingUnit;
import spindlebook.uncertainty.Figure;

/**
 * Where a stop would be after its strap or spacer is set otherwise, foretold and not read.
 *
 * <pre>
 *   S' = S + w        m' = m + w (droop)        m' = m − w (bump)
 * </pre>
 *
 * <p>S the stop's wheel position now and m the margin of its end (mm, + towards bump; m &lt; 0 is
 * short); w how far the wheel goes (mm) when the strap's length, or the gap from stop to pad where
 * it is solid, changes by what is set ({@link PositionToSetting#wheelChange}). Assumes that what is
 * held back for stretch or impact stays as it is. Empty when the stop is not known, fewer than two
 * lengths were read, or the curve never has that length. Source: derived here from {@link
 * PositionToSetting}. Worked example: on a straight line of 1 mm strap for 2 mm of wheel, a strap
 * 10 mm shorter stops the wheel 20 mm higher.
 *
 * @param marginMm empty when there is no margin today
 */
public record StopMoved(
    End end, Figure positionMm, Optional<Figure> marginMm, PositionToSetting.By by) {

  public static Optional<StopMoved> of(
      Card card, TravelFindings travel, Adjuster adjuster, Setting from, Setting to) {
    if (from == null || from.amount() == null || to.amount() == null || from.unit() != to.unit()) {
      return Optional.empty();
    }
    double changeMm = to.amount() - from.amount();
    if (adjuster.unit() != SettingUnit.LENGTH) {
      if (adjuster.step() == null) {
        return Optional.empty();
      }
      changeMm *= adjuster.step().mm() * (adjuster.moreShortens() ? -1 : 1);
    }
    return switch (adjuster.kind()) {
      case LIMIT_STRAP ->
          moved(travel.droop(), Node.merge(Nodes.lengths(card, Quantity.STRAP_LENGTH)), changeMm);
      case BUMP_STOP_SPACER -> moved(travel.bump(), new SolidStop(card).closing(), changeMm);
      default -> Optional.empty();
    };
  }

  private static Optional<StopMoved> moved(EndFindings end, List<Node> lengths, double changeMm) {
    if (end.stop().isEmpty() || lengths.size() < 2) {
      return Optional.empty();
    }
    Figure stopMm = end.stop().get().positionMm();
    try {
      PositionToSetting.Converted wheel =
          PositionToSetting.wheelChange(lengths, stopMm.value(), changeMm);
      Figure inwardMm = wheel.changeMm().times(-end.end().outward());
      return Optional.of(
          new StopMoved(
              end.end(),
              stopMm.plus(wheel.changeMm()),
              end.marginMm().map(m -> m.plus(inwardMm)),
              wheel.by()));
    } catch (IllegalArgumentException noSuchLength) {
      return Optional.empty();
    }
  }
}
