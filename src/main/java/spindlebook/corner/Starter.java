package spindlebook.corner;

import static spindlebook.corner.SettingUnit.HOLES;
import static spindlebook.corner.SettingUnit.LENGTH;
import static spindlebook.corner.SettingUnit.TURNS;
import static spindlebook.corner.SettingUnit.WORDS;

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

  private Starter() {}

  public static List<Tool> tools() {
    return List.of(tape(), drills(), angleFinder());
  }

  public static Tool tape() {
    return new Tool(
        "tape", "tape, sixteenths", ToolUse.TAPE, in("1/16"), null, in("1/32"), in("1/32"), null);
  }

  /** A shank held in the gap: no hook, so no error shared by all it reads. */
  public static Tool drills() {
    return new Tool(
        "drills", "drill shanks", ToolUse.GAPS, in("1/64"), null, null, in("1/64"), null);
  }

  public static Tool angleFinder() {
    return new Tool(
        "angle-finder",
        "angle finder, tenths",
        ToolUse.ANGLES,
        null,
        deg("0.1"),
        null,
        null,
        deg("0.1"));
  }

  /** What a steered double A-arm corner is watched for. */
  public static List<WatchPoint> watchPoints(Layout layout) {
    if (layout != Layout.STEERED_DOUBLE_A_ARM) {
      throw new IllegalArgumentException("no watch points are known yet for " + layout.words());
    }
    return List.of(
        gap("upper-rod-end", WatchPlace.UPPER_ROD_END, "1/16"),
        gap("lower-rod-end", WatchPlace.LOWER_ROD_END, "1/16"),
        gap("tie-rod-end", WatchPlace.TIE_ROD_END, "1/16"),
        gap("tie-rod-upper-arm", WatchPlace.TIE_ROD_UPPER_ARM, "1/4"),
        gap("shock-upper-arm", WatchPlace.SHOCK_UPPER_ARM, "1/4"),
        gap("spindle-wheel", WatchPlace.SPINDLE_WHEEL, "1/2"),
        gap("tyre-frame", WatchPlace.TYRE_FRAME, "1"),
        gap("hose-slack", WatchPlace.HOSE_SLACK, "1"));
  }

  public static List<Adjuster> adjusters(Layout layout) {
    if (layout != Layout.STEERED_DOUBLE_A_ARM) {
      throw new IllegalArgumentException("no adjusters are known yet for " + layout.words());
    }
    return List.of(
        adjuster("limit-strap", AdjusterKind.LIMIT_STRAP, LENGTH),
        adjuster("bump-stop-spacer", AdjusterKind.BUMP_STOP_SPACER, LENGTH),
        adjuster("upper-rod-ends", AdjusterKind.UPPER_ROD_ENDS, TURNS),
        adjuster("lower-rod-ends", AdjusterKind.LOWER_ROD_ENDS, TURNS),
        adjuster("tie-rod", AdjusterKind.TIE_ROD_LENGTH, TURNS),
        adjuster("tie-rod-shim", AdjusterKind.TIE_ROD_SHIM, LENGTH),
        adjuster("rack", AdjusterKind.RACK_POSITION, LENGTH),
        adjuster("steering-stop", AdjusterKind.STEERING_STOP, TURNS),
        adjuster("preload", AdjusterKind.SPRING_PRELOAD, TURNS),
        adjuster("spring", AdjusterKind.SPRING, WORDS),
        adjuster("shock", AdjusterKind.SHOCK, WORDS),
        adjuster("tyre", AdjusterKind.TYRE, WORDS),
        adjuster("tyre-pressure", AdjusterKind.TYRE_PRESSURE, WORDS),
        adjuster("wheel", AdjusterKind.WHEEL, WORDS),
        adjuster("arm", AdjusterKind.ARM, WORDS),
        adjuster("knuckle", AdjusterKind.KNUCKLE, WORDS),
        adjuster("hose", AdjusterKind.HOSE, WORDS));
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
