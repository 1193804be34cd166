package spindlebook.corner;

import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import spindlebook.card.TravelWords;
import spindlebook.card.Zero;
import spindlebook.drawing.TapeFace;
import spindlebook.drawing.TapeFace.Band;
import spindlebook.fold.Card;
import spindlebook.fold.SeenHeight;
import spindlebook.travel.End;
import spindlebook.travel.EndFindings;
import spindlebook.travel.Limit;
import spindlebook.travel.StopFound;
import spindlebook.travel.TravelFindings;
import spindlebook.uncertainty.Figure;

/** A corner's tape without labels: what is usable, held back, past a limit and out of reach. */
public final class CornerFace {
  private static final double BORDER_MM = 25.4;

  private CornerFace() {}

  /**
   * Empty where no position is known.
   *
   * @param along its length in drawing units
   * @param across its width
   */
  public static Optional<TapeFace> of(
      Card card,
      TravelFindings travel,
      TravelWords words,
      boolean standing,
      double along,
      double across) {
    Zero zero = words.zero();
    DoubleSummaryStatistics at =
        card.heights().stream()
            .filter(SeenHeight::positionCounts)
            .mapToDouble(h -> zero.from(h.positionMm()))
            .summaryStatistics();
    if (at.getCount() == 0) {
      return Optional.empty();
    }
    List<Band> bands = bands(travel, zero, at.getMin(), at.getMax());
    for (EndFindings end : List.of(travel.droop(), travel.bump())) {
      Stream.of(stop(end), end.reachMm(), limit(end))
          .flatMap(Optional::stream)
          .forEach(mm -> at.accept(zero.from(mm)));
    }
    double border = standing ? BORDER_MM : BORDER_MM / 2;
    return Optional.of(
        new TapeFace(
            (standing ? "t-" : "lying-") + card.corner().replaceAll("[^A-Za-z0-9-]", "-"),
            standing,
            at.getMin() - border,
            at.getMax() + border,
            along,
            across,
            words.lengths().scale(),
            bands));
  }

  private static List<Band> bands(TravelFindings travel, Zero zero, double low, double high) {
    List<Band> bands = new ArrayList<>();
    double bottom = usable(travel.droop(), zero, low);
    double top = usable(travel.bump(), zero, high);
    // Two ends of which neither is known tell of no travel between them.
    if (known(travel.droop()) || known(travel.bump())) {
      bands.add(new Band(bottom, top, Band.Kind.USABLE));
    }
    double reach = reach(travel.droop()).map(zero::from).orElse(low);
    double limit = limit(travel.droop()).map(zero::from).orElse(reach);
    bands.add(new Band(Math.min(Math.max(limit, reach), bottom), bottom, Band.Kind.HELD_BACK));
    bands.add(new Band(reach, limit, Band.Kind.PAST_A_LIMIT));
    reach = reach(travel.bump()).map(zero::from).orElse(high);
    limit = limit(travel.bump()).map(zero::from).orElse(reach);
    bands.add(new Band(top, Math.max(Math.min(limit, reach), top), Band.Kind.HELD_BACK));
    bands.add(new Band(limit, reach, Band.Kind.PAST_A_LIMIT));
    return bands;
  }

  /** Where an end's usable travel stops: at the stop, or where the stop would have to be. */
  private static double usable(EndFindings end, Zero zero, double otherwise) {
    return Stream.of(stop(end), limit(end).flatMap(l -> end.neededStopMm()))
        .flatMap(Optional::stream)
        .map(zero::from)
        .reduce(end.end() == End.DROOP ? Math::max : Math::min)
        .orElse(otherwise);
  }

  private static boolean known(EndFindings end) {
    return end.stop().isPresent() || end.rules().isPresent();
  }

  private static Optional<Figure> stop(EndFindings end) {
    return end.stop().map(StopFound::positionMm);
  }

  private static Optional<Figure> limit(EndFindings end) {
    return end.rules().map(Limit::positionMm);
  }

  /** Where the wheel gets in the end: the stop and what comes after it. */
  private static Optional<Figure> reach(EndFindings end) {
    return end.reachMm().or(() -> stop(end));
  }
}
