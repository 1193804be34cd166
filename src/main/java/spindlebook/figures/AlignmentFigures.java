package spindlebook.figures;

import java.util.List;
import java.util.Optional;
import spindlebook.alignment.Track;
import spindlebook.entry.AlignedFigure;
import spindlebook.fold.Card;
import spindlebook.fold.SeenReading;
import spindlebook.measured.AlignedFinding;
import spindlebook.measured.JointSwing;
import spindlebook.measured.MeasuredAlignment;
import spindlebook.measured.ReadAtRide;

/** A corner's alignment as measured, as JSON. */
final class AlignmentFigures {
  private AlignmentFigures() {}

  static void corner(Node corner, Card card, Optional<Card> mirror) {
    MeasuredAlignment measured = new MeasuredAlignment(card, mirror);
    corner.put(
        "alignment",
        measured.findings().stream()
            .filter(f -> f.value() != null || f.target() != null || f.beside() != null)
            .map(f -> finding(f, measured))
            .toList());
    List<JointSwing> swings = JointSwing.of(card, mirror);
    if (!swings.isEmpty()) {
      corner.put("swings", swings.stream().map(AlignmentFigures::swing).toList());
    }
  }

  private static Node swing(JointSwing of) {
    return new Node()
        .put("joint", of.joint())
        .put("rad", of.worst())
        .put("positionMm", of.position())
        .put("rackMm", of.rackMm())
        .put(
            "atPlacesRad",
            of.atPlaces().stream()
                .map(at -> at.stream().map(r -> r.isNaN() ? "not reached" : r).toList())
                .toList())
        .put("allowsRad", of.allows() == null ? null : of.allows().rad())
        .put("outcome", of.outcome())
        .put("stands", of.stands())
        .put("from", of.from());
  }

  private static Node finding(AlignedFinding found, MeasuredAlignment measured) {
    AlignedFigure figure = found.figure();
    Optional<Track> track = figure == AlignedFigure.TRACK ? measured.lastTrack() : Optional.empty();
    return new Node()
        .put("what", figure)
        .put(figure.angle() ? "rad" : "mm", found.value())
        .put("acrossEdgeMm", found.acrossEdgeMm())
        .put(
            "smallAngleRad", figure == AlignedFigure.CASTER ? measured.smallAngleCasterRad() : null)
        .put("hubFacesMm", track.map(Track::hubFacesMm))
        .put("outsideMm", track.map(Track::outsideMm))
        .put("needs", found.missing() == null ? null : List.of(found.missing().words()))
        .put("stands", found.stands())
        .put("target", found.target() == null ? null : found.target().content().inWords())
        .put("outcome", found.against() == null ? null : found.against().decision())
        .put("from", found.readings())
        .put("readInRound", found.beside() == null ? null : beside(found.beside()))
        .put("notes", found.notes().stream().map(n -> n.words()).toList());
  }

  /** What a round read at ride that does not count as this figure. */
  private static Node beside(ReadAtRide read) {
    return new Node()
        .put(read.angle() ? "rad" : "mm", read.value())
        .put("stands", read.stands())
        .put("notAtRide", read.not().stream().map(n -> n.words()).toList())
        .put("from", read.from().stream().map(SeenReading::key).toList());
  }
}
