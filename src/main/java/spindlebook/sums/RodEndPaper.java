package spindlebook.sums;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import spindlebook.drawing.FigureText;
import spindlebook.drawing.Lengths;
import spindlebook.drawing.Rounded;
import spindlebook.entry.Joint;
import spindlebook.fold.Card;
import spindlebook.linkage.CornerJoints;
import spindlebook.linkage.Vec;
import spindlebook.page.Asked;
import spindlebook.parts.ArmOnRodEnds;
import spindlebook.parts.Hand;
import spindlebook.parts.RodThread;
import spindlebook.parts.Turns;
import spindlebook.sums.OnPaperView.Block;
import spindlebook.sums.OnPaperView.Line;
import spindlebook.uncertainty.Figure;

/** What turns of an arm's rod ends do, and the turns for a wanted change. */
final class RodEndPaper {
  private static final double HALF_TURN = 0.5;

  /** Beyond so many the short formula is worse than it says. */
  private static final double SHORT_TURNS = 4;

  private static final String NOT_TOGETHER =
      "With these points the corner does not go together: look over all nine.";

  private final Card card;
  private final Asked a;
  private final Lengths lengths;
  private final TypedFigures good;
  private final boolean asked;
  private final RodEndTyped ends;
  private final ThreadPaper threads;
  private final ToeAlongPaper toe;
  private final ExactPaper exactly;
  private final List<Block> blocks = new ArrayList<>();
  private final List<String> notes = new ArrayList<>();

  RodEndPaper(Card card, Asked a) {
    this.card = card;
    this.a = a;
    this.lengths = new Lengths(a.unit());
    this.good = new TypedFigures(a);
    CornerJoints corner = CornerJoints.of(card);
    Map<Joint, Vec> joints = corner.linkage() == null ? Map.of() : corner.at();
    if (!joints.isEmpty()) {
      a.said("Pivots, arms and steering arm are those laid out under Linkage.");
    }
    a.together();
    this.ends = new RodEndTyped(a, good, joints);
    this.threads = a.more("Thread and binding", () -> new ThreadPaper(a, good));
    this.toe =
        joints.isEmpty()
            ? a.more("Toe that comes along", () -> new ToeAlongPaper(card, a, good))
            : new ToeAlongPaper(card, good, joints);
    this.exactly =
        joints.isEmpty()
            ? a.more("The pivots as measured, for exact turns", () -> new ExactPaper(a, good))
            : new ExactPaper(good, corner.linkage().joints());
    this.asked = a.end();
  }

  OnPaperView view() {
    if (asked && a.ok()) {
      work();
    }
    if (!blocks.isEmpty()) {
      notes.add(good.words());
    }
    return new OnPaperView(
        "/corners/" + card.corner() + "/rod-ends", a.parts(), "Work it out", blocks, notes);
  }

  private void work() {
    ArmOnRodEnds arm = ends.arm(threads.threadRad());
    boolean upper = arm.arm() == ArmOnRodEnds.Arm.UPPER;
    List<Figure> pivots = threads.square() ? exactly.inputs : List.of();
    Turns turns = ends.turns;
    if (ends.changeWanted()) {
      ExactPaper.Wanted wanted = wanted(arm, pivots);
      if (wanted == null) {
        return;
      }
      turns = wanted.turns().settable(HALF_TURN);
      blocks.add(
          new Block(
              "Turns for the change wanted",
              List.of(
                  turnsLine("Front rod end", wanted.front(), turns.front(), arm.front()),
                  turnsLine("Rear rod end", wanted.rear(), turns.rear(), arm.rear()))));
    }
    does(arm, turns, upper, !pivots.isEmpty());
    exact(arm, pivots, turns);
    threads.add(blocks, notes, turns, arm);
    if (Math.max(Math.abs(turns.front()), Math.abs(turns.rear())) > SHORT_TURNS) {
      notes.add("Over 4 turns the short formula may be off by more than its ±.");
    }
    notes.add("The same turns the other way put it back as it stood.");
    notes.add(
        "± is U, k = 2, from how good what was typed is and how far a short formula may be off.");
  }

  /** Where the pivots are known the exact figures stand for the short formula's. */
  private void does(ArmOnRodEnds arm, Turns turns, boolean upper, boolean exact) {
    Figure camber = arm.camberChangeRad(turns);
    Figure caster = arm.casterChangeRad(turns);
    List<Line> does = new ArrayList<>();
    if (!exact) {
      double camberRad = camber.value();
      double casterRad = caster.value();
      does.add(
          byShort("Camber", camber, arm.camberWithinRad(camberRad, casterRad), "+ top outward"));
      does.add(
          byShort("Caster", caster, arm.casterWithinRad(camberRad, casterRad), "+ top rearward"));
    }
    does.add(
        new Line(
            "Arm's joint",
            lengths.signedFigure(arm.jointOutMm(turns)),
            "+ outboard" + (threads.square() ? "; by the pitches alone, no ±" : "")));
    if (!exact) {
      toe.add(does, notes, upper, camber, caster);
    }
    blocks.add(
        new Block(
            "Front "
                + Rounded.signed(turns.front(), 2)
                + ", rear "
                + Rounded.signed(turns.rear(), 2)
                + " turns (+ out)",
            does));
  }

  private static Line byShort(String name, Figure rad, double halfWidth, String words) {
    Figure off = TypedFigures.byShortFormula(name.toLowerCase(Locale.ROOT), rad, halfWidth);
    return new Line(name, Rounded.degrees(off), words + "; short formula");
  }

  /** By the pivots where they are known, else by the short formula; null with the reason told. */
  private ExactPaper.Wanted wanted(ArmOnRodEnds arm, List<Figure> pivots) {
    double camber = ends.camberRad();
    double caster = ends.casterRad();
    if (pivots.isEmpty()) {
      double camberOff = arm.camberWithinRad(camber, caster);
      double casterOff = arm.casterWithinRad(camber, caster);
      return new ExactPaper.Wanted(
          byShort(
              arm.frontTurns(camber, caster),
              arm.frontTurns(camberOff, 0),
              arm.frontTurns(0, casterOff)),
          byShort(
              arm.rearTurns(camber, caster),
              arm.rearTurns(camberOff, 0),
              arm.rearTurns(0, casterOff)));
    }
    try {
      return ExactPaper.turnsFor(pivots, arm, camber, caster);
    } catch (IllegalArgumentException | ArithmeticException | IllegalStateException e) {
      a.wrong("upper-joint", NOT_TOGETHER);
      return null;
    }
  }

  /** The turns as far as the short formula may be off in camber, and in caster. */
  private static Figure byShort(Figure turns, Figure forCamberOff, Figure forCasterOff) {
    return TypedFigures.byShortFormula(
        "caster",
        TypedFigures.byShortFormula("camber", turns, Math.abs(forCamberOff.value())),
        Math.abs(forCasterOff.value()));
  }

  private void exact(ArmOnRodEnds arm, List<Figure> pivots, Turns turns) {
    if (pivots.isEmpty()) {
      notes.add(
          exactly.asked
              ? "Exact turns are worked out with threads square to the pivot line only."
              : "Type the pivots as measured to see what the turns do exactly.");
      return;
    }
    try {
      blocks.add(ExactPaper.block(pivots, arm, turns));
    } catch (IllegalArgumentException | ArithmeticException | IllegalStateException e) {
      a.wrong("upper-joint", NOT_TOGETHER);
    }
  }

  private static Line turnsLine(String name, Figure wanted, double settable, RodThread thread) {
    String way = settable < 0 ? opposite(thread.hand()) : thread.hand().outward();
    return new Line(
        name,
        FigureText.of(Rounded.signed(settable, 1), "turns"),
        "+ out, − in"
            + (settable == 0 ? "" : ": " + way + ", seen from its ball")
            + "; half turns nearest to "
            + Rounded.signed(wanted, 1, "", 2).words());
  }

  private static String opposite(Hand hand) {
    return hand == Hand.RIGHT ? Hand.LEFT.outward() : Hand.RIGHT.outward();
  }
}
