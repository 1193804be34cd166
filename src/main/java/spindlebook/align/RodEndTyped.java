package spindlebook.align;

import java.util.List;
import spindlebook.alignment.ArmOnRodEnds;
import spindlebook.alignment.RodThread;
import spindlebook.alignment.RodThreads;
import spindlebook.alignment.Turns;
import spindlebook.uncertainty.Figure;
import spindlebook.units.LengthUnit;
import spindlebook.units.TypedAngle;
import spindlebook.units.TypedLength;
import spindlebook.web.Choice;
import spindlebook.web.FormPart;
import spindlebook.web.Posted;

/** An arm, its rod ends, and their turns or the change they shall bring about, as typed. */
final class RodEndTyped {
  private static final double MOST_TURNS = 40;
  private static final double MOST_CHANGE_RAD = Math.toRadians(10);
  private static final List<String> FIELDS =
      List.of(
          "thread", "rear-thread", "apart", "arm", "spread", "front", "rear", "camber", "caster");

  private final Posted typed;
  private final LengthUnit unit;
  private final TypedFigures good;
  private ArmOnRodEnds.Arm which;
  private RodThread front;
  private RodThread rear;
  private TypedLength apart;
  private TypedLength arm;
  private TypedLength spread;
  private Turns turns;
  private TypedAngle camber;
  private TypedAngle caster;

  RodEndTyped(Posted typed, LengthUnit unit, TypedFigures good) {
    this.typed = typed;
    this.unit = unit;
    this.good = good;
  }

  boolean asked() {
    return FIELDS.stream().anyMatch(typed::has);
  }

  /** Reads the fields; what is wrong is told of in them. */
  void read() {
    which = typed.word("which", ArmOnRodEnds.Arm.class, ArmOnRodEnds.Arm.UPPER);
    if (typed.has("thread")) {
      front = thread("thread");
    } else {
      typed.wrong("thread", "Type the thread of the front rod end, like 5/8-18 or M16x1.5.");
    }
    rear = typed.has("rear-thread") ? thread("rear-thread") : front;
    apart = good.sized("apart", "Type how far the upper joint stands above the lower");
    arm = good.sized("arm", "Type the arm's length, square to its pivot line");
    spread = good.sized("spread", "Type pivot to pivot, along the car");
    turns = new Turns(turns("front"), turns("rear"));
    camber = change("camber");
    caster = change("caster");
  }

  private RodThread thread(String name) {
    String text = typed.text(name);
    return RodThreads.named(text)
        .orElseGet(
            () -> {
              List<String> near = RodThreads.asThickAs(text);
              typed.wrong(
                  name,
                  near.isEmpty()
                      ? "No such thread is listed: type it as stamped, like 5/8-18 or M16x1.5."
                      : "Which pitch? Listed are " + String.join(", ", near) + ".");
              return null;
            });
  }

  private double turns(String name) {
    Double number =
        good.number(
            name,
            -MOST_TURNS,
            MOST_TURNS,
            "Type turns as a number such as 1.5, 1 1/2 or −2, 40 at most.");
    if (number != null && (typed.has("camber") || typed.has("caster"))) {
      typed.wrong(name, "Type turns, or a change of camber and caster: not both.");
    }
    return number == null ? 0 : number;
  }

  private TypedAngle change(String name) {
    TypedAngle angle = typed.angle(name);
    if (angle != null && Math.abs(angle.rad()) > MOST_CHANGE_RAD) {
      typed.wrong(name, "Rod ends do not change that much: type 10° or less.");
    }
    return angle;
  }

  /** Once all was read without a problem. */
  ArmOnRodEnds arm(Figure threadRad) {
    return new ArmOnRodEnds(
        which,
        front,
        rear,
        good.mm("apart", apart),
        good.mm("arm", arm),
        good.mm("spread", spread),
        threadRad);
  }

  /** As typed; none where a change is wanted. */
  Turns turns() {
    return turns;
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

  List<FormPart> parts() {
    boolean lower = typed.text("which").equals("lower");
    return List.of(
        new FormPart.Chosen(
            new Choice(
                "which",
                "Which arm",
                "",
                "",
                List.of(
                    new Choice.Option("upper", "upper", "", !lower),
                    new Choice.Option("lower", "lower", "", lower)))),
        good.field(
            "thread",
            "Thread of the front rod end",
            "As stamped: 5/8-18 or M16x1.5, with LH behind for left-hand.",
            ""),
        good.field("rear-thread", "Thread of the rear rod end", "Empty: as the front one.", ""),
        good.field(
            "apart",
            "Upper joint above the lower",
            "Middle of ball to middle of ball, straight up.",
            unit.word()),
        good.field(
            "arm",
            "Arm's length",
            "From its pivot line to the ball joint, square to the line.",
            unit.word()),
        good.field(
            "spread",
            "Pivot to pivot",
            "Middle of bolt to middle of bolt, along the car.",
            unit.word()),
        good.field("front", "Turns of the front rod end", "+ out, − in; such as 1 1/2.", "turns"),
        good.field("rear", "Turns of the rear rod end", "+ out, − in.", "turns"),
        good.field(
            "camber",
            "Or: camber to change by",
            "+ top outward. Then the turns are worked out.",
            "°"),
        good.field("caster", "Or: caster to change by", "+ top rearward.", "°"));
  }
}
