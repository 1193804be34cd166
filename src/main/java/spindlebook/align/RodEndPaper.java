package spindlebook.align;

import java.util.ArrayList;
import java.util.List;
import spindlebook.align.OnPaperView.Block;
import spindlebook.align.OnPaperView.Line;
import spindlebook.alignment.AgainstTarget;
import spindlebook.alignment.ArmOnRodEnds;
import spindlebook.alignment.ConvergingThreads;
import spindlebook.alignment.Hand;
import spindlebook.alignment.Link;
import spindlebook.alignment.Propagated;
import spindlebook.alignment.RodThread;
import spindlebook.alignment.RodThreads;
import spindlebook.alignment.ThreadEngaged;
import spindlebook.alignment.ToeKnockOn;
import spindlebook.alignment.Turns;
import spindlebook.card.Shown;
import spindlebook.corner.Card;
import spindlebook.uncertainty.Decision;
import spindlebook.uncertainty.Figure;
import spindlebook.units.LengthUnit;
import spindlebook.units.TypedAngle;
import spindlebook.units.TypedLength;
import spindlebook.web.Choice;
import spindlebook.web.Field;
import spindlebook.web.FigureText;
import spindlebook.web.FormPart;
import spindlebook.web.Lengths;
import spindlebook.web.Posted;

/** What turns of an arm's rod ends do, and the turns for a wanted change. */
final class RodEndPaper {
  private static final double DEGREE = Math.toRadians(1);
  private static final double HALF_TURN = 0.5;
  private static final double LEAST_MM = 25.4;
  private static final double USUAL_SLACK_MM = 0.5;
  private static final String NOT_TOGETHER =
      "With these points the corner does not go together: look over all nine.";

  private final Card card;
  private final Posted typed;
  private final LengthUnit unit;
  private final Lengths lengths;
  private final TypedFigures good;
  private final ExactPaper exactly;
  private final List<Block> blocks = new ArrayList<>();
  private final List<String> notes = new ArrayList<>();

  RodEndPaper(Card card, Posted typed) {
    this.card = card;
    this.typed = typed;
    this.unit = card.details().unit();
    this.lengths = new Lengths(unit);
    this.good = new TypedFigures(typed, unit);
    this.exactly = new ExactPaper(typed, unit, good);
  }

  OnPaperView view() {
    if (typed.has("thread")) {
      work();
    }
    if (!blocks.isEmpty()) {
      notes.add(good.words());
    }
    return new OnPaperView(
        "/corners/" + card.corner() + "/rod-ends", parts(), "Work it out", blocks, notes);
  }

  private void work() {
    RodThread front = thread("thread", null);
    RodThread rear = thread("rear-thread", front);
    TypedLength apart = above("apart", "Type how far the upper joint stands above the lower.");
    TypedLength arm = above("arm", "Type the arm's length, square to its pivot line.");
    TypedLength spread = above("spread", "Type pivot to pivot, along the car.");
    Double frontOut = turns("front");
    Double rearOut = turns("rear");
    TypedAngle camber = typed.angle("camber");
    TypedAngle caster = typed.angle("caster");
    TypedLength engaged = typed.lengthFromZero("engaged", unit);
    TypedLength above = typed.length("outer-above", unit);
    TypedLength steering = steeringArm();
    Double slope = number("rod-slope");
    TypedLength slack = typed.lengthFromZero("slack", unit);
    ArmOnRodEnds.Arm which = typed.word("which", ArmOnRodEnds.Arm.class, ArmOnRodEnds.Arm.UPPER);
    List<Figure> pivots =
        exactly.asked() && which == ArmOnRodEnds.Arm.UPPER ? exactly.read() : List.of();
    if (!typed.ok()) {
      return;
    }
    ArmOnRodEnds ends =
        new ArmOnRodEnds(
            which,
            front,
            rear,
            good.mm("apart", apart),
            good.mm("arm", arm),
            good.mm("spread", spread));
    Turns turns = new Turns(frontOut, rearOut);
    if (camber != null || caster != null) {
      Turns wanted = wanted(ends, pivots, rad(camber), rad(caster));
      if (wanted == null) {
        return;
      }
      turns = wanted.settable(HALF_TURN);
      blocks.add(
          new Block(
              "Turns for the change wanted",
              List.of(
                  turnsLine("Front rod end", wanted.front(), turns.front(), front),
                  turnsLine("Rear rod end", wanted.rear(), turns.rear(), rear))));
    }
    Figure dCamber = ends.camberChangeRad(turns);
    Figure dCaster = ends.casterChangeRad(turns);
    List<Line> does = new ArrayList<>();
    does.add(line("Camber", dCamber, "+ top outward; short formula, good to 4 % up to 4 turns"));
    does.add(line("Caster", dCaster, "+ top rearward"));
    does.add(
        new Line(
            "Arm's joint, + outboard", lengths.signedFigure(ends.jointOutMm(turns)), "", null));
    blocks.add(new Block(said(turns), does));
    toe(which, dCamber, dCaster, above, steering, slope, does);
    exact(pivots, front, rear, turns);
    notes.add("The same turns the other way put it back as it stood.");
    thread(engaged, turns, front, rear);
    binding(turns, front, rear, spread, slack);
    link(front, rear);
  }

  /** By the pivots where they are known, else by the short formula; null with the reason told. */
  private Turns wanted(ArmOnRodEnds ends, List<Figure> pivots, double camberRad, double casterRad) {
    if (pivots.isEmpty()) {
      return ends.turnsFor(camberRad, casterRad);
    }
    try {
      return ExactPaper.turnsFor(pivots, ends.front(), ends.rear(), camberRad, casterRad);
    } catch (IllegalArgumentException | ArithmeticException | IllegalStateException e) {
      typed.wrong("upper-joint", NOT_TOGETHER);
      return null;
    }
  }

  private void exact(List<Figure> pivots, RodThread front, RodThread rear, Turns turns) {
    if (pivots.isEmpty()) {
      notes.add(
          exactly.asked()
              ? "Exact turns are worked out for the upper arm only."
              : "Type the pivots as measured to see what the turns do exactly.");
      return;
    }
    try {
      blocks.add(ExactPaper.block(pivots, front, rear, turns));
    } catch (IllegalArgumentException | ArithmeticException | IllegalStateException e) {
      typed.wrong("upper-joint", NOT_TOGETHER);
    }
  }

  private Line turnsLine(String name, double exact, double settable, RodThread thread) {
    String way = settable < 0 ? opposite(thread.hand()) : thread.hand().outward();
    return new Line(
        name,
        FigureText.of(Rounded.signed(settable, 1), "turns"),
        "exactly "
            + Rounded.signed(exact, 2)
            + "; + out"
            + (settable == 0 ? "" : ": " + way + ", seen from its ball"),
        null);
  }

  private static String opposite(Hand hand) {
    return hand == Hand.RIGHT ? Hand.LEFT.outward() : Hand.RIGHT.outward();
  }

  private static String said(Turns turns) {
    return "Front "
        + Rounded.signed(turns.front(), 2)
        + ", rear "
        + Rounded.signed(turns.rear(), 2)
        + " turns (+ out)";
  }

  private void toe(
      ArmOnRodEnds.Arm which,
      Figure camber,
      Figure caster,
      TypedLength above,
      TypedLength steering,
      Double slope,
      List<Line> does) {
    if (which == ArmOnRodEnds.Arm.LOWER || above == null || steering == null) {
      notes.add(
          "Toe moves too. Type where the outer tie-rod end lies and how long the steering arm is"
              + " to see by how much (upper arm only).");
      return;
    }
    if (card.details().rack() == null) {
      notes.add("Toe's change turns round with the rack: say on the car's page where it lies.");
      return;
    }
    Figure toe =
        ToeKnockOn.rad(
            camber,
            caster,
            good.mm("outer-above", above),
            good.mm("steering-arm", steering),
            Figure.exact(slope == null ? 0 : slope),
            card.details().rack());
    does.add(
        line(
            "Toe of this wheel comes along",
            toe,
            "+ in; the tie rod left alone; short formula, good to a fifth. Set toe last."));
  }

  private void thread(TypedLength engaged, Turns turns, RodThread front, RodThread rear) {
    if (engaged == null) {
      notes.add("Type the thread engaged to see what is left of it.");
      return;
    }
    Figure in = good.mm("engaged", engaged);
    blocks.add(
        new Block(
            "Thread left engaged",
            List.of(
                engaged("Front", new ThreadEngaged(front, in, diameters()), turns.front()),
                engaged("Rear", new ThreadEngaged(rear, in, diameters()), turns.rear()))));
  }

  private static double diameters() {
    return ThreadEngaged.USUAL_DIAMETERS;
  }

  private Line engaged(String name, ThreadEngaged thread, double turnsOut) {
    AgainstTarget after = thread.after(turnsOut);
    return new Line(
        name,
        lengths.figure(after.figure()),
        "at least "
            + lengths.text(thread.ruleMm())
            + ", 1.5 diameters (common practice); "
            + left(thread.turnsLeft()),
        Shown.state(after.decision()));
  }

  private void binding(
      Turns turns, RodThread front, RodThread rear, TypedLength spread, TypedLength slack) {
    boolean converging = typed.has("thread-angle");
    Figure lean = good.rad("thread-angle", typed.angle("thread-angle"));
    Figure apart =
        converging
            ? Propagated.of(
                List.of(lean), v -> ConvergingThreads.spreadMm(turns, front, rear, v[0], v[0]))
            : Propagated.of(
                List.of(good.mm("spread", spread)),
                v -> ConvergingThreads.squareSpreadMm(turns, front, rear, v[0]));
    double slackMm = slack == null ? USUAL_SLACK_MM : slack.mm();
    AgainstTarget within = AgainstTarget.between(apart, -slackMm, slackMm);
    blocks.add(
        new Block(
            "Do the bolts still go in",
            List.of(
                new Line(
                    "The balls go apart",
                    Rounded.signed(apart, 1, "mm", 2),
                    (slack == null ? "0.5 mm of slack in the tabs assumed. " : "")
                        + binding(within.decision())
                        + (converging ? "" : " Threads square to the pivot line assumed."),
                    Shown.state(within.decision())))));
  }

  private static String binding(Decision within) {
    return switch (within) {
      case CLEAR -> "Within the tabs' slack.";
      case SHORT -> "More than the tabs' slack: a welded arm binds; one of two links does not.";
      case CANT_TELL -> "About as much as the tabs' slack: a welded arm may bind.";
    };
  }

  private static String left(double turns) {
    return turns >= 0
        ? "from now it may come out " + Rounded.number(turns, 1) + " turns and surely keep that"
        : "from now it must go in " + Rounded.number(-turns, 1) + " turns to surely have that";
  }

  private void link(RodThread front, RodThread rear) {
    Link link = new Link(front, rear);
    notes.add(
        link.setsTurnedWhole()
            ? "As the two ends of one link, one turn of it whole changes its length by "
                + Rounded.number(link.lengthPerTurnMm(), 2)
                + " mm."
            : "As the two ends of one link, turning it whole does nothing: one hand at both ends.");
  }

  // --- what is typed

  private List<FormPart> parts() {
    List<FormPart> parts = new ArrayList<>();
    boolean lower = typed.text("which").equals("lower");
    parts.add(
        new FormPart.Chosen(
            new Choice(
                "which",
                "Which arm",
                "",
                "",
                List.of(
                    new Choice.Option("upper", "upper", "", !lower),
                    new Choice.Option("lower", "lower", "", lower)))));
    parts.add(
        field(
            "thread",
            "Thread of the front rod end",
            "Such as 5/8-18 or M16x1.5; LH for left-hand.",
            ""));
    parts.add(field("rear-thread", "Thread of the rear rod end", "Empty: as the front one.", ""));
    parts.add(field("apart", "Upper joint above the lower", "", unit.word()));
    parts.add(field("arm", "Arm's length", "From its pivot line to the ball joint.", unit.word()));
    parts.add(field("spread", "Pivot to pivot", "Along the car.", unit.word()));
    parts.add(field("front", "Turns of the front rod end", "+ out, − in.", "turns"));
    parts.add(field("rear", "Turns of the rear rod end", "+ out, − in.", "turns"));
    parts.add(field("camber", "Or: camber to change by", "Then the turns are worked out.", "°"));
    parts.add(field("caster", "Or: caster to change by", "", "°"));
    parts.add(
        new FormPart.More(
            "Toe, thread and binding",
            typed.has("engaged")
                || typed.has("outer-above")
                || typed.has("steering-arm")
                || typed.has("thread-angle")
                || typed.has("slack"),
            List.of(
                field("engaged", "Thread engaged now", "Shank less what shows.", unit.word()),
                field("outer-above", "Outer tie-rod end above the lower joint", "", unit.word()),
                field("steering-arm", "Steering arm", "Fore and aft of the kingpin.", unit.word()),
                field(
                    "rod-slope",
                    "Slope of the tie rod",
                    "Outer end above inner, by the rod's length; 0 is level.",
                    ""),
                field("thread-angle", "Thread to pivot line", "90° is square; empty: square.", "°"),
                field("slack", "Slack in the tabs", "Empty: 0.5 mm.", unit.word()))));
    parts.add(exactly.part());
    parts.add(good.part());
    return parts;
  }

  private FormPart field(String name, String label, String hint, String word) {
    return new FormPart.Typed(typed.fill(Field.of(name, label).hint(hint).unit(word)));
  }

  private RodThread thread(String name, RodThread otherwise) {
    if (!typed.has(name)) {
      return otherwise;
    }
    return RodThreads.named(typed.text(name))
        .orElseGet(
            () -> {
              typed.wrong(
                  name, "No such thread is listed: type it as stamped, like 5/8-18 or M16x1.5.");
              return null;
            });
  }

  private TypedLength above(String name, String sentence) {
    TypedLength length = typed.neededLength(name, unit, sentence);
    if (length != null && length.mm() < LEAST_MM) {
      typed.wrong(name, sentence);
    }
    return length;
  }

  private TypedLength steeringArm() {
    TypedLength length = typed.lengthFromZero("steering-arm", unit);
    if (length != null && length.mm() < LEAST_MM) {
      typed.wrong("steering-arm", "A steering arm is longer than that: type 1 in or more.");
    }
    return length;
  }

  private Double turns(String name) {
    Double number = number(name);
    return number == null ? 0.0 : number;
  }

  /** A plain decimal, either sign; null when nothing was typed or it is wrong. */
  private Double number(String name) {
    if (!typed.has(name)) {
      return null;
    }
    try {
      double number =
          Double.parseDouble(typed.text(name).strip().replace(',', '.').replace('−', '-'));
      if (Math.abs(number) <= 100) {
        return number;
      }
    } catch (NumberFormatException e) {
      // Said below, with the numbers out of range.
    }
    typed.wrong(name, "Type a number such as 1.5 or -2.");
    return null;
  }

  private static double rad(TypedAngle angle) {
    return angle == null ? 0 : angle.rad();
  }

  private static Line line(String name, Figure rad, String words) {
    return new Line(name, Rounded.signed(rad, DEGREE, "°"), words, null);
  }
}
