package spindlebook.corner;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spindlebook.card.Capital;
import spindlebook.card.CureAddress;
import spindlebook.card.NeedAddress;
import spindlebook.card.ReadingLinks;
import spindlebook.card.Shown;
import spindlebook.card.TravelWords;
import spindlebook.drawing.FigureText;
import spindlebook.drawing.State;
import spindlebook.entry.Pairing;
import spindlebook.finding.Finding;
import spindlebook.finding.LimitNames;
import spindlebook.fold.Card;
import spindlebook.page.Link;
import spindlebook.travel.Cure;
import spindlebook.travel.End;
import spindlebook.travel.EndFindings;
import spindlebook.travel.HeldAtWheel;
import spindlebook.travel.Limit;
import spindlebook.travel.Need;
import spindlebook.travel.StopFound;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Outcome;

/**
 * One end of a corner as every page shows it: what it comes to, and the lines it is made of.
 *
 * @param toLookAt whether nothing on the page starts a change
 */
public record EndView(Card card, TravelWords words, EndFindings end, boolean toLookAt) {
  private static final int MOST_LIMITS = 6;

  /**
   * One term of an end's sum.
   *
   * @param figure null where it has no place
   * @param state null for what simply holds
   * @param readings what it rests on, each with its own page
   */
  public record Line(String words, FigureText figure, State state, List<Link> readings) {}

  public boolean droop() {
    return end.end() == End.DROOP;
  }

  public String title() {
    return Capital.of(end.end().words());
  }

  public State state() {
    return Shown.state(end.outcome());
  }

  public String finding() {
    return words.finding(end);
  }

  public String cure() {
    return words.cure(end);
  }

  /** Where that change is prepared, as far as it is known; null without a cure. */
  public String cureHref() {
    return end.cure().filter(c -> !toLookAt).map((Cure c) -> CureAddress.of(card, c)).orElse(null);
  }

  /** Where they are given or read. */
  public String href(List<Need> needs) {
    return NeedAddress.of(card.corner(), words, needs);
  }

  /** One round for several needs; null where that would be one thing or none. */
  public String together(List<Need> needs) {
    return toLookAt ? null : NeedAddress.together(card.corner(), words, needs);
  }

  public List<Line> lines() {
    return lines(false);
  }

  /**
   * @param brief as far as a sheet of paper bears
   */
  public List<Line> lines(boolean brief) {
    List<Line> lines = new ArrayList<>();
    int limits = 0;
    for (Finding found : words.found(end.end())) {
      switch (found.group()) {
        case STOP ->
            end.reaches().forEach(r -> r.stop().ifPresent(s -> lines.add(stop(s, r.pairing()))));
        case HELD_BACK -> {
          end.heldBack().ifPresent(h -> lines.add(held(h, brief)));
          if (!brief) {
            place("wheel goes to", end.reachMm(), lines);
          }
        }
        case LIMIT -> {
          Limit limit = (Limit) found.of();
          boolean told = brief ? rules(limit) : limit.found() || found.verdict() != Outcome.CLEAR;
          if (told && found.verdict() != Outcome.NEEDS && limits++ < MOST_LIMITS) {
            lines.add(limit(found, limit, brief));
          }
        }
        default -> {
          if (found.figure() != null) {
            FigureText margin = words.margin(end, found.figure());
            lines.add(new Line(TravelWords.marginName(end), margin, state(), List.of()));
          }
          if (end.rules().isPresent() && !brief) {
            place(
                droop() ? "strap must stop at or above" : "stop must be solid at or below",
                end.neededStopMm(),
                lines);
          }
        }
      }
    }
    return lines;
  }

  private void place(String words, Optional<Figure> mm, List<Line> lines) {
    mm.ifPresent(at -> lines.add(new Line(words, this.words.position(at), null, List.of())));
  }

  private Line stop(StopFound stop, Pairing pairing) {
    String what =
        droop()
            ? "strap stops the wheel at"
            : stop.computed()
                ? "bump stop solid at, from touch and crush"
                : "bump stop solid at, as read";
    if (stop.otherMm() != null) {
      what += " (the further of two that disagree)";
    }
    return new Line(
        what + LimitNames.pairing(pairing),
        words.position(stop.positionMm()),
        stop.notConfirmed() ? State.PUT_BACK : null,
        ReadingLinks.of(card, stop.readings()));
  }

  private Line held(HeldAtWheel held, boolean brief) {
    if (brief) {
      return new Line("held back", words.lengths().figure(held.mm()), null, List.of());
    }
    String what =
        droop() ? "stretch still to come, at the wheel" : "impact held back, at the wheel";
    if (held.atStopMm() != null && held.atStopMm().value() > 0) {
      what += ", " + words.lengths().text(held.atStopMm().value()) + " at the strap";
    }
    if (held.modelled()) {
      what += "; by the linkage, the strap was not read at two heights";
    }
    if (!held.because().isEmpty()) {
      what +=
          "; all of it, until the strap is read on it again ("
              + String.join("; ", held.because())
              + ")";
    }
    return new Line(
        what,
        words.lengths().signedFigure(held.mm().times(end.end().outward())),
        null,
        ReadingLinks.of(card, held.readings()));
  }

  private boolean rules(Limit limit) {
    return end.rules().filter(limit::equals).isPresent();
  }

  private Line limit(Finding found, Limit limit, boolean brief) {
    String rules = rules(limit) ? ", stops first" : "";
    return new Line(
        brief ? "limit: " + found.name() : found.name() + rules + words.between(limit),
        found.position() == null ? null : words.position(found.position()),
        Shown.state(found.verdict()),
        ReadingLinks.of(card, found.readings()));
  }
}
