package spindlebook.align;

import java.util.List;
import spindlebook.align.OnPaperView.Line;
import spindlebook.alignment.ToeKnockOn;
import spindlebook.corner.Card;
import spindlebook.uncertainty.Figure;
import spindlebook.units.LengthUnit;
import spindlebook.units.TypedLength;
import spindlebook.web.FormPart;
import spindlebook.web.Posted;

/** The toe that comes along when an upper arm's rod ends are turned and the tie rod is not. */
final class ToeAlongPaper {
  private static final double DEGREE = Math.toRadians(1);

  /** How far a tie rod's slope may be off: typed, and where level is assumed. */
  private static final double SLOPE_UNSURE = 0.02;

  private static final double LEVEL_UNSURE = 0.1;

  private final Card card;
  private final Posted typed;
  private final LengthUnit unit;
  private final TypedFigures good;
  private Figure above;
  private Figure steering;
  private Figure slope;

  ToeAlongPaper(Card card, Posted typed, TypedFigures good) {
    this.card = card;
    this.typed = typed;
    this.unit = card.details().unit();
    this.good = good;
  }

  boolean asked() {
    return typed.has("outer-above") || typed.has("steering-arm") || typed.has("rod-slope");
  }

  /** Reads the fields; what is wrong is told of in them. */
  void read() {
    TypedLength height = typed.length("outer-above", unit);
    above = height == null ? null : good.mm("outer-above", height);
    TypedLength arm =
        typed.has("steering-arm")
            ? good.sized("steering-arm", "Type the steering arm's length")
            : null;
    steering = arm == null ? null : good.mm("steering-arm", arm);
    Double typedSlope =
        good.number("rod-slope", -1, 1, "Type a number between −1 and 1, such as 0.05.");
    slope =
        typedSlope == null
            ? TypedFigures.assumed("rod-slope", 0, LEVEL_UNSURE)
            : TypedFigures.assumed("rod-slope", typedSlope, SLOPE_UNSURE);
  }

  /** Adds toe to what the turns do; what is missing for it is told of in {@code notes}. */
  void add(List<Line> does, List<String> notes, boolean upper, Figure camberRad, Figure casterRad) {
    if (!upper || above == null || steering == null) {
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
        ToeKnockOn.rad(camberRad, casterRad, above, steering, slope, card.details().rack());
    double offRad = ToeKnockOn.withinRad(camberRad.value(), casterRad.value());
    does.add(
        new Line(
            "Toe of this wheel comes along",
            Rounded.signed(TypedFigures.byShortFormula("toe", toe, offRad), DEGREE, "°"),
            "+ in; the tie rod left alone; short formula"
                + (typed.has("rod-slope") ? "" : "; a level tie rod assumed")
                + ". Set toe last.",
            null));
  }

  FormPart part() {
    return new FormPart.More(
        "Toe that comes along",
        asked(),
        List.of(
            good.field(
                "outer-above",
                "Outer tie-rod end above the lower joint",
                "− below it.",
                unit.word()),
            good.field(
                "steering-arm",
                "Steering arm",
                "Outer tie-rod end to the kingpin, fore and aft.",
                unit.word()),
            good.field(
                "rod-slope",
                "Slope of the tie rod",
                "How much higher its outer end is than its inner end, over its length: 1 in 20 is"
                    + " 0.05, − if lower. Empty: level.",
                "")));
  }
}
