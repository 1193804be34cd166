package spindlebook.card;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spindlebook.drawing.FigureText;
import spindlebook.drawing.State;
import spindlebook.drawing.TapeBlade;
import spindlebook.drawing.TapeBlade.Band;
import spindlebook.drawing.TapeBlade.Mark;
import spindlebook.fold.Card;
import spindlebook.travel.EndFindings;
import spindlebook.travel.Limit;
import spindlebook.travel.TravelFindings;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Outcome;

/** The tape blade of a corner: what is usable, held back, beyond a limit, off the tape. */
final class Blades {
  private static final double BORDER_MM = 25.4;
  private static final int MOST_OTHER_LIMITS = 2;

  private final Card card;
  private final TravelFindings travel;
  private final TravelWords words;
  private final List<Band> bands = new ArrayList<>();
  private final List<Mark> marks = new ArrayList<>();

  private Blades(Card card, TravelFindings travel, TravelWords words) {
    this.card = card;
    this.travel = travel;
    this.words = words;
  }

  /** Empty when no wheel position is known. */
  static Optional<TapeBlade> of(Card card, TravelFindings travel, boolean all) {
    return new Blades(card, travel, new TravelWords(card, travel)).blade(all);
  }

  private Optional<TapeBlade> blade(boolean all) {
    double[] read =
        card.heights().stream()
            .filter(h -> h.positionCounts())
            .mapToDouble(h -> words.zero().from(h.positionMm().value()))
            .sorted()
            .toArray();
    if (read.length == 0) {
      return Optional.empty();
    }
    double low = read[0];
    double high = read[read.length - 1];
    bands(low, high);
    end(travel.droop(), all);
    end(travel.bump(), all);
    travel.rideMm().ifPresent(r -> mark(r, "ride height", Mark.Kind.RIDE, null));
    for (Mark mark : marks) {
      low = Math.min(low, mark.positionMm());
      high = Math.max(high, mark.positionMm());
    }
    String name = card.place().words();
    return Optional.of(
        new TapeBlade(
            "blade-" + card.corner().replaceAll("[^A-Za-z0-9-]", "-"),
            low - BORDER_MM,
            high + BORDER_MM,
            words.lengths().scale(),
            bands,
            marks,
            "Travel of the " + name,
            words.finding(travel.droop()) + " " + words.finding(travel.bump())));
  }

  private void bands(double low, double high) {
    EndFindings droop = travel.droop();
    EndFindings bump = travel.bump();
    double bottom = usable(droop, low);
    double top = usable(bump, high);
    // Beyond a limit first: where a held-back band overlaps it, the held-back one shows.
    limit(droop).ifPresent(l -> band(reach(droop).orElse(low), l, Band.Kind.BEYOND));
    limit(bump).ifPresent(l -> band(l, reach(bump).orElse(high), Band.Kind.BEYOND));
    limit(droop).ifPresent(l -> band(l, bottom, Band.Kind.HELD_BACK));
    limit(bump).ifPresent(l -> band(top, l, Band.Kind.HELD_BACK));
    band(bottom, top, Band.Kind.USABLE);
  }

  /** Where an end's usable travel stops. */
  private double usable(EndFindings end, double otherwise) {
    return end.neededStopMm()
        .filter(n -> end.rules().isPresent())
        .or(() -> end.stop().map(s -> s.positionMm()))
        .map(f -> words.zero().from(f.value()))
        .orElse(otherwise);
  }

  private Optional<Double> limit(EndFindings end) {
    return end.rules().map(l -> words.zero().from(l.positionMm().value()));
  }

  /** Where the wheel gets in the end: the stop and what comes after it. */
  private Optional<Double> reach(EndFindings end) {
    return end.reachMm()
        .or(() -> end.stop().map(s -> s.positionMm()))
        .map(f -> words.zero().from(f.value()));
  }

  private void band(double fromMm, double toMm, Band.Kind kind) {
    if (fromMm < toMm) {
      bands.add(new Band(fromMm, toMm, kind));
    }
  }

  private void end(EndFindings end, boolean all) {
    boolean droop = end.end() == spindlebook.travel.End.DROOP;
    end.stop()
        .ifPresent(
            s ->
                mark(
                    s.positionMm(),
                    droop
                        ? "strap stops here today"
                        : s.computed() ? "stop solid, worked out" : "bump stop solid",
                    Mark.Kind.STOP,
                    null));
    end.reachMm()
        .filter(r -> !all && end.heldBack().orElseThrow().mm().value() > 0)
        .ifPresent(r -> mark(r, droop ? "strap stretched" : "with impact", Mark.Kind.END, null));
    end.rules().ifPresent(l -> rules(end, l));
    if (!all) {
      return;
    }
    end.limits().stream()
        .filter(Limit::found)
        .skip(1)
        .limit(MOST_OTHER_LIMITS)
        .forEach(l -> mark(l.positionMm(), words.name(l), Mark.Kind.LIMIT, null));
    end.neededStopMm()
        .filter(n -> end.rules().isPresent())
        .ifPresent(n -> mark(n, droop ? "usable bottom" : "usable top", Mark.Kind.END, null));
  }

  /** A limit that is kept says nothing of the end while others of it are still to be read. */
  private void rules(EndFindings end, Limit limit) {
    boolean soFar = !end.needs().isEmpty() && limit.outcome() == Outcome.CLEAR;
    mark(
        limit.positionMm(),
        words.name(limit) + (soFar ? " so far" : ""),
        Mark.Kind.RULES,
        soFar ? null : Shown.state(limit.outcome()));
  }

  private void mark(Figure positionMm, String what, Mark.Kind kind, State state) {
    double from = words.zero().from(positionMm.value());
    marks.add(
        new Mark(
            from,
            FigureText.of(words.lengths().signed(from), ""),
            what,
            kind,
            positionMm.U(),
            state));
  }
}
