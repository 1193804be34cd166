package spindlebook.travel;

import java.util.List;
import spindlebook.curve.Node;
import spindlebook.curve.PositionToSetting;
import spindlebook.definition.Allowance;
import spindlebook.definition.HeldBack;
import spindlebook.entry.Pairing;
import spindlebook.fold.Card;
import spindlebook.uncertainty.Figure;

/**
 * Where the strap would have to stop the wheel so that it reaches the limit once stretched, and no
 * further: with the stretch of the strap as long as it would then be.
 *
 * <pre>
 *   λ(N) + e' = λ(L)     e' = max(0, e + p (λ(N) − λ(S)))
 *   so that, while e' &gt; 0:   e' = (e + p (λ(L) − λ(S))) / (1 + p)      N = L + e' / ρ
 * </pre>
 *
 * <p>N the needed stop, L the limit, S where the strap stops the wheel today (mm, + towards bump);
 * λ(z) strap length against wheel position (mm); e the stretch still to come today at the strap
 * (mm, {@link StrapStretch}); p the share a new strap takes up; ρ = (λ(L) − λ(N)) / (N − L), mm of
 * strap for a mm of wheel between the two, along the curve that was read and beyond it on its end's
 * line ({@link PositionToSetting}). For a strap that has not grown this is a new length ℓ' with
 * ℓ'(1 + p) = λ(L). A change of the strap's length is taken to change λ on it by as much.
 *
 * <p>ρ is as unsure as the ratio at S; e and the lengths bring their doubt, L its own. Derived in
 * docs/methods-corner.md. Worked: λ straight, 548.8 at L −260, ratio 1/2, S −60 with λ 448.8, p 10
 * %, e 44.88: e' = (44.88 + 10) / 1.1 = 49.89, N = −260 + 99.78 = −160.22; with today's stretch it
 * would be −170.24 and end 11 mm past L.
 */
public final class NeededStop {
  private NeededStop() {}

  static Figure ofStrap(
      Card card, Pairing pairing, Figure stopMm, HeldAtWheel held, Figure limitMm) {
    double share = share(card);
    List<Node> lengths = StrapLengths.of(card, pairing).nodes();
    Figure todays = limitMm.plus(held.mm());
    if (share == 0 || lengths.size() < 2) {
      return todays;
    }
    Figure toLimit =
        PositionToSetting.lengthChange(lengths, stopMm.value(), limitMm.value()).changeMm();
    Figure then = held.atStopMm().plus(toLimit.times(share)).times(1 / (1 + share));
    if (then.value() <= 0) {
      return limitMm.plus(held.mm()).plus(-held.mm().value());
    }
    try {
      double inwardMm =
          PositionToSetting.wheelChange(lengths, limitMm.value(), -then.value()).changeMm().value();
      double ratio = then.value() / inwardMm;
      return limitMm.plus(
          StrapStretch.quotient(then, held.ratio().times(ratio / held.ratio().value())));
    } catch (IllegalArgumentException noSuchLength) {
      return todays;
    }
  }

  /** What the stretch to come is more at the wheel, with the strap set longer by so much. */
  public static double furtherMm(Card card, HeldAtWheel held, double longerMm) {
    if (held.atStopMm() == null) {
      return 0;
    }
    double atStrapMm = Math.max(-held.atStopMm().value(), share(card) * longerMm);
    return atStrapMm / held.ratio().value();
  }

  private static double share(Card card) {
    return card.heldBack(Allowance.STRAP_STRETCH).map(HeldBack::percent).orElse(0.0) / 100;
  }
}
