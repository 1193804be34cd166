package spindlebook.measured;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import spindlebook.alignment.Toe;
import spindlebook.alignment.ToeRead;
import spindlebook.alignment.Track;
import spindlebook.entry.AlignedFigure;
import spindlebook.entry.AlignedThing;
import spindlebook.entry.AlignmentWay;
import spindlebook.fold.Card;
import spindlebook.fold.SeenAlignment;
import spindlebook.fold.Standing;
import spindlebook.uncertainty.Figure;

/**
 * What a corner's book says of its alignment at ride: every figure from what was measured, with
 * what it rests on and how it stands against its target.
 *
 * <p>A figure rests on the last measurement that counts and on its repeats, whose mean it is: what
 * repeats share (the tool, the steps of its scale at that place) does not shrink. Where nothing
 * counts any more the last value is told as what it is, stale or in doubt, and decides nothing.
 * Camber and toe that a round read at ride stand in for what nothing measured here tells, where the
 * car stood as it drives ({@link ReadAtRide}); else they are told beside. Total toe is the sum of
 * both wheels, or a tape across both tyres where that is newer than either of them, or the sum does
 * not count.
 */
public final class MeasuredAlignment {
  private final Card card;
  private final Optional<Card> mirror;
  private final MeasuredAxis axis;

  /**
   * @param mirror the other wheel of the axle; empty where the car has none
   */
  public MeasuredAlignment(Card card, Optional<Card> mirror) {
    this.card = card;
    this.mirror = mirror;
    this.axis = new MeasuredAxis(card);
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
          case CASTER, KPI -> axis.axis(figure);
          case SCRUB, TRAIL -> axis.ground(figure);
          case TRACK -> track();
        };
    return found.against(card.aligned().target(figure));
  }

  /**
   * What the trade's small-angle formula makes of the last sweep; shown beside the exact caster.
   */
  public Optional<Figure> smallAngleCasterRad() {
    return axis.smallAngleCasterRad();
  }

  /** Left before right. */
  private Stream<Card> axle() {
    return Stream.concat(Stream.of(card), mirror.stream())
        .sorted(Comparator.comparing(Card::place));
  }

  // --- camber and toe

  private AlignedFinding camber() {
    return Known.camber(card)
        .map(k -> AlignedFinding.of(AlignedFigure.CAMBER, k, camberNotes(k)))
        .orElseGet(() -> AlignedFinding.missing(AlignedFigure.CAMBER, AlignedMissing.NOT_MEASURED))
        .beside(ReadAtRide.camber(card));
  }

  private List<AlignedNote> camberNotes(Known known) {
    List<AlignedNote> notes = new ArrayList<>(roundNotes(known));
    boolean zeroUnknown =
        known.from().isEmpty()
            ? !ReadAtRide.zeroFound(known.inRound().get(0))
            : new ReadAlignment(known.from().get(0)).zeroUnknown();
    if (zeroUnknown) {
      notes.add(AlignedNote.ZERO_NOT_KNOWN);
    }
    return notes;
  }

  private static List<AlignedNote> roundNotes(Known known) {
    return known.inRound().isEmpty() ? List.of() : List.of(AlignedNote.IN_ROUND);
  }

  /** What the gauge showed too much when it was last turned round, at either wheel. */
  public Optional<Figure> gaugeZeroRad() {
    return axle()
        .flatMap(c -> c.aligned().read().stream())
        .filter(r -> r.way() instanceof AlignmentWay.Gauge g && g.turned() != null)
        .filter(r -> r.stands() != Standing.IN_DOUBT)
        .max(Comparator.comparingLong(SeenAlignment::n))
        .map(r -> new ReadAlignment(r).zeroErrorRad((AlignmentWay.Gauge) r.way()));
  }

  private AlignedFinding toe() {
    return Known.toe(card)
        .map(k -> AlignedFinding.of(AlignedFigure.TOE, k, toeNotes(k)).across(across(card, k)))
        .orElseGet(() -> AlignedFinding.missing(AlignedFigure.TOE, AlignedMissing.NOT_MEASURED))
        .beside(ReadAtRide.toe(card));
  }

  private List<AlignedNote> toeNotes(Known known) {
    List<AlignedNote> notes = new ArrayList<>(roundNotes(known));
    if (ToeRead.borrowed(card)) {
      notes.add(AlignedNote.ACROSS_BORROWED);
    }
    return notes;
  }

  /**
   * As the owner gave it, for either wheel, so that both are said alike; else as the measurement
   * itself was taken, of an axle at the left.
   */
  private static Double across(Card wheel, Known known) {
    return ToeRead.acrossMm(wheel)
        .map(Figure::value)
        .or(
            () ->
                known.from().stream()
                    .sorted(Comparator.comparing(SeenAlignment::place))
                    .filter(one -> one.way().across() != null)
                    .map(one -> one.way().across().mm())
                    .findFirst())
        .orElse(null);
  }

  /** How far the line leaned inward that toe was read from; empty where it was set straight. */
  public static Optional<Figure> lineLeanRad(SeenAlignment one) {
    return one.way() instanceof AlignmentWay.Line line && line.lean() != null
        ? Optional.of(new ReadAlignment(one).leanRad(line.lean()))
        : Optional.empty();
  }

  private AlignedFinding totalToe() {
    Optional<Known> wheels = bothWheels();
    Optional<Known> tape =
        Known.of(card, AlignedThing.TOTAL_TOE, ReadAlignment::totalToeRad)
            .filter(t -> wheels.isEmpty() || better(t, wheels.get()));
    Optional<Known> known = tape.or(() -> wheels);
    if (known.isEmpty()) {
      return AlignedFinding.missing(
          AlignedFigure.TOTAL_TOE,
          Known.toe(card).isPresent() ? AlignedMissing.OTHER_WHEEL : AlignedMissing.NOT_MEASURED);
    }
    return AlignedFinding.of(
            AlignedFigure.TOTAL_TOE,
            known.get(),
            tape.isPresent() ? List.of(AlignedNote.HIDES_SIDES) : bothNotes(known.get()))
        .across(across(axle().findFirst().orElseThrow(), known.get()));
  }

  /** One wheel may be measured and the other read in a round. */
  private static List<AlignedNote> bothNotes(Known known) {
    return known.from().isEmpty() || known.inRound().isEmpty()
        ? roundNotes(known)
        : List.of(AlignedNote.WHEEL_IN_ROUND);
  }

  private boolean better(Known tape, Known wheels) {
    if (tape.counts() != wheels.counts()) {
      return tape.counts();
    }
    long olderWheel =
        axle().flatMap(c -> Known.toe(c).stream()).mapToLong(Known::newest).min().orElse(0);
    return tape.newest() > olderWheel;
  }

  private Optional<Known> bothWheels() {
    Optional<Known> there = mirror.flatMap(Known::toe);
    return Known.toe(card)
        .flatMap(
            here ->
                there.map(
                    other ->
                        new Known(
                                Toe.totalRad(new Toe(here.value()), new Toe(other.value())),
                                here.stands(),
                                here.from(),
                                here.inRound())
                            .restingOn(other)));
  }

  // --- track

  private AlignedFinding track() {
    List<SeenAlignment> from = card.aligned().of(AlignedThing.TRACK);
    if (from.isEmpty()) {
      return AlignedFinding.missing(AlignedFigure.TRACK, AlignedMissing.NOT_MEASURED);
    }
    List<Figure> centres = from.stream().map(f -> track(f).centresMm()).toList();
    List<AlignedNote> notes = new ArrayList<>();
    if (cambersRad().length == 0) {
      notes.add(AlignedNote.CAMBER_NOT_IN_TRACK);
    }
    if (((AlignmentWay.Across) from.get(0).way()).section() == null) {
      notes.add(AlignedNote.SECTION_NOT_KNOWN);
    }
    Known known = new Known(Figure.mean(centres), Known.stands(from), from);
    return AlignedFinding.of(AlignedFigure.TRACK, known, notes);
  }

  /** Hub faces, wheel centres and outside, of the last one measured. */
  public Optional<Track> lastTrack() {
    return card.aligned().of(AlignedThing.TRACK).stream().findFirst().map(this::track);
  }

  /** Of wheels taken as alike: each leans as both do in the mean. */
  private Track track(SeenAlignment one) {
    double camberRad = Arrays.stream(cambersRad()).average().orElse(0);
    return new ReadAlignment(one).track((AlignmentWay.Across) one.way(), camberRad);
  }

  private double[] cambersRad() {
    return axle()
        .flatMap(c -> Known.camber(c).filter(Known::counts).stream())
        .mapToDouble(k -> k.value().value())
        .toArray();
  }

  // --- one by itself

  /** What one measurement says by itself; of a sweep its caster, of the lower joint nothing. */
  Optional<Figure> alone(SeenAlignment one) {
    ReadAlignment read = new ReadAlignment(one);
    try {
      return switch (one.thing()) {
        case CAMBER -> Optional.of(read.camberRad());
        case TOE -> Optional.of(read.toeRad());
        case TOTAL_TOE -> Optional.of(read.totalToeRad());
        case STEERING_AXIS -> Optional.of(axis.axis(one).casterRad());
        case TRACK -> Optional.of(track(one).centresMm());
        case GROUND_POINT -> Optional.empty();
      };
    } catch (IllegalArgumentException noAxis) {
      return Optional.empty();
    }
  }
}
