package spindlebook.advice;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import spindlebook.definition.Allowance;
import spindlebook.definition.Dimension;
import spindlebook.travel.End;
import spindlebook.travel.EndLimit;
import spindlebook.travel.Limit;
import spindlebook.travel.Need;
import spindlebook.uncertainty.Figure;

/** A ladder's rungs, before anybody knows what they win. */
final class Rungs {
  private static final Set<Dimension> OF_SHOCK =
      EnumSet.of(Dimension.SHOCK_OPEN, Dimension.SHOCK_CLOSED);
  private static final Set<Allowance> KEPT_OF_SHOCK =
      EnumSet.of(Allowance.SHOCK_OPEN_RESERVE, Allowance.SHOCK_CLOSED_RESERVE);
  private static final Set<Dimension> OF_GROUND =
      EnumSet.of(Dimension.TYRE_SQUASHED_RADIUS, Dimension.MARK_TO_LOWEST_FRAME);

  private Rungs() {}

  static Rung of(End end, Limit limit, Figure reachMm) {
    Rung.State state = state(limit);
    List<Need> needs =
        state == Rung.State.NEEDS && limit.needs().isEmpty()
            ? List.of(Need.read(limit.toRead(end), List.of()))
            : limit.needs();
    return new Rung(
        what(limit),
        limit,
        limit.condition(),
        state,
        limit.positionMm(),
        reachMm,
        limit.bracket().map(EndLimit.Crosses::brokenMm).orElse(null),
        new Win.NotMet(),
        needs);
  }

  private static Rung.State state(Limit limit) {
    if (limit.found()) {
      return limit.bracket().isPresent() ? Rung.State.BRACKET : Rung.State.ACTS;
    }
    if (limit.at() instanceof EndLimit.KeptTo) {
      return Rung.State.KEPT_TO;
    }
    return limit.at() instanceof EndLimit.BrokenThroughout
        ? Rung.State.EVERYWHERE
        : Rung.State.NEEDS;
  }

  private static Rung.What what(Limit limit) {
    return switch (limit.kind()) {
      case SHOCK -> Rung.What.SHOCK;
      case GROUND -> Rung.What.GROUND;
      case WATCH_POINT ->
          switch (limit.point().place().measure()) {
            case GAP -> Rung.What.GAP;
            case ANGLE -> Rung.What.ANGLE;
            case PLUNGE -> Rung.What.PLUNGE;
          };
    };
  }

  /** The stop: everything that is needed and belongs to no limit is the stop's. */
  static Rung stop(Figure reachMm, List<Need> needs, String condition) {
    List<Need> ofStop = needs.stream().filter(n -> limitOf(n) == Rung.What.STOP).toList();
    return missingOr(Rung.What.STOP, condition, reachMm, ofStop);
  }

  /** Limits of which a number was never given. */
  static List<Rung> neverGiven(List<Need> needs) {
    List<Rung> rungs = new ArrayList<>();
    for (Rung.What what : List.of(Rung.What.SHOCK, Rung.What.GROUND)) {
      List<Need> its = needs.stream().filter(n -> limitOf(n) == what).toList();
      if (!its.isEmpty()) {
        rungs.add(missingOr(what, "", null, its));
      }
    }
    return rungs;
  }

  private static Rung missingOr(Rung.What what, String condition, Figure atMm, List<Need> needs) {
    return new Rung(
        what,
        null,
        condition,
        atMm == null ? Rung.State.NEEDS : Rung.State.ACTS,
        atMm,
        atMm,
        null,
        new Win.NotMet(),
        needs);
  }

  static Rung.What limitOf(Need need) {
    if (need.dimension() != null) {
      return OF_SHOCK.contains(need.dimension())
          ? Rung.What.SHOCK
          : OF_GROUND.contains(need.dimension()) ? Rung.What.GROUND : Rung.What.STOP;
    }
    if (need.allowance() != null) {
      return KEPT_OF_SHOCK.contains(need.allowance())
          ? Rung.What.SHOCK
          : need.allowance() == Allowance.GROUND_CLEARANCE ? Rung.What.GROUND : Rung.What.STOP;
    }
    return Rung.What.STOP;
  }

  static Need readBeyond(End end, Rung kept) {
    Limit limit = kept.limit();
    return Need.readBeyond(limit.toRead(end), end, kept.atMm().value(), limit.reachMm());
  }
}
