package spindlebook.ride;

import java.util.List;
import java.util.Optional;
import spindlebook.entry.UseUnit;
import spindlebook.fold.Card;
import spindlebook.fold.SeenSprings;
import spindlebook.spring.StrapLife;
import spindlebook.travel.StrapStretch;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.SourceKind;

/**
 * How long a strap lasts, by its lengths under one pull.
 *
 * @param goneAtMm the length at which its stretch is used up; empty while that is not known
 * @param life empty without {@code goneAtMm}, or where a drive was not counted
 */
public record StrapLasts(
    SeenSprings.Strap strap, Optional<Double> goneAtMm, Optional<StrapLife> life) {

  /** Empty where nobody measured it under a stated pull. */
  static Optional<StrapLasts> of(Card card) {
    SeenSprings.Strap strap = card.springs().strap();
    if (strap.read().isEmpty()) {
      return Optional.empty();
    }
    Optional<Double> gone = new StrapStretch(card, card.pairings().get(0)).usedUpAtMm();
    return Optional.of(
        new StrapLasts(
            strap, gone, gone.filter(mm -> strap.counted()).map(mm -> life(strap.read(), mm))));
  }

  private static StrapLife life(List<SeenSprings.StrapRead> read, double goneAtMm) {
    return StrapLife.of(
        read.stream().mapToDouble(SeenSprings.StrapRead::use).toArray(),
        read.stream().mapToDouble(r -> r.lengthMm().value()).toArray(),
        // One reading by itself: what the tape does to all of them is shared.
        read.get(0).lengthMm().u(kind -> kind != SourceKind.TOOL),
        goneAtMm);
  }

  /** From when to when its stretch is used up; empty without a forecast. */
  public Optional<StrapLife.Gone> gone() {
    return life.flatMap(StrapLife::forecast);
  }

  public UseUnit unit() {
    return strap.unit() == null ? UseUnit.HOURS : strap.unit();
  }

  /** How much it was used when it was last read. */
  public double used() {
    return strap.read().stream().mapToDouble(SeenSprings.StrapRead::use).max().orElse(0);
  }

  /** Since it was first read. */
  public Figure growthMm() {
    return strap
        .read()
        .get(strap.read().size() - 1)
        .lengthMm()
        .minus(strap.read().get(0).lengthMm());
  }

  /** Why there is no forecast; empty where there is one. */
  public Optional<RideNeed> why() {
    if (goneAtMm.isEmpty()) {
      return Optional.of(RideNeed.STRAP_NEW);
    }
    if (life.isEmpty()) {
      return Optional.of(RideNeed.DRIVES);
    }
    return life.get()
        .why()
        .map(
            why ->
                switch (why) {
                  case TOO_FEW_READINGS -> RideNeed.READINGS;
                  case MAY_NEVER_GET_THERE -> RideNeed.MAY_NEVER;
                  case TOO_FAR_AHEAD -> RideNeed.TOO_FAR;
                });
  }

  List<String> readings() {
    return strap.read().stream().map(SeenSprings.StrapRead::key).toList();
  }
}
