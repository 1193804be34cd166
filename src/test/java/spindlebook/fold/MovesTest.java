package spindlebook.fold;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static spindlebook.entry.HeightName.FULL_BUMP;
import static spindlebook.entry.HeightName.ON_THE_STRAP;
import static spindlebook.entry.HeightName.RIDE;
import static spindlebook.entry.HeightName.STOP_TOUCH;
import static spindlebook.entry.HeightName.STRAP_OFF;
import static spindlebook.fold.Where.ELSEWHERE;
import static spindlebook.fold.Where.HERE;
import static spindlebook.fold.Where.OTHER_SIDE;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;
import spindlebook.definition.AdjusterKind;
import spindlebook.definition.Dimension;
import spindlebook.definition.Place;
import spindlebook.definition.WatchPlace;
import spindlebook.entry.AlignedThing;
import spindlebook.entry.HappeningKind;
import spindlebook.entry.HeightName;
import spindlebook.entry.Joint;
import spindlebook.entry.Quantity;
import spindlebook.entry.Steering;
import spindlebook.fold.Subject.StopPosition;
import spindlebook.fold.Subject.Taken;

/**
 * One test a row of the table 'what moves what' of design.md §3, over everything that can be read:
 * each quantity and watched place, at every height and steering, and every named place. What is not
 * named as moved must stay.
 */
class MovesTest {
  private static final Predicate<Subject> NOTHING = s -> false;
  private static final Predicate<Subject> EVERYTHING = s -> true;

  private static final List<Subject> ALL = all();

  private static List<Subject> all() {
    List<Subject> all = new ArrayList<>();
    for (AlignedThing thing : AlignedThing.values()) {
      all.add(new Subject.Alignment(thing));
    }
    for (HeightName name : HeightName.values()) {
      all.add(new StopPosition(name));
      for (Steering steering : Steering.values()) {
        for (Quantity quantity : Quantity.values()) {
          if (quantity != Quantity.WATCH_POINT) {
            all.add(new Taken(quantity, null, steering, name));
          }
        }
        for (WatchPlace place : WatchPlace.values()) {
          all.add(new Taken(Quantity.WATCH_POINT, place, steering, name));
        }
        // A watch point that the book no longer knows.
        all.add(new Taken(Quantity.WATCH_POINT, null, steering, name));
      }
    }
    return all;
  }

  private static void moves(AdjusterKind change, Where where, Predicate<Subject> expected) {
    for (Subject subject : ALL) {
      assertEquals(
          expected.test(subject),
          Moves.by(change, where, subject),
          change + " " + where + ": " + subject);
    }
  }

  private static void moves(HappeningKind change, Where where, Predicate<Subject> expected) {
    for (Subject subject : ALL) {
      assertEquals(
          expected.test(subject),
          Moves.by(change, where, subject),
          change + " " + where + ": " + subject);
    }
  }

  private static Predicate<Subject> place(HeightName... names) {
    return s -> s instanceof StopPosition stop && List.of(names).contains(stop.name());
  }

  private static Predicate<Subject> taken(Predicate<Taken> taken) {
    return s -> s instanceof Taken t && taken.test(t);
  }

  private static Predicate<Subject> read(Quantity quantity) {
    return taken(t -> t.quantity() == quantity);
  }

  private static Predicate<Subject> at(WatchPlace... places) {
    return taken(t -> t.place() != null && List.of(places).contains(t.place()));
  }

  private static Predicate<Subject> aligned(AlignedThing... things) {
    return s -> s instanceof Subject.Alignment a && List.of(things).contains(a.thing());
  }

  private static Predicate<Subject> strapLengthOnTheStrap() {
    return taken(t -> t.quantity() == Quantity.STRAP_LENGTH && t.at() == ON_THE_STRAP);
  }

  /** What a change leaves of the given lengths: each hangs on its part and on nothing else. */
  private static Set<Dimension> given(Predicate<Subject> moved) {
    Set<Dimension> given = EnumSet.noneOf(Dimension.class);
    for (Dimension dimension : Dimension.values()) {
      if (moved.test(new Subject.GivenLength(dimension))) {
        given.add(dimension);
      }
    }
    return given;
  }

  private static Set<Joint> joints(AdjusterKind change, Where where) {
    Set<Joint> moved = EnumSet.noneOf(Joint.class);
    for (Joint joint : Joint.values()) {
      if (Moves.by(change, where, new Subject.JointLaidOut(joint))) {
        moved.add(joint);
      }
    }
    return moved;
  }

  @Test
  void a_joint_is_moved_with_the_part_it_sits_on() {
    Set<Joint> hub =
        EnumSet.of(
            Joint.U, Joint.TO, Joint.W, Joint.BOLT_L, Joint.BOLT_U, Joint.HOUSE_U, Joint.STUD_TO);
    Set<Joint> arms = EnumSet.copyOf(hub);
    arms.addAll(List.of(Joint.L, Joint.SL, Joint.KL, Joint.HOUSE_L));
    Set<Joint> shimmed = EnumSet.copyOf(arms);
    shimmed.addAll(List.of(Joint.LF, Joint.LR, Joint.UF, Joint.UR));
    Set<Joint> knuckle = EnumSet.copyOf(hub);
    knuckle.add(Joint.L);
    Set<Joint> tieRod = Set.of(Joint.TO, Joint.STUD_TO);
    Set<Joint> rack = Set.of(Joint.TI, Joint.STUD_TI);
    Map<AdjusterKind, Set<Joint>> moved = new EnumMap<>(AdjusterKind.class);
    moved.put(AdjusterKind.UPPER_ROD_ENDS, hub);
    moved.put(AdjusterKind.LOWER_ROD_ENDS, arms);
    moved.put(AdjusterKind.ARM, arms);
    moved.put(AdjusterKind.PIVOT_SHIMS, shimmed);
    moved.put(AdjusterKind.KNUCKLE, knuckle);
    moved.put(AdjusterKind.TIE_ROD_LENGTH, tieRod);
    moved.put(AdjusterKind.TIE_ROD_SHIM, tieRod);
    moved.put(AdjusterKind.TOE_LINK_LENGTH, tieRod);
    moved.put(AdjusterKind.RACK_POSITION, rack);
    moved.put(AdjusterKind.WHEEL, Set.of(Joint.W));
    for (AdjusterKind change : AdjusterKind.values()) {
      assertEquals(moved.getOrDefault(change, Set.of()), joints(change, HERE), change.words());
      assertEquals(
          change == AdjusterKind.RACK_POSITION ? rack : Set.of(),
          joints(change, OTHER_SIDE),
          change.words());
      assertEquals(Set.of(), joints(change, ELSEWHERE), change.words());
    }
    for (Joint joint : Joint.values()) {
      Subject laidOut = new Subject.JointLaidOut(joint);
      assertTrue(Moves.by(HappeningKind.HIT_OR_BENT, HERE, laidOut));
      assertTrue(Moves.by(HappeningKind.CUT_WELDED_GROUND, HERE, laidOut));
      assertFalse(Moves.by(HappeningKind.DRIVEN, HERE, laidOut));
    }
  }

  @Test
  void a_given_length_hangs_on_its_part() {
    Map<AdjusterKind, Set<Dimension>> parts = new EnumMap<>(AdjusterKind.class);
    Set<Dimension> radii = Set.of(Dimension.TYRE_LOADED_RADIUS, Dimension.TYRE_SQUASHED_RADIUS);
    parts.put(AdjusterKind.LIMIT_STRAP, Set.of(Dimension.NEW_STRAP_LENGTH));
    parts.put(AdjusterKind.BUMP_STOP_SPACER, Set.of(Dimension.STOP_CRUSH));
    parts.put(AdjusterKind.SHOCK, Set.of(Dimension.SHOCK_OPEN, Dimension.SHOCK_CLOSED));
    parts.put(AdjusterKind.TYRE, radii);
    parts.put(AdjusterKind.TYRE_PRESSURE, radii);
    parts.put(
        AdjusterKind.WHEEL,
        Set.of(
            Dimension.TYRE_LOADED_RADIUS,
            Dimension.TYRE_SQUASHED_RADIUS,
            Dimension.READ_POINT_OUTBOARD,
            Dimension.TOE_ACROSS));
    parts.put(AdjusterKind.STEERING_STOP, Set.of(Dimension.RACK_TRAVEL));
    parts.put(AdjusterKind.RACK_POSITION, Set.of(Dimension.RACK_TRAVEL));
    parts.put(AdjusterKind.ARM, Set.of(Dimension.MARK_INBOARD));
    parts.put(AdjusterKind.KNUCKLE, Set.of(Dimension.MARK_INBOARD, Dimension.READ_POINT_OUTBOARD));
    for (AdjusterKind change : AdjusterKind.values()) {
      assertEquals(
          parts.getOrDefault(change, Set.of()),
          given(s -> Moves.by(change, HERE, s)),
          change.words());
      for (Where other : List.of(Where.SAME_AXLE, OTHER_SIDE, ELSEWHERE)) {
        assertEquals(Set.of(), given(s -> Moves.by(change, other, s)), change + " " + other);
      }
    }
    Set<Dimension> marks = Set.of(Dimension.MARK_TO_LOWEST_FRAME, Dimension.MARK_INBOARD);
    for (Where one : List.of(HERE, Where.SAME_AXLE)) {
      assertEquals(marks, given(s -> Moves.by(HappeningKind.HIT_OR_BENT, one, s)));
      assertEquals(marks, given(s -> Moves.by(HappeningKind.CUT_WELDED_GROUND, one, s)));
    }
    assertEquals(Set.of(), given(s -> Moves.by(HappeningKind.HIT_OR_BENT, OTHER_SIDE, s)));
    assertEquals(Set.of(), given(s -> Moves.by(HappeningKind.DRIVEN, HERE, s)));
  }

  /** Of a spring also how far it is pressed together, which its collar and the shock change. */
  @Test
  void what_was_said_of_a_part_hangs_on_it() {
    for (AdjusterKind part : AdjusterKind.values()) {
      Subject of = new Subject.OfPart(part);
      for (AdjusterKind change : AdjusterKind.values()) {
        boolean presses =
            part == AdjusterKind.SPRING
                && (change == AdjusterKind.SPRING_PRELOAD || change == AdjusterKind.SHOCK);
        assertEquals(change == part || presses, Moves.by(change, HERE, of), change + " " + part);
        assertFalse(Moves.by(change, OTHER_SIDE, of));
        assertFalse(Moves.by(change, ELSEWHERE, of));
      }
      for (HappeningKind happening : HappeningKind.values()) {
        assertFalse(Moves.by(happening, HERE, of));
      }
    }
    Subject spring = new Subject.OfPart(AdjusterKind.SPRING);
    assertEquals(1, Moves.perMm(AdjusterKind.SPRING_PRELOAD, spring).orElseThrow());
    assertTrue(Moves.perMm(AdjusterKind.SPRING, spring).isEmpty());
  }

  @Test
  void a_strap_moves_its_stop_and_its_own_length_there() {
    moves(AdjusterKind.LIMIT_STRAP, HERE, place(ON_THE_STRAP).or(strapLengthOnTheStrap()));
    moves(AdjusterKind.LIMIT_STRAP, OTHER_SIDE, NOTHING);
    moves(AdjusterKind.LIMIT_STRAP, ELSEWHERE, NOTHING);
  }

  @Test
  void a_bump_stop_spacer_moves_touch_and_full_bump_and_the_gap_to_its_pad() {
    moves(
        AdjusterKind.BUMP_STOP_SPACER,
        HERE,
        place(STOP_TOUCH, FULL_BUMP).or(read(Quantity.STOP_GAP)));
    moves(AdjusterKind.BUMP_STOP_SPACER, OTHER_SIDE, NOTHING);
    moves(AdjusterKind.BUMP_STOP_SPACER, ELSEWHERE, NOTHING);
  }

  @Test
  void a_steering_stop_moves_what_was_read_at_full_lock_on_both_sides() {
    Predicate<Subject> full =
        taken(t -> t.steering() == Steering.FULL_LEFT || t.steering() == Steering.FULL_RIGHT);
    moves(AdjusterKind.STEERING_STOP, HERE, full);
    moves(AdjusterKind.STEERING_STOP, OTHER_SIDE, full);
    moves(AdjusterKind.STEERING_STOP, ELSEWHERE, NOTHING);
  }

  @Test
  void rod_ends_arm_its_pivots_and_knuckle_move_everything_of_their_corner_and_nothing_else() {
    for (AdjusterKind kind :
        List.of(
            AdjusterKind.UPPER_ROD_ENDS,
            AdjusterKind.LOWER_ROD_ENDS,
            AdjusterKind.ARM,
            AdjusterKind.PIVOT_SHIMS,
            AdjusterKind.AXLE_LINKS,
            AdjusterKind.PANHARD_ROD,
            AdjusterKind.KNUCKLE)) {
      moves(kind, HERE, EVERYTHING);
      moves(kind, OTHER_SIDE, NOTHING);
      moves(kind, ELSEWHERE, NOTHING);
    }
  }

  @Test
  void the_rack_moves_everything_of_both_wheels_of_its_axle() {
    moves(AdjusterKind.RACK_POSITION, HERE, EVERYTHING);
    moves(AdjusterKind.RACK_POSITION, OTHER_SIDE, EVERYTHING);
    moves(AdjusterKind.RACK_POSITION, ELSEWHERE, NOTHING);
  }

  @Test
  void a_hit_and_a_cut_move_everything_of_their_corner() {
    for (HappeningKind kind : List.of(HappeningKind.HIT_OR_BENT, HappeningKind.CUT_WELDED_GROUND)) {
      moves(kind, HERE, EVERYTHING);
      moves(kind, OTHER_SIDE, NOTHING);
      moves(kind, ELSEWHERE, NOTHING);
    }
  }

  @Test
  void tie_rod_length_and_shim_move_toe_here_and_across_and_the_steering_gaps_here() {
    Predicate<Subject> here =
        read(Quantity.TOE)
            .or(taken(t -> t.steering() != Steering.STRAIGHT))
            .or(
                at(
                    WatchPlace.TIE_ROD_END,
                    WatchPlace.TIE_ROD_UPPER_ARM,
                    WatchPlace.TIE_ROD_LOWER_ARM,
                    WatchPlace.TIE_ROD_FRAME,
                    WatchPlace.TIE_ROD_WHEEL))
            .or(aligned(AlignedThing.TOE, AlignedThing.TOTAL_TOE));
    Predicate<Subject> measured = aligned(AlignedThing.TOE, AlignedThing.TOTAL_TOE);
    Predicate<Subject> across = read(Quantity.TOE).or(measured);
    for (AdjusterKind kind : List.of(AdjusterKind.TIE_ROD_LENGTH, AdjusterKind.TIE_ROD_SHIM)) {
      moves(kind, HERE, here);
      moves(kind, OTHER_SIDE, across);
      moves(kind, ELSEWHERE, NOTHING);
    }
  }

  @Test
  void a_toe_link_moves_toe_its_own_gaps_and_what_turns_with_the_wheel_here_alone() {
    moves(
        AdjusterKind.TOE_LINK_LENGTH,
        HERE,
        read(Quantity.TOE)
            .or(
                at(
                    WatchPlace.TOE_LINK_END,
                    WatchPlace.TOE_LINK_FRAME,
                    WatchPlace.UPPER_ROD_END,
                    WatchPlace.LOWER_ROD_END,
                    WatchPlace.TIE_ROD_END,
                    WatchPlace.TIE_ROD_UPPER_ARM,
                    WatchPlace.TIE_ROD_LOWER_ARM,
                    WatchPlace.TIE_ROD_FRAME,
                    WatchPlace.TIE_ROD_WHEEL,
                    WatchPlace.SPINDLE_WHEEL,
                    WatchPlace.TYRE_FRAME,
                    WatchPlace.TYRE_UPPER_ARM,
                    WatchPlace.TYRE_SHOCK,
                    WatchPlace.HOSE_SLACK,
                    WatchPlace.UNIBALL_ANGLE,
                    WatchPlace.UPPER_UNIBALL_ANGLE,
                    WatchPlace.LOWER_UNIBALL_ANGLE,
                    WatchPlace.CV_ANGLE,
                    WatchPlace.CV_PLUNGE))
            .or(aligned(AlignedThing.TOE, AlignedThing.TOTAL_TOE)));
    moves(AdjusterKind.TOE_LINK_LENGTH, OTHER_SIDE, NOTHING);
    moves(AdjusterKind.TOE_LINK_LENGTH, ELSEWHERE, NOTHING);
  }

  @Test
  void a_drive_shaft_moves_its_gaps_its_joint_s_angle_and_its_plunge() {
    moves(
        AdjusterKind.DRIVE_SHAFT,
        HERE,
        at(
            WatchPlace.DRIVE_SHAFT_FRAME,
            WatchPlace.DRIVE_SHAFT_SHOCK,
            WatchPlace.DRIVE_SHAFT_LOWER_ARM,
            WatchPlace.DRIVE_SHAFT_TRAILING_ARM,
            WatchPlace.U_JOINT_ANGLE,
            WatchPlace.CV_ANGLE,
            WatchPlace.CV_PLUNGE));
    moves(AdjusterKind.DRIVE_SHAFT, OTHER_SIDE, NOTHING);
    moves(AdjusterKind.DRIVE_SHAFT, ELSEWHERE, NOTHING);
  }

  @Test
  void preload_and_spring_move_ride_at_every_corner_and_coil_bind_here() {
    Predicate<Subject> ride =
        place(RIDE)
            .or(
                taken(
                    t ->
                        t.at() == RIDE
                            && (t.quantity() == Quantity.CAMBER
                                || t.quantity() == Quantity.TOE
                                || t.place() == WatchPlace.CV_ANGLE)))
            .or(aligned(AlignedThing.values()));
    for (AdjusterKind kind : List.of(AdjusterKind.SPRING_PRELOAD, AdjusterKind.SPRING)) {
      moves(kind, HERE, ride.or(at(WatchPlace.SPRING_UPPER_ARM)));
      moves(kind, OTHER_SIDE, ride);
      moves(kind, ELSEWHERE, ride);
    }
  }

  @Test
  void a_shock_moves_its_lengths_its_ends_and_the_gaps_to_it() {
    moves(
        AdjusterKind.SHOCK,
        HERE,
        place(STRAP_OFF, FULL_BUMP)
            .or(read(Quantity.SHOCK_LENGTH))
            .or(
                at(
                    WatchPlace.SHOCK_FRAME,
                    WatchPlace.SHOCK_AXLE,
                    WatchPlace.SHOCK_UPPER_ARM,
                    WatchPlace.SHOCK_TRAILING_ARM,
                    WatchPlace.DRIVE_SHAFT_SHOCK,
                    WatchPlace.SPRING_UPPER_ARM,
                    WatchPlace.TYRE_SHOCK)));
    moves(AdjusterKind.SHOCK, OTHER_SIDE, NOTHING);
    moves(AdjusterKind.SHOCK, ELSEWHERE, NOTHING);
  }

  @Test
  void tyre_pressure_and_wheel_move_their_gaps_but_never_wheel_position() {
    Predicate<Subject> tyre =
        at(WatchPlace.TYRE_FRAME, WatchPlace.TYRE_UPPER_ARM, WatchPlace.TYRE_SHOCK)
            .or(aligned(AlignedThing.GROUND_POINT, AlignedThing.TRACK));
    Predicate<Subject> wheel = tyre.or(at(WatchPlace.TIE_ROD_WHEEL, WatchPlace.SPINDLE_WHEEL));
    moves(AdjusterKind.TYRE, HERE, tyre);
    moves(AdjusterKind.TYRE_PRESSURE, HERE, tyre);
    moves(AdjusterKind.WHEEL, HERE, wheel);
    for (AdjusterKind kind :
        List.of(AdjusterKind.TYRE, AdjusterKind.TYRE_PRESSURE, AdjusterKind.WHEEL)) {
      moves(kind, OTHER_SIDE, NOTHING);
      moves(kind, ELSEWHERE, NOTHING);
    }
  }

  @Test
  void a_hose_moves_its_slack() {
    moves(AdjusterKind.HOSE, HERE, at(WatchPlace.HOSE_SLACK));
    moves(AdjusterKind.HOSE, OTHER_SIDE, NOTHING);
    moves(AdjusterKind.HOSE, ELSEWHERE, NOTHING);
  }

  @Test
  void driving_moves_the_strap_s_length_and_wears_where_it_stops() {
    moves(HappeningKind.DRIVEN, HERE, strapLengthOnTheStrap());
    moves(HappeningKind.DRIVEN, OTHER_SIDE, NOTHING);
    moves(HappeningKind.DRIVEN, ELSEWHERE, NOTHING);
    for (Subject subject : ALL) {
      for (HappeningKind kind : HappeningKind.values()) {
        assertEquals(
            kind == HappeningKind.DRIVEN && place(ON_THE_STRAP).test(subject),
            Moves.wears(kind, HERE, subject));
      }
    }
  }

  @Test
  void at_the_other_end_of_a_solid_axle_what_holds_it_moves_everything_and_its_stops_nothing() {
    List<AdjusterKind> holds =
        List.of(
            AdjusterKind.UPPER_ROD_ENDS,
            AdjusterKind.LOWER_ROD_ENDS,
            AdjusterKind.ARM,
            AdjusterKind.PIVOT_SHIMS,
            AdjusterKind.AXLE_LINKS,
            AdjusterKind.PANHARD_ROD,
            AdjusterKind.KNUCKLE);
    for (AdjusterKind kind : AdjusterKind.values()) {
      Predicate<Subject> expected = s -> Moves.by(kind, OTHER_SIDE, s);
      if (holds.contains(kind)) {
        expected = EVERYTHING;
      } else if (kind == AdjusterKind.DRIVE_SHAFT) {
        // One shaft drives both ends.
        expected = s -> Moves.by(kind, HERE, s);
      }
      moves(kind, Where.SAME_AXLE, expected);
    }
    moves(AdjusterKind.LIMIT_STRAP, Where.SAME_AXLE, NOTHING);
    moves(AdjusterKind.BUMP_STOP_SPACER, Where.SAME_AXLE, NOTHING);
    moves(HappeningKind.HIT_OR_BENT, Where.SAME_AXLE, EVERYTHING);
    moves(HappeningKind.CUT_WELDED_GROUND, Where.SAME_AXLE, EVERYTHING);
    moves(HappeningKind.DRIVEN, Where.SAME_AXLE, NOTHING);
  }

  @Test
  void a_crossed_place_moves_with_its_own_stop_and_with_the_one_the_other_end_stood_on() {
    for (HeightName here : HeightName.values()) {
      for (HeightName other : HeightName.values()) {
        StopPosition place = new StopPosition(here, Set.of(other));
        assertCrossed(AdjusterKind.LIMIT_STRAP, place, other == ON_THE_STRAP);
        assertCrossed(
            AdjusterKind.BUMP_STOP_SPACER, place, other == STOP_TOUCH || other == FULL_BUMP);
        assertCrossed(AdjusterKind.SHOCK, place, other == STRAP_OFF || other == FULL_BUMP);
        assertEquals(
            here == ON_THE_STRAP || other == ON_THE_STRAP,
            Moves.wears(HappeningKind.DRIVEN, HERE, place));
      }
    }
  }

  private static void assertCrossed(AdjusterKind kind, StopPosition place, boolean otherHolds) {
    // Here it moves what it moves both together; at the other end what stood on it there.
    assertEquals(Moves.by(kind, HERE, new StopPosition(place.name())), Moves.by(kind, HERE, place));
    assertEquals(
        otherHolds && place.name().onePlace(),
        Moves.by(kind, Where.SAME_AXLE, place),
        kind + " " + place);
    assertEquals(false, Moves.by(kind, OTHER_SIDE, place));
    assertEquals(false, Moves.by(kind, ELSEWHERE, place));
  }

  @Test
  void here_across_and_elsewhere_are_seen_from_the_corner_asked_about() {
    for (Place corner : Place.values()) {
      for (Place changed : Place.values()) {
        Where expected =
            corner == changed ? HERE : corner.front() == changed.front() ? OTHER_SIDE : ELSEWHERE;
        assertEquals(expected, Where.seenFrom(corner, changed, false));
        assertEquals(
            expected == OTHER_SIDE ? Where.SAME_AXLE : expected,
            Where.seenFrom(corner, changed, true));
      }
    }
  }
}
