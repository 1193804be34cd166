package spindlebook.travel;

import java.util.List;
import spindlebook.entry.HeightName;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.GuardBand;
import spindlebook.uncertainty.Outcome;
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
 * limit share (a mark read once, the tape) cancels in the room.
 *
 * <p>A limit on the curve holds all its doubt in its position. A bracket is planned from its
 * reading that keeps the rule: the wheel is clear only as far as the value there keeps the rule by
 * its own U, short only from the reading on that breaks it by its U, and between the two nobody has
 * looked. Where a rule is kept at the last reading, the wheel may go as far as the value keeps it
 * by its own U, with U of the room to spare; further than was read is not judged but asked for.
 */
public final class Judged {
  private static final double TINY_MM = 1e-9;
  private static final String BROKEN = "its rule is broken at every height read";

  private Judged() {}

  static Limit of(End end, CornerLimits.Found found, Figure reachMm) {
    return WorkedOut.or(
        () -> judged(end, found, reachMm),
        why -> {
          Need need = Need.read(found.of().toRead(end), List.of(why));
          return limit(found, reachMm, null, Outcome.NEEDS, null, List.of(need));
        });
  }

  private static Limit judged(End end, CornerLimits.Found found, Figure reachMm) {
    EndLimit at = found.at();
    if (at instanceof EndLimit.BrokenThroughout) {
      Need need = Need.read(found.of().toRead(end).at(HeightName.IN_BETWEEN), List.of(BROKEN));
      return limit(found, reachMm, null, Outcome.SHORT, null, List.of(need));
    }
    if (at instanceof EndLimit.NotRead not) {
      List<String> because = not.because().isEmpty() ? found.gone() : not.because();
      Need need = Need.read(found.of().toRead(end), because);
      return limit(found, reachMm, null, Outcome.NEEDS, null, List.of(need));
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
    if (crosses.how() == EndLimit.How.BRACKET) {
      return bracket(end, found, crosses, reachMm, room);
    }
    Outcome outcome = GuardBand.atLeast(room, 0);
    Settles settles =
        outcome == Outcome.CANT_TELL ? ReadOtherwise.settles(end, found, crosses, reachMm) : null;
    return limit(found, reachMm, room, outcome, settles, List.of());
  }

  private static Limit bracket(
      End end, CornerLimits.Found found, EndLimit.Crosses crosses, Figure reachMm, Figure room) {
    if (past(end, crosses, reachMm, room)) {
      return limit(found, reachMm, room, Outcome.SHORT, null, List.of());
    }
    if (staysIn(end, crosses.surelyKeptMm(), reachMm, room)) {
      return limit(found, reachMm, room, Outcome.CLEAR, null, List.of());
    }
    if (GuardBand.atLeast(room, 0) == Outcome.SHORT) {
      return limit(
          found, reachMm, room, Outcome.CANT_TELL, null, readBeyond(end, found, reachMm, room));
    }
    boolean valueIsSure = near(crosses.surelyKeptMm(), crosses.positionMm());
    Settles settles = valueIsSure ? Settles.how(room, 0) : byValue(found, crosses.positionMm());
    return limit(found, reachMm, room, Outcome.CANT_TELL, settles, List.of());
  }

  /**
   * The wheel gets to where the value breaks the rule by its U, for sure: at the reading itself the
   * doubt of its position is in both, and cancels.
   */
  private static boolean past(
      End end, EndLimit.Crosses crosses, Figure reachMm, Figure roomToKept) {
    double brokenMm = crosses.surelyBrokenMm();
    Figure room =
        near(brokenMm, crosses.brokenMm()) ? room(end, reachMm, crosses.brokenMm()) : roomToKept;
    return -spareMm(end, brokenMm, reachMm) >= room.U() - TINY_MM;
  }

  private static Limit kept(
      End end, CornerLimits.Found found, EndLimit.KeptTo kept, Figure reachMm) {
    Figure room = room(end, reachMm, kept.positionMm());
    double surelyKeptMm = kept.surelyKeptMm().orElse(Double.NaN);
    if (staysIn(end, surelyKeptMm, reachMm, room)) {
      return limit(found, reachMm, room, Outcome.CLEAR, null, List.of());
    }
    List<Need> beyond = readBeyond(end, found, reachMm, room);
    if (GuardBand.atLeast(room, 0) == Outcome.SHORT) {
      return limit(found, reachMm, room, Outcome.NEEDS, null, beyond);
    }
    return near(surelyKeptMm, kept.positionMm())
        ? limit(found, reachMm, room, Outcome.CANT_TELL, null, beyond)
        : limit(
            found, reachMm, room, Outcome.CANT_TELL, byValue(found, kept.positionMm()), List.of());
  }

  /** The wheel, with the doubt of where it goes, stays where the value keeps the rule by its U. */
  private static boolean staysIn(End end, double surelyKeptMm, Figure reachMm, Figure room) {
    return spareMm(end, surelyKeptMm, reachMm) >= room.U() - TINY_MM;
  }

  /** A reading that leaves nothing open where it keeps its rule: further than the wheel may go. */
  private static List<Need> readBeyond(
      End end, CornerLimits.Found found, Figure reachMm, Figure room) {
    double sureMm = reachMm.value() + end.outward() * room.U();
    return List.of(Need.readBeyond(found.of().toRead(end), end, sureMm, reachMm));
  }

  /** What would settle whether the value read at a position keeps its rule. */
  private static Settles byValue(CornerLimits.Found found, Figure positionMm) {
    return found.of().insideAt(positionMm).map(c -> Settles.how(c, 0)).orElse(null);
  }

  /** How far the wheel stays inside a position; NaN when that was not read. */
  private static double spareMm(End end, double positionMm, Figure reachMm) {
    return (positionMm - reachMm.value()) * end.outward();
  }

  private static boolean near(double positionMm, Figure other) {
    return Math.abs(positionMm - other.value()) <= TINY_MM;
  }

  public static Figure room(End end, Figure reachMm, Figure limitMm) {
    return limitMm.minus(reachMm).times(end.outward());
  }

  private static Limit limit(
      CornerLimits.Found found,
      Figure reachMm,
      Figure roomMm,
      Outcome outcome,
      Settles settles,
      List<Need> needs) {
    return new Limit(
        found.of().kind(),
        found.of().point(),
        found.of().steering(),
        found.of().pairing(),
        found.at(),
        reachMm,
        roomMm,
        outcome,
        settles,
        needs);
  }
}
