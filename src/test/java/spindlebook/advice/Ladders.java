package spindlebook.advice;

import java.util.List;
import java.util.OptionalDouble;
import spindlebook.definition.Keep;
import spindlebook.definition.WatchPlace;
import spindlebook.definition.WatchPoint;
import spindlebook.entry.Content.ToRead;
import spindlebook.entry.HeightName;
import spindlebook.entry.Pairing;
import spindlebook.entry.Quantity;
import spindlebook.entry.Steering;
import spindlebook.travel.End;
import spindlebook.travel.EndLimit;
import spindlebook.travel.Limit;
import spindlebook.travel.MidTravel;
import spindlebook.travel.Need;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Outcome;
import spindlebook.units.LengthUnit;
import spindlebook.units.TypedAngle;
import spindlebook.units.TypedLength;

/** Limits as short as a test of the ladder wants to write them. Numbers in mm. */
final class Ladders {
  private Ladders() {}

  static Ladder ladder(End end, Figure reachMm, Limit... limits) {
    return of(end, reachMm, List.of(limits), List.of(), List.of());
  }

  static Ladder of(
      End end, Figure reachMm, List<Limit> limits, List<Need> needs, List<MidTravel> midTravel) {
    List<Rung> rungs = limits.stream().map(l -> Rungs.of(end, l, reachMm)).toList();
    return Ladder.of(end, List.of(Rungs.stop(reachMm, needs, "")), rungs, needs, midTravel);
  }

  static Limit paired(Limit l, Pairing pairing) {
    return new Limit(
        l.kind(),
        l.point(),
        l.steering(),
        pairing,
        l.at(),
        l.reachMm(),
        l.roomMm(),
        l.outcome(),
        l.settles(),
        l.needs());
  }

  static Limit gap(String point, Steering steering, EndLimit at, Need... needs) {
    TypedLength least = new TypedLength("6 mm", 6, LengthUnit.MM, "test");
    WatchPoint watched =
        new WatchPoint(point, WatchPlace.LOWER_ARM_FRAME, null, Keep.atLeast(least), "test");
    return limit(Limit.Kind.WATCH_POINT, watched, steering, at, needs);
  }

  static Limit angle(String point, EndLimit at) {
    TypedAngle most = new TypedAngle("25°", Math.toRadians(25), "test");
    WatchPoint watched =
        new WatchPoint(point, WatchPlace.CV_ANGLE, null, Keep.atMost(most), "test");
    return limit(Limit.Kind.WATCH_POINT, watched, Steering.STRAIGHT, at);
  }

  static Limit shock(EndLimit at) {
    return limit(Limit.Kind.SHOCK, null, null, at);
  }

  static Limit ground(EndLimit at) {
    return limit(Limit.Kind.GROUND, null, null, at);
  }

  private static Limit limit(
      Limit.Kind kind, WatchPoint point, Steering steering, EndLimit at, Need... needs) {
    return new Limit(
        kind, point, steering, null, at, null, null, Outcome.CLEAR, null, List.of(needs));
  }

  static EndLimit at(double positionMm) {
    return at(Figure.exact(positionMm));
  }

  static EndLimit at(Figure positionMm) {
    return new EndLimit.Crosses(
        positionMm,
        Double.NaN,
        Double.NaN,
        EndLimit.How.CUBIC,
        Double.NaN,
        null,
        List.of("@" + positionMm.value()));
  }

  static EndLimit bracket(double keptMm, double brokenMm) {
    return new EndLimit.Crosses(
        Figure.exact(keptMm),
        keptMm,
        brokenMm,
        EndLimit.How.BRACKET,
        Double.NaN,
        Figure.exact(brokenMm),
        List.of("@" + keptMm, "@" + brokenMm));
  }

  static EndLimit keptTo(double positionMm) {
    return new EndLimit.KeptTo(
        Figure.exact(positionMm), OptionalDouble.of(positionMm), List.of("@" + positionMm));
  }

  static EndLimit notRead() {
    return new EndLimit.NotRead(List.of());
  }

  static EndLimit brokenEverywhere() {
    return new EndLimit.BrokenThroughout(List.of("@all"));
  }

  static Need toRead(String point, Steering steering) {
    return Need.read(
        new ToRead(HeightName.ON_THE_STRAP, null, steering, Quantity.WATCH_POINT, point),
        List.of());
  }

  static List<String> names(Ladder ladder) {
    return ladder.rungs().stream().map(Ladders::name).toList();
  }

  static String name(Rung rung) {
    return switch (rung.what()) {
      case STOP -> "stop";
      case SHOCK -> "shock";
      case GROUND -> "ground";
      case GAP, ANGLE, PLUNGE -> rung.limit().point().point();
    };
  }
}
