package spindlebook.alignment;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import spindlebook.corner.AlignedFigure;
import spindlebook.corner.AlignedThing;
import spindlebook.corner.AlignmentWay;
import spindlebook.corner.Card;
import spindlebook.corner.Dimension;
import spindlebook.corner.SeenAlignment;
import spindlebook.corner.Standing;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Rectangular;
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;

/**
 * What a corner's book says of its alignment at ride: every figure from what was measured, with
 * what it rests on and how it stands against its target.
 *
 * <p>A figure rests on the last measurement that counts and on its repeats, whose mean it is: what
 * repeats share (the tool, the steps of its scale at that place) does not shrink. Where nothing
 * counts any more the last value is told as what it is, stale or in doubt, and decides nothing.
 * Total toe is the newer of a tape across both tyres and the sum of both wheels. Scrub and trail
 * take caster, KPI, camber and toe as they are known here.
 */
public final class MeasuredAlignment {
  /** Half-width of what is counted where camber straight ahead was not read: 1.5 degrees. */
  private static final double CAMBER_UNSAID_RAD = Math.toRadians(1.5);

  /** Likewise of toe: half a degree. Both are common practice, no source. */
  private static final double TOE_UNSAID_RAD = Math.toRadians(0.5);

  private final Card card;
  private final Card mirror;

  /** What is known of one figure before its target. */
  private record Known(Figure value, Standing stands, List<SeenAlignment> from) {
    boolean counts() {
      return stands.counts();
    }
  }

  /**
   * @param mirror the other wheel of the axle; empty where the car has none
   */
  public MeasuredAlignment(Card card, Optional<Card> mirror) {
    this.card = card;
    this.mirror = mirror.orElse(null);
  }

  /** Every figure there is for this corner, measured or not. */
  public List<AlignedFinding> findings() {
    List<AlignedFinding> all = new ArrayList<>();
    for (AlignedFigure figure : AlignedFigure.values()) {
      if (card.layout().steered() || !figure.ofSteeringAxis()) {
        all.add(of(figure));
      }
    }
    return List.copyOf(all);
  }

  public AlignedFinding of(AlignedFigure figure) {
    AlignedFinding found =
        switch (figure) {
          case CAMBER -> camber();
          case TOE -> toe();
          case TOTAL_TOE -> totalToe();
          case CASTER, KPI -> axis(figure);
          case SCRUB, TRAIL -> ground(figure);
          case TRACK -> track();
        };
    return found.against(card.aligned().target(figure));
  }

  // --- camber and toe

  private AlignedFinding camber() {
    Optional<Known> known = camber(card);
    List<AlignedNote> notes =
        known
            .filter(k -> zeroUnknown((AlignmentWay.Gauge) k.from().get(0).way()))
            .map(k -> List.of(AlignedNote.ZERO_NOT_KNOWN))
            .orElse(List.of());
    return finding(AlignedFigure.CAMBER, known, null, notes, AlignedMissing.NOT_MEASURED);
  }

  private static boolean zeroUnknown(AlignmentWay.Gauge gauge) {
    return gauge.turned() == null && gauge.zero() == null;
  }

  private static Optional<Known> camber(Card at) {
    return known(
        at,
        AlignedThing.CAMBER,
        one -> new ReadAlignment(one).camberRad((AlignmentWay.Gauge) one.way()));
  }

  private AlignedFinding toe() {
    Optional<Known> known = toe(card);
    return finding(
        AlignedFigure.TOE,
        known,
        known.map(k -> across(card, k)).orElse(null),
        List.of(),
        AlignedMissing.NOT_MEASURED);
  }

  private static Optional<Known> toe(Card at) {
    return known(at, AlignedThing.TOE, one -> new ReadAlignment(one).toeRad());
  }

  /** As the owner gave it; else as the measurement itself was taken. */
  private static Double across(Card at, Known known) {
    return at.given(Dimension.TOE_ACROSS)
        .map(g -> g.length().mm())
        .orElseGet(() -> ReadAlignment.acrossMm(known.from().get(0).way()));
  }

  private AlignedFinding totalToe() {
    Optional<Known> tape =
        known(
            card,
            AlignedThing.TOTAL_TOE,
            one -> new ReadAlignment(one).totalToe((AlignmentWay.Tape) one.way()).rad());
    Optional<Known> wheels = bothWheels();
    if (wheels.isPresent() && tape.filter(t -> better(t, wheels.get())).isEmpty()) {
      return finding(AlignedFigure.TOTAL_TOE, wheels, across(card, wheels.get()), List.of(), null);
    }
    return finding(
        AlignedFigure.TOTAL_TOE,
        tape,
        tape.map(t -> across(card, t)).orElse(null),
        tape.isPresent() ? List.of(AlignedNote.HIDES_SIDES) : List.of(),
        toe(card).isPresent() ? AlignedMissing.OTHER_WHEEL : AlignedMissing.NOT_MEASURED);
  }

  private static boolean better(Known tape, Known wheels) {
    if (tape.counts() != wheels.counts()) {
      return tape.counts();
    }
    // Of two wheels the older one says how fresh their sum is.
    long oldest = wheels.from().stream().mapToLong(SeenAlignment::n).min().orElse(0);
    return tape.from().get(0).n() > oldest;
  }

  private Optional<Known> bothWheels() {
    if (mirror == null) {
      return Optional.empty();
    }
    return toe(card)
        .flatMap(
            here ->
                toe(mirror)
                    .map(
                        there ->
                            new Known(
                                Toe.totalRad(new Toe(here.value()), new Toe(there.value())),
                                worse(here.stands(), there.stands()),
                                join(here.from(), there.from()))));
  }

  // --- caster, KPI, scrub, trail

  private AlignedFinding axis(AlignedFigure figure) {
    List<SeenAlignment> from = card.aligned().of(AlignedThing.STEERING_AXIS);
    if (from.isEmpty()) {
      return nothing(figure, AlignedMissing.NOT_MEASURED);
    }
    try {
      List<SteeringAxis> axes = from.stream().map(this::axis).toList();
      Figure value =
          Figure.mean(
              axes.stream()
                  .map(a -> figure == AlignedFigure.CASTER ? a.casterRad() : a.kpiRad())
                  .toList());
      Known known = new Known(value, stands(from), from);
      return finding(figure, Optional.of(known), null, axisNotes(figure, from.get(0)), null);
    } catch (IllegalArgumentException none) {
      return nothing(figure, AlignedMissing.NO_AXIS);
    }
  }

  private List<AlignedNote> axisNotes(AlignedFigure figure, SeenAlignment last) {
    AlignmentWay.Swing swing = (AlignmentWay.Swing) last.way();
    List<AlignedNote> notes = new ArrayList<>();
    if (figure == AlignedFigure.KPI) {
      if (swing.kpi() != null) {
        notes.add(AlignedNote.KPI_KNOWN);
      } else if (!swing.pitchRead()) {
        notes.add(AlignedNote.KPI_FROM_CAMBERS);
      }
      return notes;
    }
    if (swing.camberStraight() == null) {
      notes.add(
          camber(card).filter(Known::counts).isPresent()
              ? AlignedNote.CAMBER_TAKEN
              : AlignedNote.CAMBER_NOT_KNOWN);
    }
    if (toe(card).filter(Known::counts).isEmpty()) {
      notes.add(AlignedNote.TOE_NOT_KNOWN);
    }
    return notes;
  }

  private SteeringAxis axis(SeenAlignment one) {
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
        .sweep(card.place(), (AlignmentWay.Swing) one.way(), camberOrUnsaid(), toeOrUnsaid());
  }

  private Figure camberOrUnsaid() {
    return camber(card).filter(Known::counts).map(Known::value).orElseGet(() -> unsaid("camber"));
  }

  private Figure toeOrUnsaid() {
    return toe(card).filter(Known::counts).map(Known::value).orElseGet(() -> unsaid("toe"));
  }

  private Figure unsaid(String what) {
    double halfRad = what.equals("toe") ? TOE_UNSAID_RAD : CAMBER_UNSAID_RAD;
    return Figure.of(
        0,
        new Source(card.corner() + ":" + what + ":unsaid", SourceKind.ALLOWANCE),
        Rectangular.u(halfRad));
  }

  /**
   * What the trade's small-angle formula makes of the last sweep; shown beside the exact caster.
   */
  public Optional<Figure> smallAngleCasterRad() {
    return card.aligned().of(AlignedThing.STEERING_AXIS).stream()
        .findFirst()
        .map(one -> CasterSweep.smallAngleRad(sweep(one)));
  }

  private AlignedFinding ground(AlignedFigure figure) {
    List<SeenAlignment> joints = card.aligned().of(AlignedThing.GROUND_POINT);
    AlignedFinding caster = axis(AlignedFigure.CASTER);
    AlignedFinding kpi = axis(AlignedFigure.KPI);
    if (joints.isEmpty() || caster.value() == null) {
      return nothing(figure, joints.isEmpty() ? AlignedMissing.JOINT : AlignedMissing.AXIS);
    }
    Optional<Known> camber = camber(card).filter(Known::counts);
    Optional<Known> toe = toe(card).filter(Known::counts);
    SteeringAxis axis = new SteeringAxis(caster.value(), kpi.value());
    List<Figure> values = new ArrayList<>();
    for (SeenAlignment one : joints) {
      ReadAlignment read = new ReadAlignment(one);
      AlignmentWay.Joint joint = (AlignmentWay.Joint) one.way();
      ScrubTrail at =
          ScrubTrail.of(
              read.place(joint), axis, camberOrUnsaid(), toeOrUnsaid(), read.loadedRadiusMm(joint));
      values.add(figure == AlignedFigure.SCRUB ? at.scrubMm() : at.trailMm());
    }
    List<SeenAlignment> from = join(joints, caster.from());
    Standing stands = worse(stands(joints), caster.stands());
    List<AlignedNote> notes = new ArrayList<>();
    if (camber.isPresent()) {
      from = join(from, camber.get().from());
      stands = worse(stands, camber.get().stands());
    } else {
      notes.add(AlignedNote.CAMBER_NOT_KNOWN);
    }
    if (toe.isPresent()) {
      from = join(from, toe.get().from());
      stands = worse(stands, toe.get().stands());
    } else {
      notes.add(AlignedNote.TOE_NOT_KNOWN);
    }
    Known known = new Known(Figure.mean(values), stands, from);
    return finding(figure, Optional.of(known), null, notes, null);
  }

  // --- track

  private AlignedFinding track() {
    List<SeenAlignment> from = card.aligned().of(AlignedThing.TRACK);
    if (from.isEmpty()) {
      return nothing(AlignedFigure.TRACK, AlignedMissing.NOT_MEASURED);
    }
    List<Figure> centres = from.stream().map(f -> track(f).centresMm()).toList();
    List<AlignedNote> notes = new ArrayList<>();
    if (camber(card).filter(Known::counts).isEmpty()) {
      notes.add(AlignedNote.CAMBER_NOT_IN_TRACK);
    }
    if (((AlignmentWay.Across) from.get(0).way()).section() == null) {
      notes.add(AlignedNote.SECTION_NOT_KNOWN);
    }
    Known known = new Known(Figure.mean(centres), stands(from), from);
    return finding(AlignedFigure.TRACK, Optional.of(known), null, notes, null);
  }

  /** Hub faces, wheel centres and outside, of the last one measured. */
  public Optional<Track> lastTrack() {
    return card.aligned().of(AlignedThing.TRACK).stream().findFirst().map(this::track);
  }

  private Track track(SeenAlignment one) {
    double camberRad = camber(card).filter(Known::counts).map(k -> k.value().value()).orElse(0.0);
    return new ReadAlignment(one).track((AlignmentWay.Across) one.way(), camberRad);
  }

  /** What one measurement says by itself; of a sweep its caster, of the lower joint nothing. */
  Optional<Figure> alone(SeenAlignment one) {
    ReadAlignment read = new ReadAlignment(one);
    try {
      return switch (one.thing()) {
        case CAMBER -> Optional.of(read.camberRad((AlignmentWay.Gauge) one.way()));
        case TOE -> Optional.of(read.toeRad());
        case TOTAL_TOE -> Optional.of(read.totalToe((AlignmentWay.Tape) one.way()).rad());
        case STEERING_AXIS -> Optional.of(axis(one).casterRad());
        case TRACK -> Optional.of(track(one).centresMm());
        case GROUND_POINT -> Optional.empty();
      };
    } catch (IllegalArgumentException noAxis) {
      return Optional.empty();
    }
  }

  // --- putting it together

  private interface Reads {
    Figure of(SeenAlignment one);
  }

  private static Optional<Known> known(Card at, AlignedThing thing, Reads reads) {
    List<SeenAlignment> from = at.aligned().of(thing);
    return from.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Known(Figure.mean(from.stream().map(reads::of).toList()), stands(from), from));
  }

  private static Standing stands(List<SeenAlignment> from) {
    return from.stream().map(SeenAlignment::stands).reduce(MeasuredAlignment::worse).orElseThrow();
  }

  private static Standing worse(Standing one, Standing other) {
    List<Standing> ranked =
        List.of(Standing.IN_DOUBT, Standing.STALE, Standing.PUT_BACK, Standing.LIVE);
    return ranked.stream().filter(s -> s == one || s == other).findFirst().orElseThrow();
  }

  private static List<SeenAlignment> join(List<SeenAlignment> one, List<SeenAlignment> other) {
    Set<SeenAlignment> all = new LinkedHashSet<>(one);
    all.addAll(other);
    return List.copyOf(all);
  }

  private static AlignedFinding nothing(AlignedFigure figure, AlignedMissing missing) {
    return finding(figure, Optional.empty(), null, List.of(), missing);
  }

  private static AlignedFinding finding(
      AlignedFigure figure,
      Optional<Known> known,
      Double acrossMm,
      List<AlignedNote> notes,
      AlignedMissing missing) {
    return new AlignedFinding(
        figure,
        known.map(Known::value).orElse(null),
        acrossMm,
        known.map(Known::stands).orElse(null),
        known.map(Known::from).orElse(List.of()),
        notes,
        known.isPresent() ? null : missing,
        null,
        null);
  }
}
