package spindlebook.definition;

import static spindlebook.definition.Part.AXLE;
import static spindlebook.definition.Part.DRIVE_SHAFT;
import static spindlebook.definition.Part.FRAME;
import static spindlebook.definition.Part.HOSE;
import static spindlebook.definition.Part.LINK;
import static spindlebook.definition.Part.LOWER_ARM;
import static spindlebook.definition.Part.ROD_END;
import static spindlebook.definition.Part.SHOCK;
import static spindlebook.definition.Part.SPINDLE;
import static spindlebook.definition.Part.SPRING;
import static spindlebook.definition.Part.TANK;
import static spindlebook.definition.Part.TIE_ROD;
import static spindlebook.definition.Part.TOE_LINK;
import static spindlebook.definition.Part.TRAILING_ARM;
import static spindlebook.definition.Part.TYRE;
import static spindlebook.definition.Part.UNIBALL;
import static spindlebook.definition.Part.UPPER_ARM;
import static spindlebook.definition.Part.WHEEL;

import java.util.Set;

/**
 * The closed list of places between two parts that can be watched. Closed so that every change
 * knows what it moves: the parts named here are what {@code Moves} asks for.
 */
public enum WatchPlace {
  UPPER_ROD_END("upper rod end to its housing", Measure.GAP, true, ROD_END, UPPER_ARM),
  LOWER_ROD_END("lower rod end to its housing", Measure.GAP, true, ROD_END, LOWER_ARM),
  TIE_ROD_END("tie rod end to its housing", Measure.GAP, true, ROD_END, TIE_ROD),
  TIE_ROD_UPPER_ARM("tie rod to upper arm", Measure.GAP, true, TIE_ROD, UPPER_ARM),
  TIE_ROD_LOWER_ARM("tie rod to lower arm", Measure.GAP, true, TIE_ROD, LOWER_ARM),
  TIE_ROD_FRAME("tie rod to frame", Measure.GAP, true, TIE_ROD, FRAME),
  TIE_ROD_WHEEL("tie rod to wheel", Measure.GAP, true, TIE_ROD, WHEEL),
  TOE_LINK_END("toe link's rod end to its housing", Measure.GAP, true, ROD_END, TOE_LINK),
  TOE_LINK_FRAME("toe link to frame", Measure.GAP, false, TOE_LINK, FRAME),
  TRAILING_ARM_PIVOT(
      "trailing arm's pivot to its bracket", Measure.GAP, false, TRAILING_ARM, FRAME),
  TRAILING_ARM_FRAME("trailing arm to frame", Measure.GAP, false, TRAILING_ARM, FRAME),
  AXLE_FRAME("axle tube to frame", Measure.GAP, false, AXLE, FRAME),
  LINK_FRAME("link to frame", Measure.GAP, false, LINK, FRAME),
  UPPER_ARM_FRAME("upper arm to frame", Measure.GAP, false, UPPER_ARM, FRAME),
  LOWER_ARM_FRAME("lower arm to frame", Measure.GAP, false, LOWER_ARM, FRAME),
  SHOCK_UPPER_ARM("shock to upper arm", Measure.GAP, false, SHOCK, UPPER_ARM),
  SHOCK_TRAILING_ARM("shock to trailing arm", Measure.GAP, false, SHOCK, TRAILING_ARM),
  AXLE_TANK("axle to fuel tank", Measure.GAP, false, AXLE, TANK),
  SHOCK_AXLE("shock to axle", Measure.GAP, false, SHOCK, AXLE),
  SHOCK_FRAME("shock to frame", Measure.GAP, false, SHOCK, FRAME),
  SPRING_UPPER_ARM("spring to upper arm", Measure.GAP, false, SPRING, UPPER_ARM),
  SPINDLE_WHEEL("spindle parts to the wheel's barrel", Measure.GAP, true, SPINDLE, WHEEL),
  TYRE_FRAME("tyre to frame", Measure.GAP, true, TYRE, FRAME),
  TYRE_UPPER_ARM("tyre to upper arm", Measure.GAP, true, TYRE, UPPER_ARM),
  TYRE_SHOCK("tyre to shock", Measure.GAP, true, TYRE, SHOCK),
  HOSE_SLACK("slack in the brake hose", Measure.GAP, true, HOSE, FRAME),
  DRIVE_SHAFT_FRAME("drive shaft to frame", Measure.GAP, false, DRIVE_SHAFT, FRAME),
  DRIVE_SHAFT_SHOCK("drive shaft to shock", Measure.GAP, false, DRIVE_SHAFT, SHOCK),
  DRIVE_SHAFT_LOWER_ARM("drive shaft to lower arm", Measure.GAP, false, DRIVE_SHAFT, LOWER_ARM),
  DRIVE_SHAFT_TRAILING_ARM(
      "drive shaft to trailing arm", Measure.GAP, false, DRIVE_SHAFT, TRAILING_ARM),
  UNIBALL_ANGLE("uniball angle", Measure.ANGLE, true, UNIBALL, UPPER_ARM),
  UPPER_UNIBALL_ANGLE("upper uniball angle", Measure.ANGLE, true, UNIBALL, UPPER_ARM),
  LOWER_UNIBALL_ANGLE("lower uniball angle", Measure.ANGLE, true, UNIBALL, LOWER_ARM),
  U_JOINT_ANGLE("U-joint angle", Measure.ANGLE, false, DRIVE_SHAFT, AXLE),
  CV_ANGLE("CV joint angle", Measure.ANGLE, true, DRIVE_SHAFT, SPINDLE),
  CV_PLUNGE("CV joint plunge", Measure.PLUNGE, true, DRIVE_SHAFT, SPINDLE);

  private final String words;
  private final Measure measure;
  private final boolean steered;
  private final Set<Part> parts;

  WatchPlace(String words, Measure measure, boolean steered, Part one, Part other) {
    this.words = words;
    this.measure = measure;
    this.steered = steered;
    this.parts = Set.of(one, other);
  }

  public String words() {
    return words;
  }

  public Measure measure() {
    return measure;
  }

  /** Steering moves one of the two parts: on a steered corner it is looked at on both locks too. */
  public boolean steered() {
    return steered;
  }

  /**
   * Whether steering only makes it worse: what a bolt makes with its housing while it turns about
   * the steering axis is largest at one end of the turn.
   */
  public boolean worstAtALock() {
    return this == UPPER_UNIBALL_ANGLE || this == LOWER_UNIBALL_ANGLE;
  }

  /** It lies at the middle of a solid axle: read from one end, it is read for both. */
  public boolean ofTheAxle() {
    return this == AXLE_TANK || this == U_JOINT_ANGLE;
  }

  public boolean has(Part part) {
    return parts.contains(part);
  }
}
