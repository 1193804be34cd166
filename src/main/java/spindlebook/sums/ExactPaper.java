package spindlebook.sums;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;
import spindlebook.drawing.Rounded;
import spindlebook.entry.Joint;
import spindlebook.linkage.Joints;
import spindlebook.linkage.Vec;
import spindlebook.page.Asked;
import spindlebook.parts.ArmOnRodEnds;
import spindlebook.parts.ExactTurns;
import spindlebook.parts.Pivots;
import spindlebook.parts.Turns;
import spindlebook.sums.OnPaperView.Block;
import spindlebook.sums.OnPaperView.Line;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Propagated;
import spindlebook.units.TapeText;

/** What turns do exactly, from the corner's pivots as measured. */
final class ExactPaper {
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

  /** Whether one of the points was typed. */
  final boolean asked;

  /** Every number as a figure; none where no point was typed. */
  final List<Figure> inputs;

  ExactPaper(Asked a, TypedFigures good) {
    a.said(
        "Each point as ahead; outboard; up, from any one place of the frame, such as 3 1/2; 14;"
            + " 9. Behind, inboard and below are −.");
    List<Figure> all = new ArrayList<>();
    for (String[] point : POINTS) {
      List<Figure> typed =
          a.typed(point[0], point[1], text -> point(a, good, point[0], text))
              .unit(a.unit().word())
              .read();
      all.addAll(typed == null ? List.of() : typed);
    }
    all.add(angle(a, good, "camber-now", "Camber as it stands"));
    all.add(angle(a, good, "toe-now", "Toe of this wheel as it stands"));
    List<String> leftOut = POINTS.stream().map(p -> p[0]).filter(p -> !a.has(p)).toList();
    this.asked = leftOut.size() < POINTS.size();
    this.inputs = asked ? all : List.of();
    if (asked && a.ok() && !leftOut.isEmpty()) {
      // One sentence, at the first of those left out.
      a.wrong(leftOut.get(0), "Exact turns need all nine points: type this one as well.");
    }
  }

  /** From the joints laid out, y outboard; nothing is asked. */
  ExactPaper(TypedFigures good, Joints joints) {
    List<Figure> all = new ArrayList<>();
    for (Joint joint : EnumSet.range(Joint.LF, Joint.W)) {
      Vec p = joints.get(joint);
      all.add(good.mm(joint.key + " x", p.x()));
      all.add(good.mm(joint.key + " y", joints.left() ? p.y() : -p.y()));
      all.add(good.mm(joint.key + " z", p.z()));
    }
    all.add(good.rad("camber-now", joints.camberRad()));
    all.add(good.rad("toe-now", joints.toeRad()));
    this.asked = true;
    this.inputs = all;
  }

  private static List<Figure> point(Asked a, TypedFigures good, String name, String text) {
    List<Figure> point = new ArrayList<>();
    String[] parts = text.split("\\s*;\\s*", -1);
    for (int i = 0; i < parts.length && parts.length == 3; i++) {
      String part = name + i;
      TapeText.plain(parts[i], a.unit()).ifPresent(l -> point.add(good.mm(part, l.mm())));
    }
    if (point.size() != 3) {
      a.wrong(name, "Type three lengths with ; between: ahead; outboard; up. Such as 3; 14; 9.");
    }
    return point;
  }

  private static Figure angle(Asked a, TypedFigures good, String name, String label) {
    return good.rad(
        name,
        a.angle(name, label)
            .check(
                x -> Math.abs(x.rad()) <= Math.toRadians(20),
                "That is more than 20°; no wheel stands so.")
            .read());
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
    return new Line(name, Rounded.degrees(change), words);
  }

  private static Pivots pivots(double[] v, ArmOnRodEnds arm) {
    Vector3D[] p = new Vector3D[9];
    for (int i = 0; i < p.length; i++) {
      p[i] = new Vector3D(v[3 * i], v[3 * i + 1], v[3 * i + 2]);
    }
    Pivots as = new Pivots(p[0], p[1], p[2], p[3], p[4], p[5], p[6], p[7], p[8], v[CAMBER], v[TOE]);
    return arm.arm() == ArmOnRodEnds.Arm.UPPER ? as : as.armsSwapped();
  }
}
