package spindlebook.finding;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import spindlebook.finding.Finding.Group;
import spindlebook.travel.End;
import spindlebook.travel.EndFindings;
import spindlebook.travel.Limit;
import spindlebook.travel.TravelFindings;
import spindlebook.uncertainty.Figure;

/** A figure of a corner's travel, in the order in which a kept copy has them. */
public enum CornerFigure {
  AS_SET("travel as set", "usable travel, as set", null, t -> t.asSet().mm()),
  AS_SET_DROOP(
      "as set, ride down to the strap",
      "usable travel, as set, below ride",
      End.DROOP,
      t -> t.asSet().droopMm()),
  AS_SET_BUMP(
      "as set, ride up to the stop",
      "usable travel, as set, above ride",
      End.BUMP,
      t -> t.asSet().bumpMm()),
  AS_IT_COULD_BE(
      "travel as it could be", "usable travel, as it could be", null, t -> t.asItCouldBe().mm()),
  COULD_BE_DROOP(
      "as it could be, ride down",
      "usable travel, as it could be, below ride",
      End.DROOP,
      t -> t.asItCouldBe().droopMm()),
  COULD_BE_BUMP(
      "as it could be, ride up",
      "usable travel, as it could be, above ride",
      End.BUMP,
      t -> t.asItCouldBe().bumpMm()),
  /** Where the wheel stands at ride. */
  RIDE(
      "ride height, spindle from the frame mark",
      "ride height, spindle from the frame mark",
      null,
      TravelFindings::rideMm),
  DROOP_STOP("strap stops the wheel at", "droop: strap stops the wheel at", Group.STOP, End.DROOP),
  DROOP_HELD_BACK("held back in droop", "droop: held back", Group.HELD_BACK, End.DROOP),
  DROOP_MARGIN("margin in droop", "droop: margin", Group.MARGIN, End.DROOP),
  BUMP_STOP("bump stop is solid at", "bump: stop is solid at", Group.STOP, End.BUMP),
  BUMP_HELD_BACK("held back in bump", "bump: held back", Group.HELD_BACK, End.BUMP),
  BUMP_MARGIN("margin in bump", "bump: margin", Group.MARGIN, End.BUMP);

  private final String words;
  private final String keptAs;
  private final Group group;
  private final End end;
  private final Function<TravelFindings, Optional<Figure>> figure;

  /** Of the whole travel, or of it on one side of ride. */
  CornerFigure(
      String words, String keptAs, End end, Function<TravelFindings, Optional<Figure>> figure) {
    this.words = words;
    this.keptAs = keptAs;
    this.group = Group.TOTAL;
    this.end = end;
    this.figure = figure;
  }

  /** A term of one end's sum. */
  CornerFigure(String words, String keptAs, Group group, End end) {
    this.words = words;
    this.keptAs = keptAs;
    this.group = group;
    this.end = end;
    this.figure = t -> term(t.at(end));
  }

  public static CornerFigure margin(End end) {
    return end == End.DROOP ? DROOP_MARGIN : BUMP_MARGIN;
  }

  public String words() {
    return words;
  }

  /** Its name in the copy that a sign-off keeps, which no change of words may change. */
  public String keptAs() {
    return keptAs;
  }

  public Group group() {
    return group;
  }

  /** Null for what is of the whole travel. */
  public End end() {
    return end;
  }

  private Optional<Figure> term(EndFindings at) {
    return switch (group) {
      case STOP -> at.stop().map(s -> s.positionMm());
      case HELD_BACK -> at.heldBack().map(h -> h.mm());
      default -> at.marginMm();
    };
  }

  Optional<Figure> of(TravelFindings travel) {
    return figure.apply(travel);
  }

  /** Counted only as far as was read, so that it is at least this much. */
  boolean atLeast(TravelFindings travel) {
    return switch (this) {
      case AS_SET, AS_SET_DROOP, AS_SET_BUMP -> travel.asSet().atLeast();
      case AS_IT_COULD_BE -> travel.asItCouldBe().atLeast();
      case COULD_BE_DROOP, COULD_BE_BUMP, DROOP_MARGIN, BUMP_MARGIN ->
          travel.at(end).marginAtLeast();
      default -> false;
    };
  }

  /** A stop that was put back, and not read since. */
  boolean unconfirmed(TravelFindings travel) {
    return group == Group.STOP && travel.at(end).stop().filter(s -> s.notConfirmed()).isPresent();
  }

  /**
   * Where it is on the travel: of a stop where it stands, of what is held back where that lets the
   * wheel go in the end, of a margin where the stop would have to be; null elsewhere.
   */
  Figure positionMm(TravelFindings travel) {
    return switch (group) {
      case STOP -> of(travel).orElse(null);
      case HELD_BACK -> travel.at(end).reachMm().orElse(null);
      case MARGIN -> travel.at(end).neededStopMm().orElse(null);
      default -> this == RIDE ? of(travel).orElse(null) : null;
    };
  }

  /** The readings that it rests on, each once. */
  List<String> readings(TravelFindings travel) {
    return switch (this) {
      case AS_SET, AS_IT_COULD_BE -> ofEnds(travel, End.values());
      case RIDE -> travel.rideReadings();
      case AS_SET_DROOP, AS_SET_BUMP, COULD_BE_DROOP, COULD_BE_BUMP ->
          both(travel.rideReadings().stream(), ofEnds(travel, end).stream());
      default -> ofEnds(travel, end);
    };
  }

  private List<String> ofEnds(TravelFindings travel, End... ends) {
    boolean couldBe = ordinal() >= AS_IT_COULD_BE.ordinal();
    return Stream.of(ends)
        .map(travel::at)
        .flatMap(
            e -> {
              Stream<String> stop = e.stop().stream().flatMap(s -> s.readings().stream());
              Stream<String> held = e.heldBack().stream().flatMap(h -> h.readings().stream());
              Stream<String> limit = nearest(e).flatMap(l -> l.readings().stream());
              return switch (group) {
                case STOP -> stop;
                case HELD_BACK -> held;
                case MARGIN -> both(stop, both(held, limit).stream()).stream();
                default -> couldBe ? both(held, limit).stream() : stop;
              };
            })
        .distinct()
        .toList();
  }

  /** The limit that an end's margin is counted to. */
  private static Stream<Limit> nearest(EndFindings end) {
    return end.marginMm().stream()
        .flatMap(m -> end.limits().stream().filter(l -> m.equals(l.roomMm())))
        .limit(1);
  }

  private static List<String> both(Stream<String> one, Stream<String> other) {
    return Stream.concat(one, other).distinct().toList();
  }
}
