package spindlebook.measured;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import spindlebook.alignment.AgainstTarget;
import spindlebook.alignment.Toe;
import spindlebook.entry.AlignedFigure;
import spindlebook.entry.Content;
import spindlebook.fold.SeenAlignment;
import spindlebook.fold.SeenReading;
import spindlebook.fold.Standing;
import spindlebook.fold.Written;
import spindlebook.uncertainty.Difference;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Outcome;
import spindlebook.units.TypedLength;

/**
 * One figure of alignment: what it is, what it rests on, what that is worth now, and how it stands
 * against the owner's target.
 *
 * @param known its value and what it rests on; null when there is none
 * @param acrossMm of toe: what it is said across as a length; null when that is not known
 * @param beside what a round read of the same thing at ride and does not count here; null without
 * @param missing why there is no value; null when there is one
 * @param target null without one
 * @param against null without a target, or when the value does not count
 */
public record AlignedFinding(
    AlignedFigure figure,
    Known known,
    Double acrossMm,
    ReadAtRide beside,
    List<AlignedNote> notes,
    AlignedMissing missing,
    Written<Content.Target> target,
    AgainstTarget against) {
  static AlignedFinding of(AlignedFigure figure, Known known, List<AlignedNote> notes) {
    return new AlignedFinding(figure, known, null, null, notes, null, null, null);
  }

  static AlignedFinding missing(AlignedFigure figure, AlignedMissing missing) {
    return new AlignedFinding(figure, null, null, null, List.of(), missing, null, null);
  }

  AlignedFinding across(Double edgeMm) {
    return new AlignedFinding(figure, known, edgeMm, beside, notes, missing, target, against);
  }

  /** With what a round read at ride beside it, unless it is what this rests on. */
  AlignedFinding beside(Optional<ReadAtRide> read) {
    ReadAtRide r = read.filter(x -> !x.from().equals(inRound())).orElse(beside);
    return new AlignedFinding(figure, known, acrossMm, r, notes, missing, target, against);
  }

  /** rad, or mm for scrub, trail and track; null when there is none. */
  public Figure value() {
    return known == null ? null : known.value();
  }

  /** The worst of what it rests on; null without any. */
  public Standing stands() {
    return known == null ? null : known.stands();
  }

  /** Against its target: one that counts and cannot be held against it can't be told. */
  public Outcome outcome() {
    return against != null ? against.decision() : counts() ? Outcome.CANT_TELL : Outcome.NEEDS;
  }

  /** The measurements it rests on, the newest first. */
  public List<SeenAlignment> from() {
    return known == null ? List.of() : known.from();
  }

  /** Readings of rounds that it rests on, likewise. */
  public List<SeenReading> inRound() {
    return known == null ? List.of() : known.inRound();
  }

  /** The keys of all that it rests on. */
  public List<String> readings() {
    return Stream.concat(
            from().stream().map(SeenAlignment::key), inRound().stream().map(SeenReading::key))
        .toList();
  }

  /**
   * How this and what the round beside it read lie apart; empty unless both count and both are
   * angles.
   */
  public Optional<Difference> fromBeside() {
    return beside != null && counts() && beside.stands().counts() && beside.angle()
        ? Optional.of(Difference.of(beside.value(), value()))
        : Optional.empty();
  }

  public boolean counts() {
    return known != null && known.counts();
  }

  /** Toe across the wheel's edge, mm; of the total the sum of both wheels. */
  public Optional<Figure> acrossEdgeMm() {
    if (known == null || acrossMm == null) {
      return Optional.empty();
    }
    return Optional.of(
        figure == AlignedFigure.TOTAL_TOE
            ? new Toe(value().times(0.5)).mm(acrossMm).times(2)
            : new Toe(value()).mm(acrossMm));
  }

  AlignedFinding against(Optional<Written<Content.Target>> wanted) {
    Written<Content.Target> t = wanted.orElse(null);
    AgainstTarget decided = t == null ? null : decided(t);
    return new AlignedFinding(figure, known, acrossMm, beside, notes, missing, t, decided);
  }

  /** Empty of a decision when the target is a length across an edge that nobody gave. */
  private AgainstTarget decided(Written<Content.Target> wanted) {
    if (!counts()) {
      return null;
    }
    Content.Target t = wanted.content();
    if (t.angles() || !figure.angle()) {
      return AgainstTarget.between(
          value(),
          t.leastAngle() != null ? t.leastAngle().rad() : mm(t.least(), Double.NEGATIVE_INFINITY),
          t.mostAngle() != null ? t.mostAngle().rad() : mm(t.most(), Double.POSITIVE_INFINITY));
    }
    return acrossEdgeMm()
        .map(
            edge ->
                AgainstTarget.between(
                    edge,
                    mm(t.least(), Double.NEGATIVE_INFINITY),
                    mm(t.most(), Double.POSITIVE_INFINITY)))
        .orElse(null);
  }

  private static double mm(TypedLength length, double otherwise) {
    return length == null ? otherwise : length.mm();
  }
}
