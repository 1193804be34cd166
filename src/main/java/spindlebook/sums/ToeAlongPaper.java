package spindlebook.sums;

import java.util.List;
import java.util.Map;
import spindlebook.drawing.Rounded;
import spindlebook.entry.Joint;
import spindlebook.fold.Card;
import spindlebook.linkage.CornerJoints;
import spindlebook.linkage.Vec;
import spindlebook.page.Asked;
import spindlebook.parts.ToeKnockOn;
import spindlebook.sums.OnPaperView.Line;
import spindlebook.uncertainty.Figure;

/** The toe that comes along when an upper arm's rod ends are turned and the tie rod is not. */
final class ToeAlongPaper {
  /** How far a tie rod's slope may be off: typed, and where level is assumed. */
  private static final double SLOPE_UNSURE = 0.02;

  private static final double LEVEL_UNSURE = 0.1;

  private final Card card;
  private final boolean slopeTyped;
  private final Figure above;
  private final Figure steering;
  private final Figure slope;

  ToeAlongPaper(Card card, Asked a, TypedFigures good) {
    this.card = card;
    this.above =
        good.mm(
            "outer-above",
            a.signed("outer-above", "Outer tie-rod end above the lower joint")
                .hint("− below it.")
                .read());
    this.steering =
        good.mm(
            "steering-arm",
            good.sized("steering-arm", "Steering arm", "Type the steering arm's length")
                .hint("Outer tie-rod end to the kingpin, fore and aft.")
                .read());
    Double typed =
        good.number(
                "rod-slope",
                "Slope of the tie rod",
                -1,
                1,
                "Type a number between −1 and 1, such as 0.05.")
            .hint(
                "How much higher its outer end is than its inner end, over its length: 1 in 20 is"
                    + " 0.05, − if lower. Empty: level.")
            .read();
    this.slopeTyped = typed != null;
    this.slope =
        slopeTyped
            ? TypedFigures.assumed("rod-slope", typed, SLOPE_UNSURE)
            : TypedFigures.assumed("rod-slope", 0, LEVEL_UNSURE);
  }

  /** From the joints laid out; nothing is asked. */
  ToeAlongPaper(Card card, TypedFigures good, Map<Joint, Vec> joints) {
    this.card = card;
    Vec outer = joints.get(Joint.TO);
    Vec lower = joints.get(Joint.L);
    Vec kingpin = joints.get(Joint.U).minus(lower);
    double up = outer.z() - lower.z();
    Vec tie = outer.minus(joints.get(Joint.TI));
    this.above = good.mm("outer-above", up);
    this.steering =
        good.mm("steering-arm", Math.abs(outer.x() - lower.x() - kingpin.x() * up / kingpin.z()));
    this.slopeTyped = true;
    this.slope = TypedFigures.assumed("rod-slope", tie.z() / tie.length(), SLOPE_UNSURE);
  }

  /** Adds toe to what the turns do; what is missing for it is told of in {@code notes}. */
  void add(List<Line> does, List<String> notes, boolean upper, Figure camberRad, Figure casterRad) {
    if (!upper || above == null || steering == null) {
      notes.add(
          "Toe moves too. Type where the outer tie-rod end lies and how long the steering arm is"
              + " to see by how much (upper arm only).");
      return;
    }
    if (CornerJoints.rack(card) == null) {
      notes.add("Toe's change turns round with the rack: say on the car's page where it lies.");
      return;
    }
    Figure toe =
        ToeKnockOn.rad(camberRad, casterRad, above, steering, slope, CornerJoints.rack(card));
    double offRad = ToeKnockOn.withinRad(camberRad.value(), casterRad.value());
    does.add(
        new Line(
            "Toe of this wheel comes along",
            Rounded.degrees(TypedFigures.byShortFormula("toe", toe, offRad)),
            "+ in; the tie rod left alone; short formula"
                + (slopeTyped ? "" : "; a level tie rod assumed")
                + ". Set toe last."));
  }
}
