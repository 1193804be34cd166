package spindlebook.sums;

import java.util.ArrayList;
import java.util.List;
import spindlebook.alignment.AgainstTarget;
import spindlebook.card.Shown;
import spindlebook.drawing.FigureText;
import spindlebook.drawing.Lengths;
import spindlebook.drawing.Rounded;
import spindlebook.page.Asked;
import spindlebook.parts.ArmOnRodEnds;
import spindlebook.parts.ConvergingThreads;
import spindlebook.parts.Link;
import spindlebook.parts.RodThread;
import spindlebook.parts.ThreadEngaged;
import spindlebook.parts.Turns;
import spindlebook.sums.OnPaperView.Block;
import spindlebook.sums.OnPaperView.Line;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Outcome;
import spindlebook.uncertainty.Propagated;
import spindlebook.units.LengthUnit;
import spindlebook.units.TypedAngle;
import spindlebook.units.TypedLength;

/** What turns leave of the threads, and whether the bolts still go in. */
final class ThreadPaper {
  private static final double USUAL_SLACK_MM = 0.5;
  private static final double MOST_SLACK_MM = 25.4 / 4;
  private static final double MOST_ENGAGED_MM = 6 * 25.4;
  private static final double LEAST_LEAN_RAD = Math.toRadians(10);

  private final Asked a;
  private final Lengths lengths;
  private final Figure engagedFront;
  private final Figure engagedRear;
  private final Figure lean;
  private final TypedLength slack;

  ThreadPaper(Asked a, TypedFigures good) {
    this.a = a;
    this.lengths = new Lengths(a.unit());
    this.engagedFront =
        engaged(
            good,
            "engaged",
            "Thread engaged now, front",
            "The shank's length less what shows of it.");
    Figure rear =
        engaged(good, "engaged-rear", "Thread engaged now, rear", "Empty: as the front one.");
    this.engagedRear = a.has("engaged-rear") ? rear : engagedFront;
    TypedAngle angle =
        a.angle("thread-angle", "Thread to pivot line")
            .hint(
                "90° is square; less where the two threads run together towards the joint. Empty:"
                    + " square.")
            .check(
                x -> x.rad() >= LEAST_LEAN_RAD && x.rad() <= Math.PI / 2,
                "Type an angle from 10° to 90°; 90° is square.")
            .read();
    this.lean =
        angle != null && angle.rad() < ArmOnRodEnds.SQUARE.value()
            ? good.rad("thread-angle", angle)
            : ArmOnRodEnds.SQUARE;
    this.slack =
        a.length("slack", "Slack in the tabs")
            .hint("Empty: 0.5 mm (1/50 in).")
            .check(
                l -> l.mm() <= MOST_SLACK_MM,
                "Tabs that loose hold nothing: type 1/4 in (6 mm) or less.")
            .read();
  }

  private Figure engaged(TypedFigures good, String name, String label, String hint) {
    return good.mm(
        name,
        a.length(name, label)
            .hint(hint)
            .check(
                l -> l.mm() <= MOST_ENGAGED_MM,
                "No rod end has that much thread: type 6 in (150 mm) or less.")
            .read());
  }

  /** Between each thread and the pivot line; square where nothing was typed, or 90°. */
  Figure threadRad() {
    return lean;
  }

  boolean square() {
    return lean.equals(ArmOnRodEnds.SQUARE);
  }

  void add(List<Block> blocks, List<String> notes, Turns turns, ArmOnRodEnds arm) {
    RodThread front = arm.front();
    RodThread rear = arm.rear();
    if (engagedFront == null && engagedRear == null) {
      notes.add("Type the thread engaged to see what is left of it.");
    } else {
      List<Line> left = new ArrayList<>();
      if (engagedFront != null) {
        left.add(left("Front", front, engagedFront, turns.front()));
      }
      if (engagedRear != null) {
        left.add(left("Rear", rear, engagedRear, turns.rear()));
      }
      blocks.add(new Block("Thread left engaged", left));
    }
    blocks.add(new Block("Do the bolts still go in", List.of(binding(turns, arm))));
    blocks.add(new Block("As the two ends of one link", List.of(link(front, rear))));
  }

  private Line left(String name, RodThread thread, Figure engaged, double turnsOut) {
    ThreadEngaged in = new ThreadEngaged(thread, engaged, ThreadEngaged.USUAL_DIAMETERS);
    AgainstTarget after = in.after(turnsOut);
    String words =
        after.figure().value() <= 0
            ? "it comes out of the arm"
            : "at least "
                + lengths.text(in.ruleMm())
                + ", 1.5 diameters (common practice); "
                + mayTurn(in.turnsLeft());
    return new Line(name, lengths.figure(after.figure()), words, Shown.state(after.decision()));
  }

  private static String mayTurn(double turns) {
    return turns >= 0
        ? "as it is now it may come out " + Rounded.number(turns, 1) + " turns and surely keep that"
        : "as it is now it must go in " + Rounded.number(-turns, 1) + " turns to surely have that";
  }

  private Line binding(Turns turns, ArmOnRodEnds arm) {
    RodThread front = arm.front();
    RodThread rear = arm.rear();
    Figure apart =
        square()
            ? Propagated.of(
                List.of(arm.spreadMm()),
                v -> ConvergingThreads.squareSpreadMm(turns, front, rear, v[0]))
            : Propagated.of(
                List.of(lean), v -> ConvergingThreads.spreadMm(turns, front, rear, v[0], v[0]));
    double slackMm = slack == null ? USUAL_SLACK_MM : slack.mm();
    AgainstTarget within = AgainstTarget.between(apart, -slackMm, slackMm);
    return new Line(
        "The balls go apart",
        Rounded.signed(apart, 1, "mm", 2),
        binding(within.decision())
            + " + apart, − together; "
            + Rounded.number(slackMm, 2)
            + " mm of slack in the tabs"
            + (slack == null ? " assumed" : "")
            + (a.has("thread-angle") ? "." : "; threads square to the pivot line assumed."),
        Shown.state(within.decision()));
  }

  private static String binding(Outcome within) {
    return switch (within) {
      case CLEAR -> "Within the tabs' slack.";
      case SHORT ->
          "More than the tabs' slack: a welded arm binds, so do not force the bolts. Two links that"
              + " hinge at the joint do not bind.";
      case CANT_TELL, NEEDS -> "About as much as the tabs' slack: a welded arm may bind.";
    };
  }

  private Line link(RodThread front, RodThread rear) {
    Link link = new Link(front, rear);
    if (!link.setsTurnedWhole()) {
      return new Line(
          "One turn of it whole",
          null,
          "does nothing: one hand and one pitch at both ends. A rod end must come off.");
    }
    double mm = link.lengthPerTurnMm();
    boolean inch = a.unit() == LengthUnit.INCH;
    return new Line(
        "One turn of it whole",
        inch
            ? FigureText.of(Rounded.number(mm / a.unit().mm(), 3), a.unit().word())
            : FigureText.of(Rounded.number(mm, 2), "mm"),
        (front.hand() == rear.hand()
                ? "the difference of the pitches, one hand at both ends"
                : "both pitches, left- and right-hand")
            + (inch ? "; " + Rounded.number(mm, 2) + " mm" : "")
            + "; by the stamp, no ±");
  }
}
