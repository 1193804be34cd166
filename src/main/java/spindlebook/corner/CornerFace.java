package spindlebook.corner;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spindlebook.card.TravelWords;
import spindlebook.drawing.TapeFace;
import spindlebook.drawing.TapeFace.Band;
import spindlebook.fold.Card;
import spindlebook.travel.End;
import spindlebook.travel.EndFindings;
import spindlebook.travel.TravelFindings;

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
    List<Double> at = new ArrayList<>();
    card.heights().stream()
        .filter(h -> h.positionCounts())
        .forEach(h -> at.add(words.zero().from(h.positionMm().value())));
    if (at.isEmpty()) {
      return Optional.empty();
    }
    double low = at.stream().mapToDouble(d -> d).min().orElseThrow();
    double high = at.stream().mapToDouble(d -> d).max().orElseThrow();
    for (EndFindings end : List.of(travel.droop(), travel.bump())) {
      end.stop().ifPresent(s -> at.add(words.zero().from(s.positionMm().value())));
      end.reachMm().ifPresent(r -> at.add(words.zero().from(r.value())));
      end.rules().ifPresent(l -> at.add(words.zero().from(l.positionMm().value())));
    }
    double border = standing ? BORDER_MM : BORDER_MM / 2;
    return Optional.of(
        new TapeFace(
            (standing ? "t-" : "lying-") + card.corner().replaceAll("[^A-Za-z0-9-]", "-"),
            standing,
            at.stream().mapToDouble(d -> d).min().orElseThrow() - border,
            at.stream().mapToDouble(d -> d).max().orElseThrow() + border,
            along,
            across,
            words.lengths().scale(),
            bands(travel, words, low, high)));
  }

  private static List<Band> bands(
      TravelFindings travel, TravelWords words, double low, double high) {
    List<Band> bands = new ArrayList<>();
    double bottom = usable(travel.droop(), words, low);
    double top = usable(travel.bump(), words, high);
    // Two ends of which neither is known tell of no travel between them.
    if (known(travel.droop()) || known(travel.bump())) {
      bands.add(new Band(bottom, top, Band.Kind.USABLE));
    }
    double reach = reach(travel.droop(), words).orElse(low);
    double limit = limit(travel.droop(), words).orElse(reach);
    bands.add(new Band(Math.min(Math.max(limit, reach), bottom), bottom, Band.Kind.HELD_BACK));
    bands.add(new Band(reach, limit, Band.Kind.PAST_A_LIMIT));
    reach = reach(travel.bump(), words).orElse(high);
    limit = limit(travel.bump(), words).orElse(reach);
    bands.add(new Band(top, Math.max(Math.min(limit, reach), top), Band.Kind.HELD_BACK));
    bands.add(new Band(limit, reach, Band.Kind.PAST_A_LIMIT));
    return bands;
  }

  /** Where an end's usable travel stops: at the stop, or where the stop would have to be. */
  private static double usable(EndFindings end, TravelWords words, double otherwise) {
    Optional<Double> stop = end.stop().map(s -> words.zero().from(s.positionMm().value()));
    Optional<Double> needed =
        end.neededStopMm()
            .filter(n -> end.rules().isPresent())
            .map(f -> words.zero().from(f.value()));
    if (stop.isEmpty() || needed.isEmpty()) {
      return stop.or(() -> needed).orElse(otherwise);
    }
    return end.end() == End.DROOP
        ? Math.max(stop.get(), needed.get())
        : Math.min(stop.get(), needed.get());
  }

  private static boolean known(EndFindings end) {
    return end.stop().isPresent() || end.rules().isPresent();
  }

  private static Optional<Double> limit(EndFindings end, TravelWords words) {
    return end.rules().map(l -> words.zero().from(l.positionMm().value()));
  }

  /** Where the wheel gets in the end: the stop and what comes after it. */
  private static Optional<Double> reach(EndFindings end, TravelWords words) {
    return end.reachMm()
        .or(() -> end.stop().map(s -> s.positionMm()))
        .map(f -> words.zero().from(f.value()));
  }
}
