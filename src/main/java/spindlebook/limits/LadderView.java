package spindlebook.limits;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import spindlebook.card.Capital;
import spindlebook.card.CureAddress;
import spindlebook.card.EndView;
import spindlebook.card.NeedAddress;
import spindlebook.card.ReadingLinks;
import spindlebook.card.Shown;
import spindlebook.card.TravelWords;
import spindlebook.corner.AdjusterKind;
import spindlebook.corner.Card;
import spindlebook.corner.Pairing;
import spindlebook.travel.End;
import spindlebook.travel.EndFindings;
import spindlebook.travel.Ladder;
import spindlebook.travel.LockLimits;
import spindlebook.travel.Rung;
import spindlebook.travel.TravelFindings;
import spindlebook.web.BladeDrawing;
import spindlebook.web.FigureText;
import spindlebook.web.Link;
import spindlebook.web.State;
import spindlebook.web.TapeBlade;

/** The ladder of one end. */
public final class LadderView {
  private static final int OPEN_AT_MOST = 3;

  private final Card card;
  private final TravelWords words;
  private final Ladder ladder;
  private final LadderWords say;
  private final EndFindings end;
  private final boolean droop;

  private final List<Rung> numbered;

  LadderView(Card card, TravelWords words, Ladder ladder, TravelFindings travel) {
    this.card = card;
    this.words = words;
    this.ladder = ladder;
    this.say = new LadderWords(words, ladder);
    this.droop = ladder.end() == End.DROOP;
    this.end = travel.at(ladder.end());
    this.numbered =
        ladder.rungs().stream()
            .filter(r -> r.state() != Rung.State.KEPT_TO && r.state() != Rung.State.NEEDS)
            .toList();
  }

  /**
   * One motion of an end, drawn.
   *
   * @param title how the ends of a solid axle stand; empty for a wheel hung alone
   */
  public record Blade(String title, BladeDrawing drawing) {}

  public EndView end() {
    return new EndView(card, words, end, false);
  }

  /** One for each motion in which a rung has a place: both together and crossed on a solid axle. */
  public List<Blade> blades() {
    return end.reaches().stream().flatMap(r -> blade(r).stream()).toList();
  }

  public List<Rung> rungs() {
    return numbered;
  }

  /** Rules kept as far as they were read. */
  public List<Rung> kept() {
    return in(Rung.State.KEPT_TO);
  }

  /** What could act anywhere: something of it is missing or no longer holds. */
  public List<Rung> unknown() {
    return in(Rung.State.NEEDS);
  }

  public boolean unknownOpen() {
    return unknown().size() <= OPEN_AT_MOST;
  }

  /** One round that reads all of those; null for fewer than two readings. */
  public String readUnknown() {
    return end().together(unknown().stream().flatMap(r -> r.needs().stream()).toList());
  }

  private Optional<Blade> blade(EndFindings.Reach reach) {
    String paired = reach.pairing() == null ? "" : reach.pairing().words();
    String id = "ladder-" + ladder.end().words() + (reach.pairing() == Pairing.CROSSED ? "-x" : "");
    String title = "What acts at " + ladder.end().words() + (paired.isEmpty() ? "" : ", " + paired);
    return LadderBlade.of(words, say, ladder, end, reach, numbered, id, title + ", in order")
        .map((TapeBlade b) -> new Blade(Capital.of(paired), BladeDrawing.standing(b)));
  }

  private List<Rung> in(Rung.State state) {
    return ladder.rungs().stream().filter(r -> r.state() == state).toList();
  }

  /** Said in place of rungs that are not there; may be empty. */
  public String none() {
    boolean limits = numbered.stream().anyMatch(r -> r.what() != Rung.What.STOP);
    if (limits) {
      return "";
    }
    return in(Rung.State.NEEDS).isEmpty()
        ? "No limit was met at this end, as far as it was read."
        : "No limit is known at this end yet.";
  }

  List<LockLimits> locks() {
    return ladder.locks();
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

  // --- one rung

  public String name(Rung rung) {
    return Capital.of(say.name(rung));
  }

  /** Null for the stop. */
  public State state(Rung rung) {
    return rung.limit() == null ? null : Shown.state(rung.limit().outcome());
  }

  /** Null where it has no place. */
  public FigureText at(Rung rung) {
    return rung.atMm() == null ? null : words.position(rung.atMm());
  }

  /** Where a bracket ends; may be empty. */
  public String atNote(Rung rung) {
    return rung.brokenMm() == null
        ? ""
        : "planned from here; past its rule at " + words.position(rung.brokenMm().value());
  }

  /** How it stands against the stop; may be empty. */
  public String told(Rung rung) {
    return rung.limit() == null ? "" : words.told(end, rung.limit());
  }

  public LadderWords say() {
    return say;
  }

  /** What it rests on. */
  public List<Link> readings(Rung rung) {
    boolean stop = rung.what() == Rung.What.STOP;
    return ReadingLinks.of(card, stop ? stopReadings(rung) : rung.limit().readings());
  }

  private List<String> stopReadings(Rung rung) {
    return Stream.concat(
            end.reaches().stream()
                .filter(r -> r.mm() != null && r.mm().equals(rung.atMm()))
                .flatMap(r -> r.stop().stream())
                .flatMap(s -> s.readings().stream()),
            end.heldBack().stream().flatMap(h -> h.readings().stream()))
        .distinct()
        .toList();
  }

  /** Where what cures it is looked at or set. */
  public List<Link> cures(Rung rung) {
    List<Link> cures = new ArrayList<>();
    switch (rung.what()) {
      case STOP ->
          card.adjuster(droop ? AdjusterKind.LIMIT_STRAP : AdjusterKind.BUMP_STOP_SPACER)
              .ifPresent(
                  a -> cures.add(new Link(a.adjuster().name(), CureAddress.adjuster(card, a))));
      case GAP, ANGLE, PLUNGE ->
          cures.add(new Link("its curve", LimitsView.curve(card.corner(), rung.limit().point())));
      case SHOCK, GROUND ->
          cures.add(new Link("what is given", "/corners/" + card.corner() + "/given"));
    }
    if (rung.curedBy().contains(Rung.CuredBy.STEERING_STOP)) {
      LimitsView.steeringStop(card).ifPresent(cures::add);
    }
    return cures;
  }

  /** Empty where what it needs says it. */
  public String unknownName(Rung rung) {
    String name = say.name(rung);
    return words.needs(rung.needs()).startsWith(name) ? "" : Capital.of(name) + ": ";
  }

  public String unknownNeeds(Rung rung) {
    String needs = words.needs(rung.needs());
    return unknownName(rung).isEmpty() ? Capital.of(needs) : "needs " + needs;
  }

  public String unknownHref(Rung rung) {
    return NeedAddress.of(card.corner(), words, rung.needs());
  }
}
