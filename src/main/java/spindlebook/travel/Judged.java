package spindlebook.travel;

import java.util.List;
import spindlebook.uncertainty.Decision;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.GuardBand;
import spindlebook.uncertainty.Settles;

/**
 * How one limit stands against where the stop lets the wheel go in the end.
 *
 * <pre>
 *   droop: room = (S − e) − L        bump: room = U − (B + r)
 *   room ≥ +U_room clear;  room &lt; −U_room short;  else can't tell      (ISO 14253-1, guard band U)
 * </pre>
 *
 * S, B stops; e, r held back; L, U limits: wheel positions in mm, + towards bump. What stop and
 * limit share (a mark read once, the tape) cancels in the room. A bracket is planned from its
 * reading that keeps the rule, so it is short only beyond the reading that breaks it; between them
 * nobody has looked. Where a rule is kept at the last reading, the wheel may go as far as the value
 * keeps it by its own U; further than was read is not judged but asked for.
 */
final class Judged {
  private Judged() {}

  static Limit of(End end, CornerLimits.Found found, Figure reachMm) {
    EndLimit at = found.at();
    if (at instanceof EndLimit.BrokenThroughout) {
      return limit(found, reachMm, null, Outcome.SHORT, null, List.of());
    }
    if (at instanceof EndLimit.NotRead) {
      return limit(
          found, reachMm, null, Outcome.NEEDS, null, List.of(Need.read(found.toRead(), List.of())));
    }
    if (reachMm == null) {
      return limit(found, null, null, Outcome.NEEDS, null, List.of());
    }
    return at instanceof EndLimit.Crosses crosses
        ? crossing(end, found, crosses, reachMm)
        : kept(end, found, (EndLimit.KeptTo) at, reachMm);
  }

  private static Limit crossing(
      End end, CornerLimits.Found found, EndLimit.Crosses crosses, Figure reachMm) {
    Figure room = room(end, reachMm, crosses.positionMm());
    Outcome outcome = outcome(GuardBand.atLeast(room, 0));
    if (outcome == Outcome.SHORT && crosses.how() == EndLimit.How.BRACKET) {
      double brokenMm = crosses.surelyBrokenMm();
      double beyondBroken = (reachMm.value() - brokenMm) * end.outward();
      boolean surely = !Double.isNaN(brokenMm) && beyondBroken > reachMm.U();
      outcome = surely ? Outcome.SHORT : Outcome.CANT_TELL;
    }
    Settles settles =
        outcome != Outcome.CANT_TELL
            ? null
            : crosses.how() == EndLimit.How.BRACKET ? null : Settles.how(room, 0);
    List<Need> needs =
        outcome == Outcome.CANT_TELL && crosses.how() == EndLimit.How.BRACKET
            ? List.of(Need.readBeyond(found.toRead(), reachMm.value()))
            : List.of();
    return limit(found, reachMm, room, outcome, settles, needs);
  }

  private static Limit kept(
      End end, CornerLimits.Found found, EndLimit.KeptTo kept, Figure reachMm) {
    Figure room = room(end, reachMm, kept.positionMm());
    if (GuardBand.atLeast(room, 0) == Decision.SHORT) {
      Need need = Need.readBeyond(found.toRead(), reachMm.value());
      return limit(found, reachMm, room, Outcome.NEEDS, null, List.of(need));
    }
    boolean surely =
        kept.surelyKeptMm().isPresent()
            && (kept.surelyKeptMm().getAsDouble() - reachMm.value()) * end.outward() >= -1e-9;
    // The wheel gets to the last reading and no further: what was read there decides.
    boolean atLast = Math.abs(room.value()) <= room.U() && keptSurelyAtLast(kept);
    Outcome outcome = surely || atLast ? Outcome.CLEAR : Outcome.CANT_TELL;
    return limit(found, reachMm, room, outcome, null, List.of());
  }

  private static boolean keptSurelyAtLast(EndLimit.KeptTo kept) {
    return kept.surelyKeptMm().isPresent()
        && Math.abs(kept.surelyKeptMm().getAsDouble() - kept.positionMm().value()) < 1e-9;
  }

  static Figure room(End end, Figure reachMm, Figure limitMm) {
    return limitMm.minus(reachMm).times(end.outward());
  }

  private static Outcome outcome(Decision decision) {
    return switch (decision) {
      case CLEAR -> Outcome.CLEAR;
      case SHORT -> Outcome.SHORT;
      case CANT_TELL -> Outcome.CANT_TELL;
    };
  }

  private static Limit limit(
      CornerLimits.Found found,
      Figure reachMm,
      Figure roomMm,
      Outcome outcome,
      Settles settles,
      List<Need> needs) {
    return new Limit(
        found.kind(),
        found.point(),
        found.steering(),
        found.at(),
        reachMm,
        roomMm,
        outcome,
        settles,
        needs);
  }
}
