package spindlebook.limits;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import spindlebook.card.Capital;
import spindlebook.card.CureAddress;
import spindlebook.card.NeedAddress;
import spindlebook.card.ReadingLinks;
import spindlebook.card.Shown;
import spindlebook.card.TravelWords;
import spindlebook.corner.AdjusterKind;
import spindlebook.corner.Card;
import spindlebook.corner.Pairing;
import spindlebook.limits.LimitsView.OneEnd;
import spindlebook.limits.LimitsView.RungRow;
import spindlebook.limits.LimitsView.UnknownRow;
import spindlebook.travel.End;
import spindlebook.travel.EndFindings;
import spindlebook.travel.Ladder;
import spindlebook.travel.Need;
import spindlebook.travel.Rung;
import spindlebook.travel.TravelFindings;
import spindlebook.web.BladeDrawing;
import spindlebook.web.Link;
import spindlebook.web.TapeBlade;

/** The rows of one end's ladder. */
final class EndRows {
  private final Card card;
  private final TravelWords words;
  private final Ladder ladder;
  private final LadderWords say;
  private final EndFindings end;
  private final boolean droop;

  EndRows(Card card, TravelWords words, Ladder ladder, TravelFindings travel) {
    this.card = card;
    this.words = words;
    this.ladder = ladder;
    this.say = new LadderWords(words, ladder);
    this.droop = ladder.end() == End.DROOP;
    this.end = travel.at(ladder.end());
  }

  /**
   * @param together the address of one round for several needs; null for fewer than two readings
   */
  OneEnd end(Function<List<Need>, String> together) {
    List<Rung> numbered =
        ladder.rungs().stream()
            .filter(r -> r.state() != Rung.State.KEPT_TO && r.state() != Rung.State.NEEDS)
            .toList();
    List<RungRow> rungs = new ArrayList<>();
    numbered.forEach(r -> rungs.add(row(r, rungs.size() + 1)));
    List<Rung> unknown = in(Rung.State.NEEDS);
    String title = droop ? "Droop" : "Bump";
    return new OneEnd(
        title,
        Shown.state(end.outcome()),
        words.finding(end),
        words.cure(end),
        end.cure().map(c -> CureAddress.of(card, c)).orElse(null),
        end.reaches().stream().flatMap(r -> blade(r, numbered).stream()).toList(),
        rungs,
        none(numbered),
        in(Rung.State.KEPT_TO).stream().map(r -> row(r, 0)).toList(),
        unknown.stream().map(this::unknown).toList(),
        together.apply(unknown.stream().flatMap(r -> r.needs().stream()).toList()));
  }

  private Optional<LimitsView.Blade> blade(EndFindings.Reach reach, List<Rung> numbered) {
    String paired = reach.pairing() == null ? "" : reach.pairing().words();
    String id = "ladder-" + ladder.end().words() + (reach.pairing() == Pairing.CROSSED ? "-x" : "");
    String title = "What acts at " + ladder.end().words() + (paired.isEmpty() ? "" : ", " + paired);
    return LadderBlade.of(words, say, ladder, end, reach, numbered, id, title + ", in order")
        .map((TapeBlade b) -> new LimitsView.Blade(Capital.of(paired), BladeDrawing.standing(b)));
  }

  private List<Rung> in(Rung.State state) {
    return ladder.rungs().stream().filter(r -> r.state() == state).toList();
  }

  private String none(List<Rung> numbered) {
    boolean limits = numbered.stream().anyMatch(r -> r.what() != Rung.What.STOP);
    if (limits) {
      return "";
    }
    return in(Rung.State.NEEDS).isEmpty()
        ? "No limit was met at this end, as far as it was read."
        : "No limit is known at this end yet.";
  }

  private RungRow row(Rung rung, int number) {
    boolean stop = rung.what() == Rung.What.STOP;
    boolean kept = rung.state() == Rung.State.KEPT_TO;
    return new RungRow(
        number,
        Capital.of(say.name(rung)),
        rung.limit() == null ? null : Shown.state(rung.limit().outcome()),
        rung.atMm() == null ? null : words.position(rung.atMm()),
        rung.brokenMm() == null
            ? ""
            : "planned from here; past its rule at " + words.position(rung.brokenMm().value()),
        say.word(rung.wins()),
        say.figure(rung.wins()),
        rung.limit() == null ? "" : words.told(end, rung.limit()),
        kept ? "" : say.winning(rung),
        kept ? "" : say.curedBy(rung),
        kept ? List.of() : cures(rung),
        ReadingLinks.of(card, stop ? stopReadings(rung) : rung.limit().readings()));
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

  private List<Link> cures(Rung rung) {
    List<Link> cures = new ArrayList<>();
    switch (rung.what()) {
      case STOP ->
          card.adjuster(droop ? AdjusterKind.LIMIT_STRAP : AdjusterKind.BUMP_STOP_SPACER)
              .ifPresent(
                  a -> cures.add(new Link(a.adjuster().name(), CureAddress.adjuster(card, a))));
      case GAP, ANGLE, PLUNGE ->
          cures.add(new Link("its curve", LimitsViews.curve(card.corner(), rung.limit().point())));
      case SHOCK, GROUND ->
          cures.add(new Link("what is given", "/corners/" + card.corner() + "/given"));
    }
    if (rung.curedBy().contains(Rung.CuredBy.STEERING_STOP)) {
      LimitsViews.steeringStop(card).ifPresent(cures::add);
    }
    return cures;
  }

  private UnknownRow unknown(Rung rung) {
    String name = say.name(rung);
    String needs = words.needs(rung.needs());
    return new UnknownRow(
        needs.startsWith(name) ? "" : Capital.of(name) + ": ",
        needs.startsWith(name) ? Capital.of(needs) : "needs " + needs,
        NeedAddress.of(card.corner(), words, rung.needs()));
  }
}
