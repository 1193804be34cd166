package spindlebook.fold;

import static spindlebook.entry.HeightName.FULL_BUMP;
import static spindlebook.entry.HeightName.ON_THE_STRAP;
import static spindlebook.entry.HeightName.RIDE;
import static spindlebook.entry.HeightName.STOP_TOUCH;
import static spindlebook.entry.HeightName.STRAP_OFF;
import static spindlebook.fold.Where.HERE;

import java.util.EnumSet;
import java.util.OptionalDouble;
import java.util.Set;
import spindlebook.definition.AdjusterKind;
import spindlebook.definition.Dimension;
import spindlebook.definition.Part;
import spindlebook.definition.WatchPlace;
import spindlebook.entry.AlignedThing;
import spindlebook.entry.HappeningKind;
import spindlebook.entry.HeightName;
import spindlebook.entry.Joint;
import spindlebook.entry.Joint.Carried;
import spindlebook.entry.Quantity;
import spindlebook.fold.Subject.GivenLength;
import spindlebook.fold.Subject.JointLaidOut;
import spindlebook.fold.Subject.OfPart;
import spindlebook.fold.Subject.StopPosition;
import spindlebook.fold.Subject.Taken;

/**
 * Which change moves which reading: the one table of it.
 *
 * <p>A gap belongs to a wheel position and a steering, not to a stop. Moving a stop therefore
 * leaves the readings true where they were taken and moves only the stop's own position and what
 * was read of the stop itself. A change of the links moves everything geometric.
 */
public final class Moves {
  private static final Set<Dimension> OF_THE_MARK =
      EnumSet.of(Dimension.MARK_TO_LOWEST_FRAME, Dimension.MARK_INBOARD);

  private Moves() {}

  public static boolean by(AdjusterKind change, Where where, Subject subject) {
    if (subject instanceof GivenLength given) {
      return where == HERE && hangsOn(given.dimension()).contains(change);
    }
    if (subject instanceof OfPart of) {
      return where == HERE && (change == of.part() || (ofSpring(of) && presses(change)));
    }
    if (subject instanceof JointLaidOut laid) {
      return joint(change, where, laid.joint());
    }
    return switch (change) {
      case LIMIT_STRAP ->
          (where == HERE && strap(subject)) || otherEndAt(where, subject, ON_THE_STRAP);
      case BUMP_STOP_SPACER ->
          (where == HERE && bumpStop(subject))
              || otherEndAt(where, subject, STOP_TOUCH)
              || otherEndAt(where, subject, FULL_BUMP);
      case STEERING_STOP -> where != Where.ELSEWHERE && lock(subject);
      case UPPER_ROD_ENDS, LOWER_ROD_ENDS, ARM, PIVOT_SHIMS, AXLE_LINKS, PANHARD_ROD, KNUCKLE ->
          onePiece(where);
      // The rack belongs to the axle: both of its wheels move.
      case RACK_POSITION -> where != Where.ELSEWHERE;
      case TIE_ROD_LENGTH, TIE_ROD_SHIM ->
          tieRod(where, subject) || (where != Where.ELSEWHERE && toe(subject));
      case TOE_LINK_LENGTH -> where == HERE && (turnsWithTheWheel(subject) || toe(subject));
      case SPRING_PRELOAD, SPRING ->
          ride(subject) || (where == HERE && ofPart(subject, Part.SPRING));
      case SHOCK ->
          (where == HERE && shock(subject))
              || otherEndAt(where, subject, STRAP_OFF)
              || otherEndAt(where, subject, FULL_BUMP);
      case TYRE, TYRE_PRESSURE ->
          where == HERE && (ofPart(subject, Part.TYRE) || onTheTyre(subject));
      case WHEEL ->
          where == HERE
              && (ofPart(subject, Part.TYRE) || ofPart(subject, Part.WHEEL) || onTheTyre(subject));
      case DRIVE_SHAFT -> onePiece(where) && ofPart(subject, Part.DRIVE_SHAFT);
      case HOSE -> where == HERE && ofPart(subject, Part.HOSE);
    };
  }

  public static boolean by(HappeningKind happening, Where where, Subject subject) {
    if (subject instanceof GivenLength given) {
      return happening != HappeningKind.DRIVEN
          && onePiece(where)
          && OF_THE_MARK.contains(given.dimension());
    }
    if (subject instanceof OfPart) {
      return false;
    }
    return switch (happening) {
      case HIT_OR_BENT, CUT_WELDED_GROUND -> onePiece(where);
      case DRIVEN -> where == HERE && strapLengthOnIt(subject);
    };
  }

  /**
   * A mount stays where it is on the frame until that is cut or bent; what hangs on it moves. An
   * arm may be either of the two, and so may the shims at its pivots.
   */
  private static boolean joint(AdjusterKind change, Where where, Joint joint) {
    boolean hub = joint.by == Carried.KNUCKLE || joint == Joint.U || joint == Joint.HOUSE_U;
    boolean arms = hub || joint.by == Carried.LOWER_ARM;
    boolean pivot = EnumSet.range(Joint.LF, Joint.U).contains(joint);
    return switch (change) {
      case UPPER_ROD_ENDS -> where == HERE && hub;
      case LOWER_ROD_ENDS, ARM -> where == HERE && arms;
      case KNUCKLE -> where == HERE && (hub || joint == Joint.L);
      case PIVOT_SHIMS -> where == HERE && (arms || pivot);
      case TIE_ROD_LENGTH, TIE_ROD_SHIM, TOE_LINK_LENGTH ->
          where == HERE && (joint == Joint.TO || joint == Joint.STUD_TO);
      case RACK_POSITION -> where != Where.ELSEWHERE && joint.by == Carried.RACK;
      case WHEEL -> where == HERE && joint == Joint.W;
      default -> false;
    };
  }

  /**
   * The parts a given length is of. Turning a rod end or a shim moves the spindle by too little
   * beside the mark to ask for that again; a tyre, its pressure and the wheel it is on go together.
   */
  private static Set<AdjusterKind> hangsOn(Dimension of) {
    return switch (of) {
      case NEW_STRAP_LENGTH -> EnumSet.of(AdjusterKind.LIMIT_STRAP);
      case STOP_CRUSH -> EnumSet.of(AdjusterKind.BUMP_STOP_SPACER);
      case SHOCK_OPEN, SHOCK_CLOSED -> EnumSet.of(AdjusterKind.SHOCK);
      case TYRE_LOADED_RADIUS, TYRE_SQUASHED_RADIUS ->
          EnumSet.of(AdjusterKind.TYRE, AdjusterKind.TYRE_PRESSURE, AdjusterKind.WHEEL);
      case MARK_INBOARD -> EnumSet.of(AdjusterKind.ARM, AdjusterKind.KNUCKLE);
      case READ_POINT_OUTBOARD -> EnumSet.of(AdjusterKind.WHEEL, AdjusterKind.KNUCKLE);
      case TOE_ACROSS -> EnumSet.of(AdjusterKind.WHEEL);
      case RACK_TRAVEL -> EnumSet.of(AdjusterKind.STEERING_STOP, AdjusterKind.RACK_POSITION);
      case MARK_TO_LOWEST_FRAME, TOE_RANGE -> EnumSet.noneOf(AdjusterKind.class);
    };
  }

  /**
   * What a reading, or a given length, changes by for each mm that the adjuster is set to more: a
   * strap's own length by as much, the gap to the pad by as much less, the stop's crush by nothing;
   * how far a spring is pressed together by as much as its collar is turned on. Empty where the
   * change moves it by an amount that nobody knows.
   */
  public static OptionalDouble perMm(AdjusterKind change, Subject subject) {
    if (change == AdjusterKind.LIMIT_STRAP && given(subject, Dimension.NEW_STRAP_LENGTH)) {
      return OptionalDouble.of(1);
    }
    if (change == AdjusterKind.SPRING_PRELOAD && subject instanceof OfPart of && ofSpring(of)) {
      return OptionalDouble.of(1);
    }
    if (change == AdjusterKind.BUMP_STOP_SPACER
        && subject instanceof Taken t
        && t.is(Quantity.STOP_GAP)) {
      return OptionalDouble.of(-1);
    }
    return change == AdjusterKind.BUMP_STOP_SPACER && given(subject, Dimension.STOP_CRUSH)
        ? OptionalDouble.of(0)
        : OptionalDouble.empty();
  }

  private static boolean ofSpring(OfPart of) {
    return of.part() == AdjusterKind.SPRING;
  }

  /** What changes how far a spring is pressed together at a shock length. */
  private static boolean presses(AdjusterKind change) {
    return change == AdjusterKind.SPRING_PRELOAD || change == AdjusterKind.SHOCK;
  }

  private static boolean given(Subject subject, Dimension dimension) {
    return subject instanceof GivenLength given && given.dimension() == dimension;
  }

  /**
   * Whether something befell a place that may have shifted it without making it stale: a driven
   * strap has stretched, so a later reading stands for the earlier one and is no repeat of it.
   */
  static boolean wears(HappeningKind happening, Where where, Subject subject) {
    return happening == HappeningKind.DRIVEN
        && where == HERE
        && subject instanceof StopPosition stop
        && (stop.name() == ON_THE_STRAP || stop.otherEnd().contains(ON_THE_STRAP));
  }

  /**
   * Level, an end of a solid axle lies a little otherwise for a stop at the other end: by its
   * lever.
   */
  static boolean wears(AdjusterKind change, Where where, Subject subject) {
    boolean stops =
        change == AdjusterKind.LIMIT_STRAP
            || change == AdjusterKind.BUMP_STOP_SPACER
            || change == AdjusterKind.SHOCK;
    return stops
        && where == Where.SAME_AXLE
        && subject instanceof StopPosition stop
        && stop.otherEnd().isEmpty()
        && by(change, HERE, stop);
  }

  /** Crossed, an end lies where its own stop and the one at the other end put it. */
  private static boolean otherEndAt(Where where, Subject subject, HeightName name) {
    return where == Where.SAME_AXLE
        && subject instanceof StopPosition stop
        && stop.otherEnd().contains(name)
        && stop.name().onePlace();
  }

  /** What holds one end of a solid axle holds the other: both ends move. */
  private static boolean onePiece(Where where) {
    return where == HERE || where == Where.SAME_AXLE;
  }

  private static boolean strap(Subject subject) {
    return (subject instanceof StopPosition stop && stop.name() == ON_THE_STRAP)
        || strapLengthOnIt(subject);
  }

  /** The strap's own length under the corner's weight; elsewhere the mounts alone are read. */
  private static boolean strapLengthOnIt(Subject subject) {
    return subject instanceof Taken t && t.is(Quantity.STRAP_LENGTH) && t.at() == ON_THE_STRAP;
  }

  private static boolean bumpStop(Subject subject) {
    if (subject instanceof StopPosition stop) {
      return stop.name() == STOP_TOUCH || stop.name() == FULL_BUMP;
    }
    return subject instanceof Taken t && t.is(Quantity.STOP_GAP);
  }

  private static boolean lock(Subject subject) {
    return subject instanceof Taken t && t.steering().full();
  }

  private static boolean tieRod(Where where, Subject subject) {
    if (!(subject instanceof Taken t)) {
      return false;
    }
    return switch (where) {
      case HERE -> t.is(Quantity.TOE) || t.steering().steered() || t.of(Part.TIE_ROD);
      // The straight-ahead is shared: the other wheel's toe. Its rack stops where it stopped.
      case SAME_AXLE, OTHER_SIDE -> t.is(Quantity.TOE);
      case ELSEWHERE -> false;
    };
  }

  /**
   * A toe link belongs to its own wheel, and no steering turns that wheel back: toe, what lies at
   * the link, and every place of which one part turns with the wheel.
   */
  private static boolean turnsWithTheWheel(Subject subject) {
    return subject instanceof Taken t
        && (t.is(Quantity.TOE)
            || t.of(Part.TOE_LINK)
            || (t.place() != null && t.place().steered()));
  }

  /** Ride height moves at every corner, less at the others; what is read there with it. */
  private static boolean ride(Subject subject) {
    if (subject instanceof Subject.Alignment) {
      return true;
    }
    if (subject instanceof StopPosition stop) {
      return stop.name() == RIDE;
    }
    return subject instanceof Taken t
        && t.at() == RIDE
        && (t.is(Quantity.CAMBER) || t.is(Quantity.TOE) || t.place() == WatchPlace.CV_ANGLE);
  }

  private static boolean toe(Subject subject) {
    return subject instanceof Subject.Alignment a
        && (a.thing() == AlignedThing.TOE || a.thing() == AlignedThing.TOTAL_TOE);
  }

  /** What hangs on where the tyre meets the ground, or on how far out it stands. */
  private static boolean onTheTyre(Subject subject) {
    return subject instanceof Subject.Alignment a
        && (a.thing() == AlignedThing.GROUND_POINT || a.thing() == AlignedThing.TRACK);
  }

  private static boolean shock(Subject subject) {
    if (subject instanceof StopPosition stop) {
      return stop.name() == STRAP_OFF || stop.name() == FULL_BUMP;
    }
    return subject instanceof Taken t
        && (t.is(Quantity.SHOCK_LENGTH) || t.of(Part.SHOCK) || t.of(Part.SPRING));
  }

  private static boolean ofPart(Subject subject, Part part) {
    return subject instanceof Taken t && t.of(part);
  }
}
