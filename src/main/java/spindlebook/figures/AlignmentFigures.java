package spindlebook.figures;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Optional;
import spindlebook.alignment.AlignedFinding;
import spindlebook.alignment.MeasuredAlignment;
import spindlebook.alignment.ReadAtRide;
import spindlebook.entry.AlignedFigure;
import spindlebook.fold.Card;
import spindlebook.fold.SeenAlignment;
import spindlebook.fold.SeenReading;
import spindlebook.page.Posted;

/** A corner's alignment as measured, as JSON. */
final class AlignmentFigures {
  private AlignmentFigures() {}

  static void corner(ObjectNode corner, Card card, Optional<Card> mirror) {
    MeasuredAlignment measured = new MeasuredAlignment(card, mirror);
    ArrayNode all = corner.putArray("alignment");
    for (AlignedFinding found : measured.findings()) {
      if (found.value() != null || found.target() != null || found.beside() != null) {
        finding(all.addObject(), found, measured);
      }
    }
  }

  private static void finding(ObjectNode node, AlignedFinding found, MeasuredAlignment measured) {
    AlignedFigure figure = found.figure();
    node.put("what", Posted.word(figure));
    Figures.figure(node, figure.angle() ? "rad" : "mm", Optional.ofNullable(found.value()));
    Figures.figure(node, "acrossEdgeMm", found.acrossEdgeMm());
    if (figure == AlignedFigure.CASTER) {
      Figures.figure(node, "smallAngleRad", measured.smallAngleCasterRad());
    }
    if (figure == AlignedFigure.TRACK) {
      measured
          .lastTrack()
          .ifPresent(
              t -> {
                Figures.figure(node, "hubFacesMm", Optional.of(t.hubFacesMm()));
                Figures.figure(node, "outsideMm", Optional.of(t.outsideMm()));
              });
    }
    if (found.missing() != null) {
      node.putArray("needs").add(found.missing().words());
    }
    if (found.stands() != null) {
      node.put("stands", Posted.word(found.stands()));
    }
    if (found.target() != null) {
      node.put("target", found.target().target().inWords());
    }
    if (found.against() != null) {
      node.put("outcome", Posted.word(found.against().decision()));
    }
    ArrayNode from = node.putArray("from");
    found.from().stream().map(SeenAlignment::key).forEach(from::add);
    found.inRound().stream().map(SeenReading::key).forEach(from::add);
    if (found.beside() != null) {
      beside(node.putObject("readInRound"), found.beside());
    }
    ArrayNode notes = node.putArray("notes");
    found.notes().forEach(n -> notes.add(n.words()));
  }

  /** What a round read at ride that does not count as this figure. */
  private static void beside(ObjectNode node, ReadAtRide read) {
    Figures.figure(node, read.angle() ? "rad" : "mm", Optional.of(read.value()));
    node.put("stands", Posted.word(read.stands()));
    ArrayNode not = node.putArray("notAtRide");
    read.not().forEach(n -> not.add(n.words()));
    ArrayNode from = node.putArray("from");
    read.from().stream().map(SeenReading::key).forEach(from::add);
  }
}
