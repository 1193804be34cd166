package spindlebook.measured;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spindlebook.alignment.CasterSweep;
import spindlebook.alignment.ScrubTrail;
import spindlebook.alignment.SteeringAxis;
import spindlebook.alignment.Sweep;
import spindlebook.entry.AlignedFigure;
import spindlebook.entry.AlignedThing;
import spindlebook.entry.AlignmentWay;
import spindlebook.fold.Card;
import spindlebook.fold.SeenAlignment;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Rectangular;

/**
 * Caster, KPI, scrub and trail of one wheel as measured. A sweep takes camber straight ahead, where
 * it was not read in it, and toe as they are known here; scrub and trail take all four.
 */
final class MeasuredAxis {
  /** Half-width of what is counted where camber straight ahead was not read: 1.5 degrees. */
  private static final double CAMBER_UNSAID_RAD = Math.toRadians(1.5);

  /** Likewise of toe: half a degree. Both are common practice, no source. */
  private static final double TOE_UNSAID_RAD = Math.toRadians(0.5);

  private final Card card;
  private final Optional<Known> camber;
  private final Optional<Known> toe;

  MeasuredAxis(Card card) {
    this.card = card;
    this.camber = Known.camber(card).filter(Known::counts);
    this.toe = Known.toe(card).filter(Known::counts);
  }

  /** Caster or KPI. */
  AlignedFinding axis(AlignedFigure figure) {
    List<SeenAlignment> from = card.aligned().of(AlignedThing.STEERING_AXIS);
    if (from.isEmpty()) {
      return AlignedFinding.missing(figure, AlignedMissing.NOT_MEASURED);
    }
    try {
      Figure value =
          Figure.mean(
              from.stream()
                  .map(this::axis)
                  .map(a -> figure == AlignedFigure.CASTER ? a.casterRad() : a.kpiRad())
                  .toList());
      Known known = new Known(value, Known.stands(from), from);
      AlignmentWay.Swing last = (AlignmentWay.Swing) from.get(0).way();
      return AlignedFinding.of(
          figure, known, figure == AlignedFigure.KPI ? kpiNotes(last) : casterNotes(last));
    } catch (IllegalArgumentException none) {
      return AlignedFinding.missing(figure, AlignedMissing.NO_AXIS);
    }
  }

  private static List<AlignedNote> kpiNotes(AlignmentWay.Swing swing) {
    if (swing.kpi() != null) {
      return List.of(AlignedNote.KPI_KNOWN);
    }
    return swing.pitchRead() ? List.of() : List.of(AlignedNote.KPI_FROM_CAMBERS);
  }

  private List<AlignedNote> casterNotes(AlignmentWay.Swing swing) {
    List<AlignedNote> notes = new ArrayList<>();
    if (swing.camberStraight() == null) {
      notes.add(camber.isPresent() ? AlignedNote.CAMBER_TAKEN : AlignedNote.CAMBER_NOT_KNOWN);
    }
    if (toe.isEmpty()) {
      notes.add(AlignedNote.TOE_NOT_KNOWN);
    }
    return notes;
  }

  /**
   * What one sweep says.
   *
   * @throws IllegalArgumentException when no axis explains its readings
   */
  SteeringAxis axis(SeenAlignment one) {
    ReadAlignment read = new ReadAlignment(one);
    AlignmentWay.Swing swing = (AlignmentWay.Swing) one.way();
    Sweep sweep = sweep(one);
    if (swing.kpi() != null) {
      return CasterSweep.withKpi(sweep, read.kpiRad(swing));
    }
    return swing.pitchRead()
        ? CasterSweep.withPitch(sweep, read.pitch(swing))
        : CasterSweep.fromCambers(sweep);
  }

  private Sweep sweep(SeenAlignment one) {
    return new ReadAlignment(one)
        .sweep(card.place(), (AlignmentWay.Swing) one.way(), camberRad(), toeRad());
  }

  private Figure camberRad() {
    return camber.map(Known::value).orElseGet(() -> unsaid("camber", CAMBER_UNSAID_RAD));
  }

  private Figure toeRad() {
    return toe.map(Known::value).orElseGet(() -> unsaid("toe", TOE_UNSAID_RAD));
  }

  private Figure unsaid(String what, double halfWidthRad) {
    return Rectangular.within(0, card.corner() + ":" + what + ":unsaid", halfWidthRad);
  }

  /** What the trade's small-angle formula makes of the last sweep. */
  Optional<Figure> smallAngleCasterRad() {
    return card.aligned().of(AlignedThing.STEERING_AXIS).stream()
        .findFirst()
        .map(one -> CasterSweep.smallAngleRad(sweep(one)));
  }

  /** Scrub or trail. */
  AlignedFinding ground(AlignedFigure figure) {
    List<SeenAlignment> joints = card.aligned().of(AlignedThing.GROUND_POINT);
    AlignedFinding caster = axis(AlignedFigure.CASTER);
    if (joints.isEmpty() || caster.value() == null) {
      return AlignedFinding.missing(
          figure, joints.isEmpty() ? AlignedMissing.JOINT : AlignedMissing.AXIS);
    }
    SteeringAxis axis = new SteeringAxis(caster.value(), axis(AlignedFigure.KPI).value());
    List<Figure> values = joints.stream().map(j -> ground(figure, axis, j)).toList();
    Known known =
        new Known(Figure.mean(values), Known.stands(joints), joints)
            .restingOn(new Known(caster.value(), caster.stands(), caster.from()));
    List<AlignedNote> notes = new ArrayList<>();
    if (camber.isPresent()) {
      known = known.restingOn(camber.get());
    } else {
      notes.add(AlignedNote.CAMBER_NOT_KNOWN);
    }
    if (toe.isPresent()) {
      known = known.restingOn(toe.get());
    } else {
      notes.add(AlignedNote.TOE_NOT_KNOWN);
    }
    return AlignedFinding.of(figure, known, notes);
  }

  private Figure ground(AlignedFigure figure, SteeringAxis axis, SeenAlignment one) {
    ReadAlignment read = new ReadAlignment(one);
    AlignmentWay.Joint joint = (AlignmentWay.Joint) one.way();
    ScrubTrail at =
        ScrubTrail.of(read.place(joint), axis, camberRad(), toeRad(), read.loadedRadiusMm(joint));
    return figure == AlignedFigure.SCRUB ? at.scrubMm() : at.trailMm();
  }
}
