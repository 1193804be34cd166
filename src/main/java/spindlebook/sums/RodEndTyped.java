package spindlebook.sums;

import java.util.List;
import java.util.Map;
import spindlebook.entry.Joint;
import spindlebook.linkage.Vec;
import spindlebook.page.Asked;
import spindlebook.parts.ArmOnRodEnds;
import spindlebook.parts.RodThread;
import spindlebook.parts.RodThreads;
import spindlebook.parts.Turns;
import spindlebook.uncertainty.Figure;
import spindlebook.units.TypedAngle;

/** An arm, its rod ends, and their turns or the change they shall bring about, as typed. */
final class RodEndTyped {
  private static final double MOST_TURNS = 40;
  private static final double MOST_CHANGE_RAD = Math.toRadians(10);

  private final Asked a;
  private final TypedFigures good;
  private final ArmOnRodEnds.Arm which;
  private final RodThread front;
  private final RodThread rear;
  private final Figure apart;
  private final Figure arm;
  private final Figure spread;

  /** As typed; none where a change is wanted. */
  final Turns turns;

  private final TypedAngle camber;
  private final TypedAngle caster;

  /**
   * @param joints as laid out for the linkage, which are then not asked for; empty without all nine
   */
  RodEndTyped(Asked a, TypedFigures good, Map<Joint, Vec> joints) {
    this.a = a;
    this.good = good;
    this.which =
        a.<ArmOnRodEnds.Arm>one("which", "Which arm")
            .option(ArmOnRodEnds.Arm.UPPER, "upper")
            .option(ArmOnRodEnds.Arm.LOWER, "lower")
            .first(ArmOnRodEnds.Arm.UPPER)
            .read();
    this.front =
        thread("thread", "Thread of the front rod end")
            .hint("As stamped: 5/8-18 or M16x1.5, with LH behind for left-hand.")
            .needed("Type the thread of the front rod end, like 5/8-18 or M16x1.5.");
    RodThread other =
        thread("rear-thread", "Thread of the rear rod end").hint("Empty: as the front one.").read();
    this.rear = a.has("rear-thread") ? other : front;
    if (joints.isEmpty()) {
      this.apart =
          sized(
              "apart",
              "Upper joint above the lower",
              "Middle of ball to middle of ball, straight up.",
              "Type how far the upper joint stands above the lower");
      this.arm =
          sized(
              "arm",
              "Arm's length",
              "From its pivot line to the ball joint, square to the line.",
              "Type the arm's length, square to its pivot line");
      this.spread =
          sized(
              "spread",
              "Pivot to pivot",
              "Middle of bolt to middle of bolt, along the car.",
              "Type pivot to pivot, along the car");
    } else {
      boolean upper = which == ArmOnRodEnds.Arm.UPPER;
      Vec pivot = joints.get(upper ? Joint.UF : Joint.LF);
      Vec line = joints.get(upper ? Joint.UR : Joint.LR).minus(pivot);
      Vec ball = joints.get(upper ? Joint.U : Joint.L).minus(pivot);
      this.apart = good.mm("apart", joints.get(Joint.U).z() - joints.get(Joint.L).z());
      this.arm = good.mm("arm", ball.cross(line.unit()).length());
      this.spread = good.mm("spread", Math.abs(line.x()));
    }
    this.turns =
        new Turns(
            turns("front", "Turns of the front rod end", "+ out, − in; such as 1 1/2."),
            turns("rear", "Turns of the rear rod end", "+ out, − in."));
    this.camber =
        change(
            "camber", "Or: camber to change by", "+ top outward. Then the turns are worked out.");
    this.caster = change("caster", "Or: caster to change by", "+ top rearward.");
  }

  private Asked.Box<RodThread> thread(String name, String label) {
    return a.typed(name, label, text -> RodThreads.named(text).orElseGet(() -> none(name, text)));
  }

  private RodThread none(String name, String text) {
    List<String> near = RodThreads.asThickAs(text);
    a.wrong(
        name,
        near.isEmpty()
            ? "No such thread is listed: type it as stamped, like 5/8-18 or M16x1.5."
            : "Which pitch? Listed are " + String.join(", ", near) + ".");
    return null;
  }

  private Figure sized(String name, String label, String hint, String sentence) {
    return good.mm(
        name, good.sized(name, label, sentence).hint(hint).needed(sentence + TypedFigures.SIZED));
  }

  private double turns(String name, String label, String hint) {
    Double number =
        good.number(
                name,
                label,
                -MOST_TURNS,
                MOST_TURNS,
                "Type turns as a number such as 1.5, 1 1/2 or −2, 40 at most.")
            .hint(hint)
            .unit("turns")
            .check(
                n -> !a.has("camber") && !a.has("caster"),
                "Type turns, or a change of camber and caster: not both.")
            .read();
    return number == null ? 0 : number;
  }

  private TypedAngle change(String name, String label, String hint) {
    return a.angle(name, label)
        .hint(hint)
        .check(
            x -> Math.abs(x.rad()) <= MOST_CHANGE_RAD,
            "Rod ends do not change that much: type 10° or less.")
        .read();
  }

  /** Once all was read without a problem. */
  ArmOnRodEnds arm(Figure threadRad) {
    return new ArmOnRodEnds(which, front, rear, apart, arm, spread, threadRad);
  }

  boolean changeWanted() {
    return camber != null || caster != null;
  }

  double camberRad() {
    return camber == null ? 0 : camber.rad();
  }

  double casterRad() {
    return caster == null ? 0 : caster.rad();
  }
}
