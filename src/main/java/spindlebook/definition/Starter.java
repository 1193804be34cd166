package spindlebook.definition;

import static spindlebook.definition.SettingUnit.HOLES;
import static spindlebook.definition.SettingUnit.LENGTH;
import static spindlebook.definition.SettingUnit.TURNS;
import static spindlebook.definition.SettingUnit.WORDS;

import java.util.ArrayList;
import java.util.List;
import spindlebook.units.LengthUnit;
import spindlebook.units.TypedAngle;
import spindlebook.units.TypedLength;

/**
 * What a new car and a new corner start with. The rules are common practice, no source; each is the
 * owner's to change, and a part maker's drawing wins.
 */
public final class Starter {
  public static final String COMMON = "common practice, no source";

  private static final Tool TAPE =
      new Tool(
          "tape", "tape, sixteenths", ToolUse.TAPE, in("1/16"), null, in("1/32"), in("1/32"), null);

  /** A shank held in the gap: no hook, so no error shared by all it reads. */
  private static final Tool DRILLS =
      new Tool("drills", "drill shanks", ToolUse.GAPS, in("1/64"), null, null, in("1/64"), null);

  private static final Tool ANGLE_FINDER =
      new Tool(
          "angle-finder",
          "angle finder, tenths",
          ToolUse.ANGLES,
          null,
          deg("0.1"),
          null,
          null,
          deg("0.1"));

  private Starter() {}

  public static List<Tool> tools() {
    return List.of(tape(), drills(), angleFinder());
  }

  public static Tool tape() {
    return TAPE;
  }

  public static Tool drills() {
    return DRILLS;
  }

  public static Tool angleFinder() {
    return ANGLE_FINDER;
  }

  /** Under a sweep's wheel where no other tool is named: whole degrees. */
  public static Tool turnPlates() {
    return new Tool(
        "turn-plates",
        "turn plates, whole degrees",
        ToolUse.ANGLES,
        null,
        deg("1"),
        null,
        null,
        deg("0.25"));
  }

  /** What a corner is watched for. What is not there, a driven wheel's joint say, is retired. */
  public static List<WatchPoint> watchPoints(Layout layout) {
    return switch (layout) {
      case STEERED_DOUBLE_A_ARM ->
          List.of(
              gap("upper-rod-end", WatchPlace.UPPER_ROD_END, "1/16"),
              gap("lower-rod-end", WatchPlace.LOWER_ROD_END, "1/16"),
              gap("tie-rod-end", WatchPlace.TIE_ROD_END, "1/16"),
              gap("tie-rod-upper-arm", WatchPlace.TIE_ROD_UPPER_ARM, "1/4"),
              gap("shock-upper-arm", WatchPlace.SHOCK_UPPER_ARM, "1/4"),
              gap("spindle-wheel", WatchPlace.SPINDLE_WHEEL, "1/2"),
              gap("tyre-frame", WatchPlace.TYRE_FRAME, "1"),
              uniballAngle("upper-uniball-angle", WatchPlace.UPPER_UNIBALL_ANGLE),
              uniballAngle("lower-uniball-angle", WatchPlace.LOWER_UNIBALL_ANGLE),
              gap("hose-slack", WatchPlace.HOSE_SLACK, "1"));
      case UNSTEERED_DOUBLE_A_ARM ->
          List.of(
              gap("upper-rod-end", WatchPlace.UPPER_ROD_END, "1/16"),
              gap("lower-rod-end", WatchPlace.LOWER_ROD_END, "1/16"),
              gap("toe-link-end", WatchPlace.TOE_LINK_END, "1/16"),
              gap("shock-upper-arm", WatchPlace.SHOCK_UPPER_ARM, "1/4"),
              gap("tyre-frame", WatchPlace.TYRE_FRAME, "1"),
              gap("drive-shaft-lower-arm", WatchPlace.DRIVE_SHAFT_LOWER_ARM, "1/4"),
              cvAngle(),
              cvPlunge(),
              gap("hose-slack", WatchPlace.HOSE_SLACK, "1"));
      case TRAILING_ARM ->
          List.of(
              gap("arm-pivot", WatchPlace.TRAILING_ARM_PIVOT, "1/16"),
              gap("arm-frame", WatchPlace.TRAILING_ARM_FRAME, "1/4"),
              gap("shock-frame", WatchPlace.SHOCK_FRAME, "1/4"),
              gap("tyre-frame", WatchPlace.TYRE_FRAME, "1"),
              gap("drive-shaft-arm", WatchPlace.DRIVE_SHAFT_TRAILING_ARM, "1/4"),
              cvAngle(),
              cvPlunge(),
              gap("hose-slack", WatchPlace.HOSE_SLACK, "1"));
      case SOLID_AXLE_END ->
          List.of(
              gap("axle-frame", WatchPlace.AXLE_FRAME, "1/4"),
              gap("link-frame", WatchPlace.LINK_FRAME, "1/4"),
              uJointAngle(),
              gap("axle-tank", WatchPlace.AXLE_TANK, "1"),
              gap("shock-axle", WatchPlace.SHOCK_AXLE, "1/4"),
              gap("tyre-frame", WatchPlace.TYRE_FRAME, "1"),
              gap("hose-slack", WatchPlace.HOSE_SLACK, "1"));
    };
  }

  public static List<Adjuster> adjusters(Layout layout) {
    return switch (layout) {
      case STEERED_DOUBLE_A_ARM ->
          adjusters(
              List.of(
                  adjuster("upper-rod-ends", AdjusterKind.UPPER_ROD_ENDS, TURNS),
                  adjuster("lower-rod-ends", AdjusterKind.LOWER_ROD_ENDS, TURNS),
                  adjuster("tie-rod", AdjusterKind.TIE_ROD_LENGTH, TURNS),
                  adjuster("tie-rod-shim", AdjusterKind.TIE_ROD_SHIM, LENGTH),
                  adjuster("rack", AdjusterKind.RACK_POSITION, LENGTH),
                  adjuster("steering-stop", AdjusterKind.STEERING_STOP, TURNS)),
              List.of(
                  adjuster("arm", AdjusterKind.ARM, WORDS),
                  adjuster("knuckle", AdjusterKind.KNUCKLE, WORDS)));
      case UNSTEERED_DOUBLE_A_ARM ->
          adjusters(
              List.of(
                  adjuster("upper-rod-ends", AdjusterKind.UPPER_ROD_ENDS, TURNS),
                  adjuster("lower-rod-ends", AdjusterKind.LOWER_ROD_ENDS, TURNS),
                  adjuster("toe-link", AdjusterKind.TOE_LINK_LENGTH, TURNS)),
              List.of(
                  adjuster("arm", AdjusterKind.ARM, WORDS),
                  adjuster("knuckle", AdjusterKind.KNUCKLE, WORDS),
                  adjuster("drive-shaft", AdjusterKind.DRIVE_SHAFT, WORDS)));
      case TRAILING_ARM ->
          adjusters(
              List.of(adjuster("pivot-shims", AdjusterKind.PIVOT_SHIMS, LENGTH)),
              List.of(
                  adjuster("arm", AdjusterKind.ARM, WORDS),
                  adjuster("drive-shaft", AdjusterKind.DRIVE_SHAFT, WORDS)));
      case SOLID_AXLE_END ->
          adjusters(
              List.of(
                  adjuster("links", AdjusterKind.AXLE_LINKS, TURNS),
                  adjuster("panhard-rod", AdjusterKind.PANHARD_ROD, TURNS)),
              List.of(adjuster("drive-shaft", AdjusterKind.DRIVE_SHAFT, WORDS)));
    };
  }

  /** Those of one corner: what a solid axle has once is set at its left end. */
  public static List<Adjuster> adjusters(Layout layout, Place place) {
    boolean rightEnd = layout == Layout.SOLID_AXLE_END && !place.left();
    return adjusters(layout).stream().filter(a -> !rightEnd || !a.kind().ofTheAxle()).toList();
  }

  /** The stops first, then what the layout has to set, then what can be swapped. */
  private static List<Adjuster> adjusters(List<Adjuster> set, List<Adjuster> swapped) {
    List<Adjuster> all = new ArrayList<>();
    all.add(adjuster("limit-strap", AdjusterKind.LIMIT_STRAP, LENGTH));
    all.add(adjuster("bump-stop-spacer", AdjusterKind.BUMP_STOP_SPACER, LENGTH));
    all.addAll(set);
    all.add(adjuster("preload", AdjusterKind.SPRING_PRELOAD, TURNS));
    all.add(adjuster("spring", AdjusterKind.SPRING, WORDS));
    all.add(adjuster("shock", AdjusterKind.SHOCK, WORDS));
    all.add(adjuster("tyre", AdjusterKind.TYRE, WORDS));
    all.add(adjuster("tyre-pressure", AdjusterKind.TYRE_PRESSURE, WORDS));
    all.add(adjuster("wheel", AdjusterKind.WHEEL, WORDS));
    all.addAll(swapped);
    all.add(adjuster("hose", AdjusterKind.HOSE, WORDS));
    return List.copyOf(all);
  }

  /** What a single joint of the drive shaft makes without binding; its maker's number wins. */
  private static WatchPoint uJointAngle() {
    return new WatchPoint(
        "u-joint-angle", WatchPlace.U_JOINT_ANGLE, null, Keep.atMost(deg("20")), COMMON);
  }

  /** What a uniball with misalignment spacers makes without binding; its maker's number wins. */
  private static WatchPoint uniballAngle(String point, WatchPlace place) {
    return new WatchPoint(point, place, null, Keep.atMost(deg("22")), COMMON);
  }

  /** What the joint makes without binding while it turns; its maker's number wins. */
  private static WatchPoint cvAngle() {
    return new WatchPoint("cv-angle", WatchPlace.CV_ANGLE, null, Keep.atMost(deg("18")), COMMON);
  }

  /** From the middle of the joint's plunge, outward +. */
  private static WatchPoint cvPlunge() {
    return new WatchPoint(
        "cv-plunge",
        WatchPlace.CV_PLUNGE,
        "CV joint plunge from its middle, out +",
        Keep.between(in("-3/8"), in("3/8")),
        COMMON);
  }

  public static List<HeldBack> heldBack() {
    return List.of(
        new HeldBack(Allowance.STRAP_STRETCH, null, 10.0, null, COMMON),
        new HeldBack(Allowance.IMPACT_RESERVE, in("1/4"), null, null, COMMON),
        new HeldBack(Allowance.SHOCK_OPEN_RESERVE, in("1/2"), null, null, COMMON),
        new HeldBack(Allowance.SHOCK_CLOSED_RESERVE, in("1/2"), null, null, COMMON),
        new HeldBack(Allowance.GROUND_CLEARANCE, in("2"), null, null, COMMON));
  }

  private static WatchPoint gap(String point, WatchPlace place, String inches) {
    return new WatchPoint(point, place, null, Keep.atLeast(in(inches)), COMMON);
  }

  private static Adjuster adjuster(String name, AdjusterKind kind, SettingUnit unit) {
    boolean shortens = kind == AdjusterKind.LIMIT_STRAP && (unit == HOLES || unit == TURNS);
    return new Adjuster(name, kind, null, unit, null, shortens, null);
  }

  static TypedLength in(String inches) {
    double value = 0;
    for (String piece : inches.split(" ")) {
      String[] part = piece.split("/");
      value +=
          part.length == 1
              ? Double.parseDouble(part[0])
              : Double.parseDouble(part[0]) / Double.parseDouble(part[1]);
    }
    return new TypedLength(
        inches + " in", value * LengthUnit.INCH.mm(), LengthUnit.INCH, "starter");
  }

  static TypedAngle deg(String degrees) {
    return new TypedAngle(degrees + "°", Math.toRadians(Double.parseDouble(degrees)), "starter");
  }
}
