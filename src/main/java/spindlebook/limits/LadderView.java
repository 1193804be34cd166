package spindlebook.limits;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import spindlebook.advice.Ladder;
import spindlebook.advice.LockLimits;
import spindlebook.advice.Rung;
import spindlebook.card.Capital;
import spindlebook.card.CureAddress;
import spindlebook.card.ReadingLinks;
import spindlebook.card.TravelWords;
import spindlebook.corner.EndView;
import spindlebook.drawing.TapeSheet;
import spindlebook.entry.Pairing;
import spindlebook.fold.Card;
import spindlebook.page.Link;
import spindlebook.travel.EndFindings;
import spindlebook.travel.TravelFindings;
import spindlebook.uncertainty.Outcome;

/**
 * The ladder of one end.
 *
 * @param end what it comes to, as every page shows it
 * @param rungs those that act, in order
 */
public record LadderView(EndView end, Ladder ladder, LadderWords say, List<Rung> rungs) {
  /**
   * One motion of an end, drawn.
   *
   * @param title how the ends of a solid axle stand; empty for a wheel hung alone
   */
  public record Drawn(String title, TapeSheet sheet) {}

  static LadderView of(Card card, TravelWords words, Ladder ladder, TravelFindings travel) {
    return new LadderView(
        new EndView(card, words, travel.at(ladder.end()), false),
        ladder,
        new LadderWords(words, ladder),
        ladder.rungs().stream()
            .filter(r -> r.state() != Rung.State.KEPT_TO && r.state() != Rung.State.NEEDS)
            .toList());
  }

  /** "droop", "bump": the section's anchor. */
  public String id() {
    return ladder.end().words();
  }

  /** Of a part of the section: a rung's number, the sums, what is kept. */
  public String anchor(Object part) {
    return id() + "-" + part;
  }

  /** What the end comes to, in a word. */
  public String word() {
    return end.end().outcome() == Outcome.SHORT ? "past it" : end.state().word();
  }

  /** One for each motion in which a rung has a place: both together and crossed on a solid axle. */
  public List<Drawn> drawings() {
    return end.end().reaches().stream().flatMap(r -> drawn(r).stream()).toList();
  }

  /** Rules kept as far as they were read. */
  public List<Rung> kept() {
    return in(Rung.State.KEPT_TO);
  }

  /** What could act anywhere: something of it is missing or no longer holds. */
  public List<Rung> unknown() {
    return in(Rung.State.NEEDS);
  }

  private Optional<Drawn> drawn(EndFindings.Reach reach) {
    String paired = reach.pairing() == null ? "" : reach.pairing().words();
    String drawn = "ladder-" + id() + (reach.pairing() == Pairing.CROSSED ? "-x" : "");
    String title = "What stops " + id() + (paired.isEmpty() ? "" : ", " + paired) + ", in order";
    return LadderTape.of(this, reach, drawn, title).map(s -> new Drawn(Capital.of(paired), s));
  }

  /** ", tyre to frame" where all that is needed is of one watch point; else empty. */
  String where() {
    List<String> points =
        end.end().needs().stream()
            .map(n -> n.toRead() == null ? null : n.toRead().point())
            .distinct()
            .toList();
    return points.size() != 1 || points.get(0) == null
        ? ""
        : end.card().watchPoint(points.get(0)).map(p -> ", " + p.name()).orElse("");
  }

  /** What fixing the first rung wins, short; empty where nothing is known of it. */
  public String fix() {
    return rungs.isEmpty() ? "" : say.fix(rungs.get(0));
  }

  private List<Rung> in(Rung.State state) {
    return ladder.rungs().stream().filter(r -> r.state() == state).toList();
  }

  /** Said in place of rungs that are not there; may be empty. */
  public String none() {
    boolean limits = rungs.stream().anyMatch(r -> r.what() != Rung.What.STOP);
    if (limits) {
      return "";
    }
    return in(Rung.State.NEEDS).isEmpty()
        ? "No limit met, as far as was read."
        : "No limit known yet.";
  }

  String told(LockLimits lock) {
    List<String> names =
        lock.rungs().stream().map(ladder.rungs()::get).map(say::name).distinct().toList();
    return Capital.of(ladder.end().words())
        + ": "
        + String.join("; ", names)
        + ". "
        + say.lessLock(lock.wins());
  }

  /** What it rests on. */
  public List<Link> readings(Rung rung) {
    boolean stop = rung.what() == Rung.What.STOP;
    return ReadingLinks.of(end.card(), stop ? stopReadings(rung) : rung.limit().readings());
  }

  private List<String> stopReadings(Rung rung) {
    return Stream.concat(
            end.end().reaches().stream()
                .filter(r -> r.mm() != null && r.mm().equals(rung.atMm()))
                .flatMap(r -> r.stop().stream())
                .flatMap(s -> s.readings().stream()),
            end.end().heldBack().stream().flatMap(h -> h.readings().stream()))
        .distinct()
        .toList();
  }

  /** Where what cures it is looked at or set. */
  public List<Link> cures(Rung rung) {
    Card card = end.card();
    List<Link> cures = new ArrayList<>();
    switch (rung.what()) {
      case STOP ->
          card.adjuster(end.end().end().setBy())
              .ifPresent(
                  a -> cures.add(new Link(a.adjuster().name(), CureAddress.adjuster(card, a))));
      case GAP, ANGLE, PLUNGE ->
          cures.add(new Link("its curve", LimitsView.curve(card.corner(), rung.limit().point())));
      case SHOCK, GROUND ->
          cures.add(new Link("specs and allowances", "/corners/" + card.corner() + "/given"));
    }
    if (rung.curedBy().contains(Rung.CuredBy.STEERING_STOP)) {
      LimitsView.steeringStop(card).ifPresent(cures::add);
    }
    return cures;
  }

  /** Empty where what it needs says it. */
  public String unknownName(Rung rung) {
    String name = say.name(rung);
    return end.words().needs(rung.needs()).startsWith(name) ? "" : Capital.of(name) + ": ";
  }
}
