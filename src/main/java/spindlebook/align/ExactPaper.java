package spindlebook.align;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;
import spindlebook.align.OnPaperView.Block;
import spindlebook.align.OnPaperView.Line;
import spindlebook.alignment.ArmOnRodEnds;
import spindlebook.alignment.ExactTurns;
import spindlebook.alignment.Pivots;
import spindlebook.alignment.Propagated;
import spindlebook.alignment.Turns;
import spindlebook.uncertainty.Figure;
import spindlebook.units.LengthUnit;
import spindlebook.units.TapeText;
import spindlebook.units.TypedAngle;
import spindlebook.web.Field;
import spindlebook.web.FormPart;
import spindlebook.web.Posted;

/** What turns do exactly, from the corner's pivots as measured. */
final class ExactPaper {
  private static final double DEGREE = Math.toRadians(1);

  /** The points of {@link Pivots}, in its order. */
  private static final List<String[]> POINTS =
      List.of(
          new String[] {"lower-front", "Lower arm, front pivot"},
          new String[] {"lower-rear", "Lower arm, rear pivot"},
          new String[] {"lower-joint", "Lower ball joint"},
          new String[] {"upper-front", "Upper arm, front pivot"},
          new String[] {"upper-rear", "Upper arm, rear pivot"},
          new String[] {"upper-joint", "Upper ball joint"},
          new String[] {"tie-inner", "Tie rod, inner end"},
          new String[] {"tie-outer", "Tie rod, outer end"},
          new String[] {"wheel-centre", "Wheel's centre"});

  private static final int CAMBER = 3 * 9;
  private static final int TOE = CAMBER + 1;

  private final Posted typed;
  private final LengthUnit unit;
  private final TypedFigures good;

  ExactPaper(Posted typed, LengthUnit unit, TypedFigures good) {
    this.typed = typed;
    this.unit = unit;
    this.good = good;
  }

  boolean asked() {
    return POINTS.stream().anyMatch(p -> typed.has(p[0]));
  }

  /** Every number as a figure; what is wrong is told of in its field. */
  List<Figure> read() {
    List<Figure> inputs = new ArrayList<>();
    POINTS.forEach(p -> inputs.addAll(point(p[0])));
    inputs.add(angle("camber-now"));
    inputs.add(angle("toe-now"));
    if (typed.ok()) {
      // One sentence, at the first of those left out.
      POINTS.stream()
          .map(p -> p[0])
          .filter(p -> !typed.has(p))
          .findFirst()
          .ifPresent(
              p -> typed.wrong(p, "Exact turns need all nine points: type this one as well."));
    }
    return inputs;
  }

  private List<Figure> point(String name) {
    if (!typed.has(name)) {
      return List.of();
    }
    List<Figure> point = new ArrayList<>();
    String[] parts = typed.text(name).strip().split("\\s*;\\s*", -1);
    for (int i = 0; i < parts.length && parts.length == 3; i++) {
      String part = name + i;
      TapeText.plain(parts[i], unit).ifPresent(l -> point.add(good.mm(part, l.mm())));
    }
    if (point.size() != 3) {
      typed.wrong(
          name, "Type three lengths with ; between: ahead; outboard; up. Such as 3; 14; 9.");
    }
    return point;
  }

  private Figure angle(String name) {
    TypedAngle angle = typed.angle(name);
    if (angle != null && Math.abs(angle.rad()) > Math.toRadians(20)) {
      typed.wrong(name, "That is more than 20°; no wheel stands so.");
    }
    return good.rad(name, angle);
  }

  /** Turns that bring a wanted change about, none rounded. */
  record Wanted(Figure front, Figure rear) {
    Turns turns() {
      return new Turns(front.value(), rear.value());
    }
  }

  static Wanted turnsFor(
      List<Figure> inputs, ArmOnRodEnds arm, double camberRad, double casterRad) {
    return new Wanted(
        Propagated.of(inputs, v -> turnsFor(v, arm, camberRad, casterRad).front()),
        Propagated.of(inputs, v -> turnsFor(v, arm, camberRad, casterRad).rear()));
  }

  private static Turns turnsFor(double[] v, ArmOnRodEnds arm, double camberRad, double casterRad) {
    return ExactTurns.turnsFor(pivots(v, arm), arm.front(), arm.rear(), camberRad, casterRad);
  }

  /** What turns do with the wheel's centre kept at its height. */
  static Block block(List<Figure> inputs, ArmOnRodEnds arm, Turns turns) {
    return new Block(
        "The same turns exactly, from the pivots",
        List.of(
            line("Camber", inputs, arm, turns, ExactTurns::camberRad, "+ top outward"),
            line("Caster", inputs, arm, turns, ExactTurns::casterRad, "+ top rearward"),
            line("KPI", inputs, arm, turns, ExactTurns::kpiRad, "+ top inboard"),
            line(
                "Toe of this wheel",
                inputs,
                arm,
                turns,
                ExactTurns::toeRad,
                "+ in; tie rod and rack left alone, wheel's centre kept at its height")));
  }

  private static Line line(
      String name,
      List<Figure> inputs,
      ArmOnRodEnds arm,
      Turns turns,
      ToDoubleFunction<ExactTurns> of,
      String words) {
    double frontMm = turns.front() * arm.front().pitchMm();
    double rearMm = turns.rear() * arm.rear().pitchMm();
    Figure change =
        Propagated.of(
            inputs,
            v -> {
              Pivots p = pivots(v, arm);
              return of.applyAsDouble(ExactTurns.wheelHeld(p, frontMm, rearMm))
                  - of.applyAsDouble(ExactTurns.wheelHeld(p, 0, 0));
            });
    return new Line(name, Rounded.signed(change, DEGREE, "°"), words, null);
  }

  private static Pivots pivots(double[] v, ArmOnRodEnds arm) {
    Vector3D[] p = new Vector3D[9];
    for (int i = 0; i < p.length; i++) {
      p[i] = new Vector3D(v[3 * i], v[3 * i + 1], v[3 * i + 2]);
    }
    Pivots as = new Pivots(p[0], p[1], p[2], p[3], p[4], p[5], p[6], p[7], p[8], v[CAMBER], v[TOE]);
    return arm.arm() == ArmOnRodEnds.Arm.UPPER ? as : as.armsSwapped();
  }

  FormPart part() {
    List<FormPart> parts = new ArrayList<>();
    parts.add(
        new FormPart.Said(
            "Each point as ahead; outboard; up, from any one place of the frame, such as"
                + " 3 1/2; 14; 9. Behind, inboard and below are −."));
    for (String[] point : POINTS) {
      parts.add(field(point[0], point[1], unit.word()));
    }
    parts.add(field("camber-now", "Camber as it stands", "°"));
    parts.add(field("toe-now", "Toe of this wheel as it stands", "°"));
    return new FormPart.More("The pivots as measured, for exact turns", asked(), parts);
  }

  private FormPart field(String name, String label, String word) {
    return new FormPart.Typed(typed.fill(Field.of(name, label).unit(word)));
  }
}
