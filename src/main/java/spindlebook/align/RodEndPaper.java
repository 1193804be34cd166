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
import spindlebook.alignment.RodThread;
import spindlebook.alignment.RodThreads;
import spindlebook.alignment.ThreadEngaged;
import spindlebook.alignment.ToeKnockOn;
import spindlebook.alignment.Turns;
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
import spindlebook.web.State;

/** What turns of an arm's rod ends do, and the turns for a wanted change. */
final class RodEndPaper {
  private static final double DEGREE = Math.toRadians(1);
  private static final double HALF_TURN = 0.5;

  private final Card card;
  private final Posted typed;
  private final LengthUnit unit;
  private final Lengths lengths;
  private final List<Block> blocks = new ArrayList<>();
  private final List<String> notes = new ArrayList<>();

  RodEndPaper(Card card, Posted typed) {
    this.card = card;
    this.typed = typed;
    this.unit = card.details().unit();
    this.lengths = new Lengths(unit);
  }

  OnPaperView view() {
    if (typed.has("thread")) {
      work();
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
    TypedLength steering = typed.lengthFromZero("steering-arm", unit);
    Double slope = number("rod-slope");
    TypedLength slack = typed.lengthFromZero("slack", unit);
    if (!typed.ok()) {
      return;
    }
    ArmOnRodEnds.Arm which = typed.word("which", ArmOnRodEnds.Arm.class, ArmOnRodEnds.Arm.UPPER);
    ArmOnRodEnds ends =
        new ArmOnRodEnds(which, front, rear, exact(apart), exact(arm), exact(spread));
    Turns turns = new Turns(frontOut, rearOut);
    if (camber != null || caster != null) {
      Turns wanted = ends.turnsFor(rad(camber), rad(caster));
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
    does.add(line("Camber", dCamber, "+ top outward; small changes, joint midway"));
    does.add(line("Caster", dCaster, "+ top rearward"));
    does.add(
        new Line(
            "Arm's joint goes outboard", lengths.signedFigure(ends.jointOutMm(turns)), "", null));
    blocks.add(new Block(said(turns), does));
    toe(which, dCamber, dCaster, above, steering, slope, does);
    thread(engaged, turns, front, rear);
    binding(turns, front, rear, spread, slack);
    link(front, rear);
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
    if (which == ArmOnRodEnds.Arm.LOWER
        || above == null
        || steering == null
        || steering.mm() == 0) {
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
            exact(above),
            exact(steering),
            Figure.exact(slope == null ? 0 : slope),
            card.details().rack());
    does.add(
        line("Toe of this wheel comes along", toe, "+ in; the tie rod left alone. Set toe last."));
  }

  private void thread(TypedLength engaged, Turns turns, RodThread front, RodThread rear) {
    if (engaged == null) {
      notes.add("Type the thread engaged to see what is left of it.");
      return;
    }
    blocks.add(
        new Block(
            "Thread left engaged",
            List.of(
                engaged(
                    "Front", new ThreadEngaged(front, exact(engaged), diameters()), turns.front()),
                engaged(
                    "Rear", new ThreadEngaged(rear, exact(engaged), diameters()), turns.rear()))));
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
            + ", 1.5 diameters (common practice); may come out "
            + Rounded.signed(thread.turnsLeft(), 1)
            + " turns in all",
        after.decision() == Decision.CLEAR ? State.CLEAR : State.SHORT);
  }

  private void binding(
      Turns turns, RodThread front, RodThread rear, TypedLength spread, TypedLength slack) {
    double leanRad = rad(typed.angle("thread-angle"));
    boolean converging = typed.has("thread-angle");
    double apart =
        converging
            ? ConvergingThreads.spreadMm(turns, front, rear, leanRad, leanRad)
            : ConvergingThreads.squareSpreadMm(turns, front, rear, spread.mm());
    boolean binds = ConvergingThreads.binds(apart, slack == null ? 0.5 : slack.mm());
    blocks.add(
        new Block(
            "Do the bolts still go in",
            List.of(
                new Line(
                    "The balls go apart",
                    lengths.signedFigure(apart),
                    (slack == null ? "0.5 mm of slack in the tabs assumed. " : "")
                        + (binds
                            ? "More than the tabs' slack: it binds, unless the arm is two links."
                            : "Within the tabs' slack."),
                    binds ? State.SHORT : State.CLEAR))));
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
            typed.has("engaged") || typed.has("outer-above") || typed.has("slack"),
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
                field("slack", "Slack in the tabs", "", unit.word()))));
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
    if (length != null && length.mm() == 0) {
      typed.wrong(name, sentence);
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

  private static Figure exact(TypedLength length) {
    return Figure.exact(length.mm());
  }

  private static Line line(String name, Figure rad, String words) {
    return new Line(name, Rounded.signed(rad, DEGREE, "°"), words, null);
  }
}
