package spindlebook.limits;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spindlebook.advice.Ladder;
import spindlebook.advice.Rung;
import spindlebook.card.Capital;
import spindlebook.card.Shown;
import spindlebook.card.TravelWords;
import spindlebook.drawing.FigureText;
import spindlebook.drawing.TapeBlade;
import spindlebook.drawing.TapeBlade.Band;
import spindlebook.drawing.TapeBlade.Mark;
import spindlebook.travel.EndFindings;
import spindlebook.travel.Limit;
import spindlebook.uncertainty.Figure;

/** One end of the tape, its rungs numbered in the order in which they act. */
final class LadderBlade {
  private static final double BORDER_MM = 25.4;
  private static final double SHORTEST_MM = 120;
  private static final int MOST_RUNGS = 8;

  private final TravelWords words;
  private final LadderWords say;
  private final EndFindings end;
  private final EndFindings.Reach reach;
  private final int outward;
  private final List<Mark> marks = new ArrayList<>();
  private final List<Band> bands = new ArrayList<>();

  private LadderBlade(
      TravelWords words, LadderWords say, Ladder ladder, EndFindings end, EndFindings.Reach reach) {
    this.words = words;
    this.say = say;
    this.end = end;
    this.reach = reach;
    this.outward = ladder.end().outward();
  }

  /**
   * Empty when nothing at this end has a place.
   *
   * @param reach the stop, on a solid axle of the one pairing whose motion is drawn
   * @param numbered the rungs that act, in order
   */
  static Optional<TapeBlade> of(
      TravelWords words,
      LadderWords say,
      Ladder ladder,
      EndFindings end,
      EndFindings.Reach reach,
      List<Rung> numbered,
      String id,
      String title) {
    return new LadderBlade(words, say, ladder, end, reach).blade(numbered, id, title);
  }

  private Optional<TapeBlade> blade(List<Rung> numbered, String id, String title) {
    boolean first = true;
    for (int i = 0; i < numbered.size() && marks.size() < MOST_RUNGS; i++) {
      Rung rung = numbered.get(i);
      if (rung.atMm() != null) {
        if (drawn(rung)) {
          marks.add(mark(i + 1, rung, first));
        }
        first = false;
      }
    }
    if (marks.isEmpty()) {
      return Optional.empty();
    }
    double inner = marks.stream().mapToDouble(m -> m.positionMm() * outward).min().orElseThrow();
    double outer = marks.stream().mapToDouble(m -> m.positionMm() * outward).max().orElseThrow();
    for (Optional<Double> place : List.of(stop(), needed())) {
      inner = Math.min(inner, place.map(mm -> mm * outward).orElse(inner));
      outer = Math.max(outer, place.map(mm -> mm * outward).orElse(outer));
    }
    outer += BORDER_MM;
    inner = Math.min(inner - BORDER_MM, outer - SHORTEST_MM);
    bands(inner * outward);
    return Optional.of(
        new TapeBlade(
            id,
            Math.min(inner * outward, outer * outward),
            Math.max(inner * outward, outer * outward),
            words.lengths().scale(),
            bands,
            marks,
            title,
            "From mid-travel outwards: "
                + String.join("; ", marks.stream().map(Mark::words).toList())
                + "."));
  }

  /** The ground is met in either motion of a solid axle. */
  private boolean drawn(Rung rung) {
    return reach.pairing() == null
        || rung.condition().isEmpty()
        || rung.condition().equals(reach.pairing().words());
  }

  private void bands(double innerMm) {
    Optional<Double> limit = limit().map(l -> from(l.positionMm()));
    Optional<Double> usable = limit.isPresent() ? needed() : stop();
    Optional<Double> goesTo = Optional.ofNullable(reach.mm()).map(this::from);
    limit.ifPresent(l -> goesTo.ifPresent(r -> band(l, r, Band.Kind.BEYOND)));
    limit.or(() -> goesTo).ifPresent(l -> usable.ifPresent(u -> band(u, l, Band.Kind.HELD_BACK)));
    usable.ifPresent(u -> band(innerMm, u, Band.Kind.USABLE));
  }

  /** The limit that comes first in this motion. */
  private Optional<Limit> limit() {
    return end.rules().isEmpty()
        ? Optional.empty()
        : end.limits().stream()
            .filter(Limit::found)
            .filter(l -> l.pairing() == null || l.pairing() == reach.pairing())
            .findFirst();
  }

  /** Only outwards: a limit that lies further out than the stop leaves nothing beyond it. */
  private void band(double innerMm, double outerMm, Band.Kind kind) {
    if (innerMm * outward < outerMm * outward) {
      bands.add(new Band(Math.min(innerMm, outerMm), Math.max(innerMm, outerMm), kind));
    }
  }

  private Optional<Double> stop() {
    return reach.stop().map(s -> from(s.positionMm()));
  }

  private Optional<Double> needed() {
    return reach.neededMm().filter(n -> limit().isPresent()).map(this::from);
  }

  private Mark mark(int number, Rung rung, boolean first) {
    boolean stop = rung.what() == Rung.What.STOP;
    String to =
        rung.brokenMm() == null ? "" : ", or later, by " + words.position(rung.brokenMm().value());
    double from = from(rung.atMm());
    return new Mark(
        from,
        FigureText.of(words.lengths().signed(from), ""),
        number + " " + Capital.of(say.name(rung)) + to,
        stop ? Mark.Kind.STOP : first ? Mark.Kind.RULES : Mark.Kind.LIMIT,
        rung.atMm().U(),
        stop ? null : Shown.state(rung.limit().outcome()));
  }

  private double from(Figure mm) {
    return words.zero().from(mm.value());
  }
}
