package spindlebook.align;

import java.util.ArrayList;
import java.util.List;
import spindlebook.align.OnPaperView.Block;
import spindlebook.align.OnPaperView.Line;
import spindlebook.alignment.ArmOnRodEnds;
import spindlebook.alignment.Hand;
import spindlebook.alignment.RodThread;
import spindlebook.alignment.RodThreads;
import spindlebook.alignment.ToeKnockOn;
import spindlebook.alignment.Turns;
import spindlebook.corner.Card;
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
  private static final double MOST_TURNS = 40;
  private static final double SHORT_TURNS = 4;
  private static final double MOST_CHANGE_RAD = Math.toRadians(10);
  private static final double LEAST_MM = 25.4;
  private static final double MOST_MM = 60 * 25.4;
  private static final String RANGE = ", from 1 in (25 mm) to 5 ft (1.5 m).";

  /** How far a tie rod's slope may be off: typed, and where level is assumed. */
  private static final double SLOPE_UNSURE = 0.02;

  private static final double LEVEL_UNSURE = 0.1;
  private static final String NOT_TOGETHER =
      "With these points the corner does not go together: look over all nine.";

  private final Card card;
  private final Posted typed;
  private final LengthUnit unit;
  private final Lengths lengths;
  private final TypedFigures good;
  private final ExactPaper exactly;
  private final ThreadPaper threads;
  private final List<Block> blocks = new ArrayList<>();
  private final List<String> notes = new ArrayList<>();

  RodEndPaper(Card card, Posted typed) {
    this.card = card;
    this.typed = typed;
    this.unit = card.details().unit();
    this.lengths = new Lengths(unit);
    this.good = new TypedFigures(typed, unit);
    this.exactly = new ExactPaper(typed, unit, good);
    this.threads = new ThreadPaper(typed, unit, good);
  }

  OnPaperView view() {
    if (asked()) {
      work();
    }
    if (!blocks.isEmpty()) {
      notes.add(good.words());
    }
    return new OnPaperView(
        "/corners/" + card.corner() + "/rod-ends", parts(), "Work it out", blocks, notes);
  }

  private boolean asked() {
    return threads.asked()
        || exactly.asked()
        || List.of(
                "thread",
                "rear-thread",
                "apart",
                "arm",
                "spread",
                "front",
                "rear",
                "camber",
                "caster",
                "outer-above",
                "steering-arm",
                "rod-slope")
            .stream()
            .anyMatch(typed::has);
  }

  private void work() {
    RodThread front = thread("thread", null);
    RodThread rear = thread("rear-thread", front);
    TypedLength apart = sized("apart", "Type how far the upper joint stands above the lower");
    TypedLength arm = sized("arm", "Type the arm's length, square to its pivot line");
    TypedLength spread = sized("spread", "Type pivot to pivot, along the car");
    Double frontOut = turns("front");
    Double rearOut = turns("rear");
    TypedAngle camber = change("camber");
    TypedAngle caster = change("caster");
    threads.read();
    TypedLength above = typed.length("outer-above", unit);
    TypedLength steering = steeringArm();
    Figure slope = slope();
    ArmOnRodEnds.Arm which = typed.word("which", ArmOnRodEnds.Arm.class, ArmOnRodEnds.Arm.UPPER);
    List<Figure> pivots = exactly.asked() ? exactly.read() : List.of();
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
            good.mm("spread", spread),
            threads.threadRad());
    List<Figure> exact =
        which == ArmOnRodEnds.Arm.UPPER && threads.square() ? pivots : List.<Figure>of();
    Turns turns = new Turns(frontOut, rearOut);
    if (camber != null || caster != null) {
      ExactPaper.Wanted wanted = wanted(ends, exact, rad(camber), rad(caster));
      if (wanted == null) {
        return;
      }
      turns = wanted.turns().settable(HALF_TURN);
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
    does.add(
        line(
            "Camber",
            byShort("camber", dCamber, ArmOnRodEnds.CAMBER_WITHIN),
            "+ top outward; short formula, good to 4 % up to 4 turns"));
    does.add(
        line(
            "Caster",
            byShort("caster", dCaster, ArmOnRodEnds.CASTER_WITHIN),
            "+ top rearward; short formula"));
    does.add(
        new Line(
            "Arm's joint",
            lengths.signedFigure(ends.jointOutMm(turns)),
            "+ outboard" + (threads.square() ? "; by the pitches alone, no ±" : ""),
            null));
    blocks.add(new Block(said(turns), does));
    toe(which, dCamber, dCaster, above, steering, slope, does);
    exact(exact, which, front, rear, turns);
    threads.add(blocks, notes, turns, front, rear, good.mm("spread", spread));
    if (Math.max(Math.abs(turns.front()), Math.abs(turns.rear())) > SHORT_TURNS) {
      notes.add("Over 4 turns the short formula may be off by more than its ±.");
    }
    notes.add("The same turns the other way put it back as it stood.");
    notes.add(
        "± is U, k = 2, from how good what was typed is and how far a short formula may be off.");
  }

  private static Figure byShort(String name, Figure figure, double within) {
    return TypedFigures.byShortFormula(name, figure, within);
  }

  /** By the pivots where they are known, else by the short formula; null with the reason told. */
  private ExactPaper.Wanted wanted(
      ArmOnRodEnds ends, List<Figure> pivots, double camberRad, double casterRad) {
    if (pivots.isEmpty()) {
      return new ExactPaper.Wanted(
          byShort(ends.frontTurns(camberRad, casterRad), ends.frontTurns(camberRad, 0)),
          byShort(ends.rearTurns(camberRad, casterRad), ends.rearTurns(camberRad, 0)));
    }
    try {
      return ExactPaper.turnsFor(pivots, ends.front(), ends.rear(), camberRad, casterRad);
    } catch (IllegalArgumentException | ArithmeticException | IllegalStateException e) {
      typed.wrong("upper-joint", NOT_TOGETHER);
      return null;
    }
  }

  /** What camber asks is good to the short formula's part, what caster asks likewise. */
  private static Figure byShort(Figure turns, Figure forCamber) {
    Figure forCaster = turns.minus(forCamber);
    return byShort("camber", forCamber, ArmOnRodEnds.CAMBER_WITHIN)
        .plus(byShort("caster", forCaster, ArmOnRodEnds.CASTER_WITHIN));
  }

  private void exact(
      List<Figure> pivots, ArmOnRodEnds.Arm which, RodThread front, RodThread rear, Turns turns) {
    if (pivots.isEmpty()) {
      notes.add(
          !exactly.asked()
              ? "Type the pivots as measured to see what the turns do exactly."
              : which == ArmOnRodEnds.Arm.LOWER
                  ? "Exact turns are worked out for the upper arm only."
                  : "Exact turns are worked out for threads square to the pivot line only.");
      return;
    }
    try {
      blocks.add(ExactPaper.block(pivots, front, rear, turns));
    } catch (IllegalArgumentException | ArithmeticException | IllegalStateException e) {
      typed.wrong("upper-joint", NOT_TOGETHER);
    }
  }

  private Line turnsLine(String name, Figure wanted, double settable, RodThread thread) {
    String way = settable < 0 ? opposite(thread.hand()) : thread.hand().outward();
    return new Line(
        name,
        FigureText.of(Rounded.signed(settable, 1), "turns"),
        "+ out, − in"
            + (settable == 0 ? "" : ": " + way + ", seen from its ball")
            + "; half turns nearest to "
            + Rounded.signed(wanted, 1, "", 2).words().strip(),
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
      Figure slope,
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
            slope,
            card.details().rack());
    does.add(
        line(
            "Toe of this wheel comes along",
            byShort("toe", toe, ToeKnockOn.WITHIN),
            "+ in; the tie rod left alone; short formula, good to a fifth"
                + (typed.has("rod-slope") ? "" : "; a level tie rod assumed")
                + ". Set toe last."));
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
            "As stamped: 5/8-18 or M16x1.5, with LH behind for left-hand.",
            ""));
    parts.add(field("rear-thread", "Thread of the rear rod end", "Empty: as the front one.", ""));
    parts.add(
        field(
            "apart",
            "Upper joint above the lower",
            "Middle of ball to middle of ball, straight up.",
            unit.word()));
    parts.add(
        field(
            "arm",
            "Arm's length",
            "From its pivot line to the ball joint, square to the line.",
            unit.word()));
    parts.add(
        field(
            "spread",
            "Pivot to pivot",
            "Middle of bolt to middle of bolt, along the car.",
            unit.word()));
    parts.add(field("front", "Turns of the front rod end", "+ out, − in; such as 1 1/2.", "turns"));
    parts.add(field("rear", "Turns of the rear rod end", "+ out, − in.", "turns"));
    parts.add(
        field(
            "camber",
            "Or: camber to change by",
            "+ top outward. Then the turns are worked out.",
            "°"));
    parts.add(field("caster", "Or: caster to change by", "+ top rearward.", "°"));
    parts.add(new FormPart.More("Thread and binding", threads.asked(), threads.parts()));
    parts.add(
        new FormPart.More(
            "Toe that comes along",
            typed.has("outer-above") || typed.has("steering-arm") || typed.has("rod-slope"),
            List.of(
                field(
                    "outer-above",
                    "Outer tie-rod end above the lower joint",
                    "− below it.",
                    unit.word()),
                field(
                    "steering-arm",
                    "Steering arm",
                    "Outer tie-rod end to the kingpin, fore and aft.",
                    unit.word()),
                field(
                    "rod-slope",
                    "Slope of the tie rod",
                    "How much higher its outer end is than its inner end, over its length: 1 in 20"
                        + " is 0.05, − if lower. Empty: level.",
                    ""))));
    parts.add(exactly.part());
    parts.add(good.part());
    return parts;
  }

  private FormPart field(String name, String label, String hint, String word) {
    return new FormPart.Typed(typed.fill(Field.of(name, label).hint(hint).unit(word)));
  }

  private RodThread thread(String name, RodThread otherwise) {
    if (!typed.has(name)) {
      if (name.equals("thread")) {
        typed.wrong(name, "Type the thread of the front rod end, like 5/8-18 or M16x1.5.");
      }
      return otherwise;
    }
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

  private TypedLength sized(String name, String sentence) {
    TypedLength length = typed.neededLength(name, unit, sentence + RANGE);
    if (length != null && !(length.mm() >= LEAST_MM && length.mm() <= MOST_MM)) {
      typed.wrong(name, sentence + RANGE);
    }
    return length;
  }

  private TypedLength steeringArm() {
    TypedLength length = typed.lengthFromZero("steering-arm", unit);
    if (length != null && !(length.mm() >= LEAST_MM && length.mm() <= MOST_MM)) {
      typed.wrong("steering-arm", "Type the steering arm's length" + RANGE);
    }
    return length;
  }

  private double turns(String name) {
    Double turns =
        good.number(
            name,
            -MOST_TURNS,
            MOST_TURNS,
            "Type turns as a number such as 1.5, 1 1/2 or −2, 40 at most.");
    if (turns != null && (typed.has("camber") || typed.has("caster"))) {
      typed.wrong(name, "Type turns, or a change of camber and caster: not both.");
    }
    return turns == null ? 0 : turns;
  }

  private TypedAngle change(String name) {
    TypedAngle angle = typed.angle(name);
    if (angle != null && Math.abs(angle.rad()) > MOST_CHANGE_RAD) {
      typed.wrong(name, "Rod ends do not change that much: type 10° or less.");
    }
    return angle;
  }

  private Figure slope() {
    Double slope = good.number("rod-slope", -1, 1, "Type a number between −1 and 1, such as 0.05.");
    return slope == null
        ? TypedFigures.assumed("rod-slope", 0, LEVEL_UNSURE)
        : TypedFigures.assumed("rod-slope", slope, SLOPE_UNSURE);
  }

  private static double rad(TypedAngle angle) {
    return angle == null ? 0 : angle.rad();
  }

  private static Line line(String name, Figure rad, String words) {
    return new Line(name, Rounded.signed(rad, DEGREE, "°"), words, null);
  }
}
