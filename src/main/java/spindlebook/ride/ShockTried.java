package spindlebook.ride;

import java.util.Comparator;
import java.util.Optional;
import spindlebook.fold.Card;
import spindlebook.spring.ShockCurve;
import spindlebook.travel.CornerTravel;
import spindlebook.travel.End;
import spindlebook.travel.Limit;
import spindlebook.uncertainty.Figure;

/**
 * Another shock tried at one end of the travel.
 *
 * <pre>
 *   droop: L(z) = open − reserve + mount      bump: L(z) = closed + reserve + mount
 * </pre>
 *
 * <p>L eye to eye as the mounts are now, mm; mount how much further apart the tried mounts are,
 * along the shock. Nothing is extrapolated: where no shock length was read the place is not known.
 *
 * @param thenMm the wheel position at which it would be a reserve short of its end; empty where the
 *     shock was not read so far out
 * @param nowMm the same of the shock that is fitted; empty while that is not known
 * @param next the limit of that end that is not the shock's and acts first; empty where none was
 *     found
 */
public record ShockTried(
    End end, Optional<Figure> thenMm, Optional<Figure> nowMm, Optional<Limit> next) {

  /**
   * @param lengthMm open, or closed, of the tried one
   * @param fittedMm of the one that is fitted
   * @param reserveMm what is kept of the stroke at that end
   */
  static ShockTried of(
      Card card,
      ShockCurve shock,
      End end,
      double lengthMm,
      Optional<Figure> fittedMm,
      double reserveMm,
      double mountMm) {
    double kept = end.outward() * reserveMm;
    return new ShockTried(
        end,
        shock.wheelAt(Figure.exact(lengthMm + (kept - mountMm))),
        fittedMm.flatMap(f -> shock.wheelAt(f.plus(kept))),
        CornerTravel.of(card).at(end).limits().stream()
            .filter(l -> l.kind() != Limit.Kind.SHOCK && l.positionMm() != null && l.found())
            .min(Comparator.comparingDouble(l -> l.positionMm().value() * end.outward())));
  }

  /** Travel won at that end, below 0 lost. */
  public Optional<Figure> wonMm() {
    return thenMm.flatMap(t -> nowMm.map(n -> t.minus(n).times(end.outward())));
  }

  /** Whether that other limit acts before the tried shock does. */
  public boolean nextFirst() {
    double next = this.next.map(l -> l.positionMm().value() * end.outward()).orElse(Double.NaN);
    return next < thenMm.map(t -> t.value() * end.outward()).orElse(Double.POSITIVE_INFINITY);
  }
}
