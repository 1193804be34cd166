package spindlebook.measured;

import spindlebook.alignment.AxisPlace;
import spindlebook.alignment.CamberGauge;
import spindlebook.alignment.LeaningLine;
import spindlebook.alignment.PitchSwept;
import spindlebook.alignment.Sweep;
import spindlebook.alignment.ToeReading;
import spindlebook.alignment.TotalToe;
import spindlebook.alignment.Track;
import spindlebook.definition.Place;
import spindlebook.entry.AlignmentWay;
import spindlebook.entry.LineSide;
import spindlebook.fold.SeenAlignment;
import spindlebook.fold.ToolError;
import spindlebook.uncertainty.Figure;
import spindlebook.units.TypedAngle;
import spindlebook.units.TypedLength;

/**
 * Turns one measurement of alignment into figures: each value as typed, with the steps, the placing
 * and the class of the tool that read it.
 *
 * <p>A gauge whose zero nobody knows may be off by ± 0.2° (rectangular; common practice, no
 * source), the same way in all it reads: it cancels where readings are subtracted.
 */
final class ReadAlignment {
  static final double ZERO_UNSAID_RAD = Math.toRadians(0.2);

  private final SeenAlignment one;

  /** Repeats of one place by one tool share the steps of its scale. */
  private final String place;

  ReadAlignment(SeenAlignment one) {
    this.one = one;
    this.place = place(one);
  }

  /** What the sources of its scales' steps begin with. */
  static String place(SeenAlignment one) {
    return one.alignment().corner() + ":" + one.thing() + ":" + one.way().words() + ":";
  }

  /** The ways of camber. */
  Figure camberRad() {
    if (one.way() instanceof AlignmentWay.Gauge gauge) {
      return camberRad(gauge);
    }
    throw noWay();
  }

  /** A way of measuring that nobody made a figure of. */
  private IllegalStateException noWay() {
    return new IllegalStateException("not made a figure of: " + one.way().words());
  }

  private Figure camberRad(AlignmentWay.Gauge gauge) {
    if (gauge.turned() != null) {
      return CamberGauge.turnedRound(
              angle(gauge.read(), "read", ZERO_UNSAID_RAD),
              angle(gauge.turned(), "turned", ZERO_UNSAID_RAD))
          .camberRad();
    }
    return gauge.zero() == null
        ? angle(gauge.read(), "read", ZERO_UNSAID_RAD)
        : CamberGauge.camberRad(angle(gauge.read(), "read", 0), angle(gauge.zero(), "zero", 0));
  }

  /** Whether a gauge read it that may show anything on an upright wheel. */
  boolean zeroUnknown() {
    return one.way() instanceof AlignmentWay.Gauge g && g.turned() == null && g.zero() == null;
  }

  /** What a gauge turned round shows on an upright wheel. */
  Figure zeroErrorRad(AlignmentWay.Gauge gauge) {
    return CamberGauge.turnedRound(
            angle(gauge.read(), "read", 0), angle(gauge.turned(), "turned", 0))
        .zeroErrorRad();
  }

  /** The ways of toe. */
  Figure toeRad() {
    AlignmentWay way = one.way();
    if (way instanceof AlignmentWay.Line line) {
      return line(line);
    }
    if (way instanceof AlignmentWay.Spot spot) {
      return ToeReading.spot(length(spot.inward(), "inward"), length(spot.distance(), "distance"))
          .rad();
    }
    if (way instanceof AlignmentWay.Dials dials) {
      return dials(dials);
    }
    throw noWay();
  }

  private Figure dials(AlignmentWay.Dials dials) {
    Figure change =
        ToeReading.dialChangeRad(
            dial(dials.front(), "front"),
            dial(dials.rear(), "rear"),
            length(dials.spacing(), "spacing"));
    return dials.from() == null ? change : change.plus(angle(dials.from(), "from", 0));
  }

  private Figure line(AlignmentWay.Line line) {
    LineSide side = line.side();
    return ToeReading.fromLine(
            length(line.front(), "front"),
            length(line.rear(), "rear"),
            length(line.spacing(), "spacing"),
            side,
            line.lean() == null ? Figure.exact(0) : leanRad(line.lean()))
        .rad();
  }

  /** How far a line leans inward. */
  Figure leanRad(AlignmentWay.Lean lean) {
    return LeaningLine.inwardRad(
        lean.places(),
        length(lean.front(), "lean-front"),
        length(lean.rear(), "lean-rear"),
        length(lean.apart(), "lean-apart"),
        lean.frontWider() == null ? Figure.exact(0) : length(lean.frontWider(), "lean-wider"));
  }

  /** A pivot goes nowhere. */
  private Figure dial(TypedLength length, String what) {
    return length == null ? Figure.exact(0) : length(length, what);
  }

  /** The ways of total toe. */
  Figure totalToeRad() {
    if (one.way() instanceof AlignmentWay.Tape tape) {
      return TotalToe.byTape(
              length(tape.front(), "front"),
              length(tape.rear(), "rear"),
              length(tape.across(), "across"))
          .rad();
    }
    throw noWay();
  }

  /**
   * @param camberRad straight ahead, where the sweep did not read it
   */
  Sweep sweep(Place wheel, AlignmentWay.Swing swing, Figure camberRad, Figure toeRad) {
    Figure straight =
        swing.camberStraight() == null
            ? camberRad
            : angle(swing.camberStraight(), "straight", ZERO_UNSAID_RAD);
    return new Sweep(
        wheel,
        swing.by(),
        lock(swing.leftLock(), "left-lock"),
        lock(swing.rightLock(), "right-lock").times(-1),
        angle(swing.camberLeft(), "left", ZERO_UNSAID_RAD),
        straight,
        angle(swing.camberRight(), "right", ZERO_UNSAID_RAD),
        toeRad);
  }

  PitchSwept pitch(AlignmentWay.Swing swing) {
    return new PitchSwept(
        angle(swing.pitchLeft(), "pitch-left", ZERO_UNSAID_RAD),
        angle(swing.pitchStraight(), "pitch-straight", ZERO_UNSAID_RAD),
        angle(swing.pitchRight(), "pitch-right", ZERO_UNSAID_RAD));
  }

  Figure kpiRad(AlignmentWay.Swing swing) {
    return angle(swing.kpi(), "kpi", 0);
  }

  AxisPlace place(AlignmentWay.Joint joint) {
    return new AxisPlace(
        length(joint.ahead(), "ahead"),
        length(joint.inboard(), "inboard"),
        length(joint.below(), "below"));
  }

  Figure loadedRadiusMm(AlignmentWay.Joint joint) {
    return length(joint.loadedRadius(), "radius");
  }

  /** The loaded radius only tells where the tyres stand on the ground, which is not asked. */
  Track track(AlignmentWay.Across across, double camberRad) {
    Figure length = length(across.length(), "length");
    Figure section =
        across.section() == null ? Figure.exact(0) : length(across.section(), "section");
    double offsetMm = across.offset().mm();
    return across.outside()
        ? Track.fromOutside(length, offsetMm, camberRad, Figure.exact(0), section)
        : Track.fromHubFaces(length, offsetMm, camberRad, Figure.exact(0), section);
  }

  private Figure angle(TypedAngle angle, String what, double zeroHalfWidthRad) {
    return ToolError.ofAngles(one.angleTool(), zeroHalfWidthRad)
        .read(angle.rad(), one.key() + ":" + what, place + what);
  }

  private Figure lock(TypedAngle angle, String what) {
    return ToolError.ofAngles(one.lockTool(), 0)
        .read(angle.rad(), one.key() + ":" + what, place + what);
  }

  private Figure length(TypedLength length, String what) {
    return ToolError.ofLengths(one.lengthTool())
        .read(length.mm(), one.key() + ":" + what, place + what);
  }
}
